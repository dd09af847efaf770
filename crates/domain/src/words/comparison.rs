//! What a comparison says.

use super::number::{bags, sentence_start, short, tenths};
use super::{Voice, mid_sentence};
use crate::result::{Compared, Judged};
use barm_science::statistics::compare::Estimate;
use barm_science::statistics::verdict::{Code, Direction};

impl Voice {
    /// The verdict in a word or two.
    pub const fn verdict(self, code: Code) -> &'static str {
        match code {
            Code::Clear => "clear",
            Code::Leaning => "leaning",
            Code::Unclear => "can’t tell",
            Code::NoRise => "no readable rise",
            Code::NotComparable => "not comparable",
        }
    }

    /// What a comparison says, in one sentence, with all its bags.
    pub fn comparison(self, compared: &Compared) -> String {
        self.judged(compared, &compared.with)
    }

    /// What it says without the bags that are set aside, if that is something else.
    pub fn without_set_aside(self, compared: &Compared) -> Option<String> {
        let changed = compared.hangs_on_set_aside();
        changed.then(|| {
            format!(
                "Without the bags set aside: {}",
                mid_sentence(&self.judged(compared, &compared.without))
            )
        })
    }

    /// That several treatments did not rise enough to read, in one sentence, and the bags it rests
    /// on, in another; nothing for no treatment.
    pub fn none_rose(self, flat: &[&Compared], readable_mm: f64) -> Option<(String, String)> {
        let names: Vec<String> = flat.iter().map(|c| mid_sentence(&c.treatment)).collect();
        let (last, before) = names.split_last()?;
        let listed = match before {
            [] => last.clone(),
            _ => format!("{} and {last}", before.join(", ")),
        };
        let said = format!("{} did not rise enough to read.", sentence_start(&listed));
        let fewest = flat.iter().map(|c| c.with.n).min()?;
        let rests = format!(
            "No bag of them, nor of what they stand beside, rose by {} mm. Each rests on {} or more.",
            short(readable_mm),
            bags(fewest)
        );
        Some((said, rests))
    }

    /// How large the difference is without the bags that are set aside, if there are such bags and
    /// the verdict is the same.
    pub fn size_without(self, compared: &Compared) -> Option<String> {
        let (with, without) = (&compared.with, &compared.without);
        let aside = (with.n + with.n_reference).checked_sub(without.n + without.n_reference)?;
        let difference = without.difference.as_ref()?;
        (aside > 0 && !compared.hangs_on_set_aside()).then(|| {
            let size = tenths(difference.difference.abs());
            let (one, them) = if aside == 1 { ("is", "it") } else { ("are", "them") };
            format!(
                "{} of these {one} set aside by a rule; without {them} it is {size} mm.",
                bags(aside)
            )
        })
    }

    /// Why, in one sentence.
    pub fn why(self, compared: &Compared) -> String {
        self.reason(&compared.with, compared)
    }

    /// Why the verdict without the bags that are set aside is what it is, in one sentence.
    pub fn why_without(self, compared: &Compared) -> String {
        self.reason(&compared.without, compared)
    }

    /// How many bags a comparison rests on, and how many could not be used.
    pub fn bags_behind(self, compared: &Compared) -> String {
        let reference = mid_sentence(&compared.reference);
        let mut said = format!(
            "This rests on {} of {} and {} of {reference}.",
            bags(compared.with.n),
            mid_sentence(&compared.treatment),
            bags(compared.with.n_reference),
        );
        let left_out = compared.left_out + compared.left_out_reference;
        if left_out > 0 {
            let more = if left_out == 1 { "bag gives" } else { "bags give" };
            said.push_str(&format!(" {left_out} more {more} no rise to compare."));
        }
        said
    }

    fn judged(self, compared: &Compared, judged: &Judged) -> String {
        let treatment = sentence_start(&compared.treatment);
        let reference = mid_sentence(&compared.reference);
        let verdict = &judged.verdict;
        match (verdict.code, &judged.difference) {
            (Code::Clear, Some(difference)) => {
                let size = self.size(difference);
                let way = way(verdict.direction);
                let between = self.between(difference, verdict.direction);
                format!("{treatment} rose {size} {way} than {reference}{between}.")
            }
            (Code::Leaning, Some(difference)) => {
                let size = self.size(difference);
                let way = way(verdict.direction);
                format!("{treatment} seems to rise {size} {way} than {reference}.")
            }
            (Code::NoRise, _) => {
                let treatment = mid_sentence(&compared.treatment);
                format!("Neither {treatment} nor {reference} rose enough to read.")
            }
            (Code::Unclear, _) => {
                let treatment = mid_sentence(&compared.treatment);
                format!("These bags cannot tell whether {treatment} and {reference} differ.")
            }
            _ => format!("{treatment} and {reference} cannot be compared."),
        }
    }

    fn size(self, difference: &Estimate) -> String {
        let size = difference.difference.abs();
        if self.speaks_of_intervals() {
            format!("{} mm", tenths(size))
        } else {
            format!("about {} mm", short(size.round()))
        }
    }

    fn between(self, difference: &Estimate, direction: Option<Direction>) -> String {
        if !self.speaks_of_intervals() {
            return String::new();
        }
        let (low, high) = match direction {
            Some(Direction::Less) => (-difference.high, -difference.low),
            _ => (difference.low, difference.high),
        };
        format!(" (between {} and {})", tenths(low), tenths(high))
    }
}

fn way(direction: Option<Direction>) -> &'static str {
    match direction {
        Some(Direction::Less) => "less",
        _ => "more",
    }
}
