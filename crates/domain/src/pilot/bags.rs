//! The bags of a pilot: yeast on plain sugar, and each enzyme alone and on what it cuts.

use super::protocol::{PilotError, recipes, yeast_of};
use crate::amount::{Amount, AmountKind};
use crate::bench;
use crate::plan::{Day, Lies, Plan, Recipe, YeastKind};
use barm_science::bag::WORKING_FILL;
use barm_science::enzyme::products::product;
use barm_science::forecast::{Span, Streams, forecast};
use barm_science::setup::{Composition, EnzymeKind, Setup};

/// One bag of a pilot.
#[derive(Debug, Clone, PartialEq)]
pub struct PilotBag {
    /// Its letter, from A.
    pub letter: String,
    /// What it is there for.
    pub role: Role,
    /// What goes into it.
    pub recipe: Recipe,
    /// Minutes after its zero reading at which its card is read.
    pub minutes: Vec<u32>,
}

/// What a bag of a pilot is there for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Role {
    /// How strong the yeast is, and how fast it wakes.
    Yeast,
    /// How much sugar an enzyme product brings along, by its key.
    Carrier(String),
    /// How fast an enzyme works, by its key.
    Enzyme(String),
}

/// All bags of a pilot lie in water of this temperature (°C): yeast works fast there, nobody is burned,
/// and the room has little to say.
pub(super) const TRAY_CELSIUS: f64 = 35.0;
/// Minutes between readings.
const EVERY_MIN: u32 = 5;
/// Minute of the last reading.
pub(super) const LAST_MIN: u32 = 30;
/// Enzymes that a pilot tries: more bags than this one person does not read in time.
const MOST_ENZYMES: usize = 2;
/// Amounts of yeast and of sugar, largest first; the first that the bag takes is it.
const SPOONS: [&str; 4] = ["1 tsp", "1/2 tsp", "1/4 tsp", "1/8 tsp"];
/// The same of yeast that comes in cakes, of about the same strength.
const CAKES: [&str; 4] = ["8 g", "4 g", "2 g", "1 g"];
/// Days that are tried to see whether a bag takes an amount.
const DRAWS: usize = 64;
/// White sugar.
const SUGAR: &str = "sugar_white";

pub(super) fn bags(plan: &Plan, day: &Day) -> Result<Vec<PilotBag>, PilotError> {
    let Some(kind) = yeast_of(plan) else { return Ok(Vec::new()) };
    let base = plain(&plan.base, kind);
    let mut all = vec![(Role::Yeast, sugar(plan, day, &base, kind)?)];
    for (key, recipe) in enzymes(plan).into_iter().take(MOST_ENZYMES) {
        let recipe = Recipe { food: None, food_amount: None, ..plain(&recipe, kind) };
        if brings_sugar(&key) {
            all.push((Role::Carrier(key.clone()), spared(plan, day, &recipe)?));
        }
        if let Some((food, amount)) = cut_by(plan, &key) {
            let fed = Recipe { food: Some(food), food_amount: Some(amount), ..recipe };
            all.push((Role::Enzyme(key), spared(plan, day, &fed)?));
        }
    }
    let minutes: Vec<u32> = (EVERY_MIN..=LAST_MIN).step_by(EVERY_MIN as usize).collect();
    let named = ('A'..='Z').zip(all).map(|(letter, (role, recipe))| PilotBag {
        letter: letter.into(),
        role,
        recipe,
        minutes: minutes.clone(),
    });
    Ok(named.collect())
}

/// A recipe in the warm tray, without what the plan adds to it.
fn plain(recipe: &Recipe, kind: YeastKind) -> Recipe {
    Recipe {
        yeast: Some(kind),
        water_celsius: TRAY_CELSIUS,
        lies: Lies::WarmTray(TRAY_CELSIUS),
        extras: Vec::new(),
        ..recipe.clone()
    }
}

/// As much yeast and sugar as the bag takes.
fn sugar(plan: &Plan, day: &Day, base: &Recipe, kind: YeastKind) -> Result<Recipe, PilotError> {
    let with = |written: &str, sugar: &str| {
        let (yeast_amount, sugar) = (amount(written)?, amount(sugar)?);
        Some(Recipe {
            yeast_amount,
            food: Some(SUGAR.into()),
            food_amount: Some(sugar),
            enzyme: None,
            enzyme_amount: None,
            ..base.clone()
        })
    };
    let yeast = if kind == YeastKind::Compressed { CAKES } else { SPOONS };
    let recipes: Vec<Recipe> =
        yeast.iter().zip(SPOONS).filter_map(|(yeast, sugar)| with(yeast, sugar)).collect();
    first_that_fits(plan, day, recipes)
}

