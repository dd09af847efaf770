//! Questions, treatments and controls of each ready plan.

use super::dose::{Dose, grams};
use super::larder::{Larder, Pair};
use super::{Ready, ReadyError};
use crate::amount::Amount;
use crate::cupboard::spoken;
use crate::plan::{Control, Difference, Extra, Plan, Question, Treatment, Variable};
use crate::starter::with_food;

const NO_FOOD: &str = "No food";
const LACTASE: &str = "lactase-drops";

/// How much more dry milk than starch goes into a bag (1).
const MILK: f64 = 1.7;

/// Writes questions and controls into a plan whose base is there.
pub(super) fn write(
    ready: Ready,
    plan: &mut Plan,
    dose: &Dose,
    larder: &Larder,
) -> Result<(), ReadyError> {
    let sweet = larder.sweet;
    plan.questions = match ready {
        Ready::FoodOrNot => vec![foods(plan, "food", ready.title(), &[sweet])],
        Ready::WhichFood => vec![foods(plan, "food", ready.title(), &larder.foods)],
        Ready::OwnQuestion => {
            let asks = "Which of these foods feeds yeast best?";
            vec![foods(plan, "food", asks, &larder.foods)]
        }
        Ready::HowMuch => vec![amounts(plan, dose, sweet)?],
        Ready::HowWarm => vec![warmth(plan, dose, sweet)],
        Ready::Salt => vec![salt(plan, dose, sweet)?],
        Ready::Enzyme => enzymes(plan, dose, &larder.pairs)?,
    };
    let tasted = if ready == Ready::Enzyme { larder.pairs[0].food } else { sweet };
    plan.controls = controls(ready, dose, tasted, larder)?;
    Ok(())
}

/// Two bags of each group, dealt to so many treatments; never fewer than two of a kind.
fn replicates(plan: &Plan, treatments: usize) -> u32 {
    let bags: u32 = plan.periods.iter().map(|period| 2 * period.groups).sum();
    bags.div_ceil(u32::try_from(treatments.max(1)).unwrap_or(u32::MAX)).max(2)
}

