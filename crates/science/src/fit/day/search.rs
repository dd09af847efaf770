//! The search for the day that its readings speak for most.

use super::curves::{Around, COARSE, FINE, Seen};
use super::gathered::Day;
use super::learned::DayFit;
use super::place::{Local, Place};
use super::remembered::Remembered;
use super::stand::{Stand, share_of, wider};
use super::unlike::Trust;
use super::{BagSeen, DayError};
use crate::prior::{Key, Learned, Prior};

/// A search has arrived where its next step is shorter than this (standard deviations of what is left
/// open, along the numbers' covariance) and no width, noise or chance of a bag moves by more (1).
const STILL: f64 = 1e-3;
/// What is said of a day whose search did not come that far must be nearer than this (the same).
const ENOUGH: f64 = 0.1;
/// Looks after which bags are looked at over what is left open there, wherever the search goes from there.
const HELD: usize = 18;
/// From here on several looks then tell together where to go (the same).
const TOGETHER: f64 = 1.0;
/// From a step as short as this on bags are told from those that do not belong (the same).
const TELLING: f64 = 1.0;
/// The same once what they are looked at over is held: told only below, they are told to and fro about it.
const TELLING_HELD: f64 = 3.0;
/// Looks at how the bags hang on the numbers at most.
const LOOKS: usize = 80;
/// Looks after which a way counts as long.
const PATIENT: usize = 3;
/// Looks after which a search that still has more than a standard deviation to go leads nowhere.
const ASTRAY: usize = 40;
/// Times that bags are trusted anew from one look.
const TURNS: usize = 12;
/// Of these, turns that go all the way.
const EAGER: usize = 4;
/// From here on how bags scatter stays as it was seen (the same).
const NEAR: f64 = 0.1;
/// How far bags are looked at around a place, as shares of what is left open (1), one after the other.
const REACHES: [f64; 5] = [1.0, 0.7, 0.5, 0.3, 0.1];
/// By how much readings that fit no day are taken to scatter more than expected, one after the other.
const NOISES: [f64; 5] = [4.0, 16.0, 64.0, 256.0, 1024.0];

/// Finds what a day's readings say.
///
/// From each look at how bags hang on the numbers, Gauss and Newton's steps lead on, and bags are trusted
/// by where those end, until neither moves. Around that place bags are looked at anew, over what is left
/// open there. Where looks lead to and fro, the search goes only a part of the way: two that lead to
/// each other have a place between them that leads to itself. How large a part follows from the last two
/// ways r and shares s:
///
/// ```text
/// s' = −s rᵀ(r' − r)/|r' − r|²        at least 0.1; at most 1, once near 2
/// ```
///
/// What is left open changes with the place, and where that leads the search round in rings it is held after a
/// while: bags are looked at over that from then on, and several looks together tell where to go
/// (`remembered`).
///
/// A day whose rises bend within what is left open may find no rest: the slopes over one place lead to another,
/// and those there back. Then bags are looked at less far around a place, until the search arrives.
///
/// Readings that fit no day may lead nowhere: the numbers they ask for lie where no bag is. Then all are taken
/// for four times as noisy as they may be, and so on, until that is enough for them and a search arrives.
/// So such readings teach little, and what they teach is wide.
///
/// # Source
/// B. M. Irons, R. C. Tuck (1969), *Int. J. Numer. Methods Eng.* 1, 275-277 (after A. C. Aitken); parts of the
/// way: W. R. Mann (1953), *Proc. Am. Math. Soc.* 4, 506-510. From memory.
///
/// # Errors
/// [`DayError`] for readings or bags that cannot be.
pub fn fit_day(bags: &[BagSeen], prior: &Prior) -> Result<DayFit, DayError> {
    let day = Day::new(bags, prior)?;
    let mut nearest: Option<DayFit> = None;
    for reach in REACHES {
        match search(&day, None, reach) {
            Ok(found) if found.off < STILL => return Ok(found),
            Ok(found) if nearest.as_ref().is_none_or(|one| found.off < one.off) => {
                nearest = Some(found);
            }
            Ok(_) | Err(DayError::Lost) => {}
            Err(error) => return Err(error),
        }
    }
    if let Some(found) = nearest {
        return Ok(found);
    }
    let mut found = Err(DayError::Lost);
    for noise in NOISES {
        if !matches!(found, Err(DayError::Lost)) {
            break;
        }
        found = search(&day, Some(Trust::fixed(bags.len(), noise)), 1.0);
    }
    found
}

