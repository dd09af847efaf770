//! Splashes to the eyes (S05, S06).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use crate::finding::Field;

pub(super) const GOGGLES: CautionRule = CautionRule {
    code: "S05",
    hazard: "splash to the eyes",
    trigger: "any bag is made",
    source: "US science teachers' association (NSTA), Eye Protection and Safer Practices FAQ; \
             American Chemical Society, Guidelines for Chemical Laboratory Safety in Secondary \
             Schools (2016); ANSI/ISEA Z87.1",
    local: true,
    look: goggles,
};

fn goggles(choices: &Choices<'_>) -> Option<Said> {
    let fullest = choices.plan.periods.iter().map(|period| period.students).max();
    choices.any_bag().then(|| {
        let people = fullest.map_or(String::new(), |students| {
            format!(" That is {} pairs: {students} students and the teacher.", students + 1)
        });
        let fix = format!(
            "Everyone wears splash goggles marked Z87.1 and D3, with covered vents, until all bags \
             are cleared away.{people} Clean them between classes."
        );
        Said::new("What is in a bag can splash into your eyes.", fix)
            .at(Field("equipment.goggles".into()))
    })
}

pub(super) const EYEWASH: CautionRule = CautionRule {
    code: "S06",
    hazard: "no eyewash within reach",
    trigger: "any bag is made; the answer in the plan names the nearest eyewash",
    source: "ANSI/ISEA Z358.1: 10 s away (from memory), 15 min at 0.4 gal/min, 60 to 100 °F, weekly \
             test",
    local: true,
    look: eyewash,
};

fn eyewash(choices: &Choices<'_>) -> Option<Said> {
    choices.any_bag().then(|| {
        Said::new(
            "If something splashes into an eye, it has to be rinsed at once.",
            "Write the place of the nearest eyewash into the plan as the answer to S06. It should \
             be at most 10 seconds away, with a clear path and a test every week. It must run for \
             15 minutes at 0.4 gal (1.5 L) a minute, at 16 to 38 °C (60 to 100 °F).",
        )
    })
}
