//! What a crossed question says beyond its comparisons.

use super::number::{sentence_start, tenths};
use super::{Voice, mid_sentence};
use crate::result::Crossed;

/// Chance below which an interaction is spoken of (1), as everywhere 1 in 20.
const INTERACTION: f64 = 0.05;

impl Voice {
    /// What each level of the question's own variable did on average over the other one, one
    /// sentence a level that can be told.
    pub fn on_average(self, crossed: &Crossed) -> Vec<String> {
        let name = |level: usize| crossed.second_levels.get(level).map_or("", String::as_str);
        let effects = crossed.with.second.iter().filter_map(|effect| {
            let told = effect.outcome.as_ref().ok()?;
            let (low, high) = (told.low, told.high);
            let (size, way) = (tenths(told.difference.abs()), way(told.difference));
            let (least, most) = if told.difference < 0.0 { (-high, -low) } else { (low, high) };
            let between = if self.speaks_of_intervals() {
                format!(" (between {} and {})", tenths(least), tenths(most))
            } else {
                String::new()
            };
            let beyond_chance = low > 0.0 || high < 0.0;
            let (level, reference) = (name(effect.level), mid_sentence(name(effect.reference)));
            Some(match (crossed.paired, beyond_chance) {
                (true, true) => {
                    format!("On average, the change made {size} mm {way} rise{between}.")
                }
                (true, false) => {
                    "On average, these bags cannot tell whether the change did anything."
                        .to_owned()
                }
                (false, true) => {
                    let level = sentence_start(level);
                    format!(
                        "{level} rose {size} mm {way} than {reference} on average{between}."
                    )
                }
                (false, false) => format!(
                    "On average, these bags cannot tell whether {} and {reference} differ.",
                    mid_sentence(level)
                ),
            })
        });
        effects.collect()
    }

    /// Whether a crossed change did the same everywhere, in one sentence; nothing if the bags
    /// cannot tell.
    pub fn interaction(self, crossed: &Crossed) -> Option<String> {
        let term = crossed.with.interaction.as_ref().ok()?;
        Some(if term.p < INTERACTION {
            "The change did more for some than for others, beyond what chance would do."
                .to_owned()
        } else {
            "Nothing shows that the change did more for some than for others.".to_owned()
        })
    }
}

fn way(difference: f64) -> &'static str {
    if difference < 0.0 { "less" } else { "more" }
}
