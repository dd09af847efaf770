//! `barm prep --json`.

use crate::invented::{bag_codes, prep};
use crate::shape::*;
use serde_json::Value;
use std::collections::BTreeSet;

fn amount(what: &str, amount: &Value) {
    shaped(what, amount, &[("value", NUMBER), ("unit", TEXT), ("kitchen", TEXT_OR_NULL)]);
    assert!(["g", "mL", "1"].contains(&text(amount, "unit")), "{what}: {amount}");
    assert!(number(amount, "value") >= 0.0, "{what}: {amount}");
}

/// A time of day, such as 08:05:00.
fn clock(value: &Value) -> bool {
    let parts: Vec<&str> = value.as_str().unwrap_or_default().split(':').collect();
    parts.len() == 3
        && parts.iter().all(|p| p.len() == 2 && p.bytes().all(|b| b.is_ascii_digit()))
}

#[test]
fn what_is_bought_has_the_promised_shape_and_adds_up() {
    shaped(
        "prep",
        prep(),
        &[
            ("format", COUNT),
            ("totals", LIST),
            ("shopping", LIST),
            ("cost", NUMBER_OR_NULL),
            ("without_price", TEXTS),
            ("stocks", LIST),
            ("periods", LIST),
        ],
    );
    assert_eq!(prep()["format"], 1);
    for total in list(prep(), "totals") {
        let item = text(total, "item");
        let promised = [
            ("item", TEXT),
            ("used", OBJECT),
            ("spare", OBJECT),
            ("rounding", OBJECT),
            ("need", OBJECT),
        ];
        shaped(item, total, &promised);
        let [used, spare, rounding, need] = ["used", "spare", "rounding", "need"].map(|key| {
            amount(item, &total[key]);
            number(&total[key], "value")
        });
        assert!((used + spare + rounding - need).abs() <= 1e-6 * need, "{total}");
    }
    let mut paid = 0.0;
    for purchase in list(prep(), "shopping") {
        let item = text(purchase, "item");
        shaped(
            item,
            purchase,
            &[
                ("item", TEXT),
                ("need", OBJECT),
                ("in_stock", OBJECT),
                ("packs", LIST),
                ("cost", NUMBER_OR_NULL),
            ],
        );
        amount(item, &purchase["need"]);
        amount(item, &purchase["in_stock"]);
        let mut cost = 0.0;
        for pack in purchase["packs"].as_array().into_iter().flatten() {
            shaped(item, pack, &[("count", COUNT), ("pack", TEXT), ("price", NUMBER_OR_NULL)]);
            cost += number(pack, "count") * pack["price"].as_f64().unwrap_or_default();
        }
        // Cents: every price is a whole number of them.
        if let Some(said) = purchase["cost"].as_f64() {
            assert!((said - cost).abs() < 0.005, "{purchase}");
        }
        paid += cost;
    }
    assert!((number(prep(), "cost") - paid).abs() < 0.005, "{paid}");
}

#[test]
fn what_is_mixed_has_the_promised_shape() {
    for stock in list(prep(), "stocks") {
        let item = text(stock, "item");
        shaped(
            item,
            stock,
            &[
                ("item", TEXT),
                ("day", TEXT),
                ("make_at", clock),
                ("use_by", clock),
                ("makes", OBJECT),
                ("takes", OBJECT),
                ("periods", TEXTS),
            ],
        );
        amount(item, &stock["makes"]);
        amount(item, &stock["takes"]);
        // 24-hour clocks with leading zeros sort as they follow.
        assert!(text(stock, "make_at") < text(stock, "use_by"), "{stock}");
    }
    for period in list(prep(), "periods") {
        let name = text(period, "period");
        shaped(name, period, &[("period", TEXT), ("water", LIST), ("trays", LIST)]);
        for jug in list(period, "water") {
            shaped(
                name,
                jug,
                &[
                    ("mix_at", clock),
                    ("makes", OBJECT),
                    ("hot_ml", NUMBER_OR_NULL),
                    ("cold_ml", NUMBER_OR_NULL),
                    ("treatments", TEXTS),
                    ("mixed_c", NUMBER_OR_NULL),
                    ("poured_c", NUMBER_OR_NULL),
                    ("in_bag_low_c", NUMBER_OR_NULL),
                    ("in_bag_high_c", NUMBER_OR_NULL),
                ],
            );
            amount(name, &jug["makes"]);
            assert!(number(jug, "in_bag_low_c") <= number(jug, "in_bag_high_c"), "{jug}");
            // Mass stays, and 1/density of water is convex in temperature: hot and cold together
            // take no less room than the mix, and at most 1/0.9584 of it (density of water at
            // 100 °C in g/mL, CRC Handbook of Chemistry and Physics, from memory).
            let parts = number(jug, "hot_ml") + number(jug, "cold_ml");
            let makes = number(&jug["makes"], "value");
            assert!(parts >= makes && parts <= makes / 0.9584, "{jug}");
        }
    }
}

#[test]
fn trays_hold_every_bag_of_the_plan_once() {
    let mut seen = BTreeSet::new();
    for period in list(prep(), "periods") {
        for tray in list(period, "trays") {
            let name = text(period, "period");
            shaped(name, tray, &[("group", COUNT), ("bags", TEXTS), ("lines", LIST)]);
            let bags = list(tray, "bags");
            for bag in bags.iter().filter_map(Value::as_str) {
                assert!(seen.insert(bag.to_owned()), "{bag} stands on two trays");
            }
            for line in list(tray, "lines") {
                let promised =
                    [("item", TEXT), ("each", TEXT), ("bags", COUNT), ("total", OBJECT)];
                shaped(name, line, &promised);
                amount(name, &line["total"]);
                let served = line["bags"].as_u64().expect("a count");
                assert!(served >= 1 && served <= bags.len() as u64, "{line}");
            }
        }
    }
    assert_eq!(seen, bag_codes());
}
