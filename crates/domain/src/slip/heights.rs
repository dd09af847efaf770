//! Heights that are hard to believe after those before them.

use super::unit::meant;
use super::{Mend, Own, Slip, SlipKind, WrittenIn};
use crate::code::BagCode;
use crate::record::{Bag, Height, Key, Odd};
use crate::result::{FALL_MM, JUMP_SHARE};
use jiff::{SignedDuration, Timestamp};

/// A card that stands higher than this many times the full height of its bag (1) was not read in
/// millimeters, or not on that bag: the flat size of a bag is measured to a few percent, and a
/// crease may lift the card (own rule).
const TOO_HIGH: f64 = 1.2;

/// A zero reading under this height (mm) that is no whole number was hardly read on a ruler
/// marked in millimeters (own rule; a wet bag under a card is some millimeters high).
const LOW_ZERO_MM: f64 = 3.0;

/// A zero reading above this share of the full height (1) is high for a bag that was just sealed
/// with its air pressed out (own rule: 25 mm for a snack bag).
const HIGH_ZERO_SHARE: f64 = 0.5;

/// After so low a zero, a rise of more than this share of the full height (1) by the next reading
/// lets the zero be asked about (own rule: 8 mm for a snack bag, where 5 mm is a quick start).
const QUICK_SHARE: f64 = 0.15;

/// A number taken for another unit is in line if it rises by no more than this share of the full
/// height (1) since the last reading (own rule: 13 mm for a snack bag). With more, a leak would too
/// often look like eighths of an inch.
const IN_LINE_SHARE: f64 = 0.25;

/// A bag that was sealed with nothing but trapped air in it cannot get flatter than at its zero
/// reading. Lower by more than this (mm) is more than a ruler marked in millimeters leaves open
/// (common practice, no source).
const BELOW_ZERO_MM: f64 = 1.0;

/// What somebody taps this much later than a reading may still be about it.
const TAPPED_AFTER: SignedDuration = SignedDuration::from_mins(2);

/// One slip for each planned minute, and for the zero reading, with two heights that nobody has
/// chosen between.
pub(super) fn rivals(code: BagCode, bag: &Bag) -> Vec<Slip> {
    let mut slips: Vec<Slip> = Vec::new();
    let heights = bag.zero.iter().chain(&bag.other_zeros).chain(&bag.readings);
    for height in heights.filter(|height| height.rival) {
        let kind = SlipKind::Rivals { planned: height.planned };
        match slips.iter_mut().find(|slip| slip.kind == kind) {
            Some(slip) => slip.mends.push(Mend::Choose(height.key)),
            None => {
                let mends = vec![Mend::Choose(height.key)];
                slips.push(Slip {
                    bag: code,
                    kind,
                    reading: Some(height.key),
                    mends,
                    probability: None,
                });
            }
        }
    }
    for slip in &mut slips {
        slip.mends.push(Mend::AskAgain);
    }
    slips
}

/// Zero reading and readings in turn, each beside the last that can be believed.
pub(super) fn hard_to_believe(own: &Own<'_>) -> Vec<Slip> {
    let Some(zero) = own.bag.zero.as_ref() else { return Vec::new() };
    let heights = std::iter::once(zero).chain(&own.bag.readings);
    let mut walk =
        Walk { own, zero, start_mm: None, before: None, doubted: None, slips: Vec::new() };
    for height in heights.filter(|height| !height.rival) {
        walk.step(height);
    }
    walk.slips
}

/// The last height that can be believed.
#[derive(Clone, Copy)]
struct Believed {
    key: Key,
    at: Timestamp,
    mm: f64,
    confirmed: bool,
}

struct Walk<'a> {
    own: &'a Own<'a>,
    zero: &'a Height,
    /// What the zero reading is taken for (mm).
    start_mm: Option<f64>,
    before: Option<Believed>,
    /// One that came after it and is far from it: misread, or the bag really changed. The next
    /// height tells which.
    doubted: Option<Believed>,
    slips: Vec<Slip>,
}

