//! Running every draw.

use super::bands::Series;
use super::deck::Deck;
use super::{Forecast, SetupError, Span, Streams, VENT_FILL};
use crate::model::card::CardOnBag;
use crate::model::course::tolerance;
use crate::model::following::Stretch;
use crate::model::state::{CELSIUS, ETHANOL, GAS, STATES, State};
use crate::model::{Mixture, Parameters, validity};
use crate::ode::Tolerance;
use crate::prior::Prior;
use crate::setup::Setup;
use crate::stoichiometry::ETHANOL as ETHANOL_MASS;
use crate::units::Pascal;
use core::ops::ControlFlow;

/// Tolerance of one draw up to the last reading: errors far below what the draws differ by.
static COARSE: Tolerance<STATES> = tolerance(1e-4);

/// Tolerance after it, where only the time of filling counts.
static LOOSE: Tolerance<STATES> = tolerance(1e-3);

/// Moment at which a step is cut to find when the bag is full (min).
const FINEST_MIN: f64 = 1e-3;

pub(super) fn run(
    setup: &Setup,
    span: &Span,
    streams: &Streams,
    prior: &Prior,
) -> Result<Forecast, SetupError> {
    let deck = Deck::new(setup, streams, prior, span.draws);
    let typical = prior.typical(setup);
    let empty = || Series::filled(span.draws, span.last_minute, 0.0);
    let mut forecast = Forecast {
        rise_mm: empty(),
        gas_ml: empty(),
        ethanol_g: empty(),
        celsius: empty(),
        fill_at_last: Vec::with_capacity(span.draws),
        full_at_min: Vec::with_capacity(span.draws),
        solution_l: Vec::with_capacity(span.draws),
        pressure: Pascal(setup.pressure_pa),
        beyond: validity::beyond(&typical.setup, &typical.parameters, span.last_minute)?,
    };
    for k in 0..span.draws {
        let (dealt, parameters) = deck.deal(k);
        let bag = Bag::new(&dealt, &parameters);
        bag.follow(k, span, &mut forecast)?;
    }
    Ok(forecast)
}

/// One draw's bag.
struct Bag {
    mixture: Mixture,
    card: CardOnBag,
    wet_min: f64,
    /// Gas with air at which it must be vented (mL).
    full_ml: f64,
}

impl Bag {
    fn new(setup: &Setup, parameters: &Parameters) -> Self {
        let mixture = Mixture::new(setup, parameters);
        let card = CardOnBag::new(setup, &mixture, parameters);
        let full_ml = card.gas_at_fill_ml(VENT_FILL);
        Self { mixture, card, wet_min: setup.wet_before_zero_min, full_ml }
    }

    fn follow(&self, k: usize, span: &Span, forecast: &mut Forecast) -> Result<(), SetupError> {
        let mixture = &self.mixture;
        let last = f64::from(span.last_minute);
        let mut full_at: Option<f64> = None;
        let mut last_ml = 0.0;
        let mut zero_mm = 0.0;
        let mut next = 0;
        let mut note = |next: u32, y: &Noted, forecast: &mut Forecast| {
            let minute = next as usize;
            let ml_per_mmol = mixture.wet_at(y.celsius, 1.0);
            let gas_ml = y.gas * ml_per_mmol;
            let with_air_ml = (y.gas + mixture.air_mmol()) * ml_per_mmol;
            let height = self.card.height_mm(with_air_ml);
            if next == 0 {
                zero_mm = height;
            }
            last_ml = with_air_ml;
            forecast.rise_mm.draw_mut(k)[minute] = height - zero_mm;
            forecast.gas_ml.draw_mut(k)[minute] = gas_ml;
            forecast.ethanol_g.draw_mut(k)[minute] = 1e-3 * ETHANOL_MASS.value * y.ethanol;
            forecast.celsius.draw_mut(k)[minute] = y.celsius;
        };
        let start = mixture.start();
        if self.wet_min <= 0.0 {
            note(
                0,
                &Noted { celsius: start[CELSIUS], gas: start[GAS], ethanol: start[ETHANOL] },
                forecast,
            );
            next = 1;
        }
        let reading = mixture.solve(-self.wet_min, start, last, &COARSE, &mut |stretch| {
            while next <= span.last_minute && f64::from(next) <= stretch.t1() {
                note(next, &Noted::at(stretch, f64::from(next)), forecast);
                next += 1;
            }
            if full_at.is_none() && self.is_full(&stretch.end()) {
                full_at = Some(self.full_in(stretch));
            }
            ControlFlow::Continue(())
        })?;
        let end = 60.0 * span.until_hours;
        if full_at.is_none() && end > last && self.can_fill(&reading.y, last) {
            mixture.solve(last, &reading.y, end, &LOOSE, &mut |stretch| {
                if self.is_full(&stretch.end()) {
                    full_at = Some(self.full_in(stretch));
                    return ControlFlow::Break(());
                }
                ControlFlow::Continue(())
            })?;
        }
        forecast.fill_at_last.push(self.card.fill(last_ml));
        // A bag that is full before its zero reading is full at it.
        forecast.full_at_min.push(full_at.map(|minute| minute.max(0.0)));
        forecast.solution_l.push(mixture.solution_l());
        Ok(())
    }

    fn is_full(&self, y: &State) -> bool {
        self.mixture.gas_with_air_ml(y) >= self.full_ml
    }

    /// Whether all that is left could still fill the bag. Most bags that never fill show it by
    /// this and need not be followed.
    fn can_fill(&self, y: &State, minute: f64) -> bool {
        self.mixture.most_gas_ml(y, minute) >= self.full_ml
    }

    /// Minute inside a stretch at which the bag is full.
    fn full_in(&self, stretch: &dyn Stretch) -> f64 {
        let (mut low, mut high) = (stretch.t0(), stretch.t1());
        while high - low > FINEST_MIN {
            let middle = 0.5 * (low + high);
            if self.is_full(&stretch.at(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        high
    }
}

/// The states that a forecast keeps.
struct Noted {
    celsius: f64,
    gas: f64,
    ethanol: f64,
}

impl Noted {
    fn at(stretch: &dyn Stretch, minute: f64) -> Self {
        Self {
            celsius: stretch.one_at(CELSIUS, minute),
            gas: stretch.one_at(GAS, minute),
            ethanol: stretch.one_at(ETHANOL, minute),
        }
    }
}
