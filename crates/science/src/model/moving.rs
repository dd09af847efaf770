//! Which states of a bag move.
//!
//! A bag without starch has none at any minute, and an enzyme that was not put in never appears.
//! Solvers carry only states that move; the others stand where they are. Which those are is found by
//! asking the rates themselves, so no law is written twice, and a new one is seen at once.

use super::mixture::Mixture;
use super::state::{CELSIUS, STATES, State};
use crate::ode::System;

/// Temperature at which the rates are asked (°C): hot enough for all that warmth can start.
const HOT: f64 = 100.0;

/// What is put to a state that moves before the rates are asked again (in its unit).
const SOME: f64 = 1.0;

/// A bag seen through `N` of its states, the others standing still.
pub(super) struct Few<'a, const N: usize> {
    bag: &'a Mixture,
    /// Which states they are.
    pub(super) places: [usize; N],
    /// How many of them move, which come first.
    moving: usize,
    pub(super) standing: &'a State,
}

impl<const N: usize> Few<'_, N> {
    pub(super) fn chosen(&self, whole: &State) -> [f64; N] {
        let mut few = [0.0; N];
        for (value, place) in few.iter_mut().zip(&self.places) {
            *value = whole[*place];
        }
        few
    }

    pub(super) fn whole(&self, few: &[f64; N]) -> State {
        let mut whole = *self.standing;
        for (place, value) in self.places.iter().zip(few) {
            whole[*place] = *value;
        }
        whole
    }
}

impl<const N: usize> System<N> for Few<'_, N> {
    fn rates(&self, minute: f64, few: &[f64; N]) -> [f64; N] {
        self.chosen(&self.bag.rates(minute, &self.whole(few)))
    }

    fn smallest(&self, index: usize) -> f64 {
        self.bag.smallest(self.places[index])
    }

    fn is_read(&self, index: usize) -> bool {
        index < self.moving && self.bag.is_read(self.places[index])
    }
}

impl<'a> Few<'a, STATES> {
    /// All states, those first that move from `y` on.
    ///
    /// ```text
    /// ask the rates at y, made hot; what has a rate moves; put some to it; ask again until no more does
    /// ```
    ///
    /// What has no rate while there is some of everything that moves never gets one.
    fn of(bag: &'a Mixture, minute: f64, y: &'a State) -> Self {
        let mut moves = [false; STATES];
        let mut asked = *y;
        asked[CELSIUS] = HOT;
        loop {
            let rates = bag.rates(minute, &asked);
            let mut more = false;
            for place in 0..STATES {
                if rates[place] != 0.0 && !moves[place] {
                    moves[place] = true;
                    asked[place] += SOME;
                    more = true;
                }
            }
            if !more {
                break;
            }
        }
        let (mut places, mut next) = ([0; STATES], 0);
        for first in [true, false] {
            for place in (0..STATES).filter(|place| moves[*place] == first) {
                places[next] = place;
                next += 1;
            }
        }
        let moving = moves.iter().filter(|moves| **moves).count();
        Self { bag, places, moving, standing: y }
    }

    /// The first of them.
    fn first<const N: usize>(&self) -> Few<'a, N> {
        let places = core::array::from_fn(|i| self.places[i]);
        Few { bag: self.bag, places, moving: self.moving, standing: self.standing }
    }
}

/// What is to be done with a bag seen through few states.
pub(super) trait Task {
    type Done;

    fn with<const N: usize>(self, few: &Few<'_, N>) -> Self::Done;
}

/// Does a task with a bag seen through as few states as there are sizes for.
pub(super) fn with_few<T: Task>(bag: &Mixture, minute: f64, y: &State, task: T) -> T::Done {
    let all = Few::of(bag, minute, y);
    // Sugar and yeast move thirteen; each enzyme and its starch a few more.
    match all.moving {
        0..=6 => task.with(&all.first::<6>()),
        7..=14 => task.with(&all.first::<14>()),
        15..=20 => task.with(&all.first::<20>()),
        _ => task.with(&all),
    }
}
