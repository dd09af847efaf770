//! What the model says of a kind of bag at its minutes, and how that hangs on each deviate.

use super::effects::{Effect, Level, effects, typical};
use crate::forecast::SetupError;
use crate::model::card::CardOnBag;
use crate::model::course::tolerance;
use crate::model::{Mixture, Parameters};
use crate::ode::lockstep::Track;
use crate::prior::Prior;
use crate::setup::Setup;
use core::ops::Range;

/// Relative tolerance of the steps: far below what a ruler sees.
const FINE: f64 = 1e-5;
/// By this deviate twins differ (1): its error is that much of the curve's bend.
const NUDGE: f64 = 1e-3;

/// Bags of one kind: the same things went in.
pub(super) struct Kind {
    setup: Setup,
    /// All minutes at which one of them was read, in order.
    minutes: Vec<f64>,
    /// What is not known, of the day first.
    pub(super) effects: Vec<Effect>,
    /// Place of each effect of the day among the day's numbers.
    pub(super) places: Vec<usize>,
}

/// Slope of the rise at each minute with each effect of a kind (mm), in their order.
pub(super) type Slopes = Vec<Vec<f64>>;

impl Kind {
    pub(super) fn new(setup: Setup, minutes: Vec<f64>, prior: &Prior) -> Self {
        let mut effects = effects(&setup, prior);
        effects.sort_by_key(|effect| effect.level);
        Self { setup, minutes, effects, places: Vec::new() }
    }

    /// Effects that the whole day has in common.
    pub(super) fn of_the_day(&self) -> impl Iterator<Item = &Effect> {
        self.effects.iter().take_while(|effect| effect.level == Level::Day)
    }

    /// Place of a minute.
    pub(super) fn minute(&self, minute: f64) -> Option<usize> {
        self.minutes.iter().position(|one| (one - minute).abs() < 1e-9)
    }

    /// The bag with the day's deviates, and one effect more by a deviate.
    fn bag(
        &self,
        prior: &Prior,
        day: &[f64],
        more: Option<(usize, f64)>,
    ) -> (Setup, Parameters) {
        let (mut setup, mut parameters) = (self.setup.clone(), typical(prior));
        for (at, effect) in self.effects.iter().enumerate() {
            let mut z = self.places.get(at).map_or(0.0, |place| day[*place]);
            if let Some((_, by)) = more.filter(|(one, _)| *one == at) {
                z += by;
            }
            if z != 0.0 {
                effect.apply(prior, z, &mut setup, &mut parameters);
            }
        }
        (setup, parameters)
    }

    /// Rise at each minute.
    pub(super) fn rises(&self, prior: &Prior, day: &[f64]) -> Result<Vec<f64>, SetupError> {
        Ok(self.first(prior, day)?.0)
    }

    fn first(&self, prior: &Prior, day: &[f64]) -> Result<(Vec<f64>, Track), SetupError> {
        let (setup, parameters) = self.bag(prior, day, None);
        let bag = Mixture::new(&setup, &parameters);
        let mut heights = Heights::new(&setup, &parameters, &bag, &self.minutes);
        let last = self.minutes.last().copied().unwrap_or(0.0);
        let start = -setup.wet_before_zero_min.max(0.0);
        let track = Track::of(&bag, start, bag.start(), last, &tolerance(FINE), |step| {
            heights.see(step);
        })?;
        Ok((heights.rises(), track))
    }

    /// Slopes of the rises with some of the effects.
    pub(super) fn slopes(
        &self,
        prior: &Prior,
        day: &[f64],
        which: Range<usize>,
    ) -> Result<Slopes, SetupError> {
        let (rise, track) = self.first(prior, day)?;
        let mut slopes = Vec::with_capacity(which.len());
        for at in which {
            let (setup, parameters) = self.bag(prior, day, Some((at, NUDGE)));
            let twin = Mixture::new(&setup, &parameters);
            let mut heights = Heights::new(&setup, &parameters, &twin, &self.minutes);
            track.follow(&twin, twin.start(), |step| heights.see(step))?;
            let there = heights.rises();
            slopes.push(
                there.iter().zip(&rise).map(|(there, here)| (there - here) / NUDGE).collect(),
            );
        }
        Ok(slopes)
    }
}

/// Heights of the card at minute 0 and at given minutes.
struct Heights<'a> {
    card: CardOnBag,
    bag: &'a Mixture,
    minutes: &'a [f64],
    zero: Option<f64>,
    seen: Vec<f64>,
}

impl<'a> Heights<'a> {
    fn new(
        setup: &Setup,
        parameters: &Parameters,
        bag: &'a Mixture,
        minutes: &'a [f64],
    ) -> Self {
        let card = CardOnBag::new(setup, bag, parameters);
        let at_once = setup.wet_before_zero_min <= 0.0;
        let zero = at_once.then(|| card.height_mm(bag.gas_with_air_ml(bag.start())));
        Self { card, bag, minutes, zero, seen: Vec::with_capacity(minutes.len()) }
    }

    fn see(&mut self, step: &crate::ode::Step<{ crate::model::state::STATES }>) {
        let height = |minute| self.card.height_mm(self.bag.gas_with_air_ml(&step.at(minute)));
        if self.zero.is_none() && step.t1 >= 0.0 {
            self.zero = Some(height(0.0));
        }
        while let Some(minute) = self.minutes.get(self.seen.len()).filter(|m| **m <= step.t1) {
            let here = height(*minute);
            self.seen.push(here);
        }
    }

    fn rises(self) -> Vec<f64> {
        let zero = self.zero.unwrap_or_default();
        self.seen.into_iter().map(|height| height - zero).collect()
    }
}
