//! Amounts that no bag can have are named as the plan names them, with what was written and what may be.

use barm_domain::check::check;
use barm_domain::plan::{Extra, Lies, Plan};
use barm_domain::testing::{amount, base_plan, food, period, question, treatment};

type Spoil = fn(&mut Plan);

fn said(spoil: Spoil) -> Vec<String> {
    let mut plan = base_plan();
    plan.periods.push(period("1"));
    plan.questions.push(question("food", vec![treatment("Sugar", food("sugar_white", "1 g"))]));
    spoil(&mut plan);
    let found = check(&plan, &[]).into_iter();
    found.filter(|f| f.code == "cannot-foresee").map(|f| f.message).collect()
}

#[test]
fn absurd_amounts_are_named_with_what_may_be() {
    let cases: &[(&str, Spoil)] = &[
        ("water is 3000 mL; it must lie between 1 and 2000 mL", |p| {
            p.base.water = amount("3 L");
        }),
        ("water_temperature is 400 °C; it must lie between 0 and 100 °C", |p| {
            p.base.water_celsius = 400.0;
        }),
        ("the temperature of the room is -20 °C; it must lie between 0 and 50 °C", |p| {
            p.days[0].room_celsius = -20.0;
        }),
        ("yeast_amount is 3000 g; it must lie between 0 and 100 g", |p| {
            p.base.yeast_amount = amount("3 kg");
        }),
        (
            "the amount of food or extra number 1 is 5000 g; it must lie between 0 and 1000 g",
            |p| {
                p.questions[0].treatments[0].difference = food("sugar_white", "5 kg");
            },
        ),
        (
            "the amount of food or extra number 2 is 2000 g; it must lie between 0 and 1000 g",
            |p| {
                p.base.extras = vec![Extra { item: "salt".into(), amount: amount("2 kg") }];
            },
        ),
        ("the temperature of the warm tray is 95 °C; it must lie between 0 and 70 °C", |p| {
            p.base.lies = Lies::WarmTray(95.0);
        }),
        ("all that goes into the bag, with the air left in it, is ", |p| {
            p.base.water = amount("1500 mL");
        }),
    ];
    assert_eq!(said(|_| ()), Vec::<String>::new());
    for (wanted, spoil) in cases {
        let found = said(*spoil);
        assert!(found.iter().any(|message| message.contains(wanted)), "{wanted}: {found:?}");
        for message in &found {
            let inner = ["_ml", "_celsius", "_pa", "[", ".grams"];
            assert!(inner.iter().all(|name| !message.contains(name)), "{message}");
        }
    }
}
