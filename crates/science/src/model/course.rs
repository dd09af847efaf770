//! Following one bag through time.

use super::card::CardOnBag;
use super::minutes::Minutes;
use super::mixture::Mixture;
use super::parameters::Parameters;
use super::state::{
    ALIVE, AWAKE, CELSIUS, DISSOLVED, ENZYMES, ETHANOL, GALACTOSE_INDUCED, GAS, INDUCED,
    PERMEATED, STATES, State,
};
use crate::forecast::{self, SetupError};
use crate::ode::{self, Effort, OdeError, Tolerance};
use crate::setup::Setup;
use crate::stoichiometry::ETHANOL as ETHANOL_MASS;
use core::ops::ControlFlow;

/// A bag at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// Minutes from the zero reading; negative before it.
    pub minute: f64,
    /// Temperature of the contents (°C).
    pub celsius: f64,
    /// Rise of the card above the zero reading (mm).
    pub rise_mm: f64,
    /// Wet gas made and present, without the trapped air (mL).
    pub gas_ml: f64,
    /// Liquid, solids, gas and air over the bag's capacity (1).
    pub fill: f64,
    /// Ethanol in the whole bag (g).
    pub ethanol_g: f64,
    /// Ethanol in the liquid (g/L).
    pub ethanol_g_per_l: f64,
    /// Inorganic carbon in the liquid, in all its forms (mmol); near pH 5 nearly all is carbon dioxide.
    pub dissolved_mmol: f64,
    /// Carbon dioxide that went through the film (mmol).
    pub permeated_mmol: f64,
    /// Everything else.
    pub state: State,
}

/// One bag, minute by minute.
#[derive(Debug, Clone, PartialEq)]
pub struct Trajectory {
    /// Every whole minute from the zero reading to the last one.
    pub moments: Vec<Moment>,
    /// What the solver did.
    pub effort: Effort,
}

/// Tolerances: `relative`, and absolute ones that fit the size of each state: `relative` kelvin,
/// shares and mmol; activities, which may be small, a thousandth of that.
pub const fn tolerance(relative: f64) -> Tolerance<STATES> {
    let mut absolute = [relative; STATES];
    let mut i = 0;
    while i < STATES {
        if i >= ENZYMES {
            absolute[i] = 1e-3 * relative;
        } else if matches!(i, AWAKE | ALIVE | INDUCED | GALACTOSE_INDUCED) {
            absolute[i] = 0.1 * relative;
        }
        i += 1;
    }
    Tolerance { relative, absolute }
}

/// Relative tolerance of a single run (1).
const FINE: f64 = 1e-7;

/// Follows a bag from wetting, `wet_before_zero_min` before minute 0, to `last_minute`, showing
/// the state at every whole minute from 0 on.
///
/// # Errors
/// [`OdeError`] from the solver.
pub fn sample(
    mixture: &Mixture,
    wet_before_zero_min: f64,
    last_minute: u32,
    tolerance: &Tolerance<STATES>,
    mut show: impl FnMut(u32, &State),
) -> Result<ode::End<STATES>, OdeError> {
    let mut minutes = Minutes::new(wet_before_zero_min, last_minute);
    if let Some(first) = minutes.at_once() {
        show(first, mixture.start());
    }
    let (start, last) = (minutes.start(), f64::from(last_minute));
    mixture.solve(start, mixture.start(), last, tolerance, &mut |stretch| {
        minutes.within(stretch, |minute, y| show(minute, &y));
        ControlFlow::Continue(())
    })
}

/// Follows one bag with given parameters.
///
/// # Errors
/// [`SetupError`] for a setup that cannot be.
pub fn run(
    setup: &Setup,
    parameters: &Parameters,
    last_minute: u32,
) -> Result<Trajectory, SetupError> {
    forecast::possible(setup)?;
    let mixture = Mixture::new(setup, parameters);
    follow(setup, &mixture, last_minute)
}

/// Follows a bag that was put together before.
///
/// # Errors
/// [`SetupError`] when the solver finds no solution.
pub fn follow(
    setup: &Setup,
    mixture: &Mixture,
    last_minute: u32,
) -> Result<Trajectory, SetupError> {
    let card = CardOnBag::new(setup, mixture, &mixture.parameters);
    let mut moments: Vec<Moment> = Vec::with_capacity(last_minute as usize + 1);
    let mut zero = 0.0;
    let wet = setup.wet_before_zero_min;
    let end = sample(mixture, wet, last_minute, &tolerance(FINE), |minute, y| {
        let with_air = mixture.gas_with_air_ml(y);
        let height = card.height_mm(with_air);
        if minute == 0 {
            zero = height;
        }
        let ethanol_g = 1e-3 * ETHANOL_MASS.value * y[ETHANOL];
        moments.push(Moment {
            minute: f64::from(minute),
            celsius: y[CELSIUS],
            rise_mm: height - zero,
            gas_ml: mixture.wet_ml(y, y[GAS]),
            fill: card.fill(with_air),
            ethanol_g,
            ethanol_g_per_l: ethanol_g / mixture.solution_l(),
            dissolved_mmol: y[DISSOLVED],
            permeated_mmol: y[PERMEATED],
            state: *y,
        });
    })?;
    Ok(Trajectory { moments, effort: end.effort })
}

/// Follows one bag with the best guess of every parameter: a quick single curve.
///
/// # Errors
/// [`SetupError`] for a setup that cannot be.
pub fn nominal(setup: &Setup, last_minute: u32) -> Result<Trajectory, SetupError> {
    run(setup, &Parameters::median(), last_minute)
}
