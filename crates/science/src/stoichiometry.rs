//! Who weighs what, and how much gas a sugar can give.
//!
//! Molar masses are sums of the same four atomic weights, so that every reaction balances to
//! rounding.

use crate::fact::Fact;
use crate::setup::Composition;

const WEIGHTS: &str = "IUPAC conventional atomic weights, as in the package chemicals 1.5.2";

const fn atom(name: &'static str, value: f64) -> Fact {
    Fact::sourced(name, value, "g/mol", WEIGHTS)
}

const C: Fact = atom("stoichiometry.carbon", 12.0107);
const H: Fact = atom("stoichiometry.hydrogen", 1.00794);
const O: Fact = atom("stoichiometry.oxygen", 15.9994);
const NA: Fact = atom("stoichiometry.sodium", 22.989_77);
const CL: Fact = atom("stoichiometry.chlorine", 35.453);

const fn molar(name: &'static str, c: f64, h: f64, o: f64, rest: f64) -> Fact {
    Fact::derived(
        name,
        c * C.value + h * H.value + o * O.value + rest,
        "g/mol",
        "sum of IUPAC conventional atomic weights",
    )
}

/// Glucose, fructose, galactose (g/mol).
pub const HEXOSE: Fact = molar("stoichiometry.hexose", 6.0, 12.0, 6.0, 0.0);
/// Sucrose, maltose, lactose (g/mol).
pub const DISACCHARIDE: Fact = molar("stoichiometry.disaccharide", 12.0, 22.0, 11.0, 0.0);
/// Raffinose, maltotriose (g/mol).
pub const TRISACCHARIDE: Fact = molar("stoichiometry.trisaccharide", 18.0, 32.0, 16.0, 0.0);
/// One glucose unit inside starch or dextrin (g/mol).
pub const GLUCAN_UNIT: Fact = molar("stoichiometry.glucan_unit", 6.0, 10.0, 5.0, 0.0);
/// Water (g/mol).
pub const WATER: Fact = molar("stoichiometry.water", 0.0, 2.0, 1.0, 0.0);
/// Carbon dioxide (g/mol).
pub const CARBON_DIOXIDE: Fact = molar("stoichiometry.carbon_dioxide", 1.0, 0.0, 2.0, 0.0);
/// Ethanol (g/mol).
pub const ETHANOL: Fact = molar("stoichiometry.ethanol", 2.0, 6.0, 1.0, 0.0);
/// Glycerol (g/mol).
pub const GLYCEROL: Fact = molar("stoichiometry.glycerol", 3.0, 8.0, 3.0, 0.0);
/// Acetic acid (g/mol).
pub const ACETIC_ACID: Fact = molar("stoichiometry.acetic_acid", 2.0, 4.0, 2.0, 0.0);
/// Table salt (g/mol).
pub const SALT: Fact = molar("stoichiometry.salt", 0.0, 0.0, 0.0, NA.value + CL.value);
/// Baking soda (g/mol).
pub const BICARBONATE: Fact = molar("stoichiometry.bicarbonate", 1.0, 1.0, 3.0, NA.value);

/// Carbon dioxide made per mole of hexose fermented (mol/mol), by the equation of Gay-Lussac.
pub const CO2_PER_HEXOSE: Fact = Fact::sourced(
    "stoichiometry.co2_per_hexose",
    2.0,
    "mol/mol",
    "C6H12O6 = 2 C2H5OH + 2 CO2 (J. L. Gay-Lussac, 1815)",
);

/// Ethanol made per mole of carbon dioxide (mol/mol).
pub const ETHANOL_PER_CO2: Fact = Fact::sourced(
    "stoichiometry.ethanol_per_co2",
    1.0,
    "mol/mol",
    "C6H12O6 = 2 C2H5OH + 2 CO2 (J. L. Gay-Lussac, 1815)",
);

