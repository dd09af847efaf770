//! A class that feeds yeast with sugar, bag by bag, with a truth that the test sets.

use barm_domain::bag_list;
use barm_domain::plan::{
    CONTROLS, Control, Difference, Plan, Question, Round, Treatment, Variable,
};
use barm_domain::reading::Reading;
use barm_domain::result::{ClassResult, analyze};
use barm_domain::round_two::Handed;
use barm_domain::testing::{base_plan, food, period, question, treatment};
use barm_science::statistics::chance::Chance;

/// Height of every card at its zero reading (mm).
pub(crate) const ZERO_MM: f64 = 20.0;

/// Name of the control.
pub(crate) const BARE: &str = "No food";

/// Two amounts of sugar beside none, so many bags of each, in two periods.
pub(crate) fn sugar(round: Round, replicates: u32) -> Plan {
    let asked = Question {
        variable: Variable::FoodAmount,
        ..of_foods(
            "sugar",
            [
                treatment("Pinch", food("white sugar", "0.2 g")),
                treatment("Spoon", food("white sugar", "1 g")),
            ],
            replicates,
        )
    };
    with(round, vec![asked])
}

/// One food beside none.
pub(crate) fn one_food(round: Round, replicates: u32) -> Plan {
    let only = [treatment("Sugar", food("white sugar", "1 g"))];
    with(round, vec![of_foods("food", only, replicates)])
}

/// A question beside the shared control.
pub(crate) fn of_foods<const N: usize>(
    id: &str,
    treatments: [Treatment; N],
    replicates: u32,
) -> Question {
    Question { reference: Some(BARE.into()), replicates, ..question(id, treatments.into()) }
}

/// A plan with these questions and a bag list.
pub(crate) fn with(round: Round, questions: Vec<Question>) -> Plan {
    let bare = Difference { food: Some(None), ..Difference::default() };
    let mut plan = Plan {
        round,
        periods: vec![period("1"), later("2")],
        questions,
        controls: vec![Control { treatment: treatment(BARE, bare), per_period: 2 }],
        ..base_plan()
    };
    plan.bags = bag_list::write(&plan).expect("codes enough").bags;
    plan
}

/// A period an hour later.
fn later(name: &str) -> barm_domain::plan::Period {
    let mut later = period(name);
    later.start = jiff::civil::time(9, 10, 0, 0);
    later
}

/// Readings of every bag, evenly up to the rise (mm) that `rise` gives it at minute 24.
pub(crate) fn read(plan: &Plan, mut rise: impl FnMut(&str) -> f64) -> Vec<Reading> {
    let mut readings = Vec::new();
    for bag in &plan.bags {
        let rise = rise(&bag.treatment);
        for minute in (0..=24).step_by(8) {
            let minute = f64::from(minute);
            readings.push(Reading {
                bag: bag.code.clone(),
                minute,
                height_mm: ZERO_MM + rise * minute / 24.0,
                line: readings.len() as u64 + 2,
                event: None,
            });
        }
    }
    readings
}

/// Readings where bags alike differ by `sd` (mm).
pub(crate) fn scattered(
    plan: &Plan,
    mean: impl Fn(&str) -> f64,
    sd: f64,
    chance: &mut Chance,
) -> Vec<Reading> {
    read(plan, |name| mean(name) + sd * chance.normal())
}

/// What a class found.
pub(crate) fn found(plan: &Plan, readings: &[Reading]) -> ClassResult {
    analyze(plan, &[], readings, &[])
}

/// A round as it is handed in, nothing set aside.
pub(crate) fn handed<'a>(plan: &'a Plan, readings: &'a [Reading]) -> Handed<'a> {
    Handed { plan, readings, set_aside: &[] }
}

/// Bags of a treatment on a list, controls of the teacher's bench among them.
pub(crate) fn bags(plan: &Plan, name: &str) -> usize {
    plan.bags.iter().filter(|bag| bag.treatment == name).count()
}

/// Whether a bag is one of the shared controls.
pub(crate) fn is_shared(bag: &barm_domain::plan::PlannedBag) -> bool {
    bag.question == CONTROLS
}
