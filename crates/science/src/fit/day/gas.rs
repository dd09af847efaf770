//! Gas of a bag at its minutes, and how high it holds the card.

use crate::model::Mixture;
use crate::model::card::CardOnBag;
use crate::model::following::Stretch;
use crate::setup::Setup;

/// Gas with the air at minute 0 and at given minutes (mL).
pub(super) struct Gas<'a> {
    minutes: &'a [f64],
    zero: Option<f64>,
    seen: Vec<f64>,
}

impl<'a> Gas<'a> {
    /// Nothing seen yet of a bag, unless it is wetted at minute 0.
    pub(super) fn new(setup: &Setup, bag: &Mixture, minutes: &'a [f64]) -> Self {
        let at_once = setup.wet_before_zero_min <= 0.0;
        let zero = at_once.then(|| bag.gas_with_air_ml(bag.start()));
        Self { minutes, zero, seen: Vec::with_capacity(minutes.len()) }
    }

    /// Sees a stretch of the bag's course.
    pub(super) fn see(&mut self, bag: &Mixture, stretch: &dyn Stretch) {
        let gas = |minute| bag.gas_with_air_ml(&stretch.at(minute));
        if self.zero.is_none() && stretch.t1() >= 0.0 {
            self.zero = Some(gas(0.0));
        }
        while let Some(minute) =
            self.minutes.get(self.seen.len()).filter(|m| **m <= stretch.t1())
        {
            let here = gas(*minute);
            self.seen.push(here);
        }
    }

    /// Rise of a card above its own zero at each minute (mm).
    pub(super) fn rises(&self, card: &CardOnBag) -> Vec<f64> {
        let zero = self.zero.map_or(0.0, |gas| card.height_mm(gas));
        self.seen.iter().map(|gas| card.height_mm(*gas) - zero).collect()
    }
}
