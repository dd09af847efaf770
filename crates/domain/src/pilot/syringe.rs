//! Known volumes of air under a card.

use super::protocol::PilotError;
use crate::bench;
use crate::bench::tools::TRAPPED_AIR;
use crate::plan::{BagChoice, CardChoice, Day, Plan, Recipe};
use barm_science::bag::{WORKING_FILL, robin_capacity_ml};
use barm_science::card_height::blind_pair;

/// What to inject into one bag.
#[derive(Debug, Clone, PartialEq)]
pub struct Syringe {
    /// The bag.
    pub bag: BagChoice,
    /// The card on it.
    pub card: CardChoice,
    /// Water in it (mL), of the room's temperature.
    pub water_ml: f64,
    /// All air put in so far at each reading (mL), besides the zero reading.
    pub volumes_ml: Vec<f64>,
}

/// Steps that a syringe of 60 mL makes easily (mL).
const STEPS: [f64; 7] = [10.0, 20.0, 30.0, 50.0, 60.0, 100.0, 120.0];
/// Readings at most: each costs a minute.
const MOST_STEPS: f64 = 6.0;

/// The plan's usual bag and card over volumes up to the working fill; nothing for a pair that is blind
/// at first, or a bag that has no room for gas.
pub(super) fn syringe(plan: &Plan, day: &Day) -> Result<Option<Syringe>, PilotError> {
    let (bag, card) = (&plan.base.bag, &plan.base.card);
    if blind_pair(&bag.bag, &card.card) {
        return Ok(None);
    }
    let wet = Recipe {
        yeast: None,
        food: None,
        food_amount: None,
        enzyme: None,
        enzyme_amount: None,
        extras: Vec::new(),
        ..plan.base.clone()
    };
    let setup = bench::setup(plan, &wet, day)
        .map_err(|source| PilotError::Bench { bag: "for the syringe".into(), source })?;
    let most_ml =
        WORKING_FILL.value * robin_capacity_ml(&bag.bag) - setup.water_ml - TRAPPED_AIR.value;
    let steps = STEPS.into_iter().find(|step| most_ml / step < MOST_STEPS + 1.0);
    let step = steps.unwrap_or(STEPS[STEPS.len() - 1]);
    let whole = (most_ml / step).floor().clamp(0.0, MOST_STEPS) as u32;
    // Half a step first: where the card begins to lift is the least known.
    let volumes_ml: Vec<f64> = std::iter::once(0.5 * step)
        .chain((1..=whole).map(|count| step * f64::from(count)))
        .filter(|volume| *volume <= most_ml)
        .collect();
    let (bag, card, water_ml) = (bag.clone(), card.clone(), setup.water_ml);
    Ok((!volumes_ml.is_empty()).then_some(Syringe { bag, card, water_ml, volumes_ml }))
}