/// Share of the theoretical carbon dioxide that resting yeast makes in a short run (1).
pub const CO2_YIELD: Fact = Fact::memory(
    "stoichiometry.co2_yield",
    0.95,
    "1",
    "short runs with resting yeast, after Pasteur's split of 46.6 g carbon dioxide per \
         100 g hexose, from memory",
)
.within((0.90, 0.98));

/// Share of the theoretical ethanol that resting yeast makes (1).
pub const ETHANOL_YIELD: Fact = Fact::memory(
    "stoichiometry.ethanol_yield",
    0.92,
    "1",
    "0.45 to 0.48 g ethanol per g glucose in practice, from memory",
)
.within((0.87, 0.95));

/// Heat given off per mole of hexose fermented while the carbon dioxide stays dissolved (kJ/mol).
pub const HEAT_PER_HEXOSE: Fact = Fact::memory(
    "stoichiometry.heat_per_hexose",
    142.0,
    "kJ/mol",
    "heats of formation in water of glucose -1262.2, ethanol -288.3 and carbon dioxide -413.8 kJ/mol, \
     from memory; about 100 once the gas has left, as measured (L. A. Williams, Am. J. Enol. Vitic. \
     33, 149 (1982), from memory)",
)
.within((122.0, 162.0));

/// Heat that a mole of carbon dioxide takes along when it leaves the liquid (kJ/mol).
pub const HEAT_OF_RELEASE: Fact = Fact::memory(
    "stoichiometry.heat_of_release",
    20.3,
    "kJ/mol",
    "heats of formation of carbon dioxide, as gas -393.5 and in water -413.8 kJ/mol, from memory",
)
.within((19.0, 21.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    C,
    H,
    O,
    NA,
    CL,
    HEXOSE,
    DISACCHARIDE,
    TRISACCHARIDE,
    GLUCAN_UNIT,
    WATER,
    CARBON_DIOXIDE,
    ETHANOL,
    GLYCEROL,
    ACETIC_ACID,
    SALT,
    BICARBONATE,
    CO2_PER_HEXOSE,
    ETHANOL_PER_CO2,
    CO2_YIELD,
    ETHANOL_YIELD,
    HEAT_PER_HEXOSE,
    HEAT_OF_RELEASE,
];

/// Hexose that a gram of starch or dextrin gives when water splits it completely (g/g).
pub const HEXOSE_PER_STARCH: f64 = HEXOSE.value / GLUCAN_UNIT.value;

/// Hexose that a gram of sucrose, maltose or lactose gives when water splits it (g/g).
pub const HEXOSE_PER_DISACCHARIDE: f64 = 2.0 * HEXOSE.value / DISACCHARIDE.value;

/// Hexose that a gram of maltotriose or raffinose gives when water splits it completely (g/g).
pub const HEXOSE_PER_TRISACCHARIDE: f64 = 3.0 * HEXOSE.value / TRISACCHARIDE.value;

/// Carbon dioxide that a gram of hexose gives at most (mol/g).
pub const CO2_MOL_PER_G_HEXOSE: f64 = CO2_PER_HEXOSE.value / HEXOSE.value;

/// Table salt that holds a gram of sodium (g/g).
pub const SALT_PER_SODIUM: f64 = SALT.value / NA.value;

/// Hexose that yeast can use at once, in grams per 100 g of food: glucose, fructose and split
/// sucrose.
pub const fn hexose_at_once(food: &Composition) -> f64 {
    food.glucose + food.fructose + food.sucrose * HEXOSE_PER_DISACCHARIDE
}

/// Hexose in all carbohydrate of a food when everything is split, in grams per 100 g of food.
///
/// Galactose counts: it is a hexose, though yeast does not use it within the hour.
pub const fn hexose_in_all(food: &Composition) -> f64 {
    let glucans = food.raw_starch + food.cooked_starch + food.dextrin;
    let pairs = food.maltose + food.sucrose + food.lactose;
    food.glucose
        + food.fructose
        + food.galactose
        + glucans * HEXOSE_PER_STARCH
        + pairs * HEXOSE_PER_DISACCHARIDE
        + (food.maltotriose + food.galactosides) * HEXOSE_PER_TRISACCHARIDE
}
