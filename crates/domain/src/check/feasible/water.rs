//! Water that is warm enough to work and not so hot that it kills or scalds.

use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{CONTROLS, Plan, Treatment, Variable};

/// Above this, poured water scalds within seconds (°C).
const SCALDS: f64 = 60.0;
/// Above this, yeast dies within the period (°C).
const KILLS: f64 = 50.0;
/// Below this, not much happens within a period (°C).
const COOL: f64 = 27.0;

const SCALD: &str = "A. R. Moritz, F. C. Henriques (1947), Am. J. Pathol. 23, 695-720, by way of a \
     trade table: 60 °C scalds in 3 to 5 s";
const YEAST: &str = "published optima of gas production of 38 to 41 °C; common practice: above \
     50 °C yeast dies";

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for (id, treatment) in plan.treatments() {
        let asked = id != CONTROLS
            && plan.questions.iter().any(|q| {
                let asks = [Some(q.variable), q.crossed_with];
                q.id == id && asks.contains(&Some(Variable::WaterTemperature))
            });
        let Some(finding) = judge(plan, treatment, asked) else { continue };
        // A base recipe that is too hot is said once.
        if found.iter().all(|said| said.code != finding.code || said.at != finding.at) {
            found.push(finding);
        }
    }
    found
}

/// `asked`: whether the temperature is what the question is about; then only danger counts.
fn judge(plan: &Plan, treatment: &Treatment, asked: bool) -> Option<Finding> {
    let recipe = plan.recipe(treatment);
    let celsius = recipe.water_celsius;
    let name = &treatment.name;
    let severity = if asked { Severity::Note } else { Severity::Warning };
    let finding = if celsius > SCALDS {
        let message =
            format!("Water at {celsius:.0} °C for “{name}” can scald skin in a few seconds.");
        let fix = "Stay at 60 °C or less, and let just the teacher pour above 49 °C (120 °F).";
        Finding::new(Severity::Fault, "water-scalds", message, fix).says(SCALD)
    } else if recipe.yeast.is_none() {
        return None;
    } else if celsius > KILLS {
        let message =
            format!("Water at {celsius:.0} °C for “{name}” will kill most of the yeast.");
        let fix = "Take water of 35 to 43 °C (95 to 109 °F).";
        Finding::new(severity, "water-hot", message, fix).says(YEAST)
    } else if celsius < COOL {
        let message = format!(
            "Water at {celsius:.0} °C for “{name}” is so cool that the yeast will be slow."
        );
        let fix = "Take water of 35 to 43 °C (95 to 109 °F).";
        Finding::new(severity, "water-cool", message, fix).says(YEAST)
    } else {
        return None;
    };
    Some(finding.at(place::key(plan, treatment, "water_temperature")))
}
