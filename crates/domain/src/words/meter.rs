//! What a breath meter says of bags, one against another: never of a person.

use super::number::{bags, sentence_start, short};
use super::{Voice, mid_sentence};
use crate::outlook::Beyond;
use crate::result::meter::{MeterCompared, MeteredBag};
use barm_science::meter::Outcome;

impl Voice {
    /// What the meter says of a treatment beside its reference, in one sentence.
    pub fn metered(self, compared: &MeterCompared) -> String {
        let (own, other) =
            (mid_sentence(&compared.treatment), mid_sentence(&compared.reference));
        let subject = sentence_start(&compared.treatment);
        match &compared.outcome {
            Outcome::Ratio(found) if found.open() => format!(
                "The meter cannot tell which of {own} and {other} held more ethanol ({} to {} times).",
                times(found.ratio.low),
                times(found.ratio.high)
            ),
            Outcome::Ratio(found) if found.ratio.ratio < 1.0 => more(
                &sentence_start(&compared.reference),
                &own,
                [1.0 / found.ratio.ratio, 1.0 / found.ratio.high, 1.0 / found.ratio.low],
            ),
            Outcome::Ratio(found) => {
                more(&subject, &other, [found.ratio.ratio, found.ratio.low, found.ratio.high])
            }
            Outcome::OnlyTheFirst => format!("Ethanol shows in {own} and not in {other}."),
            Outcome::OnlyTheOthers => format!("Ethanol shows in {other} and not in {own}."),
            Outcome::Partly => format!(
                "Ethanol shows in some bags of {own} and {other} and not in all, so no ratio can be told."
            ),
            Outcome::None => format!("No ethanol shows in {own} or in {other}."),
            Outcome::AtLeast(ratio) => format!(
                "The display stood at its end: {own} held at least {} times as much ethanol as {other}.",
                times(*ratio)
            ),
            Outcome::AtMost(ratio) => format!(
                "The display stood at its end for {other}: {own} held at most {} times as much ethanol.",
                times(*ratio)
            ),
            Outcome::BothAtTheEnd => format!(
                "The display stood at its end for {own} and for {other}, so they cannot be compared. \
                 Thin the gas with clean air, or sample earlier."
            ),
        }
    }

    /// That the order which the display gave must not be told, where the corrections turn it round or may
    /// do so.
    pub fn metered_warning(self, compared: &MeterCompared) -> Option<String> {
        let Outcome::Ratio(found) = &compared.outcome else { return None };
        let (own, other) =
            (mid_sentence(&compared.treatment), mid_sentence(&compared.reference));
        let (ahead, behind) = match found.shown {
            shown if (shown - 1.0).abs() < 1e-9 => return None,
            shown if shown > 1.0 => (own, other),
            _ => (other, own),
        };
        if found.turned() {
            let is = if found.open() { "may be" } else { "is" };
            return Some(format!(
                "The display put {ahead} ahead; corrected for how warm each bag was, {behind} {is}. Do \
                 not tell the display’s order."
            ));
        }
        found.open().then(|| {
            format!(
                "The display put {ahead} ahead, which warmth, the meter’s zero or chance may have done. \
                 Do not tell the display’s order."
            )
        })
    }

    /// How many bags it rests on.
    pub fn metered_bags(self, compared: &MeterCompared) -> String {
        format!("{} against {}.", bags(compared.n), compared.n_reference)
    }

    /// What is to be known of one bag's reading, in a few words; nothing for a plain one.
    pub fn metered_bag(self, bag: &MeteredBag) -> Option<String> {
        if let Some(rule) = &bag.set_aside {
            return Some(format!("set aside by the rule “{rule}”, not compared"));
        }
        if bag.at_least {
            return Some("the display stood at its end: there is at least so much".to_owned());
        }
        if let Some(mark) = bag.beyond.first() {
            let says = self.beyond(&Beyond::from(mark));
            return Some(says.trim_end_matches('.').to_owned());
        }
        (bag.ethanol_g_per_l.value <= 0.0).then(|| "no ethanol shows".to_owned())
    }
}

fn more(ahead: &str, behind: &str, [ratio, low, high]: [f64; 3]) -> String {
    format!(
        "{ahead} held about {} times as much ethanol as {behind} (between {} and {}).",
        times(ratio),
        times(low),
        times(high)
    )
}

/// A ratio with as many digits as a meter gives.
fn times(ratio: f64) -> String {
    if ratio < 0.95 { format!("{ratio:.2}") } else { short(ratio) }
}
