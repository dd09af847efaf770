//! Every number of the science in one list.

use crate::fact::Fact;
use crate::{
    air, bag, carbon_dioxide, carbonate, card_height, constants, ethanol, food, gas, meter,
    permeation, ruler, stoichiometry, water,
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
    ruler::FACTS,
    meter::FACTS,
    permeation::FACTS,
    food::FACTS,
    food::label::FACTS,
];

/// All facts, module by module, and at the end what each food of the table is made of.
pub fn all() -> Vec<Fact> {
    let mut facts = LISTS.concat();
    facts.extend(food::facts());
    facts
}
