//! Breath meters, thermometers, gloves and syringes (S16, S17, S18, S23, S29).

use super::choices::Choices;
use super::rule::{CautionRule, Said};
use crate::amount::{Amount, AmountKind};
use crate::finding::Field;
use crate::plan::{Circumstance, Variable};

fn meters(choices: &Choices<'_>) -> Option<Field> {
    let some = choices.plan.equipment.meters.is_some_and(|meters| meters > 0);
    some.then(|| Field("equipment.meters".into()))
}

pub(super) const MOUTHPIECES: CautionRule = CautionRule {
    code: "S16",
    hazard: "shared mouthpieces on a breath meter",
    trigger: "a breath meter is on the list",
    source: "49 CFR 40.243(a)-(b), a wrapped mouthpiece for each test, as a model",
    local: true,
    look: mouthpieces,
};

fn mouthpieces(choices: &Choices<'_>) -> Option<Said> {
    let at = meters(choices)?;
    let fix = "Nobody blows into it. Push gas from the bag through a clean tube, a new one for each \
               group. Wipe the meter, then wait: alcohol from the wipe makes it read too high. \
               Never use it on a person in class.";
    Some(Said::new("Germs pass from mouth to mouth on a shared breath meter.", fix).at(at))
}

pub(super) const PERSON_TEST: CautionRule = CautionRule {
    code: "S17",
    hazard: "breath meter read as a person's test",
    trigger: "a breath meter is on the list",
    source: "own rule, for privacy and dignity",
    local: true,
    look: person_test,
};

fn person_test(choices: &Choices<'_>) -> Option<Said> {
    let at = meters(choices)?;
    let fix = "Write each number beside the code of its bag and call it a relative reading. Put no \
               person's name near it.";
    let message = "A number from a breath meter could be taken for a test of a person.";
    Some(Said::new(message, fix).at(at))
}

pub(super) const THERMOMETERS: CautionRule = CautionRule {
    code: "S18",
    hazard: "broken glass or mercury",
    trigger: "a thermometer is on the list",
    source: "US EPA advice on mercury in schools, from memory; American Chemical Society, \
             Guidelines for Chemical Laboratory Safety in Secondary Schools (2016)",
    local: true,
    look: thermometers,
};

fn thermometers(choices: &Choices<'_>) -> Option<Said> {
    let some = choices.plan.equipment.thermometers.is_some_and(|count| count > 0);
    some.then(|| {
        let message = "A glass thermometer can break and cut you, and mercury is a poison.";
        let fix = "Take digital ones, or spirit ones with a guard. Use none with mercury and no \
                   bare glass. Throw cracked ones out, and never stir with one.";
        Said::new(message, fix).at(Field("equipment.thermometers".into()))
    })
}

pub(super) const GLOVES: CautionRule = CautionRule {
    code: "S23",
    hazard: "latex or glove allergy",
    trigger: "the plan says that gloves are handed out",
    source: "general practice, no source",
    local: true,
    look: gloves,
};

fn gloves(choices: &Choices<'_>) -> Option<Said> {
    let at = choices.circumstance(Circumstance::Gloves)?;
    let fix = "Offer nitrile gloves only, or none at all: a mix of food and yeast needs none.";
    Some(
        Said::new("Gloves made of latex can give some people a rash or make them ill.", fix)
            .at(at),
    )
}

/// What is measured in mL up to this much is drawn up with a syringe or a pipette (mL); common
/// practice, no source.
const SYRINGE_ML: f64 = 20.0;

pub(super) const SYRINGES: CautionRule = CautionRule {
    code: "S29",
    hazard: "needles and stray syringes",
    trigger: "something other than water is measured in mL, up to 20 mL",
    source: "common practice, no source",
    local: true,
    look: syringes,
};

fn syringes(choices: &Choices<'_>) -> Option<Said> {
    let drawn = |amount: &Amount| {
        amount.kind == AmountKind::Volume && amount.value > 0.0 && amount.value <= SYRINGE_ML
    };
    let at = choices.made.iter().find_map(|made| {
        let recipe = &made.recipe;
        let food = recipe.food.is_some() && recipe.food_amount.as_ref().is_some_and(drawn);
        let enzyme =
            recipe.enzyme.is_some() && recipe.enzyme_amount.as_ref().is_some_and(drawn);
        let extra = recipe.extras.iter().any(|extra| drawn(&extra.amount));
        match (enzyme, food, extra) {
            (true, _, _) => Some(made.at(Variable::EnzymeAmount)),
            (_, true, _) => Some(made.at(Variable::FoodAmount)),
            (_, _, true) => Some(made.at(Variable::Extra)),
            _ => None,
        }
    })?;
    let fix = "Use blunt syringes that never had a needle, and squirt nobody. Count them out at the \
               start and back in at the end.";
    Some(
        Said::new(
            "A syringe with a needle can hurt someone, and so can one that goes missing.",
            fix,
        )
        .at(at),
    )
}
