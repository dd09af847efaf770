//! What there is to do, in the teacher's words; on the overview and in the calendar.

use super::clock::Hours;
use barm_domain::agenda::What;
use barm_domain::plan::Plan;
use barm_domain::prep::{Buy, Item, Prep, Stock};

/// What is to be done, in a few words.
pub(super) fn title(plan: &Plan, prep: &Prep, what: &What) -> String {
    match what {
        What::Order => "Order what the grocery has not".to_owned(),
        What::Letter => "Letter on allergens and safety to families; ask the nurse".to_owned(),
        What::TestRun => "Test run: one bag of each food, in your room".to_owned(),
        What::Check => "Go through the plan and the bag list once more".to_owned(),
        What::Buy => "Buy yeast and food".to_owned(),
        What::Print => "Print: test print first, then all".to_owned(),
        What::Trays => "Lay out the trays".to_owned(),
        What::Mix(place) => prep.stocks.get(*place).map_or_else(String::new, |stock| {
            format!("Make {} of {}", stock.makes, stock.item().name())
        }),
        What::Period(place) => plan
            .periods
            .get(*place)
            .map_or_else(String::new, |period| format!("Period {}: yeast bags", period.name)),
        What::Discard(place) => prep.stocks.get(*place).map_or_else(String::new, |stock| {
            format!("Throw away what is left of the {}", stock.item().name())
        }),
        What::Clear(_) => "Clear away: empty, count, wash".to_owned(),
        What::Results => "Type the paper sheets; talk about the results".to_owned(),
    }
}

/// More about it, in a sentence or two; empty where the title says all.
pub(super) fn details(plan: &Plan, prep: &Prep, what: &What, hours: Hours) -> String {
    let join = |items: Vec<String>| items.join("; ");
    match what {
        What::Order => join(bought(prep, |item| !fresh(item))),
        What::Buy => join(bought(prep, fresh)),
        What::Letter => "No tasting, goggles on, wash hands. Food that somebody must avoid is \
                         swapped for the whole class; nobody is named. Your school's and state's \
                         rules come first."
            .to_owned(),
        What::TestRun => "Use your own yeast, water, bags and cards. A card that does not rise by \
                          the last reading will not rise in class."
            .to_owned(),
        What::Print => "Print at 100 %. Hold the test print of the labels against a sheet of \
                        labels first."
            .to_owned(),
        What::Mix(place) => prep.stocks.get(*place).map_or_else(String::new, |one| recipe(one, hours)),
        What::Period(place) => plan.periods.get(*place).map_or_else(String::new, |period| {
            let bags = plan.bags.iter().filter(|bag| bag.period == period.name).count();
            let water = prep.periods.iter().find(|ready| ready.period == period.name);
            let water = water.and_then(|ready| ready.jugs.first()).map(|jug| {
                format!(" Mix the water at {}.", hours.about(jug.mix_at))
            });
            format!(
                "{} groups, {} students, {bags} bags.{}",
                period.groups,
                period.students,
                water.unwrap_or_default()
            )
        }),
        What::Discard(_) => "An enzyme solution is used on the day it is made, and not longer \
                             than four hours. Down the drain with water."
            .to_owned(),
        What::Clear(_) => "No bag leaves the room and none stays sealed overnight. Liquid down \
                           the drain with plenty of water, empty bags into the bin. Ask what your \
                           town allows."
            .to_owned(),
        What::Check | What::Trays | What::Results => String::new(),
    }
}

fn recipe(stock: &Stock, hours: Hours) -> String {
    format!(
        "Put {} into a little water, then water up to {}. Lid on, no dust, no student near. Use \
         it up by {}.",
        stock.takes,
        stock.makes,
        hours.about(stock.use_by)
    )
}

/// What is bought in the last week.
const fn fresh(item: &Item) -> bool {
    matches!(item, Item::Yeast(_) | Item::Food(_))
}

fn bought(prep: &Prep, wanted: fn(&Item) -> bool) -> Vec<String> {
    let purchases = prep.shopping.purchases.iter().filter(|one| wanted(&one.item));
    purchases
        .filter(|one| !matches!(one.buy, Buy::Nothing))
        .map(|one| format!("{} {}", one.need, one.item.name()))
        .collect()
}