impl Walk<'_> {
    fn step(&mut self, height: &Height) {
        let believed = if height.is_confirmed() {
            Some(height.height_mm)
        } else {
            match self.before {
                None => self.first(height),
                Some(before) => self.after(height, before),
            }
        };
        if let Some(mm) = believed {
            self.start_mm = self.start_mm.or(Some(mm));
            self.before = Some(taken(height, mm));
            self.doubted = None;
        }
    }

    /// The first height, with nothing but the size of the bag beside it; gives what it is taken
    /// for.
    fn first(&mut self, height: &Height) -> Option<f64> {
        let wrote = height.height_mm;
        let between_marks = (wrote - wrote.round()).abs() > 0.01;
        let low = wrote > 0.0 && wrote < LOW_ZERO_MM && between_marks;
        let full = self.own.full_height_mm;
        let is_zero = height.key == self.zero.key;
        let high = is_zero && !self.is_too_high(wrote) && wrote > HIGH_ZERO_SHARE * full;
        if !low && !high && !self.is_too_high(wrote) {
            return Some(wrote);
        }
        // A bag starts nearly empty.
        let in_line = |_, mm: f64| (LOW_ZERO_MM..=JUMP_SHARE * full).contains(&mm);
        let meant = meant(wrote, LOW_ZERO_MM, in_line);
        if high {
            let mends = meant.iter().map(|(_, mm)| Mend::Write(*mm)).chain(look_again(&[]));
            let kind = SlipKind::HighZero { wrote_mm: wrote, full_mm: full };
            self.say(height.key, kind, mends.collect());
            return None;
        }
        self.unit(height, &meant, &[]).or_else(|| {
            self.too_high(height);
            None
        })
    }

    /// A height after another; gives what it is taken for.
    fn after(&mut self, height: &Height, before: Believed) -> Option<f64> {
        let wrote = height.height_mm;
        let (rise, full) = (wrote - before.mm, self.own.full_height_mm);
        let Some(fell) = self.far(wrote, before) else {
            self.low_zero(height, before);
            return Some(wrote);
        };
        // In line with the one that was doubted: the bag has changed, and that was asked then.
        if self.doubted.is_some_and(|doubted| self.far(wrote, doubted).is_none()) {
            return Some(wrote);
        }
        if self.was_tapped(before.at, height.measured, fell) {
            return Some(wrote);
        }
        let start = self.start_mm.unwrap_or(f64::NEG_INFINITY);
        let in_line = |unit: WrittenIn, mm: f64| {
            let (rise_then, half) = (mm - before.mm, unit.half_mark_mm());
            let flat = mm + half < start - BELOW_ZERO_MM;
            // A few millimeters of a leak look like eighths too often.
            let eighths = unit == WrittenIn::Eighths && fell && -rise <= FALL_MM;
            (-FALL_MM - half..=IN_LINE_SHARE * full).contains(&rise_then)
                && !self.is_too_high(mm)
                && !flat
                && !eighths
        };
        let meant = meant(wrote, before.mm, in_line);
        let taps: &[Odd] = if fell { &[Odd::Leak, Odd::Bumped] } else { &[Odd::Foam] };
        if let Some(mm) = self.unit(height, &meant, if fell { taps } else { &[] }) {
            return Some(mm);
        }
        if self.is_too_high(wrote) {
            self.too_high(height);
            return None;
        }
        let (from, to) = (self.minute(before.at), self.minute(height.measured));
        let kind = if fell {
            SlipKind::Fell { by_mm: -rise, from, to }
        } else {
            SlipKind::Jumped { by_mm: rise, from, to }
        };
        self.say(height.key, kind, look_again(taps));
        self.doubted = Some(taken(height, wrote));
        None
    }

    /// Whether a height is farther from another than yeast and ruler allow: fallen, or risen.
    fn far(&self, mm: f64, from: Believed) -> Option<bool> {
        let rise = mm - from.mm;
        let below = self.start_mm.is_some_and(|start| start - mm > BELOW_ZERO_MM);
        // A bag with water in it holds the card up: it can only have been lower to begin with.
        let nothing = mm == 0.0;
        let fell = -rise > FALL_MM || ((below || nothing) && -rise > BELOW_ZERO_MM);
        let risen = rise > JUMP_SHARE * self.own.full_height_mm || self.is_too_high(mm);
        (fell || risen).then_some(fell)
    }

    /// A whole low zero that only the next reading makes doubtful, such as 1 for 1 cm.
    fn low_zero(&mut self, height: &Height, before: Believed) {
        let rise = height.height_mm - before.mm;
        let is_zero = before.key == self.zero.key && !before.confirmed;
        let quick = rise > QUICK_SHARE * self.own.full_height_mm;
        if !is_zero || before.mm >= LOW_ZERO_MM || !quick {
            return;
        }
        let in_line = |_, mm: f64| mm >= LOW_ZERO_MM && mm - height.height_mm <= FALL_MM;
        let zero = self.zero;
        self.unit(zero, &meant(zero.height_mm, height.height_mm, in_line), &[]);
    }

    /// Asks whether another unit was meant; gives the likeliest height.
    fn unit(
        &mut self,
        height: &Height,
        meant: &[(WrittenIn, f64)],
        taps: &[Odd],
    ) -> Option<f64> {
        let &(written_in, likely) = meant.first()?;
        let mut mends: Vec<Mend> = meant.iter().map(|(_, mm)| Mend::Write(*mm)).collect();
        mends.extend(look_again(taps));
        let kind = SlipKind::Unit { wrote_mm: height.height_mm, written_in };
        self.say(height.key, kind, mends);
        Some(likely)
    }

    fn too_high(&mut self, height: &Height) {
        let full_mm = self.own.full_height_mm;
        let kind = SlipKind::TooHigh { wrote_mm: height.height_mm, full_mm };
        self.say(height.key, kind, look_again(&[]));
    }

    fn say(&mut self, reading: Key, kind: SlipKind, mends: Vec<Mend>) {
        let (bag, reading) = (self.own.code, Some(reading));
        self.slips.push(Slip { bag, kind, reading, mends, probability: None });
    }

    fn is_too_high(&self, mm: f64) -> bool {
        mm > TOO_HIGH * self.own.full_height_mm
    }

    /// Whether somebody has tapped what explains it.
    fn was_tapped(&self, from: Timestamp, to: Timestamp, fell: bool) -> bool {
        let until = to.saturating_add(TAPPED_AFTER).unwrap_or(to);
        let mut near = self.own.bag.odd.iter().filter(|tap| (from..=until).contains(&tap.at));
        near.any(|tap| match tap.odd {
            Odd::Leak | Odd::Spill => fell,
            Odd::Bumped => true,
            Odd::Foam => !fell,
            Odd::Late | Odd::NotRead => false,
        })
    }

    fn minute(&self, at: Timestamp) -> f64 {
        at.duration_since(self.zero.measured).as_secs_f64() / 60.0
    }
}

/// A height taken for so many millimeters.
fn taken(height: &Height, mm: f64) -> Believed {
    let (key, at, confirmed) = (height.key, height.measured, height.is_confirmed());
    Believed { key, at, mm, confirmed }
}

/// Look at the bag again, tap what happened, or leave it as it is.
fn look_again(taps: &[Odd]) -> Vec<Mend> {
    let taps = taps.iter().copied().map(Mend::Tap);
    std::iter::once(Mend::AskAgain).chain(taps).chain([Mend::Leave]).collect()
}
