//! What only the teacher sees: what the forecast and other groups' bags say.

use super::named::named;
use super::{Expected, Followed, Likely, Mend, Own, Slip, SlipKind, seen_by_group};
use crate::code::BagCode;
use crate::nearest::plain;
use crate::plan::SetAsideRule;
use crate::record::Odd;
use barm_science::slip::What;

/// A slip of the pen is told once it is likelier than not (1; own rule). What is told at 80 % is
/// real eight times in ten or nearly: see `docs/slips.md`.
pub const TOLD_FROM: f64 = 0.5;

/// What is said of a bag as a whole is told later (1; own rule): little can be mended by then.
const BAG_FROM: f64 = 0.7;

/// That something is wrong is told from here on where nothing on the list is likelier than not
/// (1; own rule).
const UNNAMED_FROM: f64 = 0.85;

/// Nobody is suspected of copying for less (1; own rule: it is a grave thing to ask a child).
const COPIED_FROM: f64 = 0.95;

/// Everything that is worth a second look in the bags of a period, bag by bag in the order given:
/// what each group sees of its own, each with its probability, and what only the forecast and the
/// other bags can tell. Offers the plan's rules where one is about what happened.
#[must_use]
pub fn seen_by_teacher(period: &[Followed<'_>], rules: &[SetAsideRule]) -> Vec<Vec<Slip>> {
    let codes: Vec<BagCode> = period.iter().map(|followed| followed.own.code).collect();
    let all = super::likely(period);
    period.iter().zip(&all).map(|(one, likely)| of_bag(one, likely, &codes, rules)).collect()
}

fn of_bag(
    followed: &Followed<'_>,
    likely: &Likely,
    codes: &[BagCode],
    rules: &[SetAsideRule],
) -> Vec<Slip> {
    let own = &followed.own;
    let mut slips = seen_by_group(*own);
    for slip in &mut slips {
        slip.probability = likely.of_own(slip);
    }
    let suspects = likely.suspected.suspects.iter();
    let told = suspects.filter(|one| match one.what {
        What::Leak { .. } => likely.may_leak(),
        what => one.probability >= told_from(what),
    });
    let told: Vec<Slip> = told
        .filter_map(|suspect| named(own, likely, suspect, codes))
        .filter(|slip| !is_answered(own, slip))
        .collect();
    let wrong = 1.0 - likely.suspected.sound;
    let asked = |slip: &Slip| !matches!(slip.kind, SlipKind::Late { .. });
    let named = told.iter().any(|slip| slip.probability.is_some_and(|p| p >= TOLD_FROM));
    if !named && wrong >= UNNAMED_FROM && !slips.iter().any(asked) {
        let far = far_from_band(followed, likely, wrong);
        slips.extend(far.filter(|slip| !is_answered(own, slip)));
    }
    for slip in told {
        if !slips.iter().any(|asked| says_the_same(asked, &slip)) {
            slips.push(slip);
        }
    }
    for slip in &mut slips {
        // A bag is not set aside for a mere suspicion.
        let mere = matches!(slip.kind, SlipKind::Leaks { .. })
            && slip.probability.is_some_and(|p| p < TOLD_FROM);
        if slip.mends.contains(&Mend::Tap(Odd::Leak)) && !mere {
            offer(rules, &[Odd::Leak, Odd::Spill], &mut slip.mends);
        }
        if slip.mends.contains(&Mend::Tap(Odd::Foam)) {
            offer(rules, &[Odd::Foam], &mut slip.mends);
        }
    }
    slips
}

const fn told_from(what: What) -> f64 {
    match what {
        What::Copied { .. } => COPIED_FROM,
        What::Unit { .. }
        | What::Transposed { .. }
        | What::Misread { .. }
        | What::Tilt { .. }
        | What::Fives => TOLD_FROM,
        _ => BAG_FROM,
    }
}

/// Whether somebody has said what it is: tapped what happened, or looked at the reading again and
/// left it as it is.
fn is_answered(own: &Own<'_>, slip: &Slip) -> bool {
    let tapped = |odds: &[Odd]| own.bag.odd.iter().any(|tap| odds.contains(&tap.odd));
    let heights = own.bag.zero.iter().chain(&own.bag.readings);
    let mut asked = heights.filter(|height| Some(height.key) == slip.reading);
    asked.any(|height| height.is_confirmed())
        || match slip.kind {
            SlipKind::Leaks { .. } => tapped(&[Odd::Leak, Odd::Spill, Odd::Bumped]),
            SlipKind::Lifted { .. } => tapped(&[Odd::Foam, Odd::Bumped]),
            SlipKind::FarFromBand { .. } => {
                tapped(&[Odd::Leak, Odd::Spill, Odd::Bumped, Odd::Foam])
            }
            _ => false,
        }
}

/// Whether what a group is asked already asks for what a likely slip would.
fn says_the_same(asked: &Slip, likely: &Slip) -> bool {
    use SlipKind::{Fell, HighZero, Jumped, Leaks, Lifted, Misread, Tilted, TooHigh, Unit};
    let here = asked.reading == likely.reading;
    match (&asked.kind, &likely.kind) {
        (Unit { written_in: a, .. }, Unit { written_in: b, .. }) => here && a == b,
        (Fell { .. }, Leaks { .. }) => true,
        // What is likelier offers it as an answer.
        (_, Leaks { .. }) => {
            let unlikely = likely.probability.is_some_and(|p| p < TOLD_FROM);
            unlikely && asked.mends.contains(&Mend::Tap(Odd::Leak))
        }
        (Jumped { .. }, Lifted { .. }) => here,
        (
            TooHigh { .. } | HighZero { .. } | Jumped { .. } | Fell { .. } | Unit { .. },
            Misread { .. } | Tilted { .. },
        ) => here,
        _ => false,
    }
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

/// Something is wrong, and nothing on the list is likelier than not: the reading that lies
/// farthest outside of its band, as a share of the width of it, and of those alike the first. Whoever
/// left that one as it is has answered: another reading is not asked about in its place.
fn far_from_band(followed: &Followed<'_>, likely: &Likely, probability: f64) -> Option<Slip> {
    let own = &followed.own;
    let zero = own.bag.zero.as_ref().filter(|zero| !zero.rival)?;
    let mut farthest: Option<(f64, Slip)> = None;
    for reading in &own.bag.readings {
        if !likely.heights.contains(&reading.key) {
            continue;
        }
        let minute = own.bag.minute_at(reading.measured)?;
        let Some(expected) = Expected::at(followed.band, minute) else { continue };
        let rise_mm = reading.height_mm - zero.height_mm;
        let (low_mm, high_mm) = (expected.low_mm, expected.high_mm);
        let far = (rise_mm - high_mm).max(low_mm - rise_mm) / (high_mm - low_mm).max(1.0);
        if farthest.as_ref().is_none_or(|(most, _)| far > *most) {
            let kind = SlipKind::FarFromBand { minute, rise_mm, low_mm, high_mm };
            let mut mends = vec![Mend::AskAgain, Mend::Leave];
            if likely.may_leak() {
                mends.insert(1, Mend::Tap(Odd::Leak));
            }
            let reading = Some(reading.key);
            let slip =
                Slip { bag: own.code, kind, reading, mends, probability: Some(probability) };
            farthest = Some((far, slip));
        }
    }
    farthest.map(|(_, slip)| slip)
}
