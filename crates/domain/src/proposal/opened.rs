//! The cupboard that the teacher opened to the groups.

use crate::amount::{Amount, AmountKind};
use crate::cupboard::{Cupboard, PLAIN_MATERIALS};
use crate::plan::Plan;
use barm_science::enzyme::PRODUCTS;
use barm_science::enzyme::products::{Measure, product};

/// What groups may put into bags: what the plan buys or uses.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Opened {
    /// Ids of foods and names of label foods.
    pub foods: Vec<String>,
    /// Keys of enzyme products.
    pub enzymes: Vec<String>,
}

impl Opened {
    /// Whether a food or an enzyme may be used.
    pub fn has(&self, id: &str) -> bool {
        self.foods.iter().chain(&self.enzymes).any(|one| one == id)
    }
}

/// The cupboard of a plan.
pub fn opened(plan: &Plan) -> Opened {
    let mut open = Opened::default();
    let is_enzyme = |id: &str| PRODUCTS.iter().any(|product| product.key == id);
    let mut put = |id: &str| {
        let list = if is_enzyme(id) { &mut open.enzymes } else { &mut open.foods };
        if !PLAIN_MATERIALS.contains(&id) && list.iter().all(|known| known != id) {
            list.push(id.to_owned());
        }
    };
    for material in &plan.materials {
        put(&material.item);
    }
    for (_, treatment) in plan.treatments() {
        let recipe = plan.recipe(treatment);
        recipe.food.iter().for_each(|food| put(food));
        recipe.enzyme.iter().for_each(|enzyme| put(enzyme));
        recipe.extras.iter().for_each(|extra| put(&extra.item));
    }
    plan.label_foods.iter().for_each(|food| put(&food.name));
    open
}

/// How much of an enzyme a group is given: what the plan gives, or what is usual. Powders and tablets
/// come in mL of a solution that the teacher makes; nobody else handles them dry.
pub fn enzyme_given(plan: &Plan, key: &str) -> Option<Amount> {
    let dry =
        product(key).is_some_and(|one| matches!(one.measure, Measure::Gram | Measure::Tablet));
    let flows = |amount: &Amount| matches!(amount.kind, AmountKind::Volume | AmountKind::Drops);
    let used = plan.treatments().find_map(|(_, treatment)| {
        let recipe = plan.recipe(treatment);
        let own = recipe.enzyme.as_deref() == Some(key);
        recipe.enzyme_amount.filter(|amount| own && (!dry || flows(amount)))
    });
    let usual = match key {
        "lactase-drops" => "5 drops",
        "lactase-tablet" => "5 mL",
        _ => "2 mL",
    };
    used.or_else(|| Amount::parse(usual).ok())
}

/// The food or enzyme of the cupboard that a name means.
pub(super) fn food(plan: &Plan, open: &Opened, written: &str) -> Option<Result<String, ()>> {
    let id = Cupboard::with(&plan.label_foods).food(written).ok()?;
    Some(if open.has(&id) { Ok(id) } else { Err(()) })
}
