//! Everything that another program needs to work out the same rates.

use super::cases::Case;
use barm_science::model::Parameters;
use barm_science::model::state::{
    ALIVE, AWAKE, BYPRODUCT, CELSIUS, COOKED, DEXTRIN, DISSOLVED, ENZYME_ORDER, ENZYMES,
    ETHANOL, FRUCTOSE, GALACTOSE, GALACTOSE_INDUCED, GALACTOSIDES, GAS, GLUCOSE, INDUCED,
    LACTOSE, MALTOSE, MALTOTRIOSE, MELIBIOSE, PERMEATED, RAW, RESERVE, STATES, SUCROSE, State,
    WATER_USED,
};
use barm_science::ode::System;
use barm_science::setup::{EnzymeKind, YeastKind};
use serde_json::{Map, Value, json};

/// Random states at which rates are shown, in each bag.
const SHOWN: usize = 200;

/// Names of the states in their order.
fn names() -> Vec<String> {
    let mut names: Vec<String> = (0..STATES).map(|i| format!("state_{i}")).collect();
    for (place, name) in [
        (CELSIUS, "celsius"),
        (AWAKE, "awake"),
        (ALIVE, "alive"),
        (INDUCED, "induced"),
        (GALACTOSE_INDUCED, "galactose_induced"),
        (RESERVE, "reserve"),
        (RAW, "raw"),
        (COOKED, "cooked"),
        (DEXTRIN, "dextrin"),
        (MALTOTRIOSE, "maltotriose"),
        (GALACTOSIDES, "galactosides"),
        (MELIBIOSE, "melibiose"),
        (MALTOSE, "maltose"),
        (SUCROSE, "sucrose"),
        (LACTOSE, "lactose"),
        (GALACTOSE, "galactose"),
        (GLUCOSE, "glucose"),
        (FRUCTOSE, "fructose"),
        (DISSOLVED, "dissolved"),
        (GAS, "gas"),
        (PERMEATED, "permeated"),
        (ETHANOL, "ethanol"),
        (BYPRODUCT, "byproduct"),
        (WATER_USED, "water_used"),
    ] {
        names[place] = name.to_owned();
    }
    for (place, kind) in ENZYME_ORDER.into_iter().enumerate() {
        names[ENZYMES + place] = enzyme(kind).to_owned();
    }
    names
}

/// Name of an enzyme, as the facts have it.
const fn enzyme(kind: EnzymeKind) -> &'static str {
    match kind {
        EnzymeKind::Glucoamylase => "glucoamylase",
        EnzymeKind::FungalAlphaAmylase => "fungal_amylase",
        EnzymeKind::BacterialAlphaAmylase => "bacterial_amylase",
        EnzymeKind::NeutralLactase => "neutral_lactase",
        EnzymeKind::AcidLactase => "acid_lactase",
        EnzymeKind::Invertase => "invertase",
        EnzymeKind::BetaAmylase => "beta_amylase",
        EnzymeKind::AlphaGalactosidase => "alpha_galactosidase",
    }
}

const fn yeast(kind: YeastKind) -> &'static str {
    match kind {
        YeastKind::ActiveDry => "active_dry",
        YeastKind::Instant => "instant",
        YeastKind::Compressed => "compressed",
    }
}

fn parameters(p: &Parameters) -> Value {
    json!({
        "steepness": p.steepness,
        "optimum_shift": p.optimum_shift,
        "wake": p.wake,
        "slow_loss": p.slow_loss,
        "d60": p.d60,
        "death_z": p.death_z,
        "half_glucose": p.half_glucose,
        "fructose_half_ratio": p.fructose_half_ratio,
        "fructose_rate": p.fructose_rate,
        "maltose_rate": p.maltose_rate,
        "half_maltose": p.half_maltose,
        "half_reserve": p.half_reserve,
        "own_heat": p.own_heat,
        "maltotriose_rate": p.maltotriose_rate,
        "galactose_rate": p.galactose_rate,
        "induction": p.induction,
        "galactose_induction": p.galactose_induction,
        "repression": p.repression,
        "reserve_rate": p.reserve_rate,
        "own_invertase": p.own_invertase,
        "half_osmotic": p.half_osmotic,
        "ethanol_most": p.ethanol_most,
        "enzyme_half": p.enzyme_half,
        "raw_starch": p.raw_starch,
        "enzyme_loss": p.enzyme_loss,
        "gelatinization": p.gelatinization,
        "co2_yield": p.co2_yield,
        "ethanol_yield": p.ethanol_yield,
        "release": p.release,
        "permeability": p.permeability,
    })
}

/// Uniform numbers in 0 to 1 by SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014).
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// A state that a bag might be in, or not: some sugars absent, some plentiful.
fn state(dice: &mut Dice) -> State {
    core::array::from_fn(|i| match i {
        CELSIUS => 1.0 + 62.0 * dice.roll(),
        AWAKE | ALIVE | INDUCED | GALACTOSE_INDUCED => dice.roll(),
        _ if i >= ENZYMES => 0.1 * dice.roll(),
        _ if dice.roll() < 0.2 => 0.0,
        _ => 20.0 * dice.roll() * dice.roll(),
    })
}

fn bag(case: &Case) -> Value {
    let mut dice = Dice(case.name.bytes().map(u64::from).sum());
    let shown: Vec<Value> = (0..SHOWN)
        .map(|_| {
            let minute = 120.0 * dice.roll() - 3.0;
            let y = state(&mut dice);
            json!({ "minute": minute, "state": y, "rates": case.mixture.rates(minute, &y) })
        })
        .collect();
    let fixed: Map<String, Value> =
        case.mixture.fixed().into_iter().map(|(name, v)| (name.to_owned(), json!(v))).collect();
    json!({
        "name": case.name,
        "timed": case.timed,
        "wet_min": case.wet_min,
        "last_minute": case.last_minute,
        "yeast": case.setup.yeast.map(|dose| yeast(dose.kind)),
        "enzymes": case.setup.enzymes.iter().map(|dose| enzyme(dose.kind)).collect::<Vec<_>>(),
        "parameters": parameters(&case.parameters),
        "fixed": fixed,
        "start": case.mixture.start(),
        "shown": shown,
    })
}

/// The whole answer.
pub(crate) fn everything(cases: &[Case]) -> Value {
    let facts: Map<String, Value> = barm_science::facts::all()
        .iter()
        .map(|fact| (fact.name.to_owned(), json!(fact.value)))
        .collect();
    json!({
        "states": names(),
        "facts": facts,
        "bags": cases.iter().map(bag).collect::<Vec<_>>(),
    })
}
