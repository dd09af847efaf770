//! An enzyme needs something to cut.

use crate::bench;
use crate::check::place;
use crate::finding::{Finding, Severity};
use crate::plan::{Plan, Recipe};
use barm_science::setup::{Composition, EnzymeKind};

/// Mass in a bag that would not raise a card if all of it were cut (g).
const TRACE: f64 = 0.01;

pub(super) fn findings(plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    for (_, treatment) in plan.treatments() {
        let recipe = plan.recipe(treatment);
        // Without food it is a control, and meant to show nothing.
        let (Some(_), Some(id), Some(amount)) =
            (&recipe.food, &recipe.enzyme, &recipe.enzyme_amount)
        else {
            continue;
        };
        let Ok(enzyme) = bench::enzyme(id, amount) else { continue };
        let kind = enzyme.product.kind;
        if to_cut(plan, &recipe, kind).is_none_or(|grams| grams >= TRACE) {
            continue;
        }
        let message = format!(
            "“{}” holds no {}, so “{}” has nothing to cut.",
            treatment.name,
            cuts(kind),
            enzyme.name()
        );
        let fix = format!("Take a food with {}, or leave the enzyme out.", cuts(kind));
        let finding = Finding::new(Severity::Fault, "nothing-to-cut", message, fix);
        found.push(finding.at(place::key(plan, treatment, "enzyme")));
    }
    found
}

/// What an enzyme cuts, in a child's words.
const fn cuts(kind: EnzymeKind) -> &'static str {
    match kind {
        EnzymeKind::Glucoamylase
        | EnzymeKind::FungalAlphaAmylase
        | EnzymeKind::BacterialAlphaAmylase
        | EnzymeKind::BetaAmylase => "starch",
        EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => "milk sugar",
        EnzymeKind::Invertase => "table sugar",
        EnzymeKind::AlphaGalactosidase => "bean sugar (raffinose)",
    }
}

/// Grams in a bag that the enzyme can cut; nothing if the bag cannot be made at all.
fn to_cut(plan: &Plan, recipe: &Recipe, kind: EnzymeKind) -> Option<f64> {
    let share = |made_of: &Composition| match kind {
        EnzymeKind::Glucoamylase => {
            made_of.raw_starch + made_of.cooked_starch + made_of.dextrin + made_of.maltose
        }
        EnzymeKind::FungalAlphaAmylase
        | EnzymeKind::BacterialAlphaAmylase
        | EnzymeKind::BetaAmylase => {
            made_of.raw_starch + made_of.cooked_starch + made_of.dextrin
        }
        EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => made_of.lactose,
        EnzymeKind::Invertase => made_of.sucrose,
        EnzymeKind::AlphaGalactosidase => made_of.galactosides,
    };
    let setup = bench::setup(plan, recipe, plan.days.first()?).ok()?;
    Some(setup.foods.iter().map(|food| food.grams * share(&food.composition) / 100.0).sum())
}
