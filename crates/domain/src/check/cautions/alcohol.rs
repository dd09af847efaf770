//! Alcohol in the liquid (S15).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use super::wording::tenths_up;

/// Less than this is not worth a word (% by volume): fruit juice as sold may hold as much, from
/// memory.
const WORTH_SAYING: f64 = 0.05;

pub(super) const ALCOHOL: CautionRule = CautionRule {
    code: "S15",
    hazard: "alcohol in the liquid",
    trigger: "the upper forecast of a bag shows alcohol",
    source: "UN GHS H225 applies to neat ethanol (suppliers' sheets, from memory); amounts are this \
             plan's own 97.5th percentiles",
    local: true,
    look: alcohol,
};

fn alcohol(choices: &Choices<'_>) -> Option<Said> {
    let (entry, last) = choices.highest(|entry| entry.upper.ethanol_percent_last)?;
    let left = choices
        .overnight
        .iter()
        .filter(|left| left.ethanol_percent.is_finite())
        .max_by(|a, b| a.ethanol_percent.total_cmp(&b.ethanol_percent));
    let most = left.map_or(last, |left| left.ethanol_percent.max(last));
    if most < WORTH_SAYING {
        return None;
    }
    let later = left.map_or(String::new(), |left| {
        format!(
            ", and up to {} % of “{}” a day later",
            tenths_up(left.ethanol_percent.max(last)),
            left.treatment
        )
    });
    let message = format!(
        "Yeast makes alcohol: up to {} % of “{}” at the last reading{later}.",
        tenths_up(last),
        entry.treatment
    );
    let fix = "No flame nearby. Pour all of it away the same day. Nobody tastes it, collects it or \
               distills it, and nobody calls it a drink.";
    Some(Said::new(message, fix).at(choices.place(&entry.treatment)))
}
