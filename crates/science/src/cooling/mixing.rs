//! What a bag's contents weigh in heat, and the warmth that mixing them takes or gives.

use crate::fact::Fact;
use crate::setup::{Bag, Composition};
use crate::stoichiometry::{HEXOSE, WATER};

/// Density of the film (kg/m³).
pub const FILM_DENSITY: Fact = Fact::memory(
    "cooling.film_density",
    920.0,
    "kg/m3",
    "low-density polyethylene, from memory",
)
.within((915.0, 925.0));

/// Heat capacity of the film (J/(g·K)).
pub const FILM_HEAT: Fact =
    Fact::memory("cooling.film_heat", 2.3, "J/(g.K)", "low-density polyethylene, from memory")
        .within((2.0, 2.5));

/// Heat capacity of dry food and yeast (J/(g·K)).
pub const SOLIDS_HEAT: Fact = Fact::memory(
    "cooling.solids_heat",
    1.5,
    "J/(g.K)",
    "sugar 1.24, starch and protein 1.5 to 1.8, from memory",
)
.within((1.2, 2.0));

const fn taken(
    name: &'static str,
    j_per_g: f64,
    source: &'static str,
    range: (f64, f64),
) -> Fact {
    Fact::memory(name, j_per_g, "J/g", source).within(range)
}

/// Heat that dissolving crystals of sucrose takes (J/g).
pub const DISSOLVING_SUCROSE: Fact = taken(
    "cooling.dissolving.sucrose",
    16.0,
    "5.4 kJ/mol, handbook value from memory",
    (15.0, 18.0),
);

/// Heat that dissolving crystals of glucose without water takes (J/g).
pub const DISSOLVING_GLUCOSE: Fact = taken(
    "cooling.dissolving.glucose",
    59.0,
    "10.7 kJ/mol, handbook value from memory",
    (57.0, 62.0),
);

/// What it takes more for each mole of water that glucose crystals hold (kJ/mol).
pub const GLUCOSE_HYDRATE: Fact = Fact::memory(
    "cooling.dissolving.glucose_hydrate",
    10.2,
    "kJ/mol",
    "glucose monohydrate 105.5 J/g, so 20.9 kJ/mol against 10.7, from memory",
)
.within((9.0, 11.5));

/// Heat that dissolving crystals of fructose takes (J/g).
pub const DISSOLVING_FRUCTOSE: Fact = taken(
    "cooling.dissolving.fructose",
    50.0,
    "9.0 kJ/mol, handbook value from memory",
    (46.0, 54.0),
);

/// Heat that dissolving table salt takes (J/g).
pub const DISSOLVING_SALT: Fact = taken(
    "cooling.dissolving.salt",
    66.0,
    "3.88 kJ/mol, handbook value from memory",
    (62.0, 68.0),
);

/// Heat that dissolving baking soda takes (kJ/mol).
pub const DISSOLVING_SODA: Fact = Fact::memory(
    "cooling.dissolving.soda",
    18.7,
    "kJ/mol",
    "heats of formation of solid sodium hydrogen carbonate -950.8 and of its ions -240.1 and -692.0 \
     kJ/mol, from memory",
)
.within((16.0, 20.0));

/// Heat that dry yeast gives when it is wetted (J/g).
pub const WETTING_YEAST: Fact = taken(
    "cooling.wetting.yeast",
    35.0,
    "dry protein and starch some 110 J/g, less for each percent of water that they hold already \
     (yeast 5 to 8); judgement, from memory",
    (15.0, 60.0),
);

/// Heat that starch as dry as flour gives when it is wetted (J/g).
pub const WETTING_STARCH: Fact = taken(
    "cooling.wetting.starch",
    17.0,
    "dry starch 110 J/g, at 11 % of water some 17, from memory",
    (8.0, 35.0),
);

/// Heat capacity of a bag's two sheets of film, in J/K.
pub fn film_j_per_k(bag: &Bag) -> f64 {
    let grams = 2e-3 * bag.width_mm * bag.height_mm * bag.film_um * 1e-6 * FILM_DENSITY.value;
    grams * FILM_HEAT.value
}

/// Water above which a food's sugars and salts count as dissolved already (g per 100 g): honey has
/// 17, flour 12.
const DRY_BELOW: f64 = 15.0;

/// Heat that 100 g of a food takes from the water into which it is stirred, in joules; negative where
/// it gives some.
///
/// Dry foods only: crystals dissolve, starch is wetted. Of maltose, lactose and dextrin nothing is
/// known here that is worth a number; they are left out, as is the heat of soda meeting acid
/// (9 kJ/mol) and of sweeteners that no label part stands for (erythritol cools by a kelvin a gram).
///
/// # Source
/// Handbook values from memory, see the facts `cooling.dissolving` and `cooling.wetting`.
pub fn taken_by_100_g(food: &Composition) -> f64 {
    if food.water >= DRY_BELOW {
        return 0.0;
    }
    let hydrate = (food.water / WATER.value).min(food.glucose / HEXOSE.value);
    DISSOLVING_SUCROSE.value * food.sucrose
        + DISSOLVING_GLUCOSE.value * food.glucose
        + 1e3 * GLUCOSE_HYDRATE.value * hydrate
        + DISSOLVING_FRUCTOSE.value * food.fructose
        + DISSOLVING_SALT.value * food.salt
        + 1e3 * DISSOLVING_SODA.value * food.bicarbonate
        - WETTING_STARCH.value * (food.raw_starch + food.cooked_starch)
}
