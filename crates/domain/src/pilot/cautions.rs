//! What could hurt somebody in a pilot.

use super::plan::as_plan;
use super::protocol::Protocol;
use crate::check::{self, LOCAL_RULES, without_local_rules};
use crate::finding::{Finding, Severity};
use crate::outlook::{self, Look};
use crate::plan::Plan;

/// Days that are drawn for the cautions.
const DRAWS: usize = 64;

/// Cautions of the pilot itself: those that any plan with these bags brings up, then its own.
pub fn cautions(plan: &Plan, protocol: &Protocol) -> Vec<Finding> {
    let pilot = as_plan(plan, protocol);
    let look = Look { draws: DRAWS, ..Look::default() };
    let treated: Vec<_> = pilot
        .treatments()
        .filter_map(|(_, treatment)| outlook::forecast(&pilot, treatment, look).ok())
        .collect();
    let entries = outlook::gather(&pilot, &treated);
    let found = check::check(&pilot, &entries);
    let mut all: Vec<Finding> = found
        .into_iter()
        .filter(|one| one.severity == Severity::Caution)
        .map(|one| Finding { at: None, ..one })
        .collect();
    add_own(protocol, &mut all);
    all.sort_by_key(|one| one.code);
    all
}

/// What a pilot adds to what its bags bring up.
fn add_own(protocol: &Protocol, all: &mut Vec<Finding>) {
    let mut caution = |code, message: &str, fix: &str, source| {
        let known = all.iter_mut().find(|one| one.code == code);
        let before = known.as_ref().map_or("", |one| without_local_rules(&one.fix));
        let fix = format!("{before} {fix} {LOCAL_RULES}").trim_start().to_owned();
        match known {
            Some(known) => known.fix = fix,
            None => {
                all.push(Finding::new(Severity::Caution, code, message, fix).says(source));
            }
        }
    };
    let practice = "common practice, no source";
    caution(
        "S03",
        "Warm water is mixed from hot water, and hot water burns skin.",
        "Mix it in a jug down to the warmth that is printed, and read the thermometer before you pour.",
        practice,
    );
    if protocol.syringe.is_some() {
        caution(
            "S29",
            "A syringe with a needle can hurt someone, and so can one that goes missing.",
            "Take a blunt one that never had a needle. No mouth touches it or the tube: nobody blows air \
             into a bag. Count it out and back in.",
            practice,
        );
        caution(
            "S07",
            "A bag that is pumped full can burst.",
            "Stop at the last volume that is printed, which is four fifths of the bag. Keep your face away.",
            practice,
        );
    }
    if protocol.meter.is_some() {
        caution(
            "S33",
            "The ethanol for the meter burns, and it is alcohol.",
            "The adult buys, mixes, keeps and pours it away; no student is in the room. Take ethanol fit to \
             drink, never denatured or rubbing alcohol. No flame or spark nearby; close the bottle at once.",
            "UN GHS H225 applies to neat ethanol (suppliers' sheets, from memory)",
        );
    }
}
