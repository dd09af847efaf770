//! Live yeast (S13, S27).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use super::wording::list;
use crate::plan::{Circumstance, Variable};
use barm_science::setup::EnzymeKind;

pub(super) const YEAST: CautionRule = CautionRule {
    code: "S13",
    hazard: "live yeast",
    trigger: "yeast goes into a bag",
    source: "American Society for Microbiology (ASM), Guidelines for Biosafety in Teaching \
             Laboratories (2012), BSL-1",
    local: true,
    look: yeast,
};

fn yeast(choices: &Choices<'_>) -> Option<Said> {
    let made = choices.with_yeast()?;
    let fix = "Cover cuts, keep hands off your face, and wash your hands before you leave. A \
               student whose body fights germs poorly takes part as the nurse advises.";
    Some(
        Said::new("Yeast is alive, so it must stay out of mouths, eyes and cuts.", fix)
            .at(made.at(Variable::Yeast)),
    )
}

pub(super) const YEAST_ALLERGY: CautionRule = CautionRule {
    code: "S27",
    hazard: "allergy to yeast or mold",
    trigger: "the plan says that somebody is allergic to yeast or mold, and yeast or an enzyme made \
              with mold goes into a bag",
    source: "CDC, Voluntary Guidelines for Managing Food Allergies in Schools (2013): do not \
             exclude, seen in part; which enzymes are made with mold: from memory",
    local: true,
    look: yeast_allergy,
};

fn yeast_allergy(choices: &Choices<'_>) -> Option<Said> {
    let with_mold = [
        EnzymeKind::Glucoamylase,
        EnzymeKind::FungalAlphaAmylase,
        EnzymeKind::AcidLactase,
        EnzymeKind::AlphaGalactosidase,
    ];
    let molds: Vec<_> = choices
        .enzymes
        .iter()
        .filter(|enzyme| enzyme.in_bag && with_mold.contains(&enzyme.product.kind))
        .collect();
    let yeast = choices.with_yeast();
    let mut things: Vec<&str> = yeast.iter().map(|_| "yeast").collect();
    things.extend(molds.iter().map(|enzyme| enzyme.name.as_str()));
    if things.is_empty() {
        return None;
    }
    let at = choices.circumstance(Circumstance::YeastAllergy)?;
    let message = format!(
        "A person with an allergy to yeast or mold may get ill from {}.",
        list(&things)
    );
    let fix = "Ask the nurse what that person may do. Let that student watch, time or keep \
               the numbers, and leave nobody out. Write no student's name into the plan.";
    Some(Said::new(message, fix).at(at))
}
