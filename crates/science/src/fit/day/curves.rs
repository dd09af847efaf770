//! What the model says of a kind of bag at its minutes, and how that hangs on each deviate.
//!
//! Not a slope at a point: what is said is the mean over all that is not known, and a slope is that of the
//! line that goes through it best. Each direction is tried at a point either way (statistical
//! linearization):
//!
//! ```text
//! E f ≈ f + Σ (f₊ + f₋ − 2 f)/(2 r²)        slope = (f₊ − f₋)/(2 r)        r = √3
//! ```
//!
//! The directions are the columns of the triangle of the covariance for the numbers of the day, and what is
//! a period's, a group's or a bag's each by itself.
//!
//! # Source
//! Á. F. García-Fernández, L. Svensson, M. R. Morelande, S. Särkkä (2015), "Posterior linearization
//! filter", *IEEE Trans. Signal Process.* 63, 5561-5573; the rule of points: S. J. Julier,
//! J. K. Uhlmann (1997). From memory.

use super::effects::{Effect, Level, distances, effects, typical};
use super::gas::Gas;
use super::tried::{Base, along_axes};
use crate::cholesky::lower_triangle;
use crate::forecast::{SetupError, VENT_FILL};
use crate::model::card::CardOnBag;
use crate::model::course::tolerance;
use crate::model::{Mixture, Parameters};
use crate::prior::Prior;
use crate::setup::Setup;
use core::ops::ControlFlow;

/// Relative tolerance of the steps: a ruler would see no difference at a thousand times as much, but steps are
/// chosen anew wherever a number moves, and errors that jump with them must stay below what the search
/// has to see where it ends. Steps of one bag do not serve another: where sugar runs out a bag turns
/// within a minute, and one that turns elsewhere needs its short steps there.
pub(super) const FINE: f64 = 1e-6;
/// The same as long as the search has far to go.
pub(super) const COARSE: f64 = 1e-4;

/// Bags of one kind: the same things went in.
pub(super) struct Kind {
    setup: Setup,
    /// All minutes at which one of them was read, in order.
    pub(super) minutes: Vec<f64>,
    /// What is not known: of the day first, and of either what is of the card alone last.
    pub(super) effects: Vec<Effect>,
    /// Place of each effect of the day among the day's numbers.
    pub(super) places: Vec<usize>,
    /// Whether an effect is of the card alone.
    card: Vec<bool>,
    /// What is not of the day: the same thing at several levels is tried once.
    own: Vec<Own>,
}

/// Something that periods, groups and bags have each for themselves.
struct Own {
    /// Its effects.
    levels: Vec<usize>,
    /// All of them together.
    whole: Effect,
}

/// What the model says of a kind of bag.
#[derive(Clone)]
pub(super) struct Seen {
    /// Rise that is expected at each minute (mm).
    pub(super) rises: Vec<f64>,
    /// That less the rise where everything is at its best guess (mm).
    pub(super) beyond: Vec<f64>,
    /// The part of that which is not of the day (mm).
    own_bend: Vec<f64>,
    /// Slope with each effect, in their order (mm).
    pub(super) slopes: Vec<Vec<f64>>,
}

/// Numbers of the day of which bags are tried.
pub(super) struct Around<'a> {
    /// Where they stand.
    pub(super) deviates: &'a [f64],
    /// Their covariance.
    pub(super) covariance: &'a [Vec<f64>],
    /// Whether each is tried by itself, as if none went with another.
    pub(super) apart: bool,
    /// Of which numbers bags are tried at all, number by number; how bags hang on others is then taken from a look
    /// before. All where that is not said.
    pub(super) only: Option<&'a [bool]>,
    /// Relative tolerance of the solver.
    pub(super) fine: f64,
}