/// What a food is called at the head of a label.
fn called(food: &str) -> String {
    let name = spoken(food);
    let mut letters = name.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn treatment(name: String, difference: Difference) -> Treatment {
    Treatment { name, beside: None, replicates: None, difference }
}

fn question(
    plan: &Plan,
    (id, asks): (&str, &str),
    variable: Variable,
    reference: &str,
    treatments: Vec<Treatment>,
) -> Question {
    Question {
        id: id.into(),
        asks: asks.into(),
        variable,
        crossed_with: None,
        reference: Some(reference.into()),
        replicates: replicates(plan, treatments.len()),
        treatments,
        uses: Vec::new(),
    }
}

fn foods(plan: &Plan, id: &str, asks: &str, foods: &[&str]) -> Question {
    let treatments = foods.iter().map(|food| with_food(&called(food), food)).collect();
    question(plan, (id, asks), Variable::Food, NO_FOOD, treatments)
}

/// A fifth, three fifths and all of what the bag holds.
fn amounts(plan: &Plan, dose: &Dose, food: &str) -> Result<Question, ReadyError> {
    let most = dose.food_tenths;
    let mut levels = vec![most.div_ceil(5), most * 3 / 5, most];
    levels.dedup();
    levels.retain(|tenths| *tenths > 0);
    let mut treatments = Vec::new();
    for tenths in levels {
        let amount = grams(tenths)?;
        let mut one = with_food(&format!("{}, {}", called(food), amount.written), food);
        one.difference.food_amount = Some(amount);
        treatments.push(one);
    }
    let asks = ("amount", Ready::HowMuch.title());
    Ok(question(plan, asks, Variable::FoodAmount, NO_FOOD, treatments))
}

/// Water as cold as the room, as warm as was answered, and between.
fn warmth(plan: &mut Plan, dose: &Dose, food: &str) -> Question {
    plan.base.food = Some(food.to_owned());
    let warm = dose.water_celsius.round();
    let cold = 20.0;
    let between = ((cold + warm) / 2.0).round();
    let at = |celsius: f64| {
        let difference = Difference { water_celsius: Some(celsius), ..Difference::default() };
        treatment(format!("Water of {celsius} °C"), difference)
    };
    let treatments: Vec<Treatment> = [cold, between, warm].map(at).to_vec();
    let reference = treatments[0].name.clone();
    let asks = ("warmth", Ready::HowWarm.title());
    question(plan, asks, Variable::WaterTemperature, &reference, treatments)
}

/// About 2 and 5 g of salt in 100 mL of water.
fn salt(plan: &mut Plan, dose: &Dose, food: &str) -> Result<Question, ReadyError> {
    plan.base.food = Some(food.to_owned());
    let mut treatments = vec![treatment("No salt".into(), Difference::default())];
    for tenths in [8.0, 20.0].map(|tenths: f64| (tenths * dose.larger).round() as u32) {
        let amount = grams(tenths)?;
        let name = format!("Salt, {}", amount.written);
        let extras = Some(vec![Extra { item: "salt".into(), amount }]);
        treatments.push(treatment(name, Difference { extras, ..Difference::default() }));
    }
    let asks = ("salt", Ready::Salt.title());
    Ok(question(plan, asks, Variable::Extra, "No salt", treatments))
}

/// How an enzyme is given: its solution in milliliters, or drops.
fn given(enzyme: &str, dose: &Dose) -> Result<Amount, ReadyError> {
    let amount = if enzyme == LACTASE {
        format!("{} drops", (10.0 * dose.larger).round())
    } else {
        format!("{} mL", (5.0 * dose.larger).round())
    };
    Ok(Amount::parse(&amount)?)
}

fn enzyme_word(enzyme: &str) -> &str {
    if enzyme == LACTASE { "lactase" } else { "glucoamylase" }
}

/// One question for each food: the food with its enzyme beside the food alone.
fn enzymes(plan: &Plan, dose: &Dose, pairs: &[Pair]) -> Result<Vec<Question>, ReadyError> {
    let each = replicates(plan, 2 * pairs.len());
    let ask = |(place, pair): (usize, &Pair)| {
        let food = called(pair.food);
        let mut alone = with_food(&food, pair.food);
        let mut cut = with_food(&format!("{food} + {}", enzyme_word(pair.enzyme)), pair.food);
        cut.difference.enzyme = Some(Some(pair.enzyme.to_owned()));
        cut.difference.enzyme_amount = Some(given(pair.enzyme, dose)?);
        if pair.enzyme == LACTASE {
            // Half of milk sugar is galactose, which feeds nobody in a period.
            let amount = grams((f64::from(dose.food_tenths) * MILK).round() as u32)?;
            alone.difference.food_amount = Some(amount.clone());
            cut.difference.food_amount = Some(amount);
        }
        let id = if place == 0 { "enzyme".to_owned() } else { format!("enzyme-{}", place + 1) };
        let asks = if pairs.len() == 1 {
            Ready::Enzyme.title().to_owned()
        } else {
            format!(
                "Does {} help yeast to eat {}?",
                enzyme_word(pair.enzyme),
                spoken(pair.food)
            )
        };
        let mut own = question(plan, (&id, &asks), Variable::Enzyme, &food, vec![alone, cut]);
        own.replicates = each;
        Ok(own)
    };
    pairs.iter().enumerate().map(ask).collect()
}

/// Bags of the teacher's bench in every period: yeast alone, food without yeast, and each enzyme
/// without food.
fn controls(
    ready: Ready,
    dose: &Dose,
    food: &str,
    larder: &Larder,
) -> Result<Vec<Control>, ReadyError> {
    let mut no_food = Difference::default();
    // There the food is in the base.
    if matches!(ready, Ready::HowWarm | Ready::Salt) {
        no_food.food = Some(None);
    }
    let mut no_yeast = with_food(&format!("{}, no yeast", called(food)), food);
    no_yeast.difference.yeast = Some(None);
    let mut all = vec![treatment(NO_FOOD.into(), no_food)];
    if ready == Ready::Enzyme {
        let mut enzymes: Vec<&str> = larder.pairs.iter().map(|pair| pair.enzyme).collect();
        enzymes.dedup();
        for enzyme in enzymes {
            let name = format!("{}, no food", called(enzyme_word(enzyme)));
            let difference = Difference {
                enzyme: Some(Some(enzyme.to_owned())),
                enzyme_amount: Some(given(enzyme, dose)?),
                ..Difference::default()
            };
            all.push(treatment(name, difference));
        }
    }
    all.push(no_yeast);
    Ok(all.into_iter().map(|treatment| Control { treatment, per_period: 1 }).collect())
}
