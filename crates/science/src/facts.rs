//! Every number of the science in one list.

use crate::fact::Fact;
use crate::{
    air, bag, carbon_dioxide, card_height, constants, gas, permeation, ruler, stoichiometry,
    water,
};

/// The lists of all modules, one line each.
const LISTS: &[&[Fact]] = &[
    constants::FACTS,
    air::FACTS,
    water::FACTS,
    gas::FACTS,
    carbon_dioxide::FACTS,
    stoichiometry::FACTS,
    bag::FACTS,
    card_height::FACTS,
    card_height::READING_FACTS,
    ruler::FACTS,
    permeation::FACTS,
];

/// All facts, module by module.
pub fn all() -> Vec<Fact> {
    LISTS.concat()
}
