//! How far the numbers of the model spread over days, lots and bags.

use super::streams::Source;
use crate::card_height::CRUMPLE_SD;
use crate::cooling::{LOSS_LOG_SD, TRAY_TIME};
use crate::enzyme::starch::RAW_STARCH;
use crate::fact::Fact;
use crate::model::Parameters;
use crate::model::parameters::RELEASE;
use crate::permeation::PERMEABILITY;
use crate::setup::{Setup, YeastKind};
use crate::stoichiometry::{CO2_YIELD, ETHANOL_YIELD};
use crate::yeast::hindrance::{ETHANOL_MOST, HALF_OSMOTIC};
use crate::yeast::sugars::{
    FRUCTOSE_RATE, HALF_GLUCOSE, MALTOSE_INDUCTION, MALTOSE_RATE, OWN_INVERTASE, RESERVE,
    RESERVE_RATE,
};
use crate::yeast::waking::{D60, DEATH_Z};
use crate::yeast::{ACTIVE_DRY_VIGOR, RATE_LOG_SD};

const STEEPNESS_SD: Fact = Fact::memory(
    "forecast.steepness_sd",
    0.012,
    "1/K",
    "strains differ by 12 % in the factor for 10 K; judgement",
);
const OPTIMUM_SD: Fact =
    Fact::memory("forecast.optimum_sd", 1.0, "K", "published optima of 38 to 41 °C; judgement");
const WAKE_LOG_SD: Fact = Fact::memory(
    "forecast.wake_log_sd",
    0.35,
    "1",
    "low confidence in the wake-up time; judgement",
);
const COLD_LOG_SD: Fact = Fact::memory(
    "forecast.cold_log_sd",
    0.35,
    "1",
    "values of cold injury from memory; judgement",
);
const ENZYME_HALF_LOG_SD: Fact = Fact::memory(
    "forecast.enzyme_half_log_sd",
    0.5,
    "1",
    "spread of published half-saturations; judgement",
);
const ENZYME_LOSS_LOG_SD: Fact = Fact::memory(
    "forecast.enzyme_loss_log_sd",
    0.5,
    "1",
    "spread of published losses; judgement",
);
pub(super) const AIR_LOG_SD: Fact = Fact::memory(
    "forecast.air_log_sd",
    0.4,
    "1",
    "children press out air by hand, factor 1.5 each way; judgement",
);
const BAG_LOSS_LOG_SD: Fact = Fact::memory(
    "forecast.bag_loss_log_sd",
    0.08,
    "1",
    "bags of one class lie on one bench; judgement",
);
const CARD_OFF_SD: Fact = Fact::memory(
    "forecast.card_off_sd",
    6.0,
    "mm",
    "a card laid by eye on the middle of a bag, each way; judgement",
);
const CARD_DAY_SHARE: Fact = Fact::memory(
    "forecast.card_day_share",
    0.8,
    "1",
    "bags and cards of one box are alike: share of the variance that a day has in common; \
     judgement",
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
    CARD_DAY_SHARE,
];

/// Width of a central 90 % range in standard deviations (1).
const RANGE_SDS: f64 = 3.29;

/// Standard deviation of a logarithm whose central 90 % is the fact's range (1).
fn log_sd(fact: &Fact) -> f64 {
    fact.range.map_or(0.0, |(low, high)| libm::log(high / low) / RANGE_SDS)
}

/// Standard deviation whose central 90 % is the fact's range (unit of the fact).
fn sd(fact: &Fact) -> f64 {
    fact.range.map_or(0.0, |(low, high)| (high - low) / RANGE_SDS)
}

pub(super) fn scaled(log_sd: f64, deviates: Vec<f64>) -> Vec<f64> {
    deviates.into_iter().map(|z| libm::exp(log_sd * z)).collect()
}

