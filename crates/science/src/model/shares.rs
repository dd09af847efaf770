//! What a bag's pace hangs on, minute by minute: its shares of control.
//!
//! A share says by how many per cent the pace (or the gas so far) would change for one per cent
//! more of a thing: S = ∂ ln(pace) / ∂ ln(thing). At 1 the thing alone decides, at 0 it does not
//! matter. The shares are exact differences: each thing a ten-thousandth more and a
//! ten-thousandth less, followed by the same steps ([`crate::ode::lockstep`]), so that what is left
//! of error is the square of that.
//!
//! # Source
//! Shares of control after H. Kacser, J. A. Burns (1973), "The control of flux", *Symp. Soc. Exp.
//! Biol.* 27, 65-104, and R. Heinrich, T. A. Rapoport (1974), *Eur. J. Biochem.* 42, 89-95, there
//! for a steady state, here along the way. From memory.

use super::course::tolerance;
use super::minutes::Minutes;
use super::mixture::Mixture;
use super::parameters::Parameters;
use super::state::{
    COOKED, DEXTRIN, DISSOLVED, GALACTOSIDES, GAS, GLUCOSE, LACTOSE, MELIBIOSE, PERMEATED, RAW,
    State,
};
use crate::forecast::{self, SetupError};
use crate::ode::System;
use crate::ode::lockstep::Track;
use crate::setup::{Lying, Setup};
use crate::stoichiometry::HEXOSE;

/// Something that a bag could have had more of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Thing {
    /// Speed of waking: 1 / its time constant.
    Waking,
    /// Mass of yeast.
    Yeast,
    /// Mass of all foods.
    Food,
    /// Activity of all enzymes.
    Enzyme,
    /// Speed at which dissolved gas comes out.
    Release,
    /// Temperature of what is poured in, and of a tray (not a share: per kelvin).
    Warmth,
}

impl Thing {
    /// All, in the order of [`Shares`].
    pub const ALL: [Self; 6] =
        [Self::Waking, Self::Yeast, Self::Food, Self::Enzyme, Self::Release, Self::Warmth];
}

/// Shares of control, one for each of [`Thing::ALL`] (1; for warmth 1/K).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Shares([f64; Thing::ALL.len()]);

impl Shares {
    /// That of one thing.
    pub fn of(&self, thing: Thing) -> f64 {
        self.0[thing as usize]
    }
}

/// What counts at one minute.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Control {
    /// Minutes from the zero reading.
    pub minute: u32,
    /// Shares in the pace at which carbon dioxide is made at this minute.
    pub pace: Shares,
    /// Shares in the gas that has come so far, without what is still dissolved.
    pub gas: Shares,
    /// Carbon dioxide made so far (mmol).
    pub made_mmol: f64,
    /// Share of that which is still in the liquid (1).
    pub dissolved: f64,
    /// Pace over the pace that the same yeast would have at this moment with [`PLENTY`] of
    /// glucose more (1): near 1 the yeast is busy, near 0 it starves.
    pub busy: f64,
    /// Share of the carbohydrate that yeast cannot take in which is still uncut (1): starch, dextrin,
    /// milk sugar, raffinose and its like; 0 if there never was any.
    pub uncut: f64,
}

/// What yeast cannot take in before an enzyme has cut it.
const CLOSED: [usize; 6] = [RAW, COOKED, DEXTRIN, LACTOSE, GALACTOSIDES, MELIBIOSE];

/// Glucose of which yeast never has enough to go faster (g/L): some ten times its
/// half-saturation.
pub const PLENTY: f64 = 5.0;

/// By this share things are made more and less (1).
const NUDGE: f64 = 1e-4;
/// By this much warmer and cooler (K).
const NUDGE_KELVIN: f64 = 1e-3;
/// Relative tolerance of the steps.
const FINE: f64 = 1e-7;

/// What is compared between a bag and its twins.
#[derive(Clone, Copy, Default)]
struct Seen {
    pace: f64,
    gas: f64,
}

