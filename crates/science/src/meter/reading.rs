//! One reading with all that has to be taken off it.

use super::chain::{Liquid, gas_mg_per_l};
use super::dilution::Sample;
use super::drift::{Blank, Zero, shown_sd};
use super::standards::MeterPosterior;
use super::{EQUILIBRIUM, MeterError, MeterEstimate, SAMPLING, Z95, at_end_of_range};
use crate::ethanol::RATIO_SD;

/// One meter on one day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meter {
    /// Highest reading of the display (%).
    pub range_percent: f64,
    /// Step of the display (%).
    pub step_percent: f64,
    /// What is known of it.
    pub known: MeterPosterior,
    /// Its zero, turn by turn.
    pub zero: Zero,
}

/// A reading as it was taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// What the display showed (%).
    pub percent: f64,
    /// Its place in the meter's order of the period, counting blanks, from 1.
    pub turn: Option<u32>,
    /// The liquid under the gas.
    pub liquid: Liquid,
    /// What was held to the meter.
    pub sample: Sample,
}

/// A reading after correction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Corrected {
    /// What the display showed (%).
    pub shown: f64,
    /// Without the zero of its turn, as over unthinned gas (%).
    pub percent: f64,
    /// Ethanol in the liquid if gas and liquid were in equilibrium (g/L), by the meter's gain as far as
    /// that is known; 0 if no ethanol shows.
    pub g_per_l: f64,
    /// Relative standard deviation of what this reading has of its own (1): the push, the dilution, how
    /// far from equilibrium, and loss on the way.
    pub own_sd: f64,
    /// Relative standard deviation that the doubt about the zero brings (1): it hits all readings of a
    /// meter in the same sense, small ones more.
    pub zero_sd: f64,
    /// Relative standard deviation that the doubt about the temperature brings (1).
    pub thermal_sd: f64,
    /// The most ethanol that may be there unseen (g/L): where no ethanol shows.
    pub unseen_g_per_l: f64,
    /// The display stood at the end of its range: there is at least so much.
    pub at_least: bool,
}

impl Corrected {
    /// Whether ethanol shows beyond what clean air may show.
    pub fn shows(&self) -> bool {
        self.g_per_l > 0.0
    }
}

impl Meter {
    /// A meter with its blanks of the day.
    pub fn new(
        known: MeterPosterior,
        blanks: &[Blank],
        range_percent: f64,
        step_percent: f64,
    ) -> Self {
        let zero = Zero::of(&known, blanks, step_percent);
        Self { range_percent, step_percent, known, zero }
    }

    /// A usual meter that nobody has checked, without a blank.
    pub fn usual() -> Self {
        let (range, step) = (super::USUAL_RANGE.value, super::STEP.value);
        Self::new(MeterPosterior::UNCHECKED, &[], range, step)
    }

    /// The zero at a turn and its standard deviation (%).
    pub fn zero_at(&self, turn: Option<u32>) -> (f64, f64) {
        self.zero.at(turn)
    }

    /// Takes zero, dilution and temperature off a reading.
    ///
    /// ```text
    /// C = (R − zero(turn)) f/gain · 1000/210 · K(liquid)/1000
    /// ```
    ///
    /// No ethanol shows where the display shows 0.00, or where R is not above the zero by 1.96 standard
    /// deviations of it and the push.
    ///
    /// # Errors
    /// [`MeterError::NotAReading`], [`MeterError::AboveRange`] and [`MeterError::NotASample`].
    pub fn corrected(&self, reading: &Reading) -> Result<Corrected, MeterError> {
        let at_least = at_end_of_range(reading.percent, self.range_percent)?;
        let factor = reading.sample.factor()?;
        let (zero, zero_sd) = self.zero.at(reading.turn);
        let push_sd = shown_sd(self.step_percent);
        let net = reading.percent - zero;
        let to_liquid = |percent: f64| {
            let gas = gas_mg_per_l(factor * percent / libm::exp(self.known.log_gain));
            1e-3 * gas * reading.liquid.ratio()
        };
        let seen_from = Z95 * libm::hypot(zero_sd, push_sd);
        let shows = at_least || net > seen_from && reading.percent >= 0.5 * self.step_percent;
        let share = |sd: f64| if net > 0.0 { sd / net } else { f64::INFINITY };
        let own =
            [share(push_sd), reading.sample.log_sd(), EQUILIBRIUM.log_sd(), SAMPLING.log_sd()];
        Ok(Corrected {
            shown: reading.percent,
            percent: factor * net,
            g_per_l: if shows { to_liquid(net) } else { 0.0 },
            own_sd: own.into_iter().fold(0.0, libm::hypot),
            zero_sd: share(zero_sd),
            thermal_sd: reading.liquid.thermal_sd(),
            unseen_g_per_l: to_liquid(net.max(0.0) + seen_from),
            at_least,
        })
    }

    /// Ethanol in a bag's liquid from one reading, with what the meter leaves open.
    ///
    /// The gain of a meter that was never checked is that of a perfect one within a factor of two, and
    /// the losses on the way then lie all on one side.
    ///
    /// # Errors
    /// Those of [`Self::corrected`].
    pub fn estimate(&self, reading: &Reading) -> Result<MeterEstimate, MeterError> {
        let found = self.corrected(reading)?;
        let shared = libm::hypot(self.known.log_gain_sd, RATIO_SD.value);
        if !found.shows() {
            let high =
                found.unseen_g_per_l * libm::exp(Z95 * libm::hypot(shared, found.thermal_sd));
            return Ok(MeterEstimate {
                g_per_l: 0.0,
                low_g_per_l: 0.0,
                high_g_per_l: high,
                at_least: false,
            });
        }
        let own = libm::hypot(found.own_sd, libm::hypot(found.zero_sd, found.thermal_sd));
        let spread = libm::exp(Z95 * libm::hypot(shared, own));
        let lost = |fact: &crate::fact::Fact| fact.range.map_or(fact.value, |(low, _)| low);
        let lag = if self.known.checked { 1.0 } else { lost(&EQUILIBRIUM) * lost(&SAMPLING) };
        Ok(MeterEstimate {
            g_per_l: found.g_per_l,
            low_g_per_l: found.g_per_l / spread,
            high_g_per_l: if found.at_least {
                f64::INFINITY
            } else {
                found.g_per_l * spread / lag
            },
            at_least: found.at_least,
        })
    }
}
