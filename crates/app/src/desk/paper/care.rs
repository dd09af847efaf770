//! What can hurt, in a child's words: those cautions of the plan that students can heed.

use super::seats::Seat;
use crate::desk::print::Job;
use barm_documents::catalog::Catalog;
use barm_domain::bench::ingredient;
use barm_domain::outlook::Entry;
use barm_domain::plan::Recipe;
use barm_science::food::Allergen;

/// What stands on a card otherwise: goggles and tasting in its first step.
const SAID_BY_STEPS: [&str; 2] = ["S05", "S09"];

/// The cautions of the plan that have a child's words, in the order of their codes, whether the
/// teacher has answered them or not: who cannot touch milk cannot in any case.
pub(super) fn care(job: &Job<'_>, seat: &Seat<'_>) -> Vec<String> {
    let words = job.wish.words;
    let mut codes: Vec<&str> = job.found().iter().map(|finding| finding.code).collect();
    codes.sort_unstable();
    codes.dedup();
    codes.retain(|code| !SAID_BY_STEPS.contains(code));
    let mut said = Vec::new();
    for code in codes {
        let key = format!("care-{}", code.to_lowercase());
        match code {
            "S07" => said.extend(bursting(job, seat, &key)),
            "S10" => {
                let allergens = any_of(words, &allergens(job));
                if !allergens.is_empty() {
                    said.push(words.say_with(&key, &[("allergens", &allergens)]));
                }
            }
            _ if words.has(&key) => said.push(words.say(&key)),
            _ => {}
        }
    }
    said
}

/// When each of the group's bags that may become too full is to be opened.
fn bursting(job: &Job<'_>, seat: &Seat<'_>, key: &str) -> Vec<String> {
    let Ok(outlook) = job.outlook() else { return Vec::new() };
    let bell = seat.period.length_min - job.plan.timing.mixing_min;
    let minute = |entry: &Entry| entry.vent_by_min.filter(|minute| *minute <= bell);
    let said = seat.head_bags(job).into_iter().zip(&seat.bags).filter_map(|(head, bag)| {
        let entry = outlook.entries.iter().find(|entry| entry.treatment == bag.treatment)?;
        let minute = format!("{:.0}", minute(entry)?.floor().max(0.0));
        Some(job.wish.words.say_with(key, &[("bag", &head.letter), ("minute", &minute)]))
    });
    said.collect()
}

/// A list of which one may be, such as `milk, egg or wheat`.
fn any_of(words: &Catalog, list: &[String]) -> String {
    match list {
        [first @ .., last] if !first.is_empty() => {
            let first = first.join(", ");
            words.say_with("either", &[("first", &first), ("last", last)])
        }
        _ => list.concat(),
    }
}

/// The allergens of all food that goes into bags of the class, in the language of the card.
fn allergens(job: &Job<'_>) -> Vec<String> {
    let recipes: Vec<Recipe> =
        job.plan.treatments().map(|(_, treatment)| job.plan.recipe(treatment)).collect();
    let foods = recipes.iter().flat_map(|recipe| {
        recipe.food.iter().chain(recipe.extras.iter().map(|extra| &extra.item))
    });
    let foods: Vec<_> =
        foods.filter_map(|food| ingredient(job.plan, food, "food").ok()).collect();
    let holds = |allergen: &Allergen| {
        let mut names = foods.iter().flat_map(|food| food.allergens.iter().chain(&food.traces));
        names.any(|name| Allergen::named(name) == Some(*allergen))
    };
    let said = |allergen: Allergen| {
        job.wish.words.say(&format!("allergen-{}", allergen.name().replace(' ', "-")))
    };
    Allergen::ALL.into_iter().filter(holds).map(said).collect()
}