impl Kind {
    pub(super) fn new(setup: Setup, minutes: Vec<f64>, prior: &Prior) -> Self {
        let mut effects = effects(&setup, prior);
        effects.extend(distances(prior));
        let of_card = |effect: &Effect| effect.is_of_the_card(prior);
        // In an order that does not hang on that of the table.
        effects
            .sort_by_key(|effect| (effect.level != Level::Day, of_card(effect), effect.rank()));
        let of_the_day = effects.iter().filter(|effect| effect.level == Level::Day).count();
        let mut at = of_the_day;
        let own = effects[of_the_day..].chunk_by(Effect::is_same_thing).filter_map(|levels| {
            let first = at;
            at += levels.len();
            Some(Own { levels: (first..at).collect(), whole: Effect::whole(levels.iter())? })
        });
        let (own, card) = (own.collect(), effects.iter().map(of_card).collect());
        Self { setup, minutes, effects, places: Vec::new(), card, own }
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

    /// The bag with the day's deviates, some of them moved, and one effect more by a deviate.
    pub(super) fn bag(
        &self,
        prior: &Prior,
        day: &[f64],
        moved: &[(usize, f64)],
        more: Option<(&Effect, f64)>,
    ) -> (Setup, Parameters) {
        let (mut setup, mut parameters) = (self.setup.clone(), typical(prior));
        for (at, (effect, place)) in self.effects.iter().zip(&self.places).enumerate() {
            let by = moved.iter().find(|(one, _)| *one == at).map_or(0.0, |(_, by)| *by);
            let z = day[*place] + by;
            if z != 0.0 {
                effect.apply(prior, z, &mut setup, &mut parameters);
            }
        }
        if let Some((effect, z)) = more {
            effect.apply(prior, z, &mut setup, &mut parameters);
        }
        (setup, parameters)
    }

    /// The gas of a bag at the minutes.
    pub(super) fn gas(
        &self,
        bag: &Mixture,
        setup: &Setup,
        fine: f64,
    ) -> Result<Gas<'_>, SetupError> {
        let mut gas = Gas::new(setup, bag, &self.minutes);
        let last = self.minutes.last().copied().unwrap_or(0.0);
        let start = -setup.wet_before_zero_min.max(0.0);
        bag.solve(start, bag.start(), last, &tolerance(fine), &mut |stretch| {
            gas.see(bag, stretch);
            ControlFlow::Continue(())
        })?;
        Ok(gas)
    }

    /// Rise at each minute.
    pub(super) fn rises(&self, prior: &Prior, day: &[f64]) -> Result<Vec<f64>, SetupError> {
        Ok(Base::new(self, prior, day, FINE)?.rises)
    }

    /// Rises with their slopes; effects that are not live are left out. What is not of the day is taken
    /// from a look before, if there is one from nearly the same place.
    pub(super) fn look(
        &self,
        prior: &Prior,
        around: &Around,
        live: &[bool],
        before: Option<&Seen>,
    ) -> Result<Seen, SetupError> {
        let base = Base::new(self, prior, around.deviates, around.fine)?;
        let mut rises = base.rises.clone();
        let mut add =
            |bend: &[f64]| rises.iter_mut().zip(bend).for_each(|(sum, bend)| *sum += bend);
        let tried = |at: &usize| around.only.is_none_or(|only| only[self.places[*at]]);
        let (numbers, others): (Vec<usize>, Vec<usize>) =
            (0..self.places.len()).filter(|at| live[*at]).partition(tried);
        let root = self.root(&numbers, around);
        let mut along = Vec::with_capacity(numbers.len());
        for (column, first) in numbers.iter().enumerate() {
            let reach = self.effects[*first].reach();
            let tried = |way: f64| {
                let rows = numbers.iter().zip(&root).skip(column);
                let moved: Vec<_> = rows.map(|(at, row)| (*at, way * row[column])).collect();
                base.tried(&moved, None, self.card[*first])
            };
            let (slope, bend) = base.either(&tried(reach)?, &tried(-reach)?, reach);
            along.push(slope);
            add(&bend);
        }
        let mut slopes = vec![vec![0.0; base.rises.len()]; self.effects.len()];
        for (at, slope) in numbers.iter().zip(along_axes(&root, along)) {
            slopes[*at] = slope;
        }
        let mut own_bend = vec![0.0; base.rises.len()];
        if let Some(before) = before {
            others.iter().for_each(|at| slopes[*at].clone_from(&before.slopes[*at]));
            slopes[self.places.len()..].clone_from_slice(&before.slopes[self.places.len()..]);
            own_bend.clone_from(&before.own_bend);
        } else {
            for own in self.own.iter().filter(|own| live[own.levels[0]]) {
                let (whole, reach) = (&own.whole, own.whole.reach());
                let same = self.card[own.levels[0]];
                let tried = |way: f64| base.tried(&[], Some((whole, way)), same);
                let (slope, bend) = base.either(&tried(reach)?, &tried(-reach)?, reach);
                own_bend.iter_mut().zip(&bend).for_each(|(sum, bend)| *sum += bend);
                for at in &own.levels {
                    let share = self.effects[*at].share_of(whole);
                    slopes[*at] = slope.iter().map(|value| share * value).collect();
                }
            }
        }
        add(&own_bend);
        let beyond = rises.iter().zip(&base.rises).map(|(mean, rise)| mean - rise).collect();
        Ok(Seen { rises, beyond, own_bend, slopes })
    }

    /// The triangle of the covariance of some effects of the day.
    fn root(&self, numbers: &[usize], around: &Around) -> Vec<Vec<f64>> {
        let entry = |row: &usize, column: &usize| {
            let kept = row == column || !around.apart;
            let (row, column) = (self.places[*row], self.places[*column]);
            if kept { around.covariance[row][column] } else { 0.0 }
        };
        let row = |row| numbers.iter().map(|column| entry(row, column)).collect();
        lower_triangle(&numbers.iter().map(row).collect::<Vec<_>>())
    }
}
