//! What only the teacher sees: what the forecast and other groups' bags say.

use super::copied::copied;
use super::{Mend, Own, Slip, SlipKind, seen_by_group};
use crate::code::BagCode;
use crate::nearest::plain;
use crate::plan::SetAsideRule;
use crate::record::{Bag, Odd};
use crate::result::FALL_MM;

/// Where the rise of a bag is expected at one minute after its zero reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    /// The minute.
    pub minute: f64,
    /// Low end of the band (mm), 10th percentile.
    pub low_mm: f64,
    /// Median (mm).
    pub median_mm: f64,
    /// High end of the band (mm), 90th percentile.
    pub high_mm: f64,
}

impl Expected {
    /// What is expected at a minute, between the two that stand nearest; nothing outside of them.
    pub(super) fn at(band: &[Self], minute: f64) -> Option<Self> {
        let after = band.iter().position(|expected| expected.minute >= minute)?;
        let (before, after) = (&band[after.saturating_sub(1)], &band[after]);
        if minute < before.minute {
            return None;
        }
        let span = after.minute - before.minute;
        let share = if span > 0.0 { (minute - before.minute) / span } else { 0.0 };
        let between = |a: f64, b: f64| a + share * (b - a);
        Some(Self {
            minute,
            low_mm: between(before.low_mm, after.low_mm),
            median_mm: between(before.median_mm, after.median_mm),
            high_mm: between(before.high_mm, after.high_mm),
        })
    }
}

/// Everything that is worth a second look in a bag: what its group sees, and what only the band of
/// its treatment, by minute, and bags of other groups can tell. Offers the plan's rules where one
/// is about what happened.
#[must_use]
pub fn seen_by_teacher(
    own: Own<'_>,
    rules: &[SetAsideRule],
    band: &[Expected],
    sisters: &[(BagCode, &Bag)],
) -> Vec<Slip> {
    let mut slips = seen_by_group(own);
    for slip in &mut slips {
        if slip.mends.contains(&Mend::Tap(Odd::Leak)) {
            offer(rules, &[Odd::Leak, Odd::Spill], &mut slip.mends);
        }
    }
    let asked = |slip: &Slip| !matches!(slip.kind, SlipKind::Late { .. });
    if !slips.iter().any(asked) {
        slips.extend(far_from_band(&own, band));
    }
    if let Some((with, readings)) = copied(own.code, own.bag, sisters) {
        slips.push(Slip {
            bag: own.code,
            kind: SlipKind::Copied { with, readings },
            reading: None,
            mends: vec![Mend::AskAgain, Mend::Leave],
        });
    }
    slips
}

/// Puts the rules that are named after one of these happenings before "leave it".
fn offer(rules: &[SetAsideRule], about: &[Odd], mends: &mut Vec<Mend>) {
    let leave = mends.iter().position(|mend| *mend == Mend::Leave).unwrap_or(mends.len());
    let named = rules.iter().filter(|rule| {
        let id = plain(&rule.id);
        about.iter().any(|odd| id.contains(&plain(odd.word())))
    });
    let offered: Vec<Mend> = named.map(|rule| Mend::SetAside(rule.id.clone())).collect();
    mends.splice(leave..leave, offered);
}

/// The first reading that lies outside the band by more than the band is wide, and by more than
/// reading can explain. One bag in five lies outside of its band on any day, so only a far one is
/// worth the teacher's walk (own rule).
fn far_from_band(own: &Own<'_>, band: &[Expected]) -> Option<Slip> {
    let zero = own.bag.zero.as_ref().filter(|zero| !zero.rival)?;
    let mut readings = own.bag.readings.iter().filter(|reading| !reading.is_confirmed());
    readings.find_map(|reading| {
        let minute = own.bag.minute_at(reading.measured)?;
        let expected = Expected::at(band, minute)?;
        let rise_mm = reading.height_mm - zero.height_mm;
        let (low_mm, high_mm) = (expected.low_mm, expected.high_mm);
        let margin = (high_mm - low_mm).max(FALL_MM);
        let far = rise_mm > high_mm + margin || rise_mm < low_mm - margin;
        far.then(|| Slip {
            bag: own.code,
            kind: SlipKind::FarFromBand { minute, rise_mm, low_mm, high_mm },
            reading: Some(reading.key),
            mends: vec![Mend::AskAgain, Mend::Leave],
        })
    })
}
