//! One bag put together: what is in it, how much of it, and how warm.

use super::acidity::Acidity;
use super::enzyme::Enzyme;
use super::granulate::Granulate;
use super::pantry::Pantry;
use super::parameters::{Parameters, SOLIDS_DENSITY, SOLUTE_VOLUME};
use super::state::{
    ALIVE, AWAKE, CELSIUS, COOKED, DEXTRIN, DISSOLVED, FRUCTOSE, GALACTOSE, GALACTOSIDES,
    GLUCOSE, LACTOSE, MALTOSE, MALTOTRIOSE, RAW, RESERVE, STATES, SUCROSE, State,
};
use crate::cooling::{Cooling, SOLIDS_HEAT, WETTING_YEAST, film_j_per_k};
use crate::setup::{EnzymeKind, Setup, YeastKind};
use crate::stoichiometry::{CO2_PER_HEXOSE, DISACCHARIDE, GLUCAN_UNIT, HEXOSE, TRISACCHARIDE};
use crate::units::{Celsius, Pascal};
use crate::yeast::storage::left_by_storage;
use crate::yeast::temperature::{ONE_AT, response};
use crate::yeast::{self, waking};
use crate::{bag, water};

/// Yeast in a bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Crowd {
    pub(super) kind: YeastKind,
    /// Dry matter (g).
    pub(super) dry_g: f64,
    /// Carbon dioxide it makes at 30 °C, awake, alive and unhindered (mmol/min).
    pub(super) co2_per_min: f64,
    /// Reserves at wetting (mmol hexose units).
    pub(super) reserve: f64,
    /// Hexose that it uses for that (mmol/min), over the response to temperature at 30 °C as the
    /// parameters shift it.
    pub(super) hexose_per_min: f64,
    /// Time of its waking over that of active dry yeast (1).
    pub(super) over_active_dry: f64,
}

/// One bag's contents and everything about it that does not change.
#[derive(Debug, Clone, PartialEq)]
pub struct Mixture {
    pub(super) parameters: Parameters,
    pub(super) crowd: Option<Crowd>,
    pub(super) cooling: Cooling,
    pub(super) pressure: Pascal,
    /// Water (kg).
    pub(super) water_kg: f64,
    /// Solution, without starch and other solids (L).
    pub(super) solution_l: f64,
    /// One over that (1/L).
    pub(super) per_solution_l: f64,
    /// Liquid and solids together (mL).
    pub(super) contents_ml: f64,
    /// Heat capacity of the bag and all in it (J/K).
    pub(super) j_per_k: f64,
    /// Particles of salts and acids (osmol/L).
    pub(super) salts_osmol_per_l: f64,
    /// Salts that lower the solubility of gas, as table salt (mol/kg water).
    pub(super) salt_mol_per_kg: f64,
    /// What decides how acid it is.
    pub(super) acidity: Acidity,
    /// Trapped air (mmol).
    pub(super) air: f64,
    /// Gas at which half of the surface is open to it (mmol).
    pub(super) half_pocket: f64,
    /// One face of the bag (m²) and the film's thickness (µm).
    pub(super) face_m2: f64,
    pub(super) film_um: f64,
    /// The yeast's own invertase.
    pub(super) invertase: Enzyme,
    /// The enzymes that are present.
    pub(super) enzymes: Vec<Enzyme>,
    /// How its raw starch cooks and is bored into.
    pub(super) granules: Granulate,
    pub(super) start: State,
}

/// Heat capacity of `water_kg` of water around room temperature (J/K).
fn water_j_per_k(water_kg: f64, celsius: f64) -> f64 {
    water_kg * water::heat_capacity_j_per_kg_k(Celsius(celsius))
}

