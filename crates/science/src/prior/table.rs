//! The table: a row a number.

use super::facts::{
    BAG_LOSS_LOG_SD, CARD_OFF_SD, COLD_LOG_SD, ENZYME_HALF_LOG_SD, ENZYME_LOSS_LOG_SD,
    OPTIMUM_SD, STEEPNESS_SD, WAKE_LOG_SD,
};
use super::handling::{CARD_DAY_SHARE, of_one_box};
use super::transform::Transform::{Between, Distance, Log, Plain};
use super::{Row, Spread, Transform, Whose};
use crate::carbonate::BUFFER_OF_YEAST;
use crate::card_height::CRUMPLE_SD;
use crate::cooling::{LOSS_LOG_SD, TRAY_TIME};
use crate::enzyme::gelatinization;
use crate::enzyme::starch::RAW_STARCH;
use crate::enzyme::stock;
use crate::fact::Fact;
use crate::model::Parameters;
use crate::model::parameters::{POCKET_DEPTH, RELEASE};
use crate::permeation::PERMEABILITY;
use crate::setup::YeastKind;
use crate::stoichiometry::{CO2_YIELD, ETHANOL_YIELD, HEAT_PER_HEXOSE};
use crate::yeast::hindrance::{ETHANOL_MOST, HALF_OSMOTIC};
use crate::yeast::loss::SLOW_LOSS;
use crate::yeast::repression::{GALACTOSE_INDUCTION, REPRESSION};
use crate::yeast::storage::STORAGE_LOG_SD;
use crate::yeast::sugars::{
    FRUCTOSE_HALF_RATIO, FRUCTOSE_RATE, GALACTOSE_RATE, HALF_GLUCOSE, HALF_MALTOSE,
    HALF_RESERVE, MALTOSE_INDUCTION, MALTOSE_RATE, MALTOTRIOSE_RATE, OWN_INVERTASE, RESERVE,
    RESERVE_RATE,
};
use crate::yeast::waking::{D60, DEATH_Z};
use crate::yeast::{ACTIVE_DRY_VIGOR, RATE_LOG_SD};

/// A number's place among the parameters.
type Place = fn(&mut Parameters) -> &mut f64;

/// A number spread over the levels as it says.
const fn row(
    name: &'static str,
    transform: Transform,
    spread: Spread,
    from: &Fact,
    place: Place,
) -> Row {
    Row { name, whose: Whose::All, place, transform, spread, from: from.name }
}

/// A number that all bags of a day share, log-normal with the range of its fact as its central
/// 90 %.
fn ranged(name: &'static str, from: &'static Fact, place: Place) -> Row {
    row(name, Log, Spread::day(from.log_sd()), from, place)
}

/// The same, normal and kept between two ends.
fn between(name: &'static str, low: f64, high: f64, from: &'static Fact, place: Place) -> Row {
    row(name, Between(low, high), Spread::day(from.sd()), from, place)
}

/// A number that all bags of a day share, with a standard deviation that is itself the fact.
const fn judged(name: &'static str, transform: Transform, from: &Fact, place: Place) -> Row {
    row(name, transform, Spread::day(from.value), from, place)
}

/// The lot of one kind of yeast.
fn lot(kind: YeastKind) -> Row {
    let sd = match kind {
        YeastKind::ActiveDry => libm::hypot(RATE_LOG_SD.value, ACTIVE_DRY_VIGOR.log_sd()),
        YeastKind::Instant | YeastKind::Compressed => RATE_LOG_SD.value,
    };
    Row {
        whose: Whose::Yeast(kind),
        ..row("vigor", Log, Spread::day(sd), &RATE_LOG_SD, |p| &mut p.vigor)
    }
}

/// A deviate of the card's curve on bags out of one box.
fn curve(name: &'static str, place: Place) -> Row {
    Row { whose: Whose::Bags, ..row(name, Plain, of_one_box(), &CARD_DAY_SHARE, place) }
}

