//! From a plan and what was read to rows that can be shared.

use super::{
    AsideRow, BagRow, IngredientRow, Item, Lying, Measure, MeterRow, Part, ReadingRow, Rows,
    Rule, Shared, SharedError, TreatmentCode, TreatmentRow,
};
use crate::amount::AmountKind;
use crate::bench::{self, BenchError};
use crate::code::BagCode;
use crate::cupboard::Cupboard;
use crate::nearest::plain;
use crate::plan::{Lies, Plan, Question, Treatment};
use crate::reading::{Reading, SetAside};
use crate::result::meter::MeterReading;
use std::collections::{BTreeMap, BTreeSet};

/// Why an investigation cannot be shared as it is.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NotShared {
    /// A recipe cannot be put into grams and milliliters.
    #[error("the treatment “{treatment}” cannot be put into numbers: {error}")]
    Recipe {
        /// Its name, for the teacher's own eyes.
        treatment: String,
        /// What is wrong.
        error: BenchError,
    },
    /// A bag has a code that is none, or belongs to no period or treatment of the plan.
    #[error("the bag “{bag}” of the plan has no code, treatment or day that can be shared")]
    Bag {
        /// What stands in the plan.
        bag: String,
    },
    /// The plan has more treatments than codes.
    #[error("the plan has more treatments than can be shared (999)")]
    TooMany,
    /// The rows do not hang together.
    #[error(transparent)]
    Rows(#[from] SharedError),
}

impl Shared {
    /// What can be shared of a plan and of what counts of its record. Notes, names, titles, dates,
    /// places and the wording of rules stay behind; readings of bags that the plan does not have, too.
    ///
    /// # Errors
    /// [`NotShared`] says what cannot be put into codes and numbers.
    pub fn of(
        plan: &Plan,
        readings: &[Reading],
        set_aside: &[SetAside],
        meter: &[MeterReading],
    ) -> Result<Self, NotShared> {
        let mut rows = Rows::default();
        let codes = codes(plan)?;
        for (question, treatment) in treatments(plan) {
            add_treatment(plan, question, treatment, &codes, &mut rows)?;
        }
        for bag in &plan.bags {
            let row = bag_row(plan, bag, &codes);
            rows.bags.push(row.ok_or_else(|| NotShared::Bag { bag: bag.code.clone() })?);
        }
        let own = |bag: &str| {
            let code = bag.parse::<BagCode>().ok()?;
            rows.bags.iter().any(|row| row.code == code).then_some(code)
        };
        let reading = |one: &Reading| {
            let (minute, height_mm) = (hundredths(one.minute), hundredths(one.height_mm));
            Some(ReadingRow { bag: own(&one.bag)?, minute, height_mm })
        };
        // As in results, only the plan's own rules count.
        let aside = |one: &SetAside| {
            let mut rules = plan.set_aside_rules.iter();
            let rule = rules.find(|rule| plain(&rule.id) == plain(&one.rule))?;
            Some(AsideRow { bag: own(&one.bag)?, rule: Rule::of(&rule.id) })
        };
        let metered = |one: &MeterReading| {
            Some(MeterRow {
                bag: own(&one.bag)?,
                turn: one.turn,
                minute: one.minute.map(hundredths),
                percent: one.percent,
                celsius: one.celsius,
                gas_ml: one.sample.gas_ml,
                air_ml: one.sample.air_ml,
            })
        };
        // The first of two that say something of the same bag and minute counts, as in results.
        let mut seen = BTreeSet::new();
        let first = |row: &ReadingRow| seen.insert((row.bag, row.minute.to_bits()));
        let readings = readings.iter().filter_map(reading).filter(first).collect();
        let mut seen = BTreeSet::new();
        let set_aside = set_aside.iter().filter_map(aside).filter(|row| seen.insert(row.bag));
        let set_aside = set_aside.collect();
        let meter: Vec<MeterRow> = meter.iter().filter_map(metered).collect();
        Ok(Self::new(Rows { readings, set_aside, meter, ..rows })?)
    }
}

/// To hundredths: a second is two of a minute, and no ruler shows one of a millimeter.
fn hundredths(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}

