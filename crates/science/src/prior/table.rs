//! The table: a row a number.

use super::facts::{
    BAG_LOSS_LOG_SD, CARD_DAY_SHARE, CARD_OFF_SD, COLD_LOG_SD, ENZYME_HALF_LOG_SD,
    ENZYME_LOSS_LOG_SD, OPTIMUM_SD, STEEPNESS_SD, WAKE_LOG_SD,
};
use super::transform::Transform::{Between, Distance, Log, Plain};
use super::{Row, Spread, Transform};
use crate::card_height::CRUMPLE_SD;
use crate::cooling::{LOSS_LOG_SD, TRAY_TIME};
use crate::enzyme::starch::RAW_STARCH;
use crate::fact::Fact;
use crate::model::Parameters;
use crate::model::parameters::RELEASE;
use crate::permeation::PERMEABILITY;
use crate::setup::YeastKind;
use crate::stoichiometry::{CO2_YIELD, ETHANOL_YIELD};
use crate::yeast::hindrance::{ETHANOL_MOST, HALF_OSMOTIC};
use crate::yeast::loss::SLOW_LOSS;
use crate::yeast::repression::{GALACTOSE_INDUCTION, REPRESSION};
use crate::yeast::storage::STORAGE_LOG_SD;
use crate::yeast::sugars::{
    FRUCTOSE_RATE, GALACTOSE_RATE, HALF_GLUCOSE, MALTOSE_INDUCTION, MALTOSE_RATE,
    MALTOTRIOSE_RATE, OWN_INVERTASE, RESERVE, RESERVE_RATE,
};
use crate::yeast::waking::{D60, DEATH_Z};
use crate::yeast::{ACTIVE_DRY_VIGOR, RATE_LOG_SD};

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

/// A number's place among the parameters.
type Place = fn(&mut Parameters) -> &mut f64;

const fn row(name: &'static str, transform: Transform, spread: Spread, place: Place) -> Row {
    Row { name, kind: None, place, transform, spread }
}

/// A number that all bags of a day share.
const fn shared(name: &'static str, transform: Transform, sd: f64, place: Place) -> Row {
    row(name, transform, Spread::day(sd), place)
}

/// The lot of one kind of yeast.
fn lot(kind: YeastKind) -> Row {
    let sd = match kind {
        YeastKind::ActiveDry => libm::hypot(RATE_LOG_SD.value, log_sd(&ACTIVE_DRY_VIGOR)),
        YeastKind::Instant | YeastKind::Compressed => RATE_LOG_SD.value,
    };
    Row { kind: Some(kind), ..shared("vigor", Log, sd, |p| &mut p.vigor) }
}

/// The rows before anything was measured, in the order in which they are dealt.
pub fn standard() -> Vec<Row> {
    let of_one_box = Spread {
        day: CARD_DAY_SHARE.value.sqrt(),
        bag: (1.0 - CARD_DAY_SHARE.value).sqrt(),
        ..Spread::default()
    };
    let heat = Spread { day: LOSS_LOG_SD.value, ..Spread::bag(BAG_LOSS_LOG_SD.value) };
    let mut rows: Vec<Row> = YeastKind::ALL.into_iter().map(lot).collect();
    rows.extend([
        shared("steepness", Plain, STEEPNESS_SD.value, |p| &mut p.steepness),
        shared("optimum", Plain, OPTIMUM_SD.value, |p| &mut p.optimum_shift),
        shared("storage", Log, STORAGE_LOG_SD.value, |p| &mut p.storage_loss),
        shared("wake", Log, WAKE_LOG_SD.value, |p| &mut p.wake),
        shared("cold", Log, COLD_LOG_SD.value, |p| &mut p.cold_loss),
        shared("slow-loss", Log, log_sd(&SLOW_LOSS), |p| &mut p.slow_loss),
        shared("d60", Log, log_sd(&D60), |p| &mut p.d60),
        shared("death", Log, log_sd(&DEATH_Z), |p| &mut p.death_z),
        shared("half-glucose", Log, log_sd(&HALF_GLUCOSE), |p| &mut p.half_glucose),
        shared("fructose", Log, log_sd(&FRUCTOSE_RATE), |p| &mut p.fructose_rate),
        shared("maltose", Log, log_sd(&MALTOSE_RATE), |p| &mut p.maltose_rate),
        shared("induction", Log, log_sd(&MALTOSE_INDUCTION), |p| &mut p.induction),
        shared("maltotriose", Log, log_sd(&MALTOTRIOSE_RATE), |p| &mut p.maltotriose_rate),
        shared("galactose", Log, log_sd(&GALACTOSE_RATE), |p| &mut p.galactose_rate),
        shared("galactose-induction", Log, log_sd(&GALACTOSE_INDUCTION), |p| {
            &mut p.galactose_induction
        }),
        shared("repression", Log, log_sd(&REPRESSION), |p| &mut p.repression),
        shared("reserve", Log, log_sd(&RESERVE), |p| &mut p.reserve),
        shared("reserve-rate", Log, log_sd(&RESERVE_RATE), |p| &mut p.reserve_rate),
        shared("invertase", Log, log_sd(&OWN_INVERTASE), |p| &mut p.own_invertase),
        shared("osmotic", Log, log_sd(&HALF_OSMOTIC), |p| &mut p.half_osmotic),
        shared("ethanol", Log, log_sd(&ETHANOL_MOST), |p| &mut p.ethanol_most),
        shared("enzyme-half", Log, ENZYME_HALF_LOG_SD.value, |p| &mut p.enzyme_half),
        shared("raw-starch", Log, log_sd(&RAW_STARCH), |p| &mut p.raw_starch),
        shared("enzyme-loss", Log, ENZYME_LOSS_LOG_SD.value, |p| &mut p.enzyme_loss),
        shared("co2-yield", Between(0.8, 0.995), sd(&CO2_YIELD), |p| &mut p.co2_yield),
        shared("ethanol-yield", Between(0.75, 0.995), sd(&ETHANOL_YIELD), |p| {
            &mut p.ethanol_yield
        }),
        shared("release", Log, log_sd(&RELEASE), |p| &mut p.release),
        shared("film", Log, log_sd(&PERMEABILITY), |p| &mut p.permeability),
        row("heat", Log, heat, |p| &mut p.heat_loss),
        shared("tray", Log, log_sd(&TRAY_TIME), |p| &mut p.tray_loss),
        row("exponent", Plain, of_one_box, |p| &mut p.exponent),
        row("dead-share", Plain, of_one_box, |p| &mut p.dead_share),
        row("capacity", Plain, of_one_box, |p| &mut p.capacity),
        row("crumple", Plain, Spread::bag(CRUMPLE_SD.value), |p| &mut p.crumple_mm),
        row("card-off", Distance, Spread::bag(CARD_OFF_SD.value), |p| &mut p.off_center_mm),
    ]);
    rows
}