/// The rows before anything was measured, in the order in which they are dealt.
pub fn standard() -> Vec<Row> {
    let heat = Spread { day: LOSS_LOG_SD.value, ..Spread::bag(BAG_LOSS_LOG_SD.value) };
    let mut rows: Vec<Row> = YeastKind::ALL.into_iter().map(lot).collect();
    rows.extend([
        judged("steepness", Plain, &STEEPNESS_SD, |p| &mut p.steepness),
        judged("optimum", Plain, &OPTIMUM_SD, |p| &mut p.optimum_shift),
        judged("storage", Log, &STORAGE_LOG_SD, |p| &mut p.storage_loss),
        judged("wake", Log, &WAKE_LOG_SD, |p| &mut p.wake),
        judged("cold", Log, &COLD_LOG_SD, |p| &mut p.cold_loss),
        ranged("slow-loss", &SLOW_LOSS, |p| &mut p.slow_loss),
        ranged("d60", &D60, |p| &mut p.d60),
        ranged("death", &DEATH_Z, |p| &mut p.death_z),
        ranged("half-glucose", &HALF_GLUCOSE, |p| &mut p.half_glucose),
        ranged("fructose-half", &FRUCTOSE_HALF_RATIO, |p| &mut p.fructose_half_ratio),
        ranged("fructose", &FRUCTOSE_RATE, |p| &mut p.fructose_rate),
        ranged("maltose", &MALTOSE_RATE, |p| &mut p.maltose_rate),
        ranged("half-maltose", &HALF_MALTOSE, |p| &mut p.half_maltose),
        ranged("induction", &MALTOSE_INDUCTION, |p| &mut p.induction),
        ranged("maltotriose", &MALTOTRIOSE_RATE, |p| &mut p.maltotriose_rate),
        ranged("galactose", &GALACTOSE_RATE, |p| &mut p.galactose_rate),
        ranged("galactose-induction", &GALACTOSE_INDUCTION, |p| &mut p.galactose_induction),
        ranged("repression", &REPRESSION, |p| &mut p.repression),
        ranged("reserve", &RESERVE, |p| &mut p.reserve),
        ranged("reserve-rate", &RESERVE_RATE, |p| &mut p.reserve_rate),
        ranged("half-reserve", &HALF_RESERVE, |p| &mut p.half_reserve),
        ranged("invertase", &OWN_INVERTASE, |p| &mut p.own_invertase),
        ranged("osmotic", &HALF_OSMOTIC, |p| &mut p.half_osmotic),
        ranged("ethanol", &ETHANOL_MOST, |p| &mut p.ethanol_most),
        judged("enzyme-half", Log, &ENZYME_HALF_LOG_SD, |p| &mut p.enzyme_half),
        ranged("raw-starch", &RAW_STARCH, |p| &mut p.raw_starch),
        judged("enzyme-loss", Log, &ENZYME_LOSS_LOG_SD, |p| &mut p.enzyme_loss),
        ranged("buffer", &BUFFER_OF_YEAST, |p| &mut p.buffer),
        between("co2-yield", 0.8, 0.995, &CO2_YIELD, |p| &mut p.co2_yield),
        between("ethanol-yield", 0.75, 0.995, &ETHANOL_YIELD, |p| &mut p.ethanol_yield),
        ranged("own-heat", &HEAT_PER_HEXOSE, |p| &mut p.own_heat),
        ranged("pocket", &POCKET_DEPTH, |p| &mut p.pocket_mm),
        ranged("release", &RELEASE, |p| &mut p.release),
        ranged("film", &PERMEABILITY, |p| &mut p.permeability),
        row("heat", Log, heat, &LOSS_LOG_SD, |p| &mut p.heat_loss),
        ranged("tray", &TRAY_TIME, |p| &mut p.tray_loss),
        curve("exponent", |p| &mut p.exponent),
        curve("dead-share", |p| &mut p.dead_share),
        curve("capacity", |p| &mut p.capacity),
        row("crumple", Plain, Spread::bag(CRUMPLE_SD.value), &CRUMPLE_SD, |p| {
            &mut p.crumple_mm
        }),
        row("card-off", Distance, Spread::bag(CARD_OFF_SD.value), &CARD_OFF_SD, |p| {
            &mut p.off_center_mm
        }),
        judged("gelatinization", Plain, &gelatinization::SHIFT_SD, |p| {
            &mut p.gelatinization_shift
        }),
        ranged("gelatinization-rate", &gelatinization::RATE, |p| &mut p.gelatinization),
        ranged("stock", &stock::HALF_LIFE, |p| &mut p.stock_half_life),
        between("unshaken", 0.2, 1.0, &stock::UNSHAKEN, |p| &mut p.unshaken),
    ]);
    rows
}
