//! What a suspicion is called, and how it can be mended.

use super::unit::WrittenIn;
use super::{Likely, Mend, Own, Slip, SlipKind};
use crate::code::BagCode;
use crate::record::{Height, Odd};
use barm_science::slip::{Suspect, Unit, What};

/// Another version of a unit slip is offered too if it is at least so likely (1; own rule).
const OFFERED_FROM: f64 = 0.05;

/// A leak is told, and offered as an answer, from here on beside a sound bag (1; own rule): a bag that leaks is lost
/// if nobody presses its seal, and of those told most are real (`docs/slips.md`). What else may be wrong with the
/// bag does not count: a clock that may be late makes no seal tighter.
const LEAK_FROM: f64 = 0.08;

/// A leak that is less likely than this is not worth a word, whatever else is wrong (1; own rule).
const LEAK_AT_LEAST: f64 = 0.02;

/// So many heights it takes, the zero reading counted: with two a leak looks like yeast that wakes late (own rule).
const LEAK_HEIGHTS: usize = 3;

/// A suspicion as a slip. `codes` are those of the period, in the order in which they were weighed.
pub(super) fn named(
    own: &Own<'_>,
    likely: &Likely,
    suspect: &Suspect,
    codes: &[BagCode],
) -> Option<Slip> {
    let height = |place: usize| -> Option<&Height> {
        let key = likely.heights.get(place)?;
        own.bag.zero.iter().chain(&own.bag.readings).find(|height| height.key == *key)
    };
    let minute = |place: usize| own.bag.minute_at(height(place)?.measured);
    let look = |taps: &[Odd]| -> Vec<Mend> {
        let taps = taps.iter().copied().map(Mend::Tap);
        std::iter::once(Mend::AskAgain).chain(taps).chain([Mend::Leave]).collect()
    };
    let (kind, place, mends) = match suspect.what {
        What::Unit { to, unit, .. } => {
            let wrote_mm = height(to)?.height_mm;
            let mut versions: Vec<(Unit, f64)> = Vec::new();
            for (what, probability) in &suspect.versions {
                let What::Unit { unit, .. } = what else { continue };
                match versions.iter_mut().find(|(known, _)| known == unit) {
                    Some((_, sum)) => *sum += probability,
                    None => versions.push((*unit, *probability)),
                }
            }
            versions
                .sort_by(|(a, p), (b, q)| (*b == unit).cmp(&(*a == unit)).then(q.total_cmp(p)));
            let offered = versions.iter().filter(|(of, p)| *of == unit || *p >= OFFERED_FROM);
            let write = offered.map(|(unit, _)| Mend::Write(tenths(wrote_mm * unit.factor())));
            let taps: &[Odd] = if likely.may_leak() { &[Odd::Leak] } else { &[] };
            let mends = write.chain(look(taps)).collect();
            let written_in = WrittenIn::of(unit);
            (SlipKind::Unit { wrote_mm, written_in }, Some(to), mends)
        }
        What::Transposed { at } => {
            let wrote_mm = height(at)?.height_mm;
            let meant_mm = 10.0 * (wrote_mm % 10.0) + (wrote_mm / 10.0).floor();
            let mut mends = look(&[]);
            mends.insert(0, Mend::Write(meant_mm));
            (SlipKind::Transposed { wrote_mm, meant_mm }, Some(at), mends)
        }
        What::Misread { at } => {
            (SlipKind::Misread { wrote_mm: height(at)?.height_mm }, Some(at), look(&[]))
        }
        What::Tilt { at } => (SlipKind::Tilted { minute: minute(at)? }, Some(at), look(&[])),
        What::Leak { after } => {
            let (from, to) = (minute(after)?, minute(after + 1)?);
            let mends = look(&[Odd::Leak, Odd::Bumped]);
            (SlipKind::Leaks { from, to }, Some(after + 1), mends)
        }
        What::Foam { from } => {
            (SlipKind::Lifted { minute: minute(from)? }, Some(from), look(&[Odd::Foam]))
        }
        What::Start => (SlipKind::WrongStart, Some(0), look(&[])),
        What::Dead => (SlipKind::NoYeast, None, look(&[])),
        What::Hot => (SlipKind::HotWater, None, look(&[])),
        What::Unshaken => (SlipKind::Unshaken, None, look(&[])),
        What::Heaped => (SlipKind::Heaped, None, look(&[])),
        What::Copied { of } => {
            let with = *codes.get(of)?;
            let readings = likely.heights.len();
            (SlipKind::Copied { with, readings }, None, look(&[]))
        }
        What::Swapped { with } => {
            (SlipKind::Swapped { with: *codes.get(with)? }, None, look(&[]))
        }
        What::Fives => (SlipKind::Fives, None, look(&[])),
        // Nothing can be said of it but that it is far off.
        _ => return None,
    };
    // What is said of a whole bag hangs on its last height: that is where it can be answered.
    let reading = Some(height(place.unwrap_or(likely.heights.len().checked_sub(1)?))?.key);
    let probability = Some(suspect.probability);
    Some(Slip { bag: own.code, kind, reading, mends, probability })
}

impl Likely {
    /// Probability that gas gets out (1).
    pub(super) fn leaks(&self) -> f64 {
        let leaks = self.suspected.suspects.iter();
        let leaks = leaks.filter(|one| matches!(one.what, What::Leak { .. }));
        leaks.map(|one| one.probability).sum()
    }

    /// Whether its seal is worth a look.
    pub(super) fn may_leak(&self) -> bool {
        let leaks = self.leaks();
        self.heights.len() >= LEAK_HEIGHTS
            && leaks >= LEAK_AT_LEAST
            && leaks >= LEAK_FROM * (leaks + self.suspected.sound)
    }

    /// Probability of what a group is asked about its own bag: of that unit, of a leak where it
    /// fell, of anything wrong otherwise; nothing where it is no question of likelihood.
    pub(super) fn of_own(&self, slip: &Slip) -> Option<f64> {
        let place = self.heights.iter().position(|key| Some(*key) == slip.reading)?;
        let sum = |is: &dyn Fn(&What) -> bool| -> f64 {
            let versions = self.suspected.suspects.iter().flat_map(|one| &one.versions);
            versions.filter(|(what, _)| is(what)).fold(0.0, |sum, (_, p)| sum + p)
        };
        match &slip.kind {
            SlipKind::Unit { written_in, .. } => Some(sum(&|what| {
                matches!(what, What::Unit { from, to, unit }
                    if (*from..=*to).contains(&place) && WrittenIn::of(*unit) == *written_in)
            })),
            SlipKind::Fell { .. } => Some(sum(&|what| matches!(what, What::Leak { .. }))),
            SlipKind::TooHigh { .. } | SlipKind::HighZero { .. } | SlipKind::Jumped { .. } => {
                Some(1.0 - self.suspected.sound)
            }
            _ => None,
        }
    }
}

/// To a tenth of a millimeter: no ruler tells more.
fn tenths(mm: f64) -> f64 {
    (10.0 * mm).round() / 10.0
}
