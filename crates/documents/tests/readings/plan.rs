//! A small plan with two periods and four bags.

use barm_domain::plan::{
    BagChoice, CardChoice, Period, Plan, PlannedBag, Recipe, SetAsideRule,
};
use barm_domain::testing::{self, base_plan};
use barm_science::setup::{Bag, Card};
use jiff::civil::time;

/// Codes of the bags.
pub(crate) const CODES: [&str; 4] = ["P1-01A-C", "P1-01B-A", "P2-01A-X", "P2-01C-T"];

pub(crate) fn plan() -> Plan {
    let period =
        |name: &str, hour| Period { start: time(hour, 10, 0, 0), ..testing::period(name) };
    let bag = |code: &str, replicate| PlannedBag {
        code: code.into(),
        period: code[1..2].into(),
        group: 1,
        place: replicate,
        question: "food".into(),
        treatment: "Maple syrup".into(),
        replicate,
    };
    let base = base_plan();
    Plan {
        periods: vec![period("1", 8), period("2", 12)],
        set_aside_rules: vec![SetAsideRule { id: "leak".into(), says: "It leaked.".into() }],
        base: Recipe {
            bag: BagChoice {
                written: "snack".into(),
                bag: Bag { width_mm: 165.0, height_mm: 83.0, film_um: 42.0 },
            },
            card: CardChoice {
                written: "3 x 5 in".into(),
                card: Card { length_mm: 127.0, width_mm: 76.2, grams: 1.8 },
            },
            yeast: None,
            ..base.base
        },
        bags: CODES.iter().zip(1..).map(|(code, replicate)| bag(code, replicate)).collect(),
        ..base
    }
}