impl Mixture {
    /// Puts a bag together. The setup must have passed the checks of a forecast.
    pub fn new(setup: &Setup, parameters: &Parameters) -> Self {
        let mut pantry = Pantry::default();
        for food in &setup.foods {
            pantry.add(food);
        }
        for carrier in setup.enzymes.iter().filter_map(|enzyme| enzyme.carrier.as_ref()) {
            pantry.add(carrier);
        }
        let yeast_g = setup.yeast.map_or(0.0, |yeast| yeast.grams);
        let dry_g =
            setup.yeast.map_or(0.0, |yeast| yeast.grams * yeast::dry_matter(yeast.kind));
        let poured = Celsius(setup.water_celsius);
        let poured_kg = 1e-6 * setup.water_ml * water::density_kg_per_m3(poured);
        let water_kg = poured_kg + 1e-3 * (pantry.sum.water + yeast_g - dry_g);
        let dissolved_g = pantry.dissolved_g();
        let solids_g = (pantry.grams - pantry.sum.water - dissolved_g).max(0.0);

        // What was poured brings its warmth; everything else comes from the room.
        let warm = water_j_per_k(poured_kg, setup.water_celsius);
        let room = water_j_per_k(water_kg - poured_kg, setup.room_celsius)
            + SOLIDS_HEAT.value * (dry_g + dissolved_g + solids_g)
            + film_j_per_k(&setup.bag);
        let j_per_k = warm + room;
        // Crystals cool the water that dissolves them, dry yeast warms it; no colder than ice.
        let wetted_g = setup.yeast.map_or(0.0, |yeast| match yeast.kind {
            YeastKind::ActiveDry | YeastKind::Instant => yeast.grams,
            YeastKind::Compressed => 0.0,
        });
        let mixed = warm * setup.water_celsius + room * setup.room_celsius - pantry.taken_j
            + WETTING_YEAST.value * wetted_g;
        let celsius = (mixed / j_per_k).max(0.0);

        let density_kg_per_l = 1e-3 * water::density_kg_per_m3(Celsius(celsius));
        let solution_l = water_kg / density_kg_per_l + 1e-3 * SOLUTE_VOLUME.value * dissolved_g;
        let contents_ml =
            1e3 * solution_l + solids_g / SOLIDS_DENSITY.value + dry_g / yeast::DENSITY.value;

        let crowd = setup.yeast.filter(|yeast| yeast.grams > 0.0).map(|yeast| {
            let cold = 1.0 - waking::left_by_cold_wetting(Celsius(celsius), yeast.kind);
            let left = (1.0 - parameters.cold_loss * cold).max(0.0);
            let kept = left_by_storage(&yeast, parameters.storage_loss);
            let rate =
                yeast::RATE_30C.value * yeast::vigor(yeast.kind) * parameters.vigor * kept;
            let co2_per_min = dry_g * rate * left / 60.0;
            let at_30 = response(Celsius(ONE_AT.0 - parameters.optimum_shift));
            Crowd {
                kind: yeast.kind,
                dry_g,
                co2_per_min,
                hexose_per_min: co2_per_min
                    / (CO2_PER_HEXOSE.value * parameters.co2_yield * at_30),
                over_active_dry: waking::over_active_dry(yeast.kind),
                reserve: 2e3 * parameters.reserve * dry_g / DISACCHARIDE.value,
            }
        });

        let pressure = Pascal(setup.pressure_pa);
        let room_kelvin = Celsius(setup.room_celsius).kelvin().0;
        let mmol_per_ml =
            1e-3 * setup.pressure_pa / (crate::constants::GAS.value * room_kelvin);
        let face_m2 = bag::face_m2(&setup.bag);
        let acidity = Acidity::new(&pantry, dry_g, parameters.buffer, water_kg);

        let mut start = [0.0; STATES];
        start[CELSIUS] = celsius;
        let units = |grams: f64, molar_mass: f64| 1e3 * grams / molar_mass;
        let pair = 0.5 * DISACCHARIDE.value;
        start[RAW] = units(pantry.sum.raw_starch, GLUCAN_UNIT.value);
        start[COOKED] = units(pantry.sum.cooked_starch, GLUCAN_UNIT.value);
        start[DEXTRIN] = units(pantry.sum.dextrin, GLUCAN_UNIT.value);
        start[MALTOTRIOSE] = units(pantry.sum.maltotriose, TRISACCHARIDE.value / 3.0);
        start[GALACTOSIDES] = units(pantry.sum.galactosides, TRISACCHARIDE.value / 3.0);
        start[MALTOSE] = units(pantry.sum.maltose, pair);
        start[SUCROSE] = units(pantry.sum.sucrose, pair);
        start[LACTOSE] = units(pantry.sum.lactose, pair);
        start[GALACTOSE] = units(pantry.sum.galactose, HEXOSE.value);
        start[GLUCOSE] = units(pantry.sum.glucose, HEXOSE.value);
        start[FRUCTOSE] = units(pantry.sum.fructose, HEXOSE.value);
        start[DISSOLVED] = 1e3 * pantry.sum.bicarbonate;
        if let Some(crowd) = &crowd {
            start[ALIVE] = 1.0;
            start[AWAKE] = waking::awake_at_once(crowd.kind);
            start[RESERVE] = crowd.reserve;
        }
        let mut enzymes: Vec<Enzyme> = Vec::new();
        for dose in setup.enzymes.iter().filter(|enzyme| enzyme.units > 0.0) {
            let enzyme = Enzyme::new(dose.kind, acidity.ph_at_rest());
            start[enzyme.place] +=
                1e-3 * enzyme.delivered(dose, setup.room_celsius, parameters);
            if !enzymes.contains(&enzyme) {
                enzymes.push(enzyme);
            }
        }
        let granules = Granulate::new(&pantry.raw, parameters);
        let invertase = Enzyme::new(EnzymeKind::Invertase, acidity.ph_at_rest());

        Self {
            parameters: *parameters,
            crowd,
            cooling: Cooling::new(
                &setup.bag,
                setup.lying,
                setup.room_celsius,
                (contents_ml, j_per_k),
                parameters.heat_loss,
                parameters.tray_loss,
            ),
            pressure,
            water_kg,
            solution_l,
            per_solution_l: 1.0 / solution_l,
            contents_ml,
            j_per_k,
            salts_osmol_per_l: acidity.particles / solution_l,
            salt_mol_per_kg: acidity.as_salt / water_kg,
            acidity,
            air: setup.trapped_air_ml * mmol_per_ml,
            half_pocket: 1e3 * parameters.pocket_mm * face_m2 * mmol_per_ml,
            face_m2,
            film_um: setup.bag.film_um,
            invertase,
            enzymes,
            granules,
            start,
        }
    }

    /// The same bag held at `celsius` from the start, as in a large water bath.
    pub fn held_at(mut self, celsius: f64) -> Self {
        self.start[CELSIUS] = celsius;
        self.cooling = Cooling::none();
        self.j_per_k = f64::INFINITY;
        self
    }

    /// State at wetting.
    pub const fn start(&self) -> &State {
        &self.start
    }

    /// Liquid and solids together, in millilitres.
    pub const fn contents_ml(&self) -> f64 {
        self.contents_ml
    }

    /// Solution without solids, in litres.
    pub const fn solution_l(&self) -> f64 {
        self.solution_l
    }
}