/// The search with a trust that is looked for too, or one that is given.
fn search(day: &Day, trust: Option<Trust>, reach: f64) -> Result<DayFit, DayError> {
    let numbers = day.keys.len();
    let unit = |row: usize| (0..numbers).map(|at| f64::from(u8::from(at == row))).collect();
    let covariance = (0..numbers).map(unit).collect();
    let mut stand = Stand { at: vec![0.0; numbers], covariance, trust };
    let mut live: Vec<Vec<bool>> =
        day.kinds.iter().map(|kind| vec![true; kind.effects.len()]).collect();
    let mut seen = Vec::new();
    let (mut off, mut share, mut last) = (f64::INFINITY, 1.0, Vec::new());
    let mut remembered = Remembered::default();
    let mut over = stand.covariance.clone();
    for look in 0..LOOKS {
        let deviates = day.deviates(&stand.at);
        let far = look < 2 || off > NEAR;
        let held = look >= HELD;
        if !held {
            over.clone_from(&stand.covariance);
        }
        let mut covariance = day.covariance(&over);
        covariance.iter_mut().flatten().for_each(|value| *value *= reach * reach);
        let around = Around {
            deviates: &deviates,
            covariance: &covariance,
            apart: look == 0,
            fine: if off > 1.0 { COARSE } else { FINE },
        };
        seen = day.look(&around, &live, (!far).then_some(&seen))?;
        let assumed = stand.trust.clone().unwrap_or_else(|| Trust::full(day.bags.len()));
        let local = Local::new(day, &seen, &assumed);
        let off_mm = day.off(|kind| &seen[kind].rises);
        let place = Place::new(&local, stand.at.clone(), off_mm)?;
        let telling = if held { TELLING_HELD } else { TELLING };
        let long = look >= PATIENT;
        let next = place.trust(stand.trust.as_ref(), long, telling);
        let apart = next.as_ref().map_or(f64::INFINITY, |next| next.apart(&assumed));
        let wider = if held { 0.0 } else { wider(&stand.covariance, &place.covariance()) };
        off = place.long.max(apart).max(wider);
        if off < STILL || (look + 1 == LOOKS && off < ENOUGH) {
            if assumed.fixed && place.chi_square > place.freedom(&assumed, &day.counts()) {
                break;
            }
            return told(day, &seen, &place, assumed, off);
        }
        if look >= ASTRAY && place.long > 1.0 {
            break;
        }
        if look == 0 {
            live = seen.iter().map(moves).collect();
        }
        let there = settled(day, &seen, &stand, next.is_some(), (long, telling))?;
        let way = stand.way(&there);
        share = share_of(share, &last, &way, off <= NEAR);
        last = way;
        if held && off <= TOGETHER {
            remembered.add(&stand, &there);
        } else {
            remembered.clear();
        }
        stand = remembered.onward().unwrap_or_else(|| stand.toward(there, share));
    }
    Err(DayError::Lost)
}

/// Where a look leads to. Bags are trusted anew only if that can be told from where it was taken.
fn settled(
    day: &Day,
    seen: &[Seen],
    from: &Stand,
    anew: bool,
    (long, telling): (bool, f64),
) -> Result<Stand, DayError> {
    let mut stand = from.clone();
    let mut off_mm = day.off(|kind| &seen[kind].rises);
    for turn in 0..TURNS {
        let assumed = stand.trust.clone().unwrap_or_else(|| Trust::full(day.bags.len()));
        let local = Local::new(day, seen, &assumed);
        let place = Place::new(&local, stand.at, off_mm)?.onward()?;
        let next = place.trust(stand.trust.as_ref(), long, telling).filter(|_| anew);
        stand.covariance = place.covariance();
        (stand.at, off_mm) = (place.at, place.off_mm);
        let Some(next) = next else { break };
        let near = next.apart(&assumed) < 0.1 * STILL;
        let share = if turn < EAGER { 1.0 } else { 0.5 };
        stand.trust = Some(stand.trust.map_or(next.clone(), |from| from.toward(&next, share)));
        if near {
            break;
        }
    }
    Ok(stand)
}

/// Which effects move a bag at all: no bag without milk hangs on how fast yeast learns galactose.
fn moves(seen: &Seen) -> Vec<bool> {
    seen.slopes.iter().map(|slope| slope.iter().any(|value| value.abs() > 1e-3)).collect()
}

fn told(
    day: &Day,
    seen: &[Seen],
    place: &Place,
    trust: Trust,
    off: f64,
) -> Result<DayFit, DayError> {
    let full = Local::new(day, seen, &Trust::full(day.bags.len()));
    let off_mm = day.off(|kind| &seen[kind].rises);
    let unwidened = day.covariance(&Place::new(&full, place.at.clone(), off_mm)?.covariance());
    Ok(DayFit {
        expected_mm: day.expected(seen),
        learned: Learned {
            names: day.keys.iter().map(Key::to_string).collect(),
            means: day.deviates(&place.at),
            covariance: day.covariance(&place.covariance()),
        },
        chi_square: place.chi_square,
        freedom: place.freedom(&trust, &day.counts()),
        noise: trust.noise,
        unlike: trust.unlike,
        unwidened: unwidened.iter().enumerate().map(|(at, row)| row[at].sqrt()).collect(),
        off,
    })
}
