//! How a class's answers were worked out, in a teacher's words.

use super::Voice;
use super::number::percent;
use crate::plan::Round;
use barm_science::statistics::compare::{LEVEL, USED};

impl Voice {
    /// Which intervals the answers of a round have.
    pub fn intervals_of(self, round: Round) -> String {
        let level = round.level().unwrap_or(LEVEL);
        format!(
            "{}; the intervals of one question hold together (Dunnett 1955, J. Am. Stat. Assoc. 50, \
             1096; multivariate t for unequal bags).",
            percent(1.0 - level)
        )
    }

    /// What the verdicts of a round ask for, where a difference of less than so much cannot be read (mm).
    pub fn verdicts_of(self, round: Round, readable_mm: f64) -> String {
        let Some(level) = round.level() else {
            return "None by this round alone: both rounds are judged together.".to_owned();
        };
        format!(
            "Clear: the interval leaves 0 out, and so would one at {}; each side has two bags or \
             more from more than one group, and the difference is {readable_mm} mm or more. \
             Leaning: one of these fails, or only the 80 % interval of that comparison alone leaves \
             0 out.",
            percent(1.0 - USED * level)
        )
    }
}

#[cfg(test)]
mod tests {
    use super::{Round, Voice};

    /// A first look of two takes 2 % of the 5 (docs/science/years.md), and "clear" four fifths of that.
    #[test]
    fn the_first_of_two_rounds_is_judged_more_strictly() {
        let voice = Voice::english(8);
        let says = |round| (voice.intervals_of(round), voice.verdicts_of(round, 3.0));
        let (interval, verdict) = says(Round::Only);
        assert!(interval.starts_with("95 %;") && verdict.contains("one at 96 %;"), "{verdict}");
        let (interval, verdict) = says(Round::First);
        assert!(
            interval.starts_with("98 %;") && verdict.contains("one at 98.4 %;"),
            "{verdict}"
        );
        assert!(says(Round::Second).1.starts_with("None by this round alone"));
    }
}
