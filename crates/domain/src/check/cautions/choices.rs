//! What a plan chooses, gathered once for all cautions.

use super::enzymes::{EnzymeUsed, enzymes};
use super::ingredients::{FoodUsed, foods};
use crate::finding::Field;
use crate::outlook::{Entry, Overnight};
use crate::plan::{Circumstance, Difference, Plan, Recipe, Variable};

/// The choices of a plan.
pub(super) struct Choices<'a> {
    pub plan: &'a Plan,
    pub outlook: &'a [Entry],
    /// What bags hold that are left sealed; may be empty.
    pub overnight: &'a [Overnight],
    /// Every treatment that is made.
    pub made: Vec<Made<'a>>,
    /// Every food that is used or bought, each once.
    pub foods: Vec<FoodUsed>,
    /// Every enzyme that is used or bought, each once.
    pub enzymes: Vec<EnzymeUsed>,
}

/// A treatment that is made, with its whole recipe.
pub(super) struct Made<'a> {
    pub name: &'a str,
    pub recipe: Recipe,
    difference: &'a Difference,
    path: String,
}

impl<'a> Choices<'a> {
    pub(super) fn of(plan: &'a Plan, outlook: &'a [Entry], overnight: &'a [Overnight]) -> Self {
        let made = made(plan);
        let enzymes = enzymes(plan, &made);
        let foods = foods(plan, &made, &enzymes);
        Self { plan, outlook, overnight, made, foods, enzymes }
    }

    /// Whether anything at all is made.
    pub(super) fn any_bag(&self) -> bool {
        !self.made.is_empty()
    }

    /// Where the plan says that this is true of the day, if it does.
    pub(super) fn circumstance(&self, wanted: Circumstance) -> Option<Field> {
        let at = self.plan.circumstances.iter().position(|told| *told == wanted)?;
        Some(Field(format!("circumstances[{at}]")))
    }

    /// The first treatment with live yeast.
    pub(super) fn with_yeast(&self) -> Option<&Made<'a>> {
        self.made.iter().find(|made| made.recipe.yeast.is_some())
    }

    /// The entry of the forecast that is highest in something.
    pub(super) fn highest(&self, of: impl Fn(&Entry) -> f64) -> Option<(&'a Entry, f64)> {
        let values = self.outlook.iter().map(|entry| (entry, of(entry)));
        values.filter(|(_, value)| value.is_finite()).max_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// The place of a treatment by its name.
    pub(super) fn place(&self, treatment: &str) -> Option<Field> {
        let made = self.made.iter().find(|made| made.name == treatment)?;
        Some(Field(made.path.clone()))
    }
}

impl Made<'_> {
    /// Where in the plan one part of this recipe is chosen: in the treatment or in the base.
    pub(super) fn at(&self, part: Variable) -> Field {
        let own = self.difference;
        let set = match part {
            Variable::Food => own.food.is_some(),
            Variable::FoodAmount => own.food_amount.is_some(),
            Variable::Enzyme => own.enzyme.is_some(),
            Variable::EnzymeAmount => own.enzyme_amount.is_some(),
            Variable::Yeast => own.yeast.is_some(),
            Variable::YeastAmount => own.yeast_amount.is_some(),
            Variable::Water => own.water.is_some(),
            Variable::WaterTemperature => own.water_celsius.is_some(),
            Variable::Extra => own.extras.is_some(),
            Variable::Bag => own.bag.is_some(),
            Variable::Card => own.card.is_some(),
            Variable::Lies => own.lies.is_some(),
        };
        let table = if set { self.path.as_str() } else { "base" };
        Field(format!("{table}.{}", part.words().replace(' ', "_")))
    }
}

fn made(plan: &Plan) -> Vec<Made<'_>> {
    let own = plan.questions.iter().enumerate().flat_map(|(q, question)| {
        let numbered = question.treatments.iter().enumerate();
        numbered.map(move |(t, treatment)| (format!("question[{q}].treatment[{t}]"), treatment))
    });
    let shared = plan.controls.iter().enumerate();
    let shared = shared.map(|(c, control)| (format!("control[{c}]"), &control.treatment));
    own.chain(shared)
        .map(|(path, treatment)| Made {
            name: &treatment.name,
            recipe: plan.recipe(treatment),
            difference: &treatment.difference,
            path,
        })
        .collect()
}
