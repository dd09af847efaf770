//! Clearing away (S14, S31).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use super::wording::tenths_up;
use crate::amount::AmountKind;

pub(super) const DISPOSAL: CautionRule = CautionRule {
    code: "S14",
    hazard: "used liquid and bags",
    trigger: "any bag is made",
    source: "ASM, Guidelines for Biosafety in Teaching Laboratories (2012), BSL-1, partly seen; \
             local code",
    local: true,
    look: disposal,
};

fn disposal(choices: &Choices<'_>) -> Option<Said> {
    choices.any_bag().then(|| {
        let bags = choices.plan.bags.len();
        let message = if bags > 0 {
            let liters = tenths_up(water_ml(choices) / 1000.0);
            format!("Used bags go bad fast: here {bags} bags with {liters} L of liquid in all.")
        } else {
            "Used bags go bad fast.".to_owned()
        };
        let fix = "Pour the liquid down the drain with plenty of water, but no grease. Put the \
                   empty bags in the bin and wash the towels. Ask what your town allows.";
        Said::new(message, fix)
    })
}

/// Water poured into all bags of the list (mL).
fn water_ml(choices: &Choices<'_>) -> f64 {
    let water = |name: &str| {
        let made = choices.made.iter().find(|made| made.name == name)?;
        let water = &made.recipe.water;
        let counted = matches!(water.kind, AmountKind::Drops | AmountKind::Pieces);
        (!counted).then_some(water.value)
    };
    choices.plan.bags.iter().filter_map(|bag| water(&bag.treatment)).sum()
}

pub(super) const EMPTYING: CautionRule = CautionRule {
    code: "S31",
    hazard: "bags that leave the room",
    trigger: "any bag is made",
    source: "common practice, no source",
    local: true,
    look: emptying,
};

fn emptying(choices: &Choices<'_>) -> Option<Said> {
    choices.any_bag().then(|| {
        Said::new(
            "Used bags may hold germs and alcohol, so none may leave the room.",
            "The teacher empties the bags of the day, or watches while it is done. None is taken \
             home and none is tasted.",
        )
    })
}
