//! An enzyme liquid is also more liquid.

use crate::bench;
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Recipe};

/// Share of the water that nobody minds (1): as much as cylinders differ among themselves, and a
/// bit.
const NOT_WORTH_SAYING: f64 = 0.05;

pub(super) fn findings(plan: &Plan) -> Option<Finding> {
    for question in &plan.questions {
        for treatment in &question.treatments {
            let Some(beside) = plan.beside(question, treatment) else { continue };
            let Some(reference) = plan.treatment(beside) else { continue };
            let (recipe, other) = (plan.recipe(treatment), plan.recipe(reference));
            let more = enzyme_ml(&recipe) - enzyme_ml(&other);
            if more.abs() > NOT_WORTH_SAYING * other.water.value {
                let (wet, dry) = if more > 0.0 {
                    (&treatment.name, beside)
                } else {
                    (&reference.name, treatment.name.as_str())
                };
                let message =
                    format!("“{wet}” gets {:.1} mL more liquid than “{dry}”.", more.abs());
                let fix = "Give the bags that get no enzyme that much more water.";
                let finding = Finding::new(Severity::Note, "more-liquid", message, fix);
                return Some(finding.at(place::key(plan, treatment, "enzyme_amount")));
            }
        }
    }
    None
}

fn enzyme_ml(recipe: &Recipe) -> f64 {
    let (Some(name), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) else {
        return 0.0;
    };
    bench::enzyme(name, amount).ok().and_then(|enzyme| enzyme.ml(amount)).unwrap_or(0.0)
}
