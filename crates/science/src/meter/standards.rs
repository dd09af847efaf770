//! A meter checked with ethanol of known strength.

use super::chain::{Liquid, percent_over};
use super::drift::shown_sd;
use super::{EQUILIBRIUM, GAIN_SD, MeterError, SAMPLING, at_end_of_range};
use crate::fact::Fact;
use crate::fit::{Problem, least_squares};
use crate::units::Celsius;

/// Standard deviation of the zero of a meter that nobody has checked (%).
pub const ZERO_SD: Fact = Fact::memory(
    "meter.zero_sd",
    0.01,
    "%",
    "a meter that was blown clear shows 0.00 to 0.02 of clean air, from memory",
)
.within((0.005, 0.02));

/// Relative standard deviation of the strength of an ethanol standard (1).
const STRENGTH_SD: Fact = Fact::memory(
    "meter.strength_sd",
    0.03,
    "1",
    "a few millilitres of ethanol made up in a measuring cylinder; common practice, no source",
)
.within((0.01, 0.06));

/// Facts of this file.
pub const STANDARD_FACTS: &[Fact] = &[ZERO_SD, STRENGTH_SD];

/// What is known of one meter: plain numbers, to be kept with its name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterPosterior {
    /// Natural logarithm of what it shows over what it should (1); with the losses between a bag and the
    /// meter once it was checked in the same kind of bag.
    pub log_gain: f64,
    /// Standard deviation of that (1).
    pub log_gain_sd: f64,
    /// What it shows of clean air (%).
    pub zero: f64,
    /// Standard deviation of that (%).
    pub zero_sd: f64,
    /// Whether it was ever checked: its gain then holds the mean losses.
    pub checked: bool,
}

impl MeterPosterior {
    /// A meter that nobody has checked: right to a factor of about two.
    pub const UNCHECKED: Self = Self {
        log_gain: 0.0,
        log_gain_sd: GAIN_SD.value,
        zero: 0.0,
        zero_sd: ZERO_SD.value,
        checked: false,
    };

    /// Whether these are numbers that a check can have left. To be asked of what comes from a file.
    pub fn is_possible(&self) -> bool {
        self.log_gain.abs() < 5.0
            && self.zero.abs() < 1.0
            && self.log_gain_sd > 0.0
            && self.log_gain_sd <= GAIN_SD.value
            && self.zero_sd > 0.0
            && self.zero_sd <= ZERO_SD.value
    }
}

/// Water with ethanol of known strength in the same kind of bag, and what the meter showed of its gas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standard {
    /// Ethanol in the liquid (g/L); 0 for plain water.
    pub g_per_l: f64,
    /// Temperature of the liquid.
    pub celsius: Celsius,
    /// What the display showed (%).
    pub percent: f64,
}

/// Gain and zero of a meter from standards, such as 0.5 and 1.0 % by volume and plain water.
///
/// ```text
/// shown = zero + e^(log gain) percent(C, T + t) + e      t ~ N(0, 1 K), one thermometer for all
/// ```
///
/// e holds one push, the strength, and what differs from one sample to the next; log gain and zero begin
/// as they were known before.
///
/// # Source
/// Maximum a posteriori with the curvature there; the strengths are those of school practice.
/// # Errors
/// [`MeterError`] for no standard, one that cannot be, or one at the end of the meter's range.
pub fn checked(
    before: &MeterPosterior,
    standards: &[Standard],
    range_percent: f64,
    step_percent: f64,
) -> Result<MeterPosterior, MeterError> {
    if standards.is_empty() {
        return Err(MeterError::NoStandard);
    }
    for standard in standards {
        if !(0.0..=MOST_G_PER_L).contains(&standard.g_per_l) {
            return Err(MeterError::Strength { g_per_l: standard.g_per_l });
        }
        if !(0.0..=60.0).contains(&standard.celsius.0) {
            return Err(MeterError::Warmth { celsius: standard.celsius.0 });
        }
        if at_end_of_range(standard.percent, range_percent)? {
            return Err(MeterError::EndOfRange);
        }
    }
    let start = [before.log_gain, before.zero, 0.0];
    let mut check = Check { before, standards, half_step: 0.5 * step_percent, sd: Vec::new() };
    let mut found = start.to_vec();
    let mut sd = [before.log_gain_sd, before.zero_sd];
    // How far a strong standard may be off depends on the gain, which is what is looked for.
    for _ in 0..PASSES {
        check.sd = standards.iter().map(|one| doubt(one, found[0], step_percent)).collect();
        // Three rows are there whatever was shown, and every gain shows something.
        let Ok(fit) = least_squares(&check, &start) else { return Ok(*before) };
        if let Some(covariance) = &fit.unscaled_covariance {
            sd = [libm::sqrt(covariance[0][0]), libm::sqrt(covariance[1][1])];
        }
        found = fit.parameters;
    }
    let [log_gain_sd, zero_sd] = sd;
    Ok(MeterPosterior {
        log_gain: found[0],
        log_gain_sd,
        zero: found[1],
        zero_sd,
        checked: true,
    })
}

/// Strongest standard that is taken (g/L): 10 % by volume, far over any display.
const MOST_G_PER_L: f64 = 80.0;
const PASSES: usize = 3;

/// Standard deviation of what is shown of a standard (%), at that gain.
fn doubt(standard: &Standard, log_gain: f64, step_percent: f64) -> f64 {
    let percent = percent_over(standard.g_per_l, &Liquid::water(standard.celsius));
    let sample = libm::hypot(EQUILIBRIUM.log_sd(), SAMPLING.log_sd());
    let share = libm::hypot(STRENGTH_SD.value, sample);
    libm::hypot(shown_sd(step_percent), share * percent * libm::exp(log_gain))
}

struct Check<'a> {
    before: &'a MeterPosterior,
    standards: &'a [Standard],
    half_step: f64,
    sd: Vec<f64>,
}

impl Problem for Check<'_> {
    fn count(&self) -> usize {
        self.standards.len() + 3
    }

    fn residuals(&self, at: &[f64], out: &mut [f64]) {
        let (log_gain, zero, warmer) = (at[0], at[1], at[2]);
        for ((standard, sd), out) in self.standards.iter().zip(&self.sd).zip(out.iter_mut()) {
            let liquid = Liquid::water(standard.celsius);
            let celsius = Celsius(standard.celsius.0 + liquid.celsius_sd * warmer);
            let percent = percent_over(standard.g_per_l, &Liquid { celsius, ..liquid });
            let off = standard.percent - zero - libm::exp(log_gain) * percent;
            // A display of 0.00 says only that there is no more.
            let hidden = standard.percent < self.half_step;
            *out = if hidden { (off + self.half_step).min(0.0) } else { off } / sd;
        }
        let own = [
            (self.before.log_gain - log_gain) / self.before.log_gain_sd,
            (self.before.zero - zero) / self.before.zero_sd,
            -warmer,
        ];
        out[self.standards.len()..].copy_from_slice(&own);
    }
}
