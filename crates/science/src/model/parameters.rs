//! What the model does not know for sure.

use crate::carbonate::BUFFER_OF_YEAST;
use crate::enzyme::gelatinization;
use crate::enzyme::starch::RAW_STARCH;
use crate::enzyme::stock;
use crate::fact::Fact;
use crate::stoichiometry::{CO2_YIELD, ETHANOL_YIELD, HEAT_PER_HEXOSE};
use crate::yeast::hindrance::{ETHANOL_MOST, HALF_OSMOTIC};
use crate::yeast::loss::SLOW_LOSS;
use crate::yeast::repression::{GALACTOSE_INDUCTION, REPRESSION};
use crate::yeast::sugars::{
    FRUCTOSE_HALF_RATIO, FRUCTOSE_RATE, GALACTOSE_RATE, HALF_GLUCOSE, HALF_MALTOSE,
    HALF_RESERVE, MALTOSE_INDUCTION, MALTOSE_RATE, MALTOTRIOSE_RATE, OWN_INVERTASE, RESERVE,
    RESERVE_RATE,
};
use crate::yeast::waking::{D60, DEATH_Z};

/// How fast dissolved carbon dioxide comes out of a shallow pool, as the share of the excess each
/// minute (1/min).
pub const RELEASE: Fact = Fact::memory(
    "model.release",
    1.0,
    "/min",
    "a few millimetres of liquid full of yeast on which bubbles form; judgement, \
     factor 1.6 each way",
)
.within((0.45, 2.3));

/// Depth of gas over the whole bag at which half of the liquid's surface touches it (mm).
pub const POCKET_DEPTH: Fact = Fact::memory(
    "model.pocket_depth",
    1.0,
    "mm",
    "film and card lie on the liquid until there is some gas; judgement",
)
.within((0.3, 3.0));

/// Glucose units in a dextrin chain, for counting dissolved particles (1).
pub const DEXTRIN_UNITS: Fact = Fact::memory(
    "model.dextrin_units",
    7.0,
    "1",
    "maltodextrin of dextrose equivalent 10 to 20, from memory",
)
.within((4.0, 15.0));

/// Volume that a gram of dissolved sugar or salt takes up in water (mL/g).
pub const SOLUTE_VOLUME: Fact = Fact::memory(
    "model.solute_volume",
    0.62,
    "mL/g",
    "partial specific volume of sugars, from memory",
)
.within((0.55, 0.65));

/// Density of starch and other undissolved solids (g/mL).
pub const SOLIDS_DENSITY: Fact = Fact::memory(
    "model.solids_density",
    1.45,
    "g/mL",
    "starch 1.5, protein and fibre 1.3 to 1.4, from memory",
)
.within((1.3, 1.55));

/// Facts of this module.
pub const FACTS: &[Fact] =
    &[RELEASE, POCKET_DEPTH, DEXTRIN_UNITS, SOLUTE_VOLUME, SOLIDS_DENSITY];

