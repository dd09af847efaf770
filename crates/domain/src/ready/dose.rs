//! How much goes into a bag, and when things happen, for these bags, this air and this bell.

use super::{Answers, MINUTES, ReadyError, WARMTH};
use crate::amount::Amount;
use crate::plan::{Bag, BagChoice, CardChoice, Place, Plan, Timing};
use barm_science::air;
use barm_science::bag::StandardBag;
use barm_science::card_height::blind_pair;

/// Amounts for one bag.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Dose {
    bag: BagChoice,
    card: &'static str,
    water_ml: f64,
    pub(super) water_celsius: f64,
    yeast_g: f64,
    /// Food (tenths of a gram): what a balance can tell apart.
    pub(super) food_tenths: u32,
    /// How much larger the bag's face is than a snack bag's (1).
    pub(super) larger: f64,
    timing: Timing,
}

/// A snack bag takes 40 mL, 2 g of yeast and up to half a gram of sugar: all of its gas then leaves
/// the bag under four fifths full, and the card rises by a few millimetres in ten minutes.
const SNACK_WATER_ML: f64 = 40.0;
const SNACK_YEAST_G: f64 = 2.0;
const SNACK_FOOD_TENTHS: f64 = 5.0;

/// How far the gas of half a gram of sugar stays below what a snack bag takes at sea level (1).
const MARGIN: f64 = 1.1;

/// How much more of a starch than of sugar goes into a bag (1): three quarters of it is starch.
const STARCH: f64 = 1.2;

/// Air pressure at sea level (Pa).
const SEA_LEVEL_PA: f64 = 101_325.0;

/// The smallest and largest face, against a snack bag's, in which a card rises readably (1).
const FACES: (f64, f64) = (0.75, 8.0);

impl Dose {
    /// The same with as much starch or milk sugar as the bag takes: yeast gets at it slowly.
    pub(super) fn of_starch(self) -> Self {
        Self { food_tenths: (f64::from(self.food_tenths) * STARCH).floor() as u32, ..self }
    }
}

/// Amounts and times for these answers.
///
/// The card rises by about as much in a larger bag if everything grows with the bag's face. In
/// thin air a gram of sugar makes more gas.
pub(super) fn of(answers: &Answers) -> Result<Dose, ReadyError> {
    let minutes = answers.school.length_min;
    if !(MINUTES.0..=MINUTES.1).contains(&minutes) {
        return Err(ReadyError::Minutes { minutes });
    }
    let celsius = answers.water_celsius;
    if !(WARMTH.0..=WARMTH.1).contains(&celsius) {
        return Err(ReadyError::Warmth { celsius });
    }
    let snack = StandardBag::Snack.bag();
    let bag = &answers.bag.bag;
    let larger = bag.width_mm * bag.height_mm / (snack.width_mm * snack.height_mm);
    if !(FACES.0..=FACES.1).contains(&larger) {
        return Err(ReadyError::Bag { written: answers.bag.written.clone() });
    }
    let thin = (MARGIN * pressure(answers.school.place) / SEA_LEVEL_PA).min(1.0);
    let tenths = (SNACK_FOOD_TENTHS * larger * thin + 1e-9).floor().max(1.0);
    Ok(Dose {
        bag: answers.bag.clone(),
        card: card(bag),
        water_ml: 10.0 * (SNACK_WATER_ML * larger / 10.0).round(),
        water_celsius: celsius,
        yeast_g: (2.0 * SNACK_YEAST_G * larger).round() / 2.0,
        food_tenths: tenths as u32,
        larger,
        timing: timing(minutes),
    })
}

/// The smallest index card, or else cardboard cut to size, that feels the first gas.
fn card(bag: &Bag) -> &'static str {
    const SIZES: [&str; 4] = ["3 x 5 in", "4 x 6 in", "5 x 8 in", "8 x 10 in"];
    let sees = |size: &&str| {
        CardChoice::parse(size).is_ok_and(|choice| !blind_pair(bag, &choice.card))
    };
    SIZES.into_iter().find(sees).unwrap_or(SIZES[3])
}

fn pressure(place: Place) -> f64 {
    match place {
        Place::Pressure(pascal) => pascal,
        // An altitude that no school has is said when the plan is read.
        Place::Altitude(meters) => {
            air::pressure_at(meters).map_or(SEA_LEVEL_PA, |pressure| pressure.0)
        }
    }
}

/// Short periods have things laid out; long ones read less often. Common practice, no source.
fn timing(minutes: f64) -> Timing {
    let (mixing_min, clearing_min) = if minutes < 30.0 {
        (8.0, 4.0)
    } else if minutes < 40.0 {
        (9.0, 5.0)
    } else if minutes < 45.0 {
        (12.0, 5.0)
    } else {
        (14.0, 6.0)
    };
    let interval_min = if minutes < 60.0 {
        4.0
    } else if minutes < 100.0 {
        5.0
    } else {
        10.0
    };
    Timing { interval_min, mixing_min, clearing_min, wet_before_zero_min: 3.0 }
}

/// An amount in tenths of a gram.
pub(super) fn grams(tenths: u32) -> Result<Amount, ReadyError> {
    Ok(Amount::parse(&format!("{} g", f64::from(tenths) / 10.0))?)
}

/// Puts the amounts into the base recipe.
pub(super) fn into_base(plan: &mut Plan, dose: &Dose) -> Result<(), ReadyError> {
    plan.base.bag = dose.bag.clone();
    plan.base.card = CardChoice::parse(dose.card)?;
    plan.base.water = Amount::parse(&format!("{} mL", dose.water_ml))?;
    plan.base.water_celsius = dose.water_celsius;
    plan.base.yeast_amount = Amount::parse(&format!("{} g", dose.yeast_g))?;
    plan.base.food_amount = Some(grams(dose.food_tenths)?);
    plan.timing = dose.timing;
    Ok(())
}
