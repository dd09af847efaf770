//! What a second round shares with the first.

use crate::plan::Plan;

/// What a second round shares with the first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shared {
    /// Treatments that both make.
    pub treatments: Vec<String>,
    /// Those of them that others are compared with, or that are shared controls.
    pub controls: Vec<String>,
    /// Treatments that only round two makes.
    pub new: Vec<String>,
    /// Materials whose lots may have changed since: what the forecast takes to be the same.
    pub lots: Vec<String>,
}

impl Shared {
    /// What the plan of a second round shares with that of the first.
    pub(super) fn of(first: &Plan, second: &Plan) -> Self {
        let mut shared = Self {
            treatments: Vec::new(),
            controls: Vec::new(),
            new: Vec::new(),
            lots: Vec::new(),
        };
        let made = |plan: &Plan, name: &str| plan.bags.iter().any(|bag| bag.treatment == name);
        for (_, treatment) in second.treatments() {
            let name = treatment.name.as_str();
            if !made(second, name) {
                continue;
            }
            let reference = second.questions.iter().any(|q| second.is_reference(q, name));
            if !made(first, name) {
                shared.new.push(name.to_owned());
            } else if reference || second.is_control(name) {
                shared.controls.push(name.to_owned());
            } else {
                shared.treatments.push(name.to_owned());
            }
        }
        for (_, treatment) in second.treatments() {
            let recipe = second.recipe(treatment);
            let yeast = recipe.yeast.map(|kind| crate::prep::Item::Yeast(kind).name());
            let enzyme =
                recipe.enzyme.as_deref().map(crate::cupboard::spoken).map(str::to_owned);
            let bag = Some(format!("{} bags", recipe.bag.written));
            for lot in [yeast, enzyme, bag].into_iter().flatten() {
                if !shared.lots.contains(&lot) {
                    shared.lots.push(lot);
                }
            }
        }
        shared
    }
}
