//! The preparation on paper.

use super::clock::Hours;
use super::trays::trays;
use super::{cautions, imprint, water};
use barm_documents::sheet::{Entry, PrepSheet, Purchase, Stock, Total};
use barm_domain::finding::Finding;
use barm_domain::plan::Plan;
use barm_domain::prep::{self, Buy, Item, Measure, Prep};

/// The preparation of a plan for the screen, with the cautions among what was found.
pub(crate) fn prep_sheet(plan: &Plan, prep: &Prep, found: &[Finding]) -> PrepSheet {
    filled(plan, prep, found, Hours::TwentyFour)
}

/// The same for paper, with times as that paper has them, and a note of what the screen says
/// under its trays.
pub(super) fn on_paper(plan: &Plan, prep: &Prep, found: &[Finding], hours: Hours) -> PrepSheet {
    let mut sheet = filled(plan, prep, found, hours);
    let trays = sheet.trays.iter().flat_map(|period| &period.trays);
    let bags = trays.flat_map(|tray| &tray.bags);
    let older = super::older_names(bags.map(|bag| bag.treatment.as_str()));
    sheet.notes.extend(older);
    sheet
}

fn filled(plan: &Plan, prep: &Prep, found: &[Finding], hours: Hours) -> PrepSheet {
    let bags: usize = plan.bags.len();
    let periods = match prep.periods.len() {
        1 => "1 period".to_owned(),
        more => format!("{more} periods"),
    };
    let days: Vec<String> = plan
        .days
        .iter()
        .map(|day| format!("{}, {}", day.name, day.date.strftime("%B %-d, %Y")))
        .collect();
    PrepSheet {
        imprint: imprint(plan, "PREP"),
        title: plan.title.clone(),
        summary: format!("{}; {periods}, {}", days.join(", "), of_bags(bags)),
        totals: totals(prep),
        shopping: prep.shopping.purchases.iter().map(|p| purchase(prep, p)).collect(),
        cost: (prep.shopping.cost > 0.0).then(|| dollars(prep.shopping.cost)),
        cost_note: cost_note(prep),
        stocks: prep.stocks.iter().map(|one| stock(one, hours)).collect(),
        water: prep.periods.iter().flat_map(|period| water::mixes(period, hours)).collect(),
        water_note: format!(
            "For hot water of {:.0} °C and cold of {:.0} °C.",
            prep.sources.hot_celsius, prep.sources.cold_celsius
        ),
        trays: prep.periods.iter().map(|period| trays(plan, period, hours)).collect(),
        notes: notes(prep, found, hours),
        cautions: cautions(found),
    }
}

/// Bags, cards, labels, cups and spoons.
fn totals(prep: &Prep) -> Vec<Total> {
    prep.totals
        .iter()
        .filter(|total| {
            matches!(
                total.item,
                Item::Bag(_)
                    | Item::Card(_)
                    | Item::Label
                    | Item::Cup
                    | Item::Spoon
                    | Item::Water
            )
        })
        .map(|total| Total {
            what: total.item.name(),
            amount: total.need().to_string(),
            note: match total.item {
                Item::Label => {
                    let each = total.used.value() / 2.0;
                    format!("{each:.0} bags, {each:.0} cards, {} spare", total.spare)
                }
                _ => format!("{} and {} spare", total.used, total.spare),
            },
        })
        .collect()
}

/// An amount in metric units and, where that makes sense, in kitchen units.
fn in_both(prep: &Prep, item: &Item, measure: Measure) -> String {
    match prep.kitchen(item, measure) {
        Some(kitchen) => format!("{measure} ({kitchen})"),
        None => measure.to_string(),
    }
}

fn dollars(value: f64) -> String {
    format!("${value:.2}")
}

fn purchase(prep: &Prep, purchase: &prep::Purchase) -> Purchase {
    let (packs, cost) = match &purchase.buy {
        Buy::Nothing => (String::new(), String::new()),
        Buy::Packs { packs, cost, .. } => {
            let packs: Vec<String> =
                packs.iter().map(|pack| format!("{} × {}", pack.count, pack.written)).collect();
            (packs.join(", "), cost.map_or_else(String::new, dollars))
        }
        Buy::NoPackKnown => (format!("{}, no pack in the plan", purchase.short), String::new()),
    };
    Purchase {
        item: purchase.item.name(),
        need: in_both(prep, &purchase.item, purchase.need),
        in_stock: if purchase.in_stock.is_none() {
            String::new()
        } else {
            purchase.in_stock.to_string()
        },
        packs,
        cost,
    }
}

fn cost_note(prep: &Prep) -> String {
    let missing: Vec<String> = prep.shopping.without_price.iter().map(Item::name).collect();
    if missing.is_empty() {
        "Least cost over the pack sizes of the plan.".to_owned()
    } else {
        format!("Without {}: the plan gives no price.", missing.join(", "))
    }
}

fn stock(stock: &prep::Stock, hours: Hours) -> Stock {
    Stock {
        name: stock.item().name(),
        makes: stock.makes.to_string(),
        recipe: format!(
            "Put {} into a little water, then water up to {}. Lid on, turn over gently, label with \
             the time. Make it at {}, throw it away after {}.",
            stock.takes,
            stock.makes,
            hours.about(stock.make_at),
            hours.about(stock.use_by)
        ),
        serves: format!(
            "{} bags, {} {}",
            stock.bags,
            if stock.periods.len() == 1 { "period" } else { "periods" },
            stock.periods.join(", ")
        ),
    }
}

pub(super) fn of_bags(bags: usize) -> String {
    if bags == 1 { "1 bag".to_owned() } else { format!("{bags} bags") }
}

fn notes(prep: &Prep, found: &[Finding], hours: Hours) -> Vec<Entry> {
    let unforeseen = found
        .iter()
        .filter(|finding| ["cannot-make", "cannot-foresee"].contains(&finding.code))
        .map(|finding| Entry {
            head: "No forecast".to_owned(),
            says: format!("{} No caution here counts its bags.", finding.message),
        });
    let mut notes: Vec<Entry> = unforeseen.collect();
    notes.push(Entry {
        head: "Water".to_owned(),
        says: "Measure the hot and the cold water first; if they differ from what the table says, \
               go by the thermometer in the jug. Keep the lid on. The teacher mixes, and nothing \
               above 49 °C (120 °F) goes into students’ hands."
            .to_owned(),
    });
    notes.extend(prep.periods.iter().flat_map(|period| water::top_ups(period, hours)));
    for purchase in &prep.shopping.purchases {
        notes.extend(purchase.left_out.iter().map(|left| Entry {
            head: purchase.item.name(),
            says: format!("{}: {}; {}", left.written, left.problem, left.fix),
        }));
    }
    notes.push(Entry {
        head: "Spare".to_owned(),
        says: format!("{:.0} % is added to everything that is used up.", 100.0 * prep.spare),
    });
    notes
}