/// To thousandths: no balance of a school shows one of a gram.
fn thousandths(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

/// Every treatment with its question; controls have none.
fn treatments(plan: &Plan) -> impl Iterator<Item = (Option<&Question>, &Treatment)> {
    let own = plan.questions.iter();
    let own = own.flat_map(|one| one.treatments.iter().map(move |t| (Some(one), t)));
    own.chain(plan.controls.iter().map(|control| (None, &control.treatment)))
}

/// The code of each treatment: its place in the plan.
fn codes(plan: &Plan) -> Result<BTreeMap<&str, TreatmentCode>, NotShared> {
    let mut codes = BTreeMap::new();
    for (at, (_, treatment)) in treatments(plan).enumerate() {
        let code = u16::try_from(at + 1).ok().and_then(TreatmentCode::of);
        codes.insert(treatment.name.as_str(), code.ok_or(NotShared::TooMany)?);
    }
    Ok(codes)
}

fn add_treatment(
    plan: &Plan,
    question: Option<&Question>,
    treatment: &Treatment,
    codes: &BTreeMap<&str, TreatmentCode>,
    rows: &mut Rows,
) -> Result<(), NotShared> {
    let failed = |error| NotShared::Recipe { treatment: treatment.name.clone(), error };
    let Some(code) = codes.get(treatment.name.as_str()).copied() else { return Ok(()) };
    let Some(day) = plan.days.first() else { return Ok(()) };
    let recipe = plan.recipe(treatment);
    let setup = bench::setup(plan, &recipe, day).map_err(failed)?;
    let beside = question.and_then(|question| question.reference_of(treatment));
    let place = question.and_then(|own| plan.questions.iter().position(|one| one.id == own.id));
    rows.treatments.push(TreatmentRow {
        code,
        question: place.and_then(|place| u16::try_from(place + 1).ok()),
        beside: beside.and_then(|name| codes.get(name).copied()),
        control: question.is_none(),
        bag_width_mm: hundredths(setup.bag.width_mm),
        bag_height_mm: hundredths(setup.bag.height_mm),
        card_length_mm: hundredths(setup.card.length_mm),
        card_width_mm: hundredths(setup.card.width_mm),
        water_ml: hundredths(setup.water_ml),
        water_celsius: hundredths(setup.water_celsius),
        yeast: setup.yeast.as_ref().map(|yeast| yeast.kind),
        yeast_g: setup.yeast.as_ref().map_or(0.0, |yeast| thousandths(yeast.grams)),
        lying: match recipe.lies {
            Lies::Bench => Lying::Bench,
            Lies::Towel => Lying::Towel,
            Lies::WarmTray(_) => Lying::Tray,
        },
        tray_celsius: match recipe.lies {
            Lies::WarmTray(celsius) => Some(hundredths(celsius)),
            Lies::Bench | Lies::Towel => None,
        },
    });
    let food = recipe
        .food
        .iter()
        .zip(&recipe.food_amount)
        .map(|(item, amount)| (Part::Food, item, amount));
    let extras = recipe.extras.iter().map(|extra| (Part::Extra, &extra.item, &extra.amount));
    for (part, name, amount) in food.chain(extras) {
        let food = bench::ingredient(plan, name, "food").map_err(failed)?;
        let (grams, _) = bench::food_grams(&food, amount, "food_amount").map_err(failed)?;
        // Only the program's own ids leave; a food of the teacher's has no name here.
        let id = Cupboard::with(&plan.label_foods).food(name).ok();
        let own = |id: &String| plan.label_foods.iter().all(|food| food.name != *id);
        let item = id.filter(own).and_then(|id| Item::of(&id)).unwrap_or(Item::OWN_LABEL);
        let (amount, measure) = (thousandths(grams), Measure::Gram);
        rows.ingredients.push(IngredientRow { treatment: code, part, item, amount, measure });
    }
    if let Some((name, amount)) = recipe.enzyme.as_ref().zip(recipe.enzyme_amount.as_ref()) {
        let item = Cupboard::enzyme(name).ok().and_then(|key| Item::of(&key));
        let measure = match amount.kind {
            AmountKind::Mass => Measure::Gram,
            AmountKind::Volume | AmountKind::Spoon => Measure::Milliliter,
            AmountKind::Drops => Measure::Drop,
            AmountKind::Pieces => Measure::Piece,
        };
        let (part, item) = (Part::Enzyme, item.unwrap_or(Item::OWN_LABEL));
        let amount = thousandths(amount.value);
        rows.ingredients.push(IngredientRow { treatment: code, part, item, amount, measure });
    }
    Ok(())
}

fn bag_row(
    plan: &Plan,
    bag: &crate::plan::PlannedBag,
    codes: &BTreeMap<&str, TreatmentCode>,
) -> Option<BagRow> {
    let day = plan.day(&plan.period(&bag.period)?.day)?;
    Some(BagRow {
        code: bag.code.parse().ok()?,
        treatment: *codes.get(bag.treatment.as_str())?,
        replicate: bag.replicate,
        room_celsius: hundredths(day.room_celsius),
        pressure_hpa: (bench::pressure(day).ok()? / 1000.0).round() * 10.0,
    })
}