/// The recipe with as much of its yeast as the bag takes.
fn spared(plan: &Plan, day: &Day, recipe: &Recipe) -> Result<Recipe, PilotError> {
    let yeast = recipe.yeast_amount.clone();
    let half = |times: f64| {
        let value = yeast.value / times;
        let written = match yeast.kind {
            _ if times <= 1.0 => yeast.written.clone(),
            AmountKind::Mass => format!("{} g", rounded(value)),
            _ => return None,
        };
        Some(Recipe {
            yeast_amount: Amount { written, value, ..yeast.clone() },
            ..recipe.clone()
        })
    };
    first_that_fits(plan, day, [1.0, 2.0, 4.0].into_iter().filter_map(half).collect())
}

/// A mass to a tenth of a gram.
fn rounded(grams: f64) -> f64 {
    (10.0 * grams).round() / 10.0
}

/// The first recipe that stays below the working fill, or else the last.
fn first_that_fits(
    plan: &Plan,
    day: &Day,
    mut recipes: Vec<Recipe>,
) -> Result<Recipe, PilotError> {
    let last = recipes.pop();
    for recipe in recipes {
        if fits(&setup(plan, day, &recipe)?)? {
            return Ok(recipe);
        }
    }
    // Every list of amounts has one.
    let recipe = last.unwrap_or_else(|| plan.base.clone());
    setup(plan, day, &recipe)?;
    Ok(recipe)
}

fn setup(plan: &Plan, day: &Day, recipe: &Recipe) -> Result<Setup, PilotError> {
    bench::setup(plan, recipe, day)
        .map_err(|source| PilotError::Bench { bag: "A".into(), source })
}

fn fits(setup: &Setup) -> Result<bool, PilotError> {
    let until_hours = f64::from(LAST_MIN) / 60.0;
    let span = Span { last_minute: LAST_MIN, draws: DRAWS, until_hours };
    let forecast = forecast(setup, &span, &Streams::alone(1, 2))
        .map_err(|source| PilotError::Setup { bag: "A".into(), source })?;
    Ok(forecast.peak_fill() <= WORKING_FILL.value)
}

/// Each enzyme of the plan with the first recipe that it is in, under the key of its product.
fn enzymes(plan: &Plan) -> Vec<(String, Recipe)> {
    let mut found: Vec<(String, Recipe)> = Vec::new();
    for recipe in recipes(plan) {
        let (Some(name), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) else {
            continue;
        };
        let Ok(shelf) = bench::enzyme(name, amount) else { continue };
        let key = shelf.product.key;
        if found.iter().all(|(known, _)| known != key) {
            found.push((key.to_owned(), recipe));
        }
    }
    found
}

/// Whether a product brings sugar of its own into the bag.
fn brings_sugar(key: &str) -> bool {
    let carrier = product(key).map_or(Composition::NONE, |product| product.carrier);
    carrier.carbohydrates().iter().any(|part| *part > 1.0)
}

/// What an enzyme is tried on: of the plan's foods the one that has most of what it cuts, or else a
/// food that is easy to get. Nothing for an enzyme of which yeast has its own.
fn cut_by(plan: &Plan, key: &str) -> Option<(String, Amount)> {
    let kind = product(key)?.kind;
    let cut: fn(&Composition) -> f64 = match kind {
        EnzymeKind::Glucoamylase
        | EnzymeKind::FungalAlphaAmylase
        | EnzymeKind::BacterialAlphaAmylase
        | EnzymeKind::BetaAmylase => |food| food.cooked_starch + food.dextrin,
        EnzymeKind::AlphaGalactosidase => |food| food.galactosides,
        EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => |food| food.lactose,
        EnzymeKind::Invertase => return None,
    };
    let share = |name: &str| {
        bench::ingredient(plan, name, "food").map_or(0.0, |food| cut(&food.composition))
    };
    let foods = recipes(plan).filter_map(|recipe| Some((recipe.food?, recipe.food_amount?)));
    let best = foods.max_by(|a, b| share(&a.0).total_cmp(&share(&b.0)));
    let usual = match kind {
        EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => Some("milk_powder_nonfat"),
        // Beans, which a plan that has the enzyme has too.
        EnzymeKind::AlphaGalactosidase => None,
        _ => Some("potato_flakes"),
    };
    let little = if usual.is_some() { LITTLE } else { LITTLE_OF_BEANS };
    match best {
        Some((food, amount)) if share(&food) > little => Some((food, amount)),
        _ => Some((usual?.to_owned(), amount("1 tsp")?)),
    }
}

/// Of a food with less of it than this nothing can be learned (g per 100 g).
const LITTLE: f64 = 20.0;
/// The same of beans, which hold a few grams of raffinose and its like (g per 100 g).
const LITTLE_OF_BEANS: f64 = 2.0;

/// An amount that this file writes itself.
fn amount(written: &str) -> Option<Amount> {
    Amount::parse(written).ok()
}
