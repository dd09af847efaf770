//! `barm prep --json`.

use super::{FORMAT, real};
use barm_domain::prep::{self, Buy, Item, Measure, Mix, Prep, Unit};
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Prepared {
    format: u32,
    totals: Vec<Total>,
    shopping: Vec<Purchase>,
    cost: Option<f64>,
    without_price: Vec<String>,
    stocks: Vec<Stock>,
    periods: Vec<Period>,
}

#[derive(Serialize)]
struct Amount {
    value: f64,
    unit: &'static str,
    kitchen: Option<String>,
}

#[derive(Serialize)]
struct Total {
    item: String,
    used: Amount,
    spare: Amount,
    rounding: Amount,
    need: Amount,
}

#[derive(Serialize)]
struct Purchase {
    item: String,
    need: Amount,
    in_stock: Amount,
    packs: Vec<Pack>,
    cost: Option<f64>,
}

#[derive(Serialize)]
struct Pack {
    count: u64,
    pack: String,
    price: Option<f64>,
}

#[derive(Serialize)]
struct Stock {
    item: String,
    day: String,
    make_at: String,
    use_by: String,
    makes: Amount,
    takes: Amount,
    periods: Vec<String>,
}

#[derive(Serialize)]
struct Period {
    period: String,
    water: Vec<Jug>,
    trays: Vec<Tray>,
}

#[derive(Serialize)]
struct Jug {
    mix_at: String,
    makes: Amount,
    hot_ml: Option<f64>,
    cold_ml: Option<f64>,
    treatments: Vec<String>,
    mixed_c: Option<f64>,
    poured_c: Option<f64>,
    in_bag_low_c: Option<f64>,
    in_bag_high_c: Option<f64>,
}

#[derive(Serialize)]
struct Tray {
    group: u32,
    bags: Vec<String>,
    lines: Vec<Line>,
}

#[derive(Serialize)]
struct Line {
    item: String,
    each: String,
    bags: u32,
    total: Amount,
}

pub(crate) fn prepared(prep: &Prep) -> Prepared {
    let of = |item: &Item, measure: Measure| Amount {
        kitchen: prep.kitchen(item, measure).map(|kitchen| kitchen.to_string()),
        ..amount(measure)
    };
    Prepared {
        format: FORMAT,
        totals: prep
            .totals
            .iter()
            .map(|total| Total {
                item: total.item.name(),
                used: of(&total.item, total.used),
                spare: of(&total.item, total.spare),
                rounding: of(&total.item, total.rounding),
                need: of(&total.item, total.need()),
            })
            .collect(),
        shopping: prep
            .shopping
            .purchases
            .iter()
            .map(|p| purchase(p, of(&p.item, p.need)))
            .collect(),
        cost: real(prep.shopping.cost),
        without_price: prep.shopping.without_price.iter().map(Item::name).collect(),
        stocks: prep.stocks.iter().map(stock).collect(),
        periods: prep.periods.iter().map(period).collect(),
    }
}

/// Unit as a UCUM code.
fn amount(measure: Measure) -> Amount {
    let unit = match measure.unit() {
        Unit::Gram => "g",
        Unit::Milliliter => "mL",
        Unit::Piece => "1",
    };
    Amount { value: measure.value(), unit, kitchen: None }
}

fn purchase(purchase: &prep::Purchase, need: Amount) -> Purchase {
    let (packs, cost) = match &purchase.buy {
        Buy::Packs { packs, cost, .. } => (packs.as_slice(), *cost),
        Buy::Nothing | Buy::NoPackKnown => (&[][..], None),
    };
    Purchase {
        item: purchase.item.name(),
        need,
        in_stock: amount(purchase.in_stock),
        packs: packs
            .iter()
            .map(|pack| Pack {
                count: pack.count,
                pack: pack.written.clone(),
                price: pack.price,
            })
            .collect(),
        cost,
    }
}

fn stock(stock: &prep::Stock) -> Stock {
    Stock {
        item: stock.item().name(),
        day: stock.day.clone(),
        make_at: stock.make_at.to_string(),
        use_by: stock.use_by.to_string(),
        makes: amount(stock.makes),
        takes: amount(stock.takes),
        periods: stock.periods.clone(),
    }
}

fn period(period: &prep::PeriodPrep) -> Period {
    let jug = |jug: &prep::Jug| {
        let (hot_ml, cold_ml) = match jug.mix {
            Mix::Parts { hot, cold } => (Some(hot.value()), Some(cold.value())),
            Mix::NeedsHotter | Mix::NeedsColder => (None, None),
        };
        Jug {
            mix_at: jug.mix_at.to_string(),
            makes: amount(jug.makes),
            hot_ml,
            cold_ml,
            treatments: jug.treatments.clone(),
            mixed_c: real(jug.mixed_celsius),
            poured_c: real(jug.poured_celsius),
            in_bag_low_c: real(jug.in_bag_celsius.0),
            in_bag_high_c: real(jug.in_bag_celsius.1),
        }
    };
    let tray = |tray: &prep::Tray| Tray {
        group: tray.group,
        bags: tray.bags.iter().map(|bag| bag.code.clone()).collect(),
        lines: tray
            .lines
            .iter()
            .map(|line| Line {
                item: line.item.name(),
                each: line.each.written.clone(),
                bags: line.bags,
                total: amount(line.total),
            })
            .collect(),
    };
    Period {
        period: period.period.clone(),
        water: period.jugs.iter().map(jug).collect(),
        trays: period.trays.iter().map(tray).collect(),
    }
}
