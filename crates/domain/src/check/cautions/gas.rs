//! What comes out of the bags (S24, S25, S32).

use super::choices::Choices;
use super::ingredients::FoodUsed;
use super::rule::{CautionRule, Said};
use super::wording::tenths_up;
use crate::finding::Field;
use crate::plan::Variable;

pub(super) const CARBON_DIOXIDE: CautionRule = CautionRule {
    code: "S24",
    hazard: "carbon dioxide in the air",
    trigger: "the upper forecast shows gas in the bags of a period",
    source: "own sum over the bags of the fullest period, each at its 90th percentile",
    local: false,
    look: carbon_dioxide,
};

/// Less gas than this in a whole class is not worth a word (mL).
const WORTH_SAYING_ML: f64 = 50.0;

fn carbon_dioxide(choices: &Choices<'_>) -> Option<Said> {
    let (period, ml) = most_gas_ml(choices)?;
    if ml < WORTH_SAYING_ML {
        return None;
    }
    let at = choices.plan.periods.iter().position(|known| known.name == period);
    let message = format!(
        "All bags of class {period} let out up to {} L of gas at once, most of it carbon dioxide.",
        tenths_up(ml / 1000.0)
    );
    let fix = "In a classroom of hundreds of cubic meters that is too little to matter. Still, vent \
               bags at arm's length, and breathe in none of it from the bag.";
    Some(Said::new(message, fix).at(at.map(|p| Field(format!("period[{p}]")))))
}

/// The period whose bags hold the most gas at the last reading, by the upper forecast (mL).
///
/// Without a bag list, replicates count as spread evenly over the periods.
fn most_gas_ml<'a>(choices: &Choices<'a>) -> Option<(&'a str, f64)> {
    let plan = choices.plan;
    let gas = |treatment: &str| {
        let entry = choices.outlook.iter().find(|entry| entry.treatment == treatment);
        entry.map(|entry| entry.gas_ml.last().2).filter(|ml| ml.is_finite()).unwrap_or(0.0)
    };
    let listed = |period: &str| -> f64 {
        plan.bags.iter().filter(|bag| bag.period == period).map(|bag| gas(&bag.treatment)).sum()
    };
    let spread = || -> f64 {
        let own = plan.questions.iter().flat_map(|question| {
            question.treatments.iter().map(|treatment| {
                let bags = treatment.replicates.unwrap_or(question.replicates);
                f64::from(bags) * gas(&treatment.name)
            })
        });
        let shared = plan
            .controls
            .iter()
            .map(|control| f64::from(control.per_period) * gas(&control.treatment.name));
        own.sum::<f64>() / plan.periods.len().max(1) as f64 + shared.sum::<f64>()
    };
    plan.periods
        .iter()
        .map(|period| {
            let ml = if plan.bags.is_empty() { spread() } else { listed(&period.name) };
            (period.name.as_str(), ml)
        })
        .max_by(|a, b| a.1.total_cmp(&b.1))
}

pub(super) const SMELL: CautionRule = CautionRule {
    code: "S25",
    hazard: "smell and headache",
    trigger: "a bag makes gas and has to be vented",
    source: "general practice, no source",
    local: false,
    look: smell,
};

fn smell(choices: &Choices<'_>) -> Option<Said> {
    let at = gassy(choices)?;
    let fix = "Open a window, and vent the bags under the hood or near the door. Whoever feels \
               unwell goes out into fresh air and tells the teacher.";
    Some(Said::new("The smell of many open bags can give some people a headache.", fix).at(at))
}

pub(super) const SNIFFING: CautionRule = CautionRule {
    code: "S32",
    hazard: "gas breathed in from a bag",
    trigger: "a bag makes gas",
    source: "common practice, no source",
    local: true,
    look: sniffing,
};

fn sniffing(choices: &Choices<'_>) -> Option<Said> {
    let at = gassy(choices)?;
    let fix = "Never sniff at a bag. Open it away from your face, near a window or the door.";
    Some(Said::new("The gas in a bag has no air to breathe in it.", fix).at(at))
}

/// Where the plan chooses something that makes gas: yeast, or soda that fizzes with acid.
fn gassy(choices: &Choices<'_>) -> Option<Field> {
    let yeast = choices.with_yeast().map(|made| made.at(Variable::Yeast));
    yeast.or_else(|| {
        let fizzes = |used: &&FoodUsed| used.in_bag && used.food.composition.bicarbonate > 0.0;
        choices.foods.iter().find(fizzes).map(|used| used.at.clone())
    })
}
