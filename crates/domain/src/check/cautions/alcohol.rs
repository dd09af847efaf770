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
    let (later, all) = choices.highest(|entry| entry.upper.ethanol_percent_all)?;
    if last.max(all) < WORTH_SAYING {
        return None;
    }
    let whose = if later.treatment == entry.treatment {
        String::new()
    } else {
        format!(" in “{}”", later.treatment)
    };
    let message = format!(
        "Yeast makes alcohol: up to {} % of “{}” at the last reading, and up to {} %{whose} if the \
         bag is kept.",
        tenths_up(last),
        entry.treatment,
        tenths_up(all)
    );
    let fix = "No flame nearby. Pour all of it away the same day. Nobody tastes it, collects it or \
               distills it, and nobody calls it a drink.";
    let said = Said::new(message, fix);
    Some(match choices.place(&entry.treatment) {
        Some(at) => said.at(at),
        None => said,
    })
}
