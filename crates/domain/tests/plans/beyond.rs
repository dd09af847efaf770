//! Forecasts that go beyond what is known, in a teacher's words.

use crate::school::{Asks, sound};
use crate::{Dice, LOOK};
use barm_domain::outlook::{self, Beyond, beyond_together};
use barm_domain::plan::Plan;
use barm_domain::words::Voice;
use barm_science::model::validity::laws;

fn beyond(plan: &Plan, treatment: &str) -> Vec<Beyond> {
    let mut treatments = plan.treatments().map(|(_, treatment)| treatment);
    let treatment = treatments.find(|one| one.name == treatment).expect("it is there");
    outlook::forecast(plan, treatment, LOOK).expect("a forecast").beyond()
}

fn mark(law: &str, value: f64, from_min: f64) -> Beyond {
    let law = laws().find(|one| one.name == law).expect("a law");
    Beyond {
        law: law.name,
        quantity: law.quantity,
        unit: law.unit,
        holds: law.holds,
        outside: law.outside,
        value,
        from_min,
    }
}

/// Every law has words of its own: its inner name is for programs.
#[test]
fn every_law_is_told_in_plain_words() {
    for law in laws() {
        let outside = mark(law.name, law.holds.1 + 1.0, 3.0);
        let says = Voice::english(8).beyond(&outside);
        assert!(!says.contains(law.name) && says.contains(" is known "), "{says}");
        assert!(says.contains("This ") && says.ends_with("there it is a guess."), "{says}");
        for sentence in says.split(". ") {
            assert!(sentence.split_whitespace().count() <= 24, "{sentence}");
        }
    }
}

#[test]
fn the_range_is_told_in_what_the_law_is_read_at() {
    let says = |law, value, from| Voice::english(8).beyond(&mark(law, value, from));
    assert_eq!(
        says("yeast.response", 75.0, -3.0),
        "How fast yeast works is known from 0 to 60 °C (32 to 140 °F). This bag goes up to 75 °C \
         (167 °F); there it is a guess."
    );
    // 4 mol of particles are 2 mol of table salt, which parts in two: 2 · 58.44 g.
    assert_eq!(
        says("yeast.osmotic", 5.25, -1.0),
        "How sugar and salt slow yeast is known up to 4 mol of dissolved particles in a liter, as of \
         117 g of salt. This bag goes up to 5.3 mol; there it is a guess."
    );
    // 4 mol of table salt: 4 · 58.44 g.
    assert_eq!(
        says("carbon_dioxide.salting by salt", 5.0, -1.0),
        "How much gas salty water holds is known up to 234 g of salt in a kilogram of water. This bag \
         goes up to 292 g; there it is a guess."
    );
    assert_eq!(
        says("card_height.family", 0.97, 18.0),
        "How high gas lifts the card is known until gas fills 93 % of the bag’s room. This bag goes up \
         to 97 % from minute 18 on; there it is a guess."
    );
    assert_eq!(
        says("enzyme.acidity", 2.4, 0.0),
        "What acid does to an enzyme is known from pH 3 to pH 9. This bag goes down to pH 2.4; there \
         it is a guess."
    );
    assert!(says("yeast.storage of dry yeast", -18.0, -3.0).contains(
        "on a shelf of 5 to 37 °C (41 to 99 °F). This yeast was kept at -18 °C (0 °F);"
    ));
}

#[test]
fn a_plan_within_all_laws_is_not_marked_and_one_with_hot_water_is() {
    let mut plan = sound(Asks::FoodAndEnzyme, &mut Dice::of(2));
    assert_eq!(beyond(&plan, "Oat flour"), Vec::new());
    plan.base.water_celsius = 75.0;
    let marks = beyond(&plan, "Oat flour");
    let hot = marks.iter().find(|mark| mark.law == "yeast.response").expect("too warm for it");
    assert!(hot.value > 60.0 && hot.value < 75.0 && hot.from_min < 0.0, "{hot:?}");
}

#[test]
fn treatments_that_go_beyond_the_same_law_are_told_together() {
    let one = |value| vec![mark("yeast.response", value, 0.0)];
    let all = [("A", one(65.0)), ("B", one(71.0)), ("C", Vec::new()), ("A", one(65.0))];
    let together = beyond_together(all);
    assert_eq!(together.len(), 1);
    assert_eq!(together[0].treatments, ["A", "B"]);
    assert!((together[0].farthest.value - 71.0).abs() < 1e-12, "the farthest: {together:?}");
    assert!(
        Voice::english(6).beyond_together(&together[0]).starts_with("A, B: How fast yeast")
    );
}
