//! How warmth above 36 °C wears yeast out, long before it kills at once.

use crate::constants::GAS;
use crate::fact::Fact;
use crate::units::Celsius;

/// Loss of activity at 40 °C (1/min).
pub const SLOW_LOSS: Fact = Fact::derived(
    "yeast.slow_loss_40c",
    0.006,
    "/min",
    "between 0.019, with which the optimum of 2 h would be 35.0 °C (abstract on distiller's malt \
     wort: 40 °C over half an hour, 35 °C over 2 h), and 0.002, with which dough proofed at 38 °C \
     loses a tenth in an hour and a half; nearer to the dough, whose yeast is baker's",
)
.within((0.002, 0.018));

/// Activation energy of the loss (kJ/mol).
pub const SLOW_LOSS_ENERGY: Fact = Fact::sourced(
    "yeast.slow_loss_activation",
    177.7,
    "kJ/mol",
    "M. Phisalaphong, N. Srirattana, W. Tanthapanichakoon, Biochem. Eng. J. 28, 36 (2006): death \
     rate of a flocculating strain on molasses",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[SLOW_LOSS, SLOW_LOSS_ENERGY];

/// Temperature to which [`SLOW_LOSS`] refers.
const AT: Celsius = Celsius(40.0);

/// Activity that warmth costs awake or dried yeast, as a share per minute (1/min).
///
/// ```text
/// k = k40 exp( −E/R (1/T − 1/313.15 K) )      k40 in 1/min, E 177.7 kJ/mol
/// ```
///
/// At 30 °C 0.06 %, at 38 °C 0.4 % and at 45 °C 1.8 % a minute. It moves the
/// optimum of a run down the longer the run is. Quick death above 50 °C comes on top of it.
///
/// # Range
/// 20 to 50 °C; held to 0 and 100 °C outside.
/// # Source
/// Energy: Phisalaphong et al. (2006), *Biochem. Eng. J.* 28, 36. Size: derived, see the fact.
pub fn slow_loss_per_min(temperature: Celsius, at_40_per_min: f64) -> f64 {
    let colder = 1.0 / temperature.liquid().kelvin().0 - 1.0 / AT.kelvin().0;
    at_40_per_min * libm::exp(-1e3 * SLOW_LOSS_ENERGY.value / GAS.value * colder)
}
