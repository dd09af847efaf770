//! What a day's readings teach, in a teacher's words.

use super::Voice;
use super::number::bags;
use crate::result::taught::{DayTaught, Looks, UnlikeBag};

/// More scatter than this is spoken of (1): a ratio of Birge that chance alone seldom makes with the
/// readings of a class.
const NOISY: f64 = 1.2;

impl Voice {
    /// What it rests on, in one sentence.
    pub fn day_rests_on(self, taught: &DayTaught) -> String {
        format!(
            "From {} with {} readings. Numbers are shown with the range that holds 8 of 10.",
            bags(taught.bags),
            taught.readings
        )
    }

    /// What the readings could not tell, in one sentence; nothing if they told all.
    pub fn day_could_not_tell(self, taught: &DayTaught) -> Option<String> {
        (!taught.unmoved.is_empty())
            .then(|| format!("The readings could not tell: {}.", taught.unmoved.join("; ")))
    }

    /// That the readings scatter more than they should; nothing if they do not.
    pub fn day_scatters(self, taught: &DayTaught) -> Option<String> {
        (taught.noise > NOISY).then(|| {
            format!(
                "The readings scatter {:.1} times as widely as rulers and spoons explain, and the ranges \
                 are that much wider.",
                taught.noise
            )
        })
    }

    /// What to look at on a bag that does not go with the others: a question, never a verdict.
    pub fn day_asks(self, bag: &UnlikeBag) -> String {
        match bag.looks {
            Looks::FallsBehind => {
                "It rose less and less beside what its kind did: was its zip shut all along?"
            }
            Looks::Low => {
                "It rose less than its kind from the beginning: did all of it go in, and is it what its \
                 label says?"
            }
            Looks::High => "It rose more than its kind: is it what its label says?",
        }
        .to_owned()
    }
}
