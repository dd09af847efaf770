//! Enzyme dust and enzyme splashes (S01, S02).

use super::choices::{Choices, Made};
use super::rule::{CautionRule, Said};
use super::wording::list;
use crate::bench;
use crate::cupboard::Cupboard;
use crate::finding::Field;
use crate::plan::{Plan, Variable};
use barm_science::enzyme::Product;
use barm_science::enzyme::products::product;

/// An enzyme that goes into a bag or is bought.
pub(super) struct EnzymeUsed {
    pub name: String,
    pub product: &'static Product,
    /// Whether it goes into a bag.
    pub in_bag: bool,
    /// Whether it goes into the bag as a powder or a tablet, not as a liquid.
    pub dry: bool,
    pub at: Field,
}

/// Every enzyme in a bag or on the shopping list, each once.
pub(super) fn enzymes(plan: &Plan, made: &[Made<'_>]) -> Vec<EnzymeUsed> {
    let mut found: Vec<EnzymeUsed> = Vec::new();
    for made in made {
        let recipe = &made.recipe;
        let (Some(id), Some(amount)) = (&recipe.enzyme, &recipe.enzyme_amount) else {
            continue;
        };
        let Ok(shelf) = bench::enzyme(id, amount) else { continue };
        let name = shelf.name();
        if found.iter().all(|known| known.name != name) {
            let dry = shelf.product.dust && !shelf.is_stock;
            let at = made.at(if dry { Variable::EnzymeAmount } else { Variable::Enzyme });
            found.push(EnzymeUsed { name, product: shelf.product, in_bag: true, dry, at });
        }
    }
    for (m, material) in plan.materials.iter().enumerate() {
        let Some(product) = Cupboard::enzyme(&material.item).ok().as_deref().and_then(product)
        else {
            continue;
        };
        if found.iter().all(|known| known.product.key != product.key) {
            found.push(EnzymeUsed {
                name: product.name.to_owned(),
                product,
                in_bag: false,
                dry: false,
                at: Field(format!("material[{m}].item")),
            });
        }
    }
    found
}

pub(super) const DUST: CautionRule = CautionRule {
    code: "S01",
    hazard: "enzyme dust in the lungs",
    trigger: "an enzyme in a bag or on the shopping list comes as a powder or as tablets that are \
              crushed",
    source: "UN Globally Harmonized System (GHS), chapter 3.4: H334 with P261, P284, P304+P340 and \
             P342+P311, seen on suppliers' sheets for amylase",
    local: true,
    look: dust,
};

fn dust(choices: &Choices<'_>) -> Option<Said> {
    let dusty: Vec<_> = choices.enzymes.iter().filter(|enzyme| enzyme.product.dust).collect();
    let first = dusty.iter().find(|enzyme| enzyme.dry).or(dusty.first())?;
    let mut names: Vec<&str> = dusty.iter().map(|enzyme| enzyme.product.name).collect();
    names.dedup();
    let message =
        format!("Dust from {} can harm the lungs of a person who breathes it.", list(&names));
    let make = "The teacher makes the liquid before school with no student near: lid on, no \
                shaking dry, spills wiped up wet and never swept. Check the list of students with \
                asthma. Anyone who coughs or wheezes goes into fresh air, and you call for help.";
    let fix = if dusty.iter().any(|enzyme| enzyme.dry) {
        format!(
            "Students get enzyme as a liquid only: write the amount in mL, such as \"2 mL\". {make}"
        )
    } else {
        format!("Students get the liquid only and never see the powder. {make}")
    };
    Some(Said::new(message, fix).at(first.at.clone()))
}

pub(super) const SPLASH: CautionRule = CautionRule {
    code: "S02",
    hazard: "enzyme liquid on skin, in eyes or in the air",
    trigger: "an enzyme goes into a bag",
    source: "GHS H334, as S01; exposure principle of the detergent makers' guidance on enzymes \
             (AISE), seen in part",
    local: true,
    look: splash,
};

fn splash(choices: &Choices<'_>) -> Option<Said> {
    let wet: Vec<_> = choices.enzymes.iter().filter(|enzyme| enzyme.in_bag).collect();
    let first = wet.first()?;
    let names: Vec<&str> = wet.iter().map(|enzyme| enzyme.name.as_str()).collect();
    let message =
        format!("A splash or a fine spray of {} can hurt eyes, skin or lungs.", list(&names));
    let fix = "Goggles on, small cups, never a spray bottle. Wipe up spills wet and wash your \
               hands after.";
    Some(Said::new(message, fix).at(first.at.clone()))
}
