//! A bag of plain water that cools.

use super::numbers::{Told, through, told};
use super::readings::{Seen, Temperature};
use crate::plan::{Day, Lies, Plan, Recipe};
use barm_science::fact::Fact;
use barm_science::fit::{Problem, least_squares};
use barm_science::model::{Parameters, run};
use barm_science::prior::{Learned, Row, standard};
use barm_science::setup::Setup;

/// The bag of plain water of a pilot.
#[derive(Debug, Clone, PartialEq)]
pub struct Dummy {
    /// What goes into it: the plan's water in the plan's bag.
    pub recipe: Recipe,
    /// Minutes after it was filled at which it is read.
    pub minutes: Vec<u32>,
}

/// Of one thermometer, between two readings of one bag (K).
pub(super) const READ_SD: Fact = Fact::memory(
    "pilot.thermometer_sd",
    0.5,
    "K",
    "a strip or thermometer in the fold of a bag, read to a degree; common practice, no source",
)
.within((0.3, 1.0));

/// Of the room as the bag feels it (K).
pub(super) const ROOM_SD: Fact = Fact::memory(
    "pilot.room_sd",
    1.0,
    "K",
    "bench and air differ from what a thermometer on the wall says; judgement",
)
.within((0.5, 2.0));

/// Minutes at which it is read.
const MINUTES: [u32; 4] = [0, 5, 10, 20];
/// Water that is less warm than this over the room says little of cooling (K).
const OVER_ROOM_K: f64 = 10.0;
/// Water that is taken instead (°C).
const WARM_CELSIUS: f64 = 40.0;
/// Of the first temperature as far as the water's own is not known better (K).
const START_SD: f64 = 5.0;

pub(super) fn dummy(plan: &Plan, day: &Day) -> Dummy {
    let warm = (plan.base.water_celsius - day.room_celsius).abs() >= OVER_ROOM_K;
    // In a tray a bag is as warm as the tray, however it cools.
    let lies = match plan.base.lies {
        Lies::Towel => Lies::Towel,
        Lies::Bench | Lies::WarmTray(_) => Lies::Bench,
    };
    let recipe = Recipe {
        water_celsius: if warm { plan.base.water_celsius } else { WARM_CELSIUS },
        yeast: None,
        food: None,
        food_amount: None,
        enzyme: None,
        enzyme_amount: None,
        extras: Vec::new(),
        lies,
        ..plan.base.clone()
    };
    Dummy { recipe, minutes: MINUTES.to_vec() }
}

/// What its temperatures say of how bags lose heat.
///
/// The bag model follows it with three unknowns: the logarithm of the loss, normal as it was known
/// before; the temperature at the start; and how far the room is off what was measured. They are
/// found by least squares (maximum a posteriori).
pub(super) fn cooled(
    before: &Learned,
    setup: &Setup,
    readings: &[Seen<Temperature>],
) -> Learned {
    let Some(heat) = standard().into_iter().find(|row| row.name == HEAT) else {
        return before.clone();
    };
    let (share, own) = (heat.spread.day, heat.spread.bag);
    let known = through(before, &[HEAT], share, own);
    let first = readings.first().map_or(setup.water_celsius, |first| first.value.celsius);
    let setup =
        Setup { water_celsius: first, wet_before_zero_min: 0.0, yeast: None, ..setup.clone() };
    let (mean, variance) = (known.mean[0], known.covariance[0][0]);
    let bag = Cooling { setup, heat, readings, mean, sd: variance.sqrt() };
    let Ok(found) = least_squares(&bag, &[mean, 0.0, 0.0]) else { return before.clone() };
    let Some(covariance) = found.unscaled_covariance else { return before.clone() };
    let seen = Told {
        mean: vec![found.parameters[0]],
        // Never wider than before: the curve can bend, knowledge is not lost by looking.
        covariance: vec![vec![covariance[0][0].min(variance)]],
        own,
    };
    told(before, &[HEAT], share, &seen)
}

/// Name of the number.
pub(super) const HEAT: &str = "heat";

struct Cooling<'a> {
    setup: Setup,
    heat: Row,
    readings: &'a [Seen<Temperature>],
    mean: f64,
    sd: f64,
}

impl Cooling<'_> {
    /// Temperatures at the minutes that were read (°C).
    fn expected(&self, loss: f64, warmer: f64, room: f64) -> Option<Vec<f64>> {
        let setup = Setup {
            water_celsius: self.setup.water_celsius + warmer,
            room_celsius: self.setup.room_celsius + room,
            ..self.setup.clone()
        };
        let mut parameters = Parameters::median();
        let value = (self.heat.place)(&mut parameters);
        *value = self.heat.transform.moved(*value, 1.0, loss);
        let last = self.readings.iter().map(|one| one.value.minute).fold(0.0, f64::max);
        let moments = run(&setup, &parameters, last.ceil() as u32).ok()?.moments;
        let at = |minute: f64| {
            let whole = (minute.floor() as usize).min(moments.len() - 1);
            let next = (whole + 1).min(moments.len() - 1);
            let part = minute - whole as f64;
            moments[whole].celsius * (1.0 - part) + moments[next].celsius * part
        };
        Some(self.readings.iter().map(|one| at(one.value.minute)).collect())
    }
}

impl Problem for Cooling<'_> {
    fn count(&self) -> usize {
        self.readings.len() + 3
    }

    fn residuals(&self, at: &[f64], out: &mut [f64]) {
        let Some(expected) = self.expected(at[0], at[1], at[2]) else {
            out.fill(f64::NAN);
            return;
        };
        for ((one, expected), out) in self.readings.iter().zip(&expected).zip(out.iter_mut()) {
            *out = (one.value.celsius - expected) / READ_SD.value;
        }
        let prior = [(self.mean - at[0]) / self.sd, -at[1] / START_SD, -at[2] / ROOM_SD.value];
        out[self.readings.len()..].copy_from_slice(&prior);
    }
}
