//! What is done before, between and after the periods of a day: a row a task, a column a gap.

use super::super::clock::Hours;
use barm_documents::sheet::{Changeovers, Pause, PauseRow};
use barm_domain::amount::show::both_degrees;
use barm_domain::plan::{Day, Period, Plan};
use barm_domain::prep::{Jug, PeriodPrep, Prep, Stock};
use jiff::civil::Time;
use std::collections::{BTreeMap, BTreeSet};

/// A gap: the period before it and the one after.
#[derive(Clone, Copy)]
struct Between<'a> {
    before: Option<&'a Period>,
    after: Option<&'a Period>,
}

/// The gaps of each day that has periods.
pub(super) fn changeovers(plan: &Plan, prep: &Prep, hours: Hours) -> Vec<Changeovers> {
    plan.days.iter().filter_map(|day| of_day(plan, prep, day, hours)).collect()
}

fn of_day(plan: &Plan, prep: &Prep, day: &Day, hours: Hours) -> Option<Changeovers> {
    let mut periods: Vec<&Period> =
        plan.periods.iter().filter(|period| period.day == day.name).collect();
    periods.sort_by_key(|period| period.start);
    let (first, last) = (*periods.first()?, *periods.last()?);
    let mut gaps = vec![Between { before: None, after: Some(first) }];
    let inner = periods.windows(2);
    gaps.extend(inner.map(|two| Between { before: Some(two[0]), after: Some(two[1]) }));
    gaps.push(Between { before: Some(last), after: None });
    Some(Changeovers {
        day: format!("{}, {}", day.name, day.date.strftime("%B %-d")),
        gaps: gaps.iter().map(|one| gap(one, hours)).collect(),
        rows: rows(plan, prep, day, &gaps, hours),
    })
}

fn end(period: &Period, hours: Hours) -> String {
    hours.at_minute(period.start, period.length_min)
}

fn gap(gap: &Between<'_>, hours: Hours) -> Pause {
    match (gap.before, gap.after) {
        (Some(before), Some(after)) => {
            let minutes = minute_of(after.start) - minute_of(before.start) - before.length_min;
            Pause {
                name: format!("{} → {}", before.name, after.name),
                clock: format!("{} to {}", end(before, hours), hours.time(after.start)),
                length: format!("{:.0} min", minutes.max(0.0)),
            }
        }
        (None, Some(after)) => Pause {
            name: format!("before {}", after.name),
            clock: format!("to {}", hours.time(after.start)),
            length: String::new(),
        },
        (Some(before), None) => Pause {
            name: format!("after {}", before.name),
            clock: format!("from {}", end(before, hours)),
            length: String::new(),
        },
        (None, None) => {
            Pause { name: String::new(), clock: String::new(), length: String::new() }
        }
    }
}

fn minute_of(time: Time) -> f64 {
    f64::from(time.hour()) * 60.0 + f64::from(time.minute())
}

fn rows(
    plan: &Plan,
    prep: &Prep,
    day: &Day,
    gaps: &[Between<'_>],
    hours: Hours,
) -> Vec<PauseRow> {
    let row = |what: &str, how: String, cell: &dyn Fn(&Between<'_>) -> Option<String>| {
        PauseRow { what: what.to_owned(), how, cells: gaps.iter().map(cell).collect() }
    };
    let after = |gap: &Between<'_>| gap.before.map(|_| String::new());
    let before = |gap: &Between<'_>| gap.after.map(|_| String::new());
    let ready = |period: &Period| prep.periods.iter().find(|one| one.period == period.name);
    let mut rows = vec![
        row("Sheets in", "into the folder of the class that leaves".into(), &after),
        row("Bags counted", "as many as went out".into(), &|gap| {
            let before = gap.before?;
            let bags = plan.bags.iter().filter(|bag| bag.period == before.name).count();
            Some(bags.to_string())
        }),
        row("Floor and benches", "look for water on the floor first".into(), &after),
        row("Goggles wiped", "before the next class takes them".into(), &after),
    ];
    rows.extend(solutions(prep, day).into_iter().map(|(product, batches)| {
        let amounts: Vec<String> =
            batches.iter().map(|stock| stock.makes.to_string()).collect();
        let how = format!("{}; you, lid on, nobody near", amounts.join(", then "));
        row(&format!("Make {product}"), how, &|gap| {
            let next = gap.after?;
            let due = |stock: &&&Stock| stock.periods.first() == Some(&next.name);
            batches.iter().find(due).map(|stock| hours.about(stock.make_at))
        })
    }));
    let says: BTreeSet<String> =
        prep.periods.iter().flat_map(|one| &one.jugs).map(jug_says).collect();
    let one = says.first().filter(|_| says.len() == 1).cloned();
    let how = one.unwrap_or_else(|| "by the table of hot and cold water".to_owned());
    rows.push(row("Water mixed", how, &|gap| {
        let jug: &Jug = ready(gap.after?)?.jugs.first()?;
        Some(hours.about(jug.mix_at))
    }));
    rows.push(row("Trays swapped", "one tray a group, labels up".into(), &|gap| {
        let ready: &PeriodPrep = ready(gap.after?)?;
        Some(ready.trays.len().to_string())
    }));
    rows.push(row("Clock and board", "class code, first start, last start".into(), &before));
    rows.push(row("Bags out", "the day's bags emptied, none left sealed".into(), &|gap| {
        gap.after.is_none().then(String::new)
    }));
    rows
}

/// The batches of each solution that are made on a day.
fn solutions<'a>(prep: &'a Prep, day: &Day) -> BTreeMap<String, Vec<&'a Stock>> {
    let mut batches: BTreeMap<String, Vec<&Stock>> = BTreeMap::new();
    for stock in prep.stocks.iter().filter(|stock| stock.day == day.name) {
        batches.entry(stock.item().name()).or_default().push(stock);
    }
    batches
}

/// What the thermometer must show, where the day has one water for all.
fn jug_says(jug: &Jug) -> String {
    format!("jug at {} just mixed", both_degrees(jug.mixed_celsius))
}
