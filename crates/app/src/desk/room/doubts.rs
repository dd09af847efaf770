//! Which bag looks wrong, told by its own readings, its size and the ruler alone.

use super::Scene;
use super::benches::{BenchBag, millimeters};
use barm_domain::plan::Period;
use barm_domain::result::full_height_mm;
use barm_domain::slip::{Own, Slip, SlipKind, WrittenIn, seen_by_group};

/// Slips of a bag that rest on nothing but itself.
pub(crate) fn own_slips(scene: &Scene<'_>, period: &Period, bench: &BenchBag) -> Vec<Slip> {
    own(scene, period, bench).map(seen_by_group).unwrap_or_default()
}

/// What such slips rest on; nothing for a bag that is set aside, lost, or has no readings.
pub(super) fn own<'a>(scene: &Scene<'a>, period: &Period, bench: &BenchBag) -> Option<Own<'a>> {
    let standing = scene.ledger.standing();
    let bag = standing.bags.get(&bench.code)?;
    if bag.set_aside.is_some() || bag.lost.is_some() {
        return None;
    }
    let code = bench.code.to_string();
    let planned = scene.plan.bags.iter().find(|bag| bag.code == code)?;
    let day = standing.periods.get(&period.name);
    Some(Own {
        code: bench.code,
        bag,
        full_height_mm: full_height_mm(scene.plan, planned),
        stopped: day.map_or(&[], |day| day.stopped.as_slice()),
    })
}

/// A word and a sentence; nothing for a slip that mends itself or is not the bag's own.
pub(super) fn own_words(kind: &SlipKind) -> Option<(&'static str, String)> {
    let mm = |mm: f64| millimeters(mm);
    Some(match kind {
        SlipKind::Unit { wrote_mm, written_in } => {
            let unit = match written_in {
                WrittenIn::Centimeters => "centimeters",
                WrittenIn::PointLost => "millimeters with the point lost",
                WrittenIn::Inches => "inches",
                WrittenIn::Eighths => "eighths of an inch",
            };
            let wrote = mm(*wrote_mm);
            ("Unit?", format!("It says {wrote} mm. That fits if it was read in {unit}."))
        }
        SlipKind::TooHigh { wrote_mm, full_mm } => {
            let (wrote, full) = (mm(*wrote_mm), mm(full_mm.round()));
            (
                "Misread?",
                format!("It says {wrote} mm. A bag of this size is full at {full} mm."),
            )
        }
        SlipKind::Jumped { by_mm, from, to } => {
            let by = mm(*by_mm);
            let says = format!(
                "The card rose {by} mm from minute {from:.0} to {to:.0}. Look at the ruler."
            );
            ("Misread?", says)
        }
        SlipKind::Fell { by_mm, .. } => {
            let by = mm(*by_mm);
            ("Leak?", format!("The card fell by {by} mm. Look for foam at the zip."))
        }
        SlipKind::Rivals { planned } => {
            let which = planned.map_or_else(
                || "the zero reading".to_owned(),
                |minute| format!("minute {minute}"),
            );
            let says =
                format!("Two heights stand for {which}. Choose one; both stay on record.");
            ("Two heights", says)
        }
        _ => return None,
    })
}
