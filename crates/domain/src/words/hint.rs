//! What is worth a second look, in words.

use super::Voice;
use super::number::{short, tenths};
use crate::result::Hint;

impl Voice {
    /// One hint as a sentence that follows the bag's code.
    pub fn hint(self, hint: &Hint) -> String {
        match hint {
            Hint::NotRead => "It was never read.".to_owned(),
            Hint::NoZero => "It has no zero reading, so no rise can be told.".to_owned(),
            Hint::OnlyZero => "It was read at minute 0 only.".to_owned(),
            Hint::StoppedEarly { last } => format!(
                "It was last read at {}, before the minute at which bags are compared.",
                self.minute(*last)
            ),
            Hint::Fell { by_mm, from, to } => format!(
                "It fell by {} mm between minutes {} and {}: did it leak?",
                tenths(*by_mm),
                short(*from),
                short(*to)
            ),
            Hint::AfterTheBell { minute, bell } => format!(
                "It was read at {}, after the bell at {}: is the time right?",
                self.minute(*minute),
                self.minute(*bell)
            ),
            Hint::Between { before, after } => format!(
                "Its height was worked out from the readings at minutes {} and {}.",
                short(*before),
                short(*after)
            ),
        }
    }
}
