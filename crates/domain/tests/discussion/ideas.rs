//! What bags say of ideas that students bring along.

use crate::class;
use crate::class::Class;
use barm_domain::discussion::{Idea, Speaks, Spoken, ideas};
use barm_domain::plan::Difference;
use barm_domain::testing::{amount, food};

fn of(class: &Class, idea: Idea) -> Option<Spoken> {
    ideas(&class.plan, &class.result()).into_iter().find(|one| one.idea == idea)
}

/// Two treatments beside the shared control, four bags of each at these rises (mm).
fn two(differences: [Difference; 2], rises: [f64; 2]) -> Class {
    let mut class = Class::foods(&crate::PERIODS, &["A", "B"]);
    let bare = Difference { food: Some(None), ..Difference::default() };
    class.plan.controls[0].treatment.difference = bare;
    for (at, difference) in differences.into_iter().enumerate() {
        class.plan.questions[0].treatments[at].difference = difference;
    }
    for (at, period) in crate::PERIODS.into_iter().enumerate() {
        // Bags alike differ by a millimeter, evenly.
        let off = [-0.5, 0.5][at % 2];
        for (treatment, rise) in [("A", rises[0]), ("B", rises[1]), ("No food", 0.5)] {
            let code = class.add_by(treatment, period, 1);
            let rise = rise + off;
            class.read(&code, &[(0.0, 0.0), (12.0, rise / 2.0), (24.0, rise)]);
        }
    }
    class
}

#[test]
fn twice_the_food_is_held_to_how_rises_grew() {
    let amounts = [food("white sugar", "1 g"), food("white sugar", "3 g")];
    for (rises, speaks) in [([10.0, 11.0], Speaks::Against), ([6.0, 17.0], Speaks::Open)] {
        let spoken = of(&two(amounts.clone(), rises), Idea::TwiceTheFood).expect("two amounts");
        assert_eq!((spoken.speaks, spoken.mm), (speaks, (rises[0], rises[1])));
        assert_eq!(spoken.read_from, ("A".to_owned(), "B".to_owned()));
    }
    // Of two foods it says nothing.
    let foods = [food("white sugar", "1 g"), food("honey", "3 g")];
    assert_eq!(of(&two(foods, [6.0, 17.0]), Idea::TwiceTheFood), None);
}

#[test]
fn warmer_water_is_held_to_the_warmest_bag() {
    let at =
        |celsius| Difference { water_celsius: Some(celsius), ..food("white sugar", "1 g") };
    for (rises, speaks) in [
        ([10.0, 16.0], Speaks::For),
        ([10.0, 3.0], Speaks::Against),
        ([10.0, 11.0], Speaks::Open),
    ] {
        let class = two([at(35.0), at(55.0)], rises);
        let spoken = of(&class, Idea::WarmerIsBetter).expect("two temperatures");
        assert_eq!((spoken.speaks, spoken.mm), (speaks, (rises[0], rises[1])));
    }
}

#[test]
fn food_without_yeast_speaks_against_food_that_makes_gas() {
    let dry = Difference { yeast: Some(None), ..food("white sugar", "1 g") };
    let class = two([dry, food("white sugar", "1 g")], [0.5, 14.0]);
    let spoken = of(&class, Idea::FoodMakesGas).expect("a bag without yeast");
    assert_eq!((spoken.speaks, spoken.read_from.0.as_str()), (Speaks::Against, "A"));
}

#[test]
fn an_enzyme_is_held_to_the_same_bag_without_it() {
    let with = Difference {
        enzyme: Some(Some("lactase-drops".into())),
        enzyme_amount: Some(amount("5 drops")),
        ..food("white sugar", "1 g")
    };
    let mut class = two([food("white sugar", "1 g"), with], [14.0, 14.0]);
    class.plan.questions[0].treatments[1].beside = Some("A".into());
    let spoken = of(&class, Idea::EnzymeAlwaysHelps).expect("with and without");
    assert_eq!(spoken.read_from, ("B".to_owned(), "A".to_owned()));
    assert_eq!(spoken.speaks, Speaks::Open);
}

/// An open comparison says how large a difference it leaves open; a clear one says nothing of that idea.
#[test]
fn what_cannot_be_told_may_still_be_large() {
    let open = class([14.0, 2.0, 9.0, 6.0], [6.0, 12.0, 1.0, 10.0]);
    let spoken = of(&open, Idea::UnclearMeansEqual).expect("one is open");
    assert!(spoken.mm.0 < -3.0 && spoken.mm.1 > 3.0, "{spoken:?}");
    let clear = class([14.0, 13.0, 15.0, 14.0], [1.0, 0.0, 1.0, 1.0]);
    assert_eq!(of(&clear, Idea::UnclearMeansEqual), None);
    let alike = of(&clear, Idea::OneBagIsEnough).expect("bags made alike");
    assert_eq!(alike.mm, (13.0, 15.0));
}

#[test]
fn nothing_read_says_nothing() {
    let class = Class::foods(&["1"], &["Sugar"]);
    assert_eq!(ideas(&class.plan, &class.result()), []);
}
