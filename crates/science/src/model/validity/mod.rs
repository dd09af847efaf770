//! Where the laws of the bag model hold, and which of them a bag goes beyond.
//!
//! A law is used outside its range rather than refused, held at its end or carried on; but never in
//! silence. A range counts where it is known and where a bag could leave it; a law that decides
//! next to nothing there, such as salt's in a bag without salt, is not asked.

mod laws;
mod scene;

use laws::watched;

use super::card::CardOnBag;
use super::course::{sample, tolerance};
use super::mixture::Mixture;
use super::parameters::Parameters;
use super::state::State;
use crate::forecast::SetupError;
use crate::setup::Setup;
use core::fmt;
use scene::Scene;

/// A law, with the range in which it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Law {
    /// Its name, such as `yeast.slow_loss`.
    pub name: &'static str,
    /// What it is read at, in words.
    pub quantity: &'static str,
    /// The unit of that, as people write it; empty for a share.
    pub unit: &'static str,
    /// From where to where it holds, in that unit.
    pub holds: (f64, f64),
    /// What the model does outside.
    pub outside: &'static str,
    /// Who says so.
    pub source: &'static str,
}

/// A law that something goes beyond, such as a bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beyond {
    /// The law.
    pub law: &'static Law,
    /// The farthest outside that it gets, in the law's unit.
    pub value: f64,
    /// Minute, counted from the zero reading, at which it is outside first; negative before it.
    pub from_min: f64,
}

/// The laws with a range that a bag could leave.
pub fn laws() -> impl Iterator<Item = &'static Law> {
    watched().map(|watched| watched.law)
}

impl Law {
    /// How far outside a value lies; nothing inside.
    fn outside_by(&self, value: f64) -> Option<f64> {
        let (low, high) = self.holds;
        let off = (low - value).max(value - high);
        (off > 0.0 || off.is_nan()).then_some(off)
    }

    /// The mark of a value that is read at a minute; nothing inside the range.
    pub fn mark(&'static self, value: f64, minute: f64) -> Option<Beyond> {
        self.outside_by(value).map(|_| Beyond { law: self, value, from_min: minute })
    }
}

impl Beyond {
    /// Keeps the value that is farther outside.
    fn widen(&mut self, other: &Self) {
        if self.law.outside_by(other.value) > self.law.outside_by(self.value) {
            self.value = other.value;
        }
    }
}

impl fmt::Display for Beyond {
    /// One sentence, as in "temperature of the bag reaches 55 °C, from minute -3 on outside of 0 to
    /// 50 °C, where yeast.slow_loss is known; carried on by its formula".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { law, value, from_min } = self;
        let Law { name, quantity, unit, holds, outside, .. } = law;
        let space = if unit.is_empty() { "" } else { " " };
        write!(
            f,
            "{quantity} reaches {value:.3}{space}{unit}, from minute {from_min:.0} on outside of \
             {} to {}{space}{unit}, where {name} is known; {outside}",
            holds.0, holds.1
        )
    }
}

/// Laws that the best guess of a bag goes beyond, from wetting to its last minute.
///
/// # Errors
/// [`SetupError`] when the solver finds no solution. The setup must have passed
/// [`possible`](crate::forecast::possible).
pub fn beyond(
    setup: &Setup,
    parameters: &Parameters,
    last_minute: u32,
) -> Result<Vec<Beyond>, SetupError> {
    let mixture = Mixture::new(setup, parameters);
    let card = CardOnBag::new(setup, &mixture, parameters);
    let mut seen: Vec<Option<Beyond>> = vec![None; watched().count()];
    let mut note = |minute: f64, y: &State| {
        let scene = Scene { setup, mixture: &mixture, card: &card, y };
        for (watched, seen) in watched().zip(&mut seen) {
            let value = (watched.read)(&scene);
            let Some(mark) = value.and_then(|value| watched.law.mark(value, minute)) else {
                continue;
            };
            match seen {
                None => *seen = Some(mark),
                Some(beyond) => beyond.widen(&mark),
            }
        }
    };
    let wet_min = setup.wet_before_zero_min;
    note(-wet_min, mixture.start());
    sample(&mixture, wet_min, last_minute, &tolerance(1e-4), |minute, y| {
        note(f64::from(minute), y);
    })?;
    Ok(seen.into_iter().flatten().collect())
}
