//! Every number of the science in one list.

use crate::fact::Fact;
use crate::{
    air, bag, carbon_dioxide, carbonate, card_height, constants, cooling, enzyme, ethanol,
    food, gas, meter, model, permeation, prior, ruler, stoichiometry, water, weighing, yeast,
};

/// The lists of all modules, one line each.
const LISTS: &[&[Fact]] = &[
    constants::FACTS,
    air::FACTS,
    water::FACTS,
    gas::FACTS,
    carbon_dioxide::FACTS,
    carbonate::FACTS,
    ethanol::FACTS,
    stoichiometry::FACTS,
    bag::FACTS,
    card_height::FACTS,
    card_height::READING_FACTS,
    card_height::HEIGHT_FACTS,
    card_height::CALIBRATION_FACTS,
    ruler::FACTS,
    meter::FACTS,
    meter::CHAIN_FACTS,
    meter::DILUTION_FACTS,
    meter::DRIFT_FACTS,
    meter::STANDARD_FACTS,
    meter::COMPARE_FACTS,
    permeation::FACTS,
    weighing::FACTS,
    cooling::FACTS,
    yeast::FACTS,
    yeast::sugars::FACTS,
    yeast::repression::FACTS,
    yeast::storage::FACTS,
    yeast::temperature::FACTS,
    yeast::loss::FACTS,
    yeast::waking::FACTS,
    yeast::hindrance::FACTS,
    enzyme::heat::FACTS,
    enzyme::acidity::FACTS,
    enzyme::gelatinization::FACTS,
    enzyme::stock::FACTS,
    enzyme::starch::FACTS,
    enzyme::sugars::FACTS,
    enzyme::label::FACTS,
    enzyme::malt::FACTS,
    enzyme::shelf::FACTS,
    food::FACTS,
    food::label::FACTS,
    model::parameters::FACTS,
    model::card::FACTS,
    prior::FACTS,
];

/// All facts, module by module, and at the end what each food of the table is made of.
pub fn all() -> Vec<Fact> {
    let mut facts = LISTS.concat();
    facts.extend(food::facts());
    facts
}
