//! What is worth a second look, in words.

use super::Voice;
use super::number::{short, tenths};
use crate::plan::Plan;
use crate::result::{BagResult, ClassResult, Hint};

impl Voice {
    /// At which minute bags are compared.
    pub fn common_minute(self, result: &ClassResult) -> String {
        match result.minute {
            Some(minute) => format!("All bags are compared at {}.", self.minute(minute)),
            None => {
                "No minute was read on nearly all bags, so none can be compared.".to_owned()
            }
        }
    }

    /// By which rule a bag is set aside, if it is.
    pub fn set_aside(self, bag: &BagResult, plan: &Plan) -> Option<String> {
        let rule = bag.set_aside.as_deref()?;
        let says = plan.set_aside_rules.iter().find(|known| known.id == rule)?.says.trim();
        let code = &bag.bag.code;
        Some(format!("{code} is set aside by the rule \u{201c}{rule}\u{201d}: {says}"))
    }

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
            Hint::Jumped { by_mm, from, to } => format!(
                "It rose by {} mm between minutes {} and {}: was it read right?",
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
