//! The preparation on paper.

use super::{cautions, imprint, looks, water};
use barm_documents::sheet::{
    Entry, PeriodTrays, PrepSheet, Purchase, Stock, Total, Tray, TrayBag,
};
use barm_domain::finding::Finding;
use barm_domain::plan::Plan;
use barm_domain::prep::{self, Buy, Item, Measure, PeriodPrep, Prep};
use jiff::ToSpan as _;

/// The preparation of a plan as a sheet, with the cautions among what was found.
pub(crate) fn prep_sheet(plan: &Plan, prep: &Prep, found: &[Finding]) -> PrepSheet {
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
        stocks: prep.stocks.iter().map(stock).collect(),
        water: prep.periods.iter().flat_map(water::mixes).collect(),
        water_note: format!(
            "For hot water of {:.0} °C and cold of {:.0} °C.",
            prep.sources.hot_celsius, prep.sources.cold_celsius
        ),
        trays: prep.periods.iter().map(|period| trays(plan, period)).collect(),
        notes: notes(prep, found),
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
            note: format!("{} and {} spare", total.used, total.spare),
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

fn stock(stock: &prep::Stock) -> Stock {
    Stock {
        name: stock.item().name(),
        makes: stock.makes.to_string(),
        recipe: format!(
            "Put {} into a little water, then water up to {}. Lid on, turn over gently, label with \
             the time. Make it at {}, throw it away after {}.",
            stock.takes,
            stock.makes,
            clock(stock.make_at),
            clock(stock.use_by)
        ),
        serves: format!(
            "{} bags, {} {}",
            stock.bags,
            if stock.periods.len() == 1 { "period" } else { "periods" },
            stock.periods.join(", ")
        ),
    }
}

pub(super) fn clock(time: jiff::civil::Time) -> String {
    format!("{}:{:02}", time.hour(), time.minute())
}

fn trays(plan: &Plan, period: &PeriodPrep) -> PeriodTrays {
    let end = period.start.saturating_add((period.length_min.round() as i64).minutes());
    let every: Vec<String> = common_lines(period);
    PeriodTrays {
        period: format!("Period {}", period.period),
        clock: format!("{} to {}", clock(period.start), clock(end)),
        trays: period.trays.iter().map(|tray| one_tray(plan, tray, &every)).collect(),
        every_tray: every,
    }
}

/// What every bag of the period's students gets, in the same amount. The teacher's bench has bags
/// of its own kinds and is listed in full.
fn common_lines(period: &PeriodPrep) -> Vec<String> {
    let in_every_bag = |tray: &prep::Tray| -> Vec<String> {
        let lines = tray.lines.iter();
        lines.filter(|line| line.bags as usize == tray.bags.len()).map(a_bag).collect()
    };
    let mut trays = period.trays.iter().filter(|tray| tray.group > 0).map(in_every_bag);
    let Some(first) = trays.next() else { return Vec::new() };
    let rest: Vec<Vec<String>> = trays.collect();
    first.into_iter().filter(|line| rest.iter().all(|other| other.contains(line))).collect()
}

fn a_bag(line: &prep::TrayLine) -> String {
    match line.celsius {
        Some(celsius) => {
            format!("{} water of {} a bag", line.each.written, water::degrees(celsius))
        }
        None => format!("{} a bag", thing(&line.each.written, &line.item.name())),
    }
}

/// How much of what: `2 g oat flour`, and `5 lactase drops` where amount and thing end alike.
fn thing(amount: &str, name: &str) -> String {
    let unit = amount.rsplit_once(' ').filter(|(_, unit)| name.ends_with(&format!(" {unit}")));
    format!("{} {name}", unit.map_or(amount, |(number, _)| number))
}

/// Whether a line says nothing that does not stand under "every tray" already.
fn is_common(tray: &prep::Tray, line: &prep::TrayLine, every: &[String]) -> bool {
    tray.group > 0 && line.bags as usize == tray.bags.len() && every.contains(&a_bag(line))
}

fn one_tray(plan: &Plan, tray: &prep::Tray, every: &[String]) -> Tray {
    let group = match (&tray.label, tray.group) {
        (Some(label), _) => label.clone(),
        (None, 0) => "Teacher".to_owned(),
        (None, number) => number.to_string(),
    };
    Tray {
        group,
        bags: tray
            .bags
            .iter()
            .map(|bag| TrayBag {
                code: bag.code.clone(),
                treatment: bag.treatment.clone(),
                look: looks::look(plan, &bag.treatment),
            })
            .collect(),
        also: tray
            .lines
            .iter()
            .filter(|line| !is_common(tray, line, every))
            .map(|line| format!("{} for {}", a_bag(line), of_bags(line.bags as usize)))
            .collect(),
    }
}

pub(super) fn of_bags(bags: usize) -> String {
    if bags == 1 { "1 bag".to_owned() } else { format!("{bags} bags") }
}

fn notes(prep: &Prep, found: &[Finding]) -> Vec<Entry> {
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
    notes.extend(prep.periods.iter().flat_map(water::top_ups));
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

#[cfg(test)]
mod tests {
    use super::thing;

    #[test]
    fn no_word_is_said_twice() {
        assert_eq!(thing("5 drops", "lactase drops"), "5 lactase drops");
        assert_eq!(thing("0.8 g", "oat flour"), "0.8 g oat flour");
        assert_eq!(thing("1/4 tsp", "glucoamylase powder"), "1/4 tsp glucoamylase powder");
        assert_eq!(thing("5", "lactase drops"), "5 lactase drops");
    }
}
