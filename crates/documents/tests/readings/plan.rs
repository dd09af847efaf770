//! A small plan with two periods and four bags.

use barm_domain::amount::{Amount, AmountKind};
use barm_domain::plan::{
    BagChoice, CardChoice, Day, Equipment, Inquiry, Lies, Period, Place, Plan, PlannedBag,
    Recipe, SetAsideRule, Timing,
};
use barm_science::setup::{Bag, Card};
use jiff::civil::{date, time};

/// Codes of the bags.
pub(crate) const CODES: [&str; 4] = ["P1-01A-C", "P1-01B-A", "P2-01A-X", "P2-01C-T"];

pub(crate) fn plan() -> Plan {
    let amount = |written: &str, kind, value| Amount { written: written.into(), kind, value };
    let period = |name: &str, hour| Period {
        name: name.into(),
        day: "Tuesday".into(),
        start: time(hour, 10, 0, 0),
        length_min: 45.0,
        students: 24,
        groups: 8,
        grade: None,
        inquiry: None,
    };
    let bag = |code: &str, replicate| PlannedBag {
        code: code.into(),
        period: code[1..2].into(),
        group: 1,
        place: replicate,
        question: "food".into(),
        treatment: "Maple syrup".into(),
        replicate,
    };
    Plan {
        title: "Invented".into(),
        school: None,
        invented: true,
        big_question: "Which food feeds yeast best?".into(),
        grade: 8,
        inquiry: Inquiry::Guided,
        standards: Vec::new(),
        days: vec![Day {
            name: "Tuesday".into(),
            date: date(2027, 3, 9),
            zone: "America/Denver".into(),
            room_celsius: 21.0,
            place: Place::Altitude(1400.0),
        }],
        periods: vec![period("1", 8), period("2", 12)],
        group_settings: Vec::new(),
        readable_mm: 3.0,
        spare: 0.1,
        set_aside_rules: vec![SetAsideRule { id: "leak".into(), says: "It leaked.".into() }],
        answered: Vec::new(),
        base: Recipe {
            bag: BagChoice {
                written: "snack".into(),
                bag: Bag { width_mm: 165.0, height_mm: 83.0, film_um: 42.0 },
            },
            card: CardChoice {
                written: "3 x 5 in".into(),
                card: Card { length_mm: 127.0, width_mm: 76.2, grams: 1.8 },
            },
            water: amount("40 mL", AmountKind::Volume, 40.0),
            water_celsius: 40.0,
            yeast: None,
            yeast_amount: amount("2 g", AmountKind::Mass, 2.0),
            food: None,
            food_amount: None,
            enzyme: None,
            enzyme_amount: None,
            extras: Vec::new(),
            lies: Lies::Bench,
        },
        timing: Timing {
            interval_min: 4.0,
            mixing_min: 14.0,
            clearing_min: 6.0,
            wet_before_zero_min: 3.0,
        },
        questions: Vec::new(),
        controls: Vec::new(),
        label_foods: Vec::new(),
        materials: Vec::new(),
        equipment: Equipment::default(),
        bags: CODES.iter().zip(1..).map(|(code, replicate)| bag(code, replicate)).collect(),
        retired_codes: Vec::new(),
        circumstances: Vec::new(),
    }
}