/// Follows a bag and its twins to `last_minute` and gives the shares at every whole minute from 0.
///
/// Nothing is made without yeast; then all shares are 0.
///
/// # Errors
/// [`SetupError`] for a setup that cannot be.
pub fn shares(
    setup: &Setup,
    parameters: &Parameters,
    last_minute: u32,
) -> Result<Vec<Control>, SetupError> {
    forecast::possible(setup)?;
    let bag = Mixture::new(setup, parameters);
    let mut base = Vec::new();
    let mut minutes = Minutes::new(setup.wet_before_zero_min, last_minute);
    if let Some(first) = minutes.at_once() {
        base.push((first, *bag.start()));
    }
    let (start, last) = (minutes.start(), f64::from(last_minute));
    let track = bag.track(start, last, &tolerance(FINE), &mut |stretch| {
        minutes.within(stretch, |minute, y| base.push((minute, y)));
    })?;
    let mut all: Vec<Control> =
        base.iter().map(|(minute, y)| at_a_minute(&bag, *minute, y)).collect();
    for thing in Thing::ALL {
        let twin = |less_or_more| {
            let (setup, parameters) = nudged(setup, parameters, thing, less_or_more);
            follow(&setup, &parameters, &track, last_minute)
        };
        let (less, more) = (twin(-1.0)?, twin(1.0)?);
        let apart = apart(thing);
        for ((control, less), more) in all.iter_mut().zip(less).zip(more) {
            control.pace.0[thing as usize] = slope(less.pace, more.pace, apart);
            control.gas.0[thing as usize] = slope(less.gas, more.gas, apart);
        }
    }
    Ok(all)
}

/// Logarithms (for warmth: kelvins) between the two twins.
fn apart(thing: Thing) -> f64 {
    match thing {
        Thing::Warmth => 2.0 * NUDGE_KELVIN,
        _ => libm::log1p(NUDGE) - libm::log1p(-NUDGE),
    }
}

/// Slope of the logarithm; 0 where nothing is made.
fn slope(less: f64, more: f64, apart: f64) -> f64 {
    if less > 0.0 && more > 0.0 { libm::log(more / less) / apart } else { 0.0 }
}

/// The setup and parameters with a little more, or less, of a thing.
fn nudged(
    setup: &Setup,
    parameters: &Parameters,
    thing: Thing,
    less_or_more: f64,
) -> (Setup, Parameters) {
    let (mut setup, mut parameters) = (setup.clone(), *parameters);
    let factor = 1.0 + less_or_more * NUDGE;
    match thing {
        Thing::Waking => parameters.wake /= factor,
        Thing::Yeast => {
            if let Some(yeast) = &mut setup.yeast {
                yeast.grams *= factor;
            }
        }
        Thing::Food => setup.foods.iter_mut().for_each(|food| food.grams *= factor),
        Thing::Enzyme => setup.enzymes.iter_mut().for_each(|enzyme| enzyme.units *= factor),
        Thing::Release => parameters.release *= factor,
        Thing::Warmth => {
            let kelvin = less_or_more * NUDGE_KELVIN;
            setup.water_celsius += kelvin;
            if let Lying::WarmTray { celsius } = &mut setup.lying {
                *celsius += kelvin;
            }
        }
    }
    (setup, parameters)
}

fn follow(
    setup: &Setup,
    parameters: &Parameters,
    track: &Track,
    last_minute: u32,
) -> Result<Vec<Seen>, SetupError> {
    let twin = Mixture::new(setup, parameters);
    let mut seen = Vec::new();
    let mut minutes = Minutes::new(setup.wet_before_zero_min, last_minute);
    if let Some(first) = minutes.at_once() {
        seen.push(look(&twin, first, twin.start()));
    }
    twin.retrace(minutes.start(), track, &mut |stretch| {
        minutes.within(stretch, |minute, y| seen.push(look(&twin, minute, &y)));
    })?;
    Ok(seen)
}

/// Carbon dioxide made per minute (mmol/min): what comes into liquid, gas and room together.
fn pace(bag: &Mixture, minute: u32, y: &State) -> f64 {
    let change = bag.rates(f64::from(minute), y);
    change[DISSOLVED] + change[GAS] + change[PERMEATED]
}

fn look(bag: &Mixture, minute: u32, y: &State) -> Seen {
    Seen { pace: pace(bag, minute, y), gas: bag.wet_ml(y, y[GAS]) }
}

fn at_a_minute(bag: &Mixture, minute: u32, y: &State) -> Control {
    let dissolved = y[DISSOLVED] - bag.start()[DISSOLVED];
    let made_mmol = dissolved + y[GAS] + y[PERMEATED];
    let mut fed = *y;
    fed[GLUCOSE] += 1e3 * PLENTY * bag.solution_l() / HEXOSE.value;
    let (now, most) = (pace(bag, minute, y), pace(bag, minute, &fed));
    let closed = |y: &State| -> f64 { CLOSED.iter().map(|place| y[*place]).sum() };
    let at_first = closed(bag.start());
    Control {
        minute,
        pace: Shares::default(),
        gas: Shares::default(),
        made_mmol,
        dissolved: if made_mmol > 0.0 { (dissolved / made_mmol).clamp(0.0, 1.0) } else { 0.0 },
        busy: if most > 0.0 { (now / most).min(1.0) } else { 0.0 },
        uncut: if at_first > 0.0 { (closed(y) / at_first).clamp(0.0, 1.0) } else { 0.0 },
    }
}
