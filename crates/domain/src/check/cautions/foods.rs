//! Tasting and allergens (S09 to S12).

use super::choices::Choices;
use super::ingredients::FoodUsed;
use super::rule::{CautionRule, Said};
use super::wording::list;
use barm_science::food::Allergen;

pub(super) const TASTING: CautionRule = CautionRule {
    code: "S09",
    hazard: "eating or tasting what is in the room",
    trigger: "a food goes into a bag",
    source: "US science teachers' association (NSTA), safety acknowledgement; American Chemical \
             Society, Guidelines for Chemical Laboratory Safety in Secondary Schools (2016); \
             American Society for Microbiology (ASM), Guidelines for Biosafety in Teaching \
             Laboratories (2012), BSL-1; partly seen",
    local: true,
    look: tasting,
};

fn tasting(choices: &Choices<'_>) -> Option<Said> {
    let first = choices.foods.iter().find(|used| used.in_bag)?;
    let message = format!(
        "Food for the bags, such as the {}, is for the lab and no one may eat it.",
        first.food.name
    );
    let fix =
        "No eating, no drinking, no gum and no tasting. Keep all of it away from lunch food.";
    Some(Said::new(message, fix).at(first.at.clone()))
}

const ALLERGY_SOURCE: &str = "CDC, Voluntary Guidelines for Managing Food Allergies in Schools (2013): avoid known \
     allergens in science activities; FALCPA 2004 and FASTER Act 2021 name the nine";

const SWAP: &str = "Ask the nurse who must keep away from it, and have the emergency plan at hand. \
                    Swap the food for the whole class, so that nobody is singled out. Wipe the \
                    desks and wash hands with soap.";

pub(super) const ALLERGENS: CautionRule = CautionRule {
    code: "S10",
    hazard: "food allergy",
    trigger: "a food in a bag or on the shopping list is made from one of the nine major allergens \
              of US law, or often carries traces of one",
    source: ALLERGY_SOURCE,
    local: true,
    look: allergens,
};

fn allergens(choices: &Choices<'_>) -> Option<Said> {
    let found = found(choices, &Allergen::ALL)?;
    let message = format!("Some people get very ill from {}.", found.allergens);
    Some(Said::new(message, format!("{} {SWAP}", found.places)).at(found.first.at.clone()))
}

pub(super) const MILK: CautionRule = CautionRule {
    code: "S11",
    hazard: "milk protein in milk and lactose",
    trigger: "a food in a bag or on the shopping list is made from milk, or holds lactose",
    source: "21 USC 321(qq)",
    local: true,
    look: milk,
};

fn milk(choices: &Choices<'_>) -> Option<Said> {
    let milky: Vec<&FoodUsed> = choices
        .foods
        .iter()
        .filter(|used| used.may_hold(Allergen::Milk) || used.food.composition.lactose > 0.0)
        .collect();
    let first = milky.first()?;
    let names: Vec<&str> = milky.iter().map(|used| used.food.name.as_str()).collect();
    let message =
        format!("There is milk protein in {}, even where it says lactose-free.", list(&names));
    let fix = "Put the word milk on its cup and its bags. Offer a question without milk to the \
               whole class, and ask the nurse first.";
    Some(Said::new(message, fix).at(first.at.clone()))
}

const GRAIN_AND_NUT: [Allergen; 5] =
    [Allergen::Wheat, Allergen::Soy, Allergen::TreeNuts, Allergen::Peanut, Allergen::Sesame];

pub(super) const FLOURS: CautionRule = CautionRule {
    code: "S12",
    hazard: "wheat, soy, nuts or sesame in flours and drinks",
    trigger: "a food in a bag or on the shopping list is made from wheat, soy, nuts, peanut or \
              sesame, or often carries traces of one",
    source: ALLERGY_SOURCE,
    local: true,
    look: flours,
};

fn flours(choices: &Choices<'_>) -> Option<Said> {
    let found = found(choices, &GRAIN_AND_NUT)?;
    let message =
        format!("Flours and drinks often hold more than you think: here {}.", found.allergens);
    let fix = format!("{} Read the whole label, traces too. {SWAP}", found.places);
    Some(Said::new(message, fix).at(found.first.at.clone()))
}

/// Foods that may hold one of some allergens.
struct Found<'a> {
    /// Such as `milk and traces of wheat`.
    allergens: String,
    /// Where each is, such as `Milk is in nonfat dry milk. Traces of wheat are in oat flour.`
    places: String,
    first: &'a FoodUsed,
}

fn found<'a>(choices: &'a Choices<'_>, allergens: &[Allergen]) -> Option<Found<'a>> {
    let first = choices
        .foods
        .iter()
        .find(|used| allergens.iter().any(|allergen| used.may_hold(*allergen)))?;
    let mut named = Vec::new();
    let mut places = Vec::new();
    for allergen in allergens {
        let (made, traces): (Vec<&FoodUsed>, Vec<&FoodUsed>) = choices
            .foods
            .iter()
            .filter(|used| used.may_hold(*allergen))
            .partition(|used| used.is_made_from(*allergen));
        let names = |foods: &[&FoodUsed]| {
            list(&foods.iter().map(|used| used.food.name.as_str()).collect::<Vec<_>>())
        };
        let allergen = allergen.name();
        if !made.is_empty() {
            named.push(allergen.to_owned());
            places.push(format!("Here {allergen} is in {}.", names(&made)));
        } else if !traces.is_empty() {
            named.push(format!("traces of {allergen}"));
        }
        if !traces.is_empty() {
            places.push(format!("Traces of {allergen} may be in {}.", names(&traces)));
        }
    }
    Some(Found { allergens: list(&named), places: places.join(" "), first })
}
