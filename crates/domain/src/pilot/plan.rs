//! A pilot as a plan of its own, so that what holds for any plan holds for it: forecasts and cautions.

use super::bags::{PilotBag, Role};
use super::protocol::Protocol;
use crate::plan::{Difference, Equipment, Plan, Question, Recipe, Treatment, Variable};

/// The pilot's bags as the treatments of one question, under the plan's first day. It has no
/// periods: it is one adult's work.
pub fn as_plan(plan: &Plan, protocol: &Protocol) -> Plan {
    let first = protocol.bags.first();
    let treatments = protocol.bags.iter().map(|bag| Treatment {
        name: name(bag),
        beside: None,
        replicates: Some(1),
        difference: difference(bag),
    });
    let question = Question {
        id: "pilot".into(),
        asks: "What are this yeast and these bags like?".into(),
        variable: Variable::Food,
        crossed_with: None,
        reference: None,
        treatments: treatments.collect(),
        uses: Vec::new(),
        replicates: 1,
    };
    Plan {
        title: format!("{}: pilot", plan.title),
        days: plan.days.first().cloned().into_iter().collect(),
        periods: Vec::new(),
        group_settings: Vec::new(),
        circumstances: Vec::new(),
        answered: Vec::new(),
        base: Recipe {
            food: None,
            food_amount: None,
            enzyme: None,
            enzyme_amount: None,
            ..first.map_or(&protocol.dummy.recipe, |bag| &bag.recipe).clone()
        },
        questions: if first.is_some() { vec![question] } else { Vec::new() },
        controls: Vec::new(),
        materials: Vec::new(),
        equipment: Equipment {
            thermometers: Some(1),
            meters: protocol.meter.as_ref().map(|_| 1),
            ..Equipment::default()
        },
        bags: Vec::new(),
        retired_codes: Vec::new(),
        ..plan.clone()
    }
}

/// What a bag is called.
pub(super) fn name(bag: &PilotBag) -> String {
    let says = match &bag.role {
        Role::Yeast => "yeast and sugar",
        Role::Carrier(_) => "enzyme and yeast alone",
        Role::Enzyme(_) => "enzyme on its food",
    };
    format!("{}: {says}", bag.letter)
}

/// Everything that a bag has, in place of what the first one has.
fn difference(bag: &PilotBag) -> Difference {
    let recipe = &bag.recipe;
    Difference {
        bag: Some(recipe.bag.clone()),
        card: Some(recipe.card.clone()),
        water: Some(recipe.water.clone()),
        water_celsius: Some(recipe.water_celsius),
        yeast: Some(recipe.yeast),
        yeast_amount: Some(recipe.yeast_amount.clone()),
        food: Some(recipe.food.clone()),
        food_amount: recipe.food_amount.clone(),
        enzyme: Some(recipe.enzyme.clone()),
        enzyme_amount: recipe.enzyme_amount.clone(),
        extras: Some(recipe.extras.clone()),
        lies: Some(recipe.lies),
    }
}

impl PilotBag {
    /// What it is, in a few words.
    pub fn says(&self) -> String {
        name(self)
    }
}
