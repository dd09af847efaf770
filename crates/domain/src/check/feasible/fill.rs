//! Bags that hold until they are read, and that are opened in time.

use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::outlook::Entry;
use crate::plan::Plan;
use barm_science::forecast::VENT_FILL;

const RULE: &str = "own rule: 97.5th percentile of liquid and gas below 0.8 of the bag's own \
     capacity";

pub(super) fn findings(plan: &Plan, outlook: &[Entry]) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    for (e, entry) in outlook.iter().enumerate() {
        // A treatment that serves two questions has an entry in each.
        if outlook[..e].iter().all(|earlier| earlier.treatment != entry.treatment) {
            found.extend(overfull(plan, entry));
        }
    }
    found.extend(vent(outlook));
    found
}

/// The minute by which a bag may be too full, if that is no later than its last reading: by its fill then and the minute
/// by which it has to be opened, as in [`Entry`].
pub(crate) fn too_full_by(last: u32, peak_fill: f64, vent_by_min: Option<f64>) -> Option<f64> {
    let last = f64::from(last);
    let early = vent_by_min.filter(|minute| *minute <= last);
    early.or((peak_fill >= VENT_FILL).then_some(last)).map(f64::floor)
}

fn overfull(plan: &Plan, entry: &Entry) -> Option<Finding> {
    let last = entry.last_minute();
    let minute = too_full_by(last, entry.peak_fill, entry.vent_by_min);
    let treatment = plan.treatment(&entry.treatment)?;
    minute.map(|minute| {
        let message = format!(
            "A bag of “{}” may be too full by minute {minute:.0}, and the last reading is at minute {last}.",
            entry.treatment
        );
        let fix = "Take a bigger bag or less food, or stop to read before that.";
        Finding::new(Severity::Fault, "overfull", message, fix)
            .at(place::key(plan, treatment, "bag"))
            .says(RULE)
    })
}

/// The first bag that must be opened after the last reading.
fn vent(outlook: &[Entry]) -> Option<Finding> {
    let late = |entry: &Entry| {
        entry.vent_by_min.filter(|minute| *minute > f64::from(entry.last_minute()))
    };
    let (minute, entry) = outlook
        .iter()
        .filter_map(|entry| Some((late(entry)?, entry)))
        .min_by(|(a, _), (b, _)| a.total_cmp(b))?;
    let message = format!(
        "Left shut, a bag of “{}” may be too full by minute {:.0}.",
        entry.treatment,
        minute.floor()
    );
    let fix = "Open every bag right after the last reading.";
    Some(Finding::new(Severity::Note, "vent", message, fix).says(RULE))
}
