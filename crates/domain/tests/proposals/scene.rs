//! An open lesson and what its groups write.

use barm_domain::plan::Plan;
use barm_domain::proposal::{Proposal, Written};
use barm_domain::ready::{Ready, plan};
use barm_domain::testing::answers;

/// Groups in each period.
pub(crate) const GROUPS: u32 = 4;

/// An open lesson of two periods with four groups each.
pub(crate) fn open_lesson() -> Plan {
    let cupboard = ["sugar_white", "honey", "wheat_flour_white", "potato_flakes", "salt"];
    let mut answers = answers(2, GROUPS, &cupboard);
    answers.school.title = "Ask your own".into();
    // The teacher puts out salt too, although no bag of the lesson holds any.
    plan(Ready::OwnQuestion, &answers).unwrap()
}

/// Honey and white sugar beside no food, two bags of each.
pub(crate) fn honey(period: &str, group: u32) -> Written {
    Written {
        period: period.into(),
        group,
        asks: "Does yeast like honey more than sugar?".into(),
        changes: "food".into(),
        levels: vec!["honey".into(), "white sugar".into()],
        keeps: String::new(),
        beside: "No food".into(),
        bags: 2,
    }
}

/// Sugar in water of three temperatures.
pub(crate) fn warmth(period: &str, group: u32) -> Written {
    Written {
        period: period.into(),
        group,
        asks: "Does warm water help?".into(),
        changes: "water temperature".into(),
        levels: vec!["20 °C".into(), "30 °C".into(), "40 °C".into()],
        keeps: "white sugar + 0.5 g".into(),
        beside: "20 °C".into(),
        bags: 2,
    }
}

pub(crate) fn read(plan: &Plan, written: &Written) -> Proposal {
    written.read(plan).unwrap_or_else(|found| panic!("{found:?}"))
}
