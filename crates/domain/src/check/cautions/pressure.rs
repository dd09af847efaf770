//! Bags that grow too full (S07, S08).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use super::wording::{minutes_down, percent_up};
use crate::plan::Circumstance;
use barm_science::bag::WORKING_FILL;

const OWN_RULE: &str = "common practice, no source: a bag is vented before gas and liquid take up \
                        80 % of what it can hold, judged at the 97.5th percentile of the forecast";

pub(super) const BURST: CautionRule = CautionRule {
    code: "S07",
    hazard: "bag bursts or pops open",
    trigger: "the upper forecast of a bag reaches 80 % of its volume before the closing bell, or \
              later where the plan says that bags are kept overnight",
    source: OWN_RULE,
    local: true,
    look: burst,
};

fn burst(choices: &Choices<'_>) -> Option<Said> {
    let kept = choices.circumstance(Circumstance::KeptOvernight).is_some();
    let until = if kept { f64::INFINITY } else { bell_min(choices) };
    let early = choices
        .outlook
        .iter()
        .filter_map(|entry| entry.vent_by_min.map(|minute| (entry, minute)))
        .filter(|(_, minute)| *minute <= until)
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let fullest = choices.highest(|entry| entry.peak_fill);
    let full = fullest.filter(|(_, fill)| *fill >= WORKING_FILL.value);
    let (entry, said) = match (full, early) {
        (Some((entry, fill)), _) => {
            (entry, format!("may fill its bag to {} by the last reading", percent_up(fill)))
        }
        (None, Some((entry, minute))) => (
            entry,
            format!(
                "may fill its bag to {} within {} of the zero reading",
                percent_up(WORKING_FILL.value),
                minutes_down(minute)
            ),
        ),
        (None, None) => return None,
    };
    let message = format!("“{}” {said}, and so full a bag can burst.", entry.treatment);
    let by = early.map_or(String::new(), |(entry, minute)| {
        format!(
            " Vent “{}” within {} of its zero reading.",
            entry.treatment,
            minutes_down(minute)
        )
    });
    let fix = format!(
        "Take a larger bag or less food.{by} Keep your face away, and open it over the sink inside \
         a second bag."
    );
    Some(Said::new(message, fix).at(choices.place(&entry.treatment)))
}

/// Minutes from the zero reading to the closing bell of the longest period.
fn bell_min(choices: &Choices<'_>) -> f64 {
    let longest = choices.plan.periods.iter().map(|period| period.length_min);
    longest.fold(0.0, f64::max) - choices.plan.timing.mixing_min
}

pub(super) const OVERNIGHT: CautionRule = CautionRule {
    code: "S08",
    hazard: "bags kept sealed after class",
    trigger: "the plan says that bags are kept overnight",
    source: OWN_RULE,
    local: true,
    look: overnight,
};

fn overnight(choices: &Choices<'_>) -> Option<Said> {
    let at = choices.circumstance(Circumstance::KeptOvernight)?;
    let soonest = choices
        .outlook
        .iter()
        .filter_map(|entry| entry.vent_by_min.map(|minute| (entry, minute)))
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let message = match soonest {
        Some((entry, minute)) => format!(
            "Kept sealed, “{}” may fill its bag to {} within {}, and so full a bag can burst.",
            entry.treatment,
            percent_up(WORKING_FILL.value),
            minutes_down(minute)
        ),
        None => "A bag that stays sealed overnight can fill with gas and burst.".to_owned(),
    };
    let fix = "Store no bag sealed. A bag that is kept has its seal open 1 cm (1/2 in), stands \
               upright in a tub and has a label.";
    Some(Said::new(message, fix).at(at))
}
