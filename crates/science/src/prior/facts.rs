//! Spreads that no law carries as its own range.

use super::handling;
use crate::fact::Fact;

pub(super) const STEEPNESS_SD: Fact = Fact::memory(
    "forecast.steepness_sd",
    0.012,
    "1/K",
    "strains differ by 12 % in the factor for 10 K; judgement",
);
pub(super) const OPTIMUM_SD: Fact =
    Fact::memory("forecast.optimum_sd", 1.0, "K", "published optima of 38 to 41 °C; judgement");
pub(super) const WAKE_LOG_SD: Fact = Fact::memory(
    "forecast.wake_log_sd",
    0.35,
    "1",
    "low confidence in the wake-up time; judgement",
);
pub(super) const COLD_LOG_SD: Fact = Fact::memory(
    "forecast.cold_log_sd",
    0.35,
    "1",
    "values of cold injury from memory; judgement",
);
pub(super) const ENZYME_HALF_LOG_SD: Fact = Fact::memory(
    "forecast.enzyme_half_log_sd",
    0.5,
    "1",
    "spread of published half-saturations; judgement",
);
pub(super) const ENZYME_LOSS_LOG_SD: Fact = Fact::memory(
    "forecast.enzyme_loss_log_sd",
    0.5,
    "1",
    "spread of published losses; judgement",
);
pub(crate) const AIR_LOG_SD: Fact = Fact::memory(
    "forecast.air_log_sd",
    0.4,
    "1",
    "children press out air by hand, factor 1.5 each way; judgement",
);
pub(super) const BAG_LOSS_LOG_SD: Fact = Fact::memory(
    "forecast.bag_loss_log_sd",
    0.08,
    "1",
    "bags of one class lie on one bench; judgement",
);
pub(super) const CARD_OFF_SD: Fact = Fact::memory(
    "forecast.card_off_sd",
    6.0,
    "mm",
    "a card laid by eye on the middle of a bag, each way; judgement",
);
/// Facts of this module.
pub const FACTS: &[Fact] = &[
    STEEPNESS_SD,
    OPTIMUM_SD,
    WAKE_LOG_SD,
    COLD_LOG_SD,
    ENZYME_HALF_LOG_SD,
    ENZYME_LOSS_LOG_SD,
    AIR_LOG_SD,
    BAG_LOSS_LOG_SD,
    CARD_OFF_SD,
    handling::FACTS[0],
    handling::FACTS[1],
    handling::FACTS[2],
];
