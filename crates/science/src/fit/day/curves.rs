//! What the model says of a kind of bag at its minutes, and how that hangs on each deviate.

use super::effects::{Effect, Level, effects, typical};
use crate::forecast::{SetupError, VENT_FILL};
use crate::model::card::CardOnBag;
use crate::model::course::tolerance;
use crate::model::following::Stretch;
use crate::model::{Mixture, Parameters};
use crate::ode::lockstep::Track;
use crate::prior::Prior;
use crate::setup::Setup;

/// Relative tolerance of the steps. A ruler would see no difference at a thousand times as much; but a
/// solver chooses its steps anew wherever a number moves, and the errors that jump with them must stay
/// below what the search has to see where it ends.
const FINE: f64 = 1e-7;

/// Bags of one kind: the same things went in.
pub(super) struct Kind {
    setup: Setup,
    /// All minutes at which one of them was read, in order.
    pub(super) minutes: Vec<f64>,
    /// What is not known, of the day first.
    pub(super) effects: Vec<Effect>,
    /// Place of each effect of the day among the day's numbers.
    pub(super) places: Vec<usize>,
}

/// What the model says of a kind of bag.
pub(super) struct Seen {
    /// Rise at each minute (mm).
    pub(super) rises: Vec<f64>,
    /// Slope of that with each effect, in their order (mm).
    pub(super) slopes: Vec<Vec<f64>>,
}

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

    /// Rise at which the best guess of the bag has to be vented.
    pub(super) fn full_rise_mm(&self, prior: &Prior) -> f64 {
        let parameters = typical(prior);
        let bag = Mixture::new(&self.setup, &parameters);
        let card = CardOnBag::new(&self.setup, &bag, &parameters);
        let empty = card.height_mm(bag.gas_with_air_ml(bag.start()));
        card.height_mm(card.gas_at_fill_ml(VENT_FILL)) - empty
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
        let track =
            bag.track(start, last, &tolerance(FINE), &mut |stretch| heights.see(stretch))?;
        Ok((heights.rises(), track))
    }

    /// Rises, and their slopes with the effects that are live: each is tried by its width either way.
    pub(super) fn look(
        &self,
        prior: &Prior,
        day: &[f64],
        widths: &[f64],
        live: &[bool],
    ) -> Result<Seen, SetupError> {
        let (rises, track) = self.first(prior, day)?;
        let tried = |at: usize, by: f64| -> Result<Vec<f64>, SetupError> {
            let (setup, parameters) = self.bag(prior, day, Some((at, by)));
            let twin = Mixture::new(&setup, &parameters);
            let mut heights = Heights::new(&setup, &parameters, &twin, &self.minutes);
            let start = -setup.wet_before_zero_min.max(0.0);
            twin.retrace(start, &track, &mut |stretch| heights.see(stretch))?;
            Ok(heights.rises())
        };
        let slope = |at: usize| -> Result<Vec<f64>, SetupError> {
            if !live[at] {
                return Ok(vec![0.0; rises.len()]);
            }
            let (more, less) = (tried(at, widths[at])?, tried(at, -widths[at])?);
            let over = 2.0 * widths[at];
            Ok(more.iter().zip(&less).map(|(more, less)| (more - less) / over).collect())
        };
        let slopes = (0..self.effects.len()).map(slope).collect::<Result<_, _>>()?;
        Ok(Seen { rises, slopes })
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

    fn see(&mut self, stretch: &dyn Stretch) {
        let height =
            |minute| self.card.height_mm(self.bag.gas_with_air_ml(&stretch.at(minute)));
        if self.zero.is_none() && stretch.t1() >= 0.0 {
            self.zero = Some(height(0.0));
        }
        while let Some(minute) =
            self.minutes.get(self.seen.len()).filter(|m| **m <= stretch.t1())
        {
            let here = height(*minute);
            self.seen.push(here);
        }
    }

    fn rises(self) -> Vec<f64> {
        let zero = self.zero.unwrap_or_default();
        self.seen.into_iter().map(|height| height - zero).collect()
    }
}