/// The uncertain numbers of the model, draw by draw.
pub(super) fn parameters(setup: &Setup, day: &Source, bag: &Source) -> Vec<Parameters> {
    let kind = setup.yeast.map_or(YeastKind::Instant, |yeast| yeast.kind);
    let vigor_sd = match kind {
        YeastKind::ActiveDry => libm::hypot(RATE_LOG_SD.value, log_sd(&ACTIVE_DRY_VIGOR)),
        YeastKind::Instant | YeastKind::Compressed => RATE_LOG_SD.value,
    };
    let mut all = vec![Parameters::median(); day.draws];
    let mut set = |deviates: Vec<f64>, put: &dyn Fn(&mut Parameters, f64)| {
        for (one, z) in all.iter_mut().zip(deviates) {
            put(one, z);
        }
    };
    let times = |value: &mut f64, log_sd: f64, z: f64| *value *= libm::exp(log_sd * z);

    set(day.deviates("vigor", kind as u64), &|p, z| times(&mut p.vigor, vigor_sd, z));
    set(day.deviates("steepness", 0), &|p, z| p.steepness = STEEPNESS_SD.value * z);
    set(day.deviates("optimum", 0), &|p, z| p.optimum_shift = OPTIMUM_SD.value * z);
    set(day.deviates("wake", 0), &|p, z| times(&mut p.wake, WAKE_LOG_SD.value, z));
    set(day.deviates("cold", 0), &|p, z| times(&mut p.cold_loss, COLD_LOG_SD.value, z));
    set(day.deviates("d60", 0), &|p, z| times(&mut p.d60, log_sd(&D60), z));
    set(day.deviates("death", 0), &|p, z| times(&mut p.death_z, log_sd(&DEATH_Z), z));
    set(day.deviates("half-glucose", 0), &|p, z| {
        times(&mut p.half_glucose, log_sd(&HALF_GLUCOSE), z);
    });
    set(day.deviates("fructose", 0), &|p, z| {
        times(&mut p.fructose_rate, log_sd(&FRUCTOSE_RATE), z);
    });
    set(day.deviates("maltose", 0), &|p, z| {
        times(&mut p.maltose_rate, log_sd(&MALTOSE_RATE), z);
    });
    set(day.deviates("induction", 0), &|p, z| {
        times(&mut p.induction, log_sd(&MALTOSE_INDUCTION), z);
    });
    set(day.deviates("reserve", 0), &|p, z| times(&mut p.reserve, log_sd(&RESERVE), z));
    set(day.deviates("reserve-rate", 0), &|p, z| {
        times(&mut p.reserve_rate, log_sd(&RESERVE_RATE), z);
    });
    set(day.deviates("invertase", 0), &|p, z| {
        times(&mut p.own_invertase, log_sd(&OWN_INVERTASE), z);
    });
    set(day.deviates("osmotic", 0), &|p, z| {
        times(&mut p.half_osmotic, log_sd(&HALF_OSMOTIC), z);
    });
    set(day.deviates("ethanol", 0), &|p, z| {
        times(&mut p.ethanol_most, log_sd(&ETHANOL_MOST), z);
    });
    set(day.deviates("enzyme-half", 0), &|p, z| {
        times(&mut p.enzyme_half, ENZYME_HALF_LOG_SD.value, z);
    });
    set(day.deviates("raw-starch", 0), &|p, z| {
        times(&mut p.raw_starch, log_sd(&RAW_STARCH), z);
    });
    set(day.deviates("enzyme-loss", 0), &|p, z| {
        times(&mut p.enzyme_loss, ENZYME_LOSS_LOG_SD.value, z);
    });
    set(day.deviates("co2-yield", 0), &|p, z| {
        p.co2_yield = (p.co2_yield + sd(&CO2_YIELD) * z).clamp(0.8, 0.995);
    });
    set(day.deviates("ethanol-yield", 0), &|p, z| {
        p.ethanol_yield = (p.ethanol_yield + sd(&ETHANOL_YIELD) * z).clamp(0.75, 0.995);
    });
    set(day.deviates("release", 0), &|p, z| times(&mut p.release, log_sd(&RELEASE), z));
    set(day.deviates("film", 0), &|p, z| times(&mut p.permeability, log_sd(&PERMEABILITY), z));
    set(day.deviates("heat", 0), &|p, z| times(&mut p.heat_loss, LOSS_LOG_SD.value, z));
    set(bag.deviates("heat", 0), &|p, z| times(&mut p.heat_loss, BAG_LOSS_LOG_SD.value, z));
    set(day.deviates("tray", 0), &|p, z| times(&mut p.tray_loss, log_sd(&TRAY_TIME), z));

    let (of_day, of_bag) = (CARD_DAY_SHARE.value.sqrt(), (1.0 - CARD_DAY_SHARE.value).sqrt());
    for (source, share) in [(day, of_day), (bag, of_bag)] {
        set(source.deviates("exponent", 0), &|p, z| p.exponent += share * z);
        set(source.deviates("dead-share", 0), &|p, z| p.dead_share += share * z);
        set(source.deviates("capacity", 0), &|p, z| p.capacity += share * z);
    }
    set(bag.deviates("crumple", 0), &|p, z| p.crumple_mm = CRUMPLE_SD.value * z);
    for way in [0, 1] {
        set(bag.deviates("card-off", way), &|p, z| {
            p.off_center_mm = libm::hypot(p.off_center_mm, CARD_OFF_SD.value * z);
        });
    }
    all
}
