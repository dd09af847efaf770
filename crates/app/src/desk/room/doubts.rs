//! Which bag looks wrong, told by its own readings, its size and the ruler alone.

use super::Scene;
use super::benches::{BenchBag, millimeters};
use crate::desk::{Wording, say};
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

/// What it may be, in a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Doubt {
    /// Another unit was read.
    Unit,
    /// It was misread.
    Misread,
    /// It leaks.
    Leak,
    /// Two heights stand for one reading.
    TwoHeights,
    /// Heights are those of another bag.
    Copied,
    /// Far from its forecast; for the teacher only.
    FarOff,
}

impl Doubt {
    /// What a slip of the bag's own readings may be; nothing for any other.
    pub(crate) const fn of(kind: &SlipKind) -> Option<Self> {
        match kind {
            SlipKind::Unit { .. } => Some(Self::Unit),
            SlipKind::TooHigh { .. } | SlipKind::HighZero { .. } | SlipKind::Jumped { .. } => {
                Some(Self::Misread)
            }
            SlipKind::Fell { .. } => Some(Self::Leak),
            SlipKind::Rivals { .. } => Some(Self::TwoHeights),
            _ => None,
        }
    }

    /// The word that stands beside its sign.
    pub(crate) fn word(self, w: Wording) -> String {
        match self {
            Self::Unit => say!(w, "doubt-unit"),
            Self::Misread => say!(w, "doubt-misread"),
            Self::Leak => say!(w, "doubt-leak"),
            Self::TwoHeights => say!(w, "doubt-two"),
            Self::Copied => say!(w, "doubt-copied"),
            Self::FarOff => say!(w, "doubt-far-off"),
        }
    }

    /// The same in every language, so that a row of a page is found again.
    pub(crate) const fn key(self) -> &'static str {
        match self {
            Self::Unit => "unit",
            Self::Misread => "misread",
            Self::Leak => "leak",
            Self::TwoHeights => "two",
            Self::Copied => "copied",
            Self::FarOff => "far-off",
        }
    }
}

/// What is said of a slip that the bag's own readings show.
pub(super) fn own_words(w: Wording, kind: &SlipKind) -> Option<(Doubt, String)> {
    let mm = |mm: f64| millimeters(mm);
    let says = match kind {
        SlipKind::Unit { wrote_mm, written_in } => {
            let unit = match written_in {
                WrittenIn::Centimeters => say!(w, "doubt-centimeters"),
                WrittenIn::PointLost => say!(w, "doubt-point-lost"),
                WrittenIn::Inches => say!(w, "doubt-inches"),
                WrittenIn::Eighths => say!(w, "doubt-eighths"),
            };
            say!(w, "doubt-unit-says", mm = mm(*wrote_mm), unit = unit)
        }
        SlipKind::TooHigh { wrote_mm, full_mm } => {
            say!(w, "doubt-too-high", mm = mm(*wrote_mm), full = mm(full_mm.round()))
        }
        SlipKind::HighZero { wrote_mm, full_mm } => {
            say!(w, "doubt-high-zero", mm = mm(*wrote_mm), full = mm(full_mm.round()))
        }
        SlipKind::Jumped { by_mm, from, to } => {
            let (from, to) = (format!("{from:.0}"), format!("{to:.0}"));
            say!(w, "doubt-jumped", mm = mm(*by_mm), from = from, to = to)
        }
        SlipKind::Fell { by_mm, .. } => say!(w, "doubt-fell", mm = mm(*by_mm)),
        SlipKind::Rivals { planned: None } => say!(w, "doubt-rivals-zero"),
        SlipKind::Rivals { planned: Some(minute) } => {
            say!(w, "doubt-rivals", minute = minute.to_string())
        }
        _ => return None,
    };
    Some((Doubt::of(kind)?, says))
}
