//! Forecasts: many runs of the bag model with uncertain parameters, drawn so that two forecasts
//! of the same day can be subtracted draw by draw.

mod bands;
mod check;
mod compare;
mod deck;
mod directions;
mod ensemble;
mod ethanol;
mod sobol;
mod spread;
mod streams;

pub use bands::{Band, Series};
pub use check::{SetupError, possible};
pub use compare::{Difference, Unlike};
pub use ethanol::EthanolEstimate;
pub use streams::Streams;

use crate::bag::WORKING_FILL;
use crate::model::validity::Beyond;
use crate::prior::Prior;
use crate::setup::Setup;
use crate::units::Pascal;

/// How far and how finely to look ahead.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Minute of the last reading, counted from the zero reading.
    pub last_minute: u32,
    /// Number of draws.
    pub draws: usize,
    /// Hours after the zero reading up to which a bag's filling is followed.
    pub until_hours: f64,
}

impl Span {
    /// 512 draws, followed for 24 h.
    pub const fn to(last_minute: u32) -> Self {
        Self { last_minute, draws: 512, until_hours: 24.0 }
    }
}

/// What one kind of bag may do: every draw at every whole minute from the zero reading on.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    pub(crate) rise_mm: Series,
    pub(crate) gas_ml: Series,
    pub(crate) ethanol_g: Series,
    pub(crate) celsius: Series,
    pub(crate) fill_at_last: Vec<f64>,
    pub(crate) full_at_min: Vec<Option<f64>>,
    pub(crate) solution_l: Vec<f64>,
    pub(crate) pressure: Pascal,
    pub(crate) beyond: Vec<Beyond>,
}

/// Share of its capacity at which a bag must have been vented (1).
pub const VENT_FILL: f64 = WORKING_FILL.value;

impl Forecast {
    /// Rise of the card above the bag's own zero reading (mm).
    pub const fn rise_mm(&self) -> &Series {
        &self.rise_mm
    }

    /// Wet gas made and present in the bag, without the trapped air, at the bag's temperature
    /// and the local pressure (mL).
    pub const fn gas_ml(&self) -> &Series {
        &self.gas_ml
    }

    /// Ethanol in the whole bag (g).
    pub const fn ethanol_g(&self) -> &Series {
        &self.ethanol_g
    }

    /// Temperature of the bag's contents (°C).
    pub const fn celsius(&self) -> &Series {
        &self.celsius
    }

    /// Liquid and gas over the bag's own capacity at the last minute, one for each draw (1).
    pub fn fill_at_last(&self) -> &[f64] {
        &self.fill_at_last
    }

    /// Minute, counted from the zero reading, at which liquid and gas reach [`VENT_FILL`] of the
    /// bag's own capacity, one for each draw; nothing where that never happens in the time
    /// followed.
    pub fn full_at_min(&self) -> &[Option<f64>] {
        &self.full_at_min
    }

    /// Solution in the bag, starch and other solids not counted (L), one for each draw: what the
    /// ethanol is spread in.
    pub fn solution_l(&self) -> &[f64] {
        &self.solution_l
    }

    /// Fill at the last minute that 97.5 % of the draws stay below (1).
    pub fn peak_fill(&self) -> f64 {
        bands::quantile(&mut self.fill_at_last.clone(), 0.975)
    }

    /// Minute, counted from the zero reading, at which the 97.5th percentile of the fill reaches
    /// [`VENT_FILL`]; nothing when that never happens in the time followed.
    pub fn vent_by_min(&self) -> Option<f64> {
        let mut minutes: Vec<f64> = self.full_at_min.iter().flatten().copied().collect();
        minutes.sort_by(f64::total_cmp);
        // The first minute at which more than 2.5 % of the draws are full.
        minutes.get(self.full_at_min.len() / 40).copied()
    }

    /// Last minute of the forecast.
    pub fn last_minute(&self) -> u32 {
        self.rise_mm.last_minute()
    }

    /// Laws that the best guess of this bag goes beyond between wetting and the last minute.
    pub fn beyond(&self) -> &[Beyond] {
        &self.beyond
    }

    /// This forecast less `reference`, draw by draw.
    ///
    /// # Errors
    /// [`Unlike`] when the two do not have the same number of draws and the same last minute.
    pub fn minus(&self, reference: &Self) -> Result<Difference, Unlike> {
        compare::difference(self, reference)
    }
}

/// Forecasts one kind of bag.
///
/// What belongs to the day (the yeast's lot, how bags cool, what a label leaves open) comes from
/// `streams.day` and is the same for draw `k` of every forecast with that number. In the same way
/// the jug's temperature belongs to `streams.period`, and half of what spoons and hands scatter to
/// `streams.group`; the rest (and where the card lies) is the bag's own, `streams.bag`. The day's
/// numbers are the points of a scrambled net, all others Latin hypercubes: any number of draws will
/// do, and powers of two do best.
///
/// # Errors
/// [`SetupError`] names the field whose value cannot be, the value and what may be.
pub fn forecast(setup: &Setup, span: &Span, streams: &Streams) -> Result<Forecast, SetupError> {
    forecast_from(setup, span, streams, &Prior::default())
}

/// The same from another state of knowledge, such as one that a day's readings left.
///
/// # Errors
/// [`SetupError`] names the field whose value cannot be, the value and what may be.
pub fn forecast_from(
    setup: &Setup,
    span: &Span,
    streams: &Streams,
    prior: &Prior,
) -> Result<Forecast, SetupError> {
    possible(setup)?;
    check::span(span)?;
    ensemble::run(setup, span, streams, prior)
}
