//! A sound small plan for tests to change, so that no test writes a whole plan by hand.
//!
//! Only with the feature `testing`, which belongs in `[dev-dependencies]` and nowhere else.
//!
//! ```
//! use barm_domain::testing::{amount, base_plan, period};
//!
//! let mut plan = base_plan();
//! plan.base.water = amount("60 mL");
//! plan.periods.push(period("1"));
//! ```
//!
//! Everything here panics on words that cannot be read: it is for tests.

use crate::amount::Amount;
use crate::pilot::Known;
use crate::plan::{
    BagChoice, CardChoice, Day, Difference, Equipment, Inquiry, Lies, Period, Place, Plan,
    Question, Recipe, Round, Timing, Treatment, Variable,
};
use crate::ready::Answers;
use crate::starter;
use barm_science::setup::YeastKind;
use jiff::civil::{date, time};

/// An amount as a teacher writes it, such as `2 g`.
///
/// # Panics
/// If it is no amount.
pub fn amount(written: &str) -> Amount {
    Amount::parse(written).unwrap_or_else(|error| panic!("{written}: {error}"))
}

/// A bag as a teacher writes it, such as `snack`.
///
/// # Panics
/// If there is no such bag.
pub fn bag(written: &str) -> BagChoice {
    BagChoice::parse(written).unwrap_or_else(|error| panic!("{written}: {error}"))
}

/// A card as a teacher writes it, such as `3 x 5 in`.
///
/// # Panics
/// If it is no size of a card.
pub fn card(written: &str) -> CardChoice {
    CardChoice::parse(written).unwrap_or_else(|error| panic!("{written}: {error}"))
}

/// What a school answers before a ready plan: its periods, the groups of each, and its cupboard;
/// three students to a group.
///
/// # Panics
/// Never: every program knows a snack bag.
pub fn answers(periods: u32, groups: u32, cupboard: &[&str]) -> Answers {
    Answers {
        school: starter::Answers {
            title: "A lesson".into(),
            date: date(2027, 3, 9),
            zone: "America/Chicago".into(),
            place: Place::Altitude(200.0),
            first_start: time(8, 10, 0, 0),
            length_min: 45.0,
            periods,
            groups,
            students: 3 * groups,
        },
        cupboard: cupboard.iter().map(|id| (*id).to_owned()).collect(),
        bag: bag("snack"),
        water_celsius: 40.0,
    }
}

/// A treatment that differs so from the base recipe, in as many bags as its question says.
pub fn treatment(name: &str, difference: Difference) -> Treatment {
    Treatment { name: name.into(), beside: None, replicates: None, difference }
}

/// That much of a food in place of what the base recipe says.
///
/// # Panics
/// If `how_much` is no amount.
pub fn food(id: &str, how_much: &str) -> Difference {
    Difference {
        food: Some(Some(id.into())),
        food_amount: Some(amount(how_much)),
        ..Difference::default()
    }
}

/// That much of an enzyme in place of what the base recipe says.
///
/// # Panics
/// If `how_much` is no amount.
pub fn enzyme(id: &str, how_much: &str) -> Difference {
    Difference {
        enzyme: Some(Some(id.into())),
        enzyme_amount: Some(amount(how_much)),
        ..Difference::default()
    }
}

/// A question about foods, without a reference, one bag of each treatment.
pub fn question(id: &str, treatments: Vec<Treatment>) -> Question {
    Question {
        id: id.into(),
        asks: "Which food feeds yeast best?".into(),
        variable: Variable::Food,
        crossed_with: None,
        reference: None,
        treatments,
        uses: Vec::new(),
        replicates: 1,
    }
}

/// Tuesday, 9 March 2027, at 1400 m in a room of 21 °C.
pub fn day() -> Day {
    Day {
        name: "Tuesday".into(),
        date: date(2027, 3, 9),
        zone: "America/Denver".into(),
        room_celsius: 21.0,
        place: Place::Altitude(1400.0),
    }
}

/// A period of the one day of [`base_plan`]: 45 min from 8:10, 24 students in 8 groups.
pub fn period(name: &str) -> Period {
    Period {
        name: name.into(),
        day: "Tuesday".into(),
        start: time(8, 10, 0, 0),
        length_min: 45.0,
        students: 24,
        groups: 8,
        grade: None,
        inquiry: None,
    }
}

/// A plan without periods, questions, controls and bags.
///
/// One [`day`]; in every snack bag 2 g of instant yeast in 40 mL of water
/// of 40 °C under a 3 x 5 in card; of a period 14 min go to mixing and 6 min to clearing, and bags
/// are read every 4 min.
pub fn base_plan() -> Plan {
    Plan {
        title: "Invented".into(),
        school: None,
        invented: true,
        big_question: "Which food feeds yeast best?".into(),
        grade: 8,
        inquiry: Inquiry::Guided,
        round: Round::Only,
        standards: Vec::new(),
        days: vec![day()],
        periods: Vec::new(),
        group_settings: Vec::new(),
        readable_mm: 3.0,
        spare: 0.1,
        set_aside_rules: Vec::new(),
        circumstances: Vec::new(),
        answered: Vec::new(),
        base: Recipe {
            bag: bag("snack"),
            card: card("3 x 5 in"),
            water: amount("40 mL"),
            water_celsius: 40.0,
            yeast: Some(YeastKind::Instant),
            yeast_amount: amount("2 g"),
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
        bags: Vec::new(),
        retired_codes: Vec::new(),
        known: Known::default(),
    }
}
