//! The search for the day that its readings speak for most.

use super::curves::Seen;
use super::gathered::Day;
use super::learned::DayFit;
use super::place::{Local, Place};
use super::unlike::Trust;
use super::{BagSeen, DayError};
use crate::prior::{Key, Learned, Prior};

/// A search has arrived where its next step is shorter than this (standard deviations of what is left
/// open, along the numbers' covariance) and no noise or chance of a bag moves by more (1).
const STILL: f64 = 1e-3;
/// What is said of a day whose search did not come that far must be nearer than this (the same).
const ENOUGH: f64 = 0.1;
/// Looks at how the bags hang on the numbers at most.
const LOOKS: usize = 40;
/// Steps from one look.
const STEPS: usize = 6;
/// Looks after which only half a step is taken, in case two of them lead to each other.
const EAGER: usize = 10;
/// First width of the chords, and from then on their share of what is left open of a number (1).
const WIDTH: f64 = 0.5;

/// Finds what a day's readings say: Gauss and Newton's steps, with slopes and scatter worked out anew
/// where they lead to, until nothing moves.
///
/// # Errors
/// [`DayError`] for readings or bags that cannot be.
pub fn fit_day(bags: &[BagSeen], prior: &Prior) -> Result<DayFit, DayError> {
    let day = Day::new(bags, prior)?;
    let mut at = vec![0.0; day.keys.len()];
    let mut widths = vec![WIDTH; at.len()];
    let mut live: Vec<Vec<bool>> =
        day.kinds.iter().map(|kind| vec![true; kind.effects.len()]).collect();
    let mut trust: Option<Trust> = None;
    let mut narrow = 1.0;
    for look in 0..LOOKS {
        let seen = day.look(&day.deviates(&at), &widths, &live)?;
        let assumed = trust.clone().unwrap_or_else(|| Trust::full(bags.len()));
        let local = Local::new(&day, &seen, &assumed);
        let mut place = Place::new(&local, at, day.off(|kind| &seen[kind].rises))?;
        let covariance = day.covariance(&place.covariance());
        let next = place.trust(&day, trust.as_ref());
        let apart = next.as_ref().map_or(f64::INFINITY, |next| next.apart(&assumed));
        let off = place.long.max(apart);
        if off < STILL || (look + 1 == LOOKS && off < ENOUGH) {
            return told(&day, &seen, &place, assumed, off);
        }
        if look == 0 {
            live = seen.iter().map(moves).collect();
        }
        let (steps, share) = if look < EAGER { (STEPS, 1.0) } else { (1, 0.5) };
        for step in 0..steps {
            let Some(there) = place.onward(&day, share)? else {
                // Chords may point past a bend; shorter ones do not.
                narrow *= if step == 0 { 0.25 } else { 1.0 };
                break;
            };
            let nearer = there.long < place.long;
            place = there;
            if !nearer || place.long < 0.5 * STILL {
                break;
            }
        }
        for (at, width) in widths.iter_mut().enumerate() {
            *width = WIDTH * narrow * covariance[at][at].sqrt();
        }
        at = place.at;
        trust = next.or(trust);
    }
    Err(DayError::Lost)
}

/// Which effects move a bag at all: no bag without milk hangs on how fast yeast learns galactose.
fn moves(seen: &Seen) -> Vec<bool> {
    seen.slopes.iter().map(|slope| slope.iter().any(|value| *value != 0.0)).collect()
}

fn told(
    day: &Day,
    seen: &[Seen],
    place: &Place,
    trust: Trust,
    off: f64,
) -> Result<DayFit, DayError> {
    let means = day.deviates(&place.at);
    let full = Local::new(day, seen, &Trust::full(day.bags.len()));
    let off_mm = day.off(|kind| &seen[kind].rises);
    let unwidened = day.covariance(&Place::new(&full, place.at.clone(), off_mm)?.covariance());
    Ok(DayFit {
        expected_mm: day.expected(&means)?,
        learned: Learned {
            names: day.keys.iter().map(Key::to_string).collect(),
            means,
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
