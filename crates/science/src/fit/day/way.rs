//! One search: from a place on, look by look, to where it arrives.

use super::DayError;
use super::arrived::Arrived;
use super::curves::{Around, COARSE, FINE, Seen};
use super::gathered::Day;
use super::place::{Local, Place};
use super::remembered::Remembered;
use super::search::Search;
use super::stand::{Stand, share_of, wider};
use super::unlike::Trust;

/// A search has arrived where its next step is shorter than this (standard deviations of what is left
/// open, along the numbers' covariance) and no width, noise or chance of a bag moves by more (1).
pub(super) const STILL: f64 = 1e-3;
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

impl Search<'_> {
    /// The search from a place, with a trust that is looked for too or one that is given. Beside what is `known`
    /// it only has to come nearly there, and gives up on the way to the same place.
    pub(super) fn run(
        &self,
        from: Stand,
        reach: f64,
        known: Option<&Arrived>,
    ) -> Result<Arrived, DayError> {
        let day = &self.day;
        let mut stand = from;
        let mut seen = Vec::new();
        let (mut off, mut share, mut last) = (f64::INFINITY, 1.0, Vec::new());
        let mut remembered = Remembered::default();
        let mut over = stand.covariance.clone();
        let moved = known.map(Arrived::moved);
        for look in 0..LOOKS {
            if known.is_some_and(|known| known.is_near(&stand.at)) {
                break;
            }
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
                apart: false,
                only: moved.as_deref(),
                fine: if off > 1.0 || known.is_some() { COARSE } else { FINE },
            };
            let before = known.map(|known| &known.seen[..]).or((!far).then_some(&seen));
            seen = day.look(&around, &self.live, before)?;
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
            let near = off < ENOUGH && (known.is_some() || look + 1 == LOOKS);
            if near || off < STILL {
                if assumed.fixed && place.chi_square > place.freedom(&assumed, &day.counts()) {
                    break;
                }
                return Arrived::new(day, &seen, &place, assumed, off);
            }
            if look >= ASTRAY && place.long > 1.0 {
                break;
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