/// Values that differ from day to day, lot to lot or bag to bag. [`Parameters::median`] holds
/// the best guess of each.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameters {
    /// Yeast's rate over its table value (1).
    pub vigor: f64,
    /// How much more steeply than the table the rate rises with temperature (1/K).
    pub steepness: f64,
    /// By how much the optimum lies above the table's (K).
    pub optimum_shift: f64,
    /// Loss by storage over its table value (1).
    pub storage_loss: f64,
    /// Wake-up time over its table value (1).
    pub wake: f64,
    /// Loss by cold wetting over its table value (1).
    pub cold_loss: f64,
    /// Activity lost at 40 °C (1/min).
    pub slow_loss: f64,
    /// Minutes at 60 °C that kill nine in ten (min).
    pub d60: f64,
    /// Kelvin that change those tenfold (K).
    pub death_z: f64,
    /// Half-saturation by glucose (g/L).
    pub half_glucose: f64,
    /// Half-saturation by fructose over that by glucose (1).
    pub fructose_half_ratio: f64,
    /// Rate on fructose over that on glucose (1).
    pub fructose_rate: f64,
    /// Rate on maltose, once induced, over that on glucose (1).
    pub maltose_rate: f64,
    /// Half-saturation by maltose (g/L).
    pub half_maltose: f64,
    /// Rate on maltotriose, once induced, over that on maltose (1).
    pub maltotriose_rate: f64,
    /// Rate on galactose, once induced, over that on glucose (1).
    pub galactose_rate: f64,
    /// Time constant of induction by maltose (min).
    pub induction: f64,
    /// Time constant of induction by galactose (min).
    pub galactose_induction: f64,
    /// Time constant of repression by glucose (min).
    pub repression: f64,
    /// Reserves (g per g dry matter).
    pub reserve: f64,
    /// Rate on reserves over that on glucose (1).
    pub reserve_rate: f64,
    /// Reserves at which their rate is halved, as a share of the full ones (1).
    pub half_reserve: f64,
    /// Yeast's own invertase (µmol/min per g dry matter at 37 °C).
    pub own_invertase: f64,
    /// Dissolved particles that halve the rate (osmol/L).
    pub half_osmotic: f64,
    /// Ethanol that stops the yeast (g/L).
    pub ethanol_most: f64,
    /// Half-saturations of enzymes over their table values (1).
    pub enzyme_half: f64,
    /// Rate on raw starch of corn over that on cooked starch (1).
    pub raw_starch: f64,
    /// By how much warmer than the table starch cooks (K).
    pub gelatinization_shift: f64,
    /// How fast it cooks (1/min).
    pub gelatinization: f64,
    /// Enzymes' loss by heat over its table value (1).
    pub enzyme_loss: f64,
    /// Time in which an enzyme solution loses half of its activity (min).
    pub stock_half_life: f64,
    /// Share of a dose that a bottle delivers which was not shaken (1).
    pub unshaken: f64,
    /// Acid that dry yeast takes up for each unit of pH (mmol/(g·pH)).
    pub buffer: f64,
    /// Share of the theoretical carbon dioxide (1).
    pub co2_yield: f64,
    /// Share of the theoretical ethanol (1).
    pub ethanol_yield: f64,
    /// Heat of fermentation (J/mmol of hexose).
    pub own_heat: f64,
    /// Depth of gas over the whole bag at which half of the surface is open to it (mm).
    pub pocket_mm: f64,
    /// Release of dissolved gas (1/min).
    pub release: f64,
    /// Permeability of the film over its table value (1).
    pub permeability: f64,
    /// Loss of heat over its table value (1).
    pub heat_loss: f64,
    /// Speed at which a tray cools over its table value (1).
    pub tray_loss: f64,
    /// Standard normal deviate of the card curve's exponent.
    pub exponent: f64,
    /// Standard normal deviate of the card curve's dead share.
    pub dead_share: f64,
    /// Standard normal deviate of the bag's capacity.
    pub capacity: f64,
    /// Height by which crumples hold the card up when nothing else does (mm).
    pub crumple_mm: f64,
    /// Distance of the card from the middle of the bag (mm).
    pub off_center_mm: f64,
}

impl Parameters {
    /// The best guess of each.
    pub const fn median() -> Self {
        Self {
            vigor: 1.0,
            steepness: 0.0,
            optimum_shift: 0.0,
            storage_loss: 1.0,
            wake: 1.0,
            cold_loss: 1.0,
            slow_loss: SLOW_LOSS.value,
            d60: D60.value,
            death_z: DEATH_Z.value,
            half_glucose: HALF_GLUCOSE.value,
            fructose_half_ratio: FRUCTOSE_HALF_RATIO.value,
            fructose_rate: FRUCTOSE_RATE.value,
            maltose_rate: MALTOSE_RATE.value,
            half_maltose: HALF_MALTOSE.value,
            maltotriose_rate: MALTOTRIOSE_RATE.value,
            galactose_rate: GALACTOSE_RATE.value,
            induction: MALTOSE_INDUCTION.value,
            galactose_induction: GALACTOSE_INDUCTION.value,
            repression: REPRESSION.value,
            reserve: RESERVE.value,
            reserve_rate: RESERVE_RATE.value,
            half_reserve: HALF_RESERVE.value,
            own_invertase: OWN_INVERTASE.value,
            half_osmotic: HALF_OSMOTIC.value,
            ethanol_most: ETHANOL_MOST.value,
            enzyme_half: 1.0,
            raw_starch: RAW_STARCH.value,
            gelatinization_shift: 0.0,
            gelatinization: gelatinization::RATE.value,
            enzyme_loss: 1.0,
            stock_half_life: stock::HALF_LIFE.value,
            unshaken: stock::UNSHAKEN.value,
            buffer: BUFFER_OF_YEAST.value,
            co2_yield: CO2_YIELD.value,
            ethanol_yield: ETHANOL_YIELD.value,
            own_heat: HEAT_PER_HEXOSE.value,
            pocket_mm: POCKET_DEPTH.value,
            release: RELEASE.value,
            permeability: 1.0,
            heat_loss: 1.0,
            tray_loss: 1.0,
            exponent: 0.0,
            dead_share: 0.0,
            capacity: 0.0,
            crumple_mm: 0.0,
            off_center_mm: 0.0,
        }
    }
}
