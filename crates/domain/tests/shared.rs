//! What of an investigation is given to strangers, and what stays behind.

use barm_domain::code::BagCode;
use barm_domain::plan::{
    Control, Difference, LabelFood, Lies, Plan, PlannedBag, Question, SetAsideRule,
};
use barm_domain::reading::{Reading, SetAside};
use barm_domain::result::meter::MeterReading;
use barm_domain::shared::{Item, Lying, Measure, NotShared, Part, Rule, Shared, TreatmentCode};
use barm_domain::testing::{amount, base_plan, enzyme, food, period, question, treatment};
use barm_science::food::label::{Declared, LabelStarch, NaturalSugar, NutritionLabel};
use barm_science::meter::Sample;
use barm_science::setup::Composition;

const JAM: &str = "Grandma Ann's jam";

fn jam() -> LabelFood {
    let label = NutritionLabel {
        serving_g: 20.0,
        carbohydrate: Declared::Grams(13.0),
        fiber: Declared::LessThanOne,
        sugars: Declared::Grams(12.0),
        added_sugars: Some(Declared::Grams(10.0)),
        sugar_alcohols: None,
        fat_g: None,
        protein_g: None,
        sodium_mg: None,
        starch: LabelStarch::Cooked,
        natural_sugar: NaturalSugar::Unknown,
    };
    LabelFood {
        name: JAM.into(),
        grams_per_tsp: None,
        label,
        composition: Composition { sucrose: 60.0, ..Composition::default() },
        content_sd: 0.1,
        allergens: Vec::new(),
    }
}

fn code(letter: usize) -> String {
    BagCode::all_of(1, 2).nth(letter).unwrap().to_string()
}

/// Jam, an enzyme in a tray, and nothing at all beside it, in one period; every word is somebody's.
fn plan() -> Plan {
    let mut malted = enzyme("lactase-drops", "5 drops");
    malted.lies = Some(Lies::WarmTray(38.0));
    let own = vec![treatment("Ann's", food(JAM, "2 g")), treatment("Bea's", malted)];
    let asked = Question { reference: Some("Mr. Teacher's".into()), ..question("q", own) };
    let no_yeast = Difference { yeast: Some(None), ..Difference::default() };
    let control = treatment("Mr. Teacher's", no_yeast);
    let rule = |id: &str| SetAsideRule { id: id.into(), says: "Ann was ill".into() };
    let bag = |at: usize, treatment: &str| PlannedBag {
        code: code(at),
        period: "First".into(),
        group: 2,
        place: 1,
        question: "q".into(),
        treatment: treatment.into(),
        replicate: 1,
    };
    Plan {
        questions: vec![asked],
        controls: vec![Control { treatment: control, per_period: 1 }],
        label_foods: vec![jam()],
        periods: vec![period("First")],
        set_aside_rules: vec![rule("ann-ill"), rule("leak")],
        bags: vec![bag(0, "Ann's"), bag(1, "Bea's"), bag(2, "Mr. Teacher's")],
        ..base_plan()
    }
}

fn reading(bag: String, minute: f64) -> Reading {
    Reading { bag, minute, height_mm: 12.345, line: 0, event: Some("Ann dripped".into()) }
}

#[test]
fn recipes_become_numbers_and_names_become_codes() {
    let plan = plan();
    let metered = MeterReading {
        bag: code(0),
        percent: 0.12,
        turn: Some(3),
        minute: None,
        celsius: None,
        sample: Sample { gas_ml: 20.0, air_ml: 40.0 },
        line: 9,
    };
    // A second at the same minute, and one of another plan.
    let second = Reading { height_mm: 99.0, ..reading(code(0), 4.0201) };
    let readings = [reading(code(0), 4.0166), second, reading("P9-99A-X".into(), 1.0)];
    let rule = |bag: usize, rule: &str| SetAside { bag: code(bag), rule: rule.into(), line: 0 };
    // A rule as it is written loosely, one that the plan does not have, and a bag named twice.
    let aside = [rule(0, "Ann ill"), rule(1, "leak"), rule(2, "late"), rule(1, "ann-ill")];
    let shared = Shared::of(&plan, &readings, &aside, &[metered]).unwrap();
    let rows = shared.rows();
    let t = |number| TreatmentCode::of(number).unwrap();
    let [ann, bea, control] = rows.treatments.as_slice() else { panic!("{rows:?}") };
    assert_eq!([ann.code, bea.code, control.code], [t(1), t(2), t(3)]);
    assert_eq!([ann.beside, bea.beside, control.beside], [Some(t(3)), Some(t(3)), None]);
    assert_eq!([ann.control, bea.control, control.control], [false, false, true]);
    assert_eq!((bea.lying, bea.tray_celsius), (Lying::Tray, Some(38.0)));
    assert_eq!((ann.lying, ann.tray_celsius), (Lying::Bench, None));
    assert_eq!((control.yeast, control.yeast_g), (None, 0.0));
    assert_eq!((ann.yeast_g, ann.water_ml), (2.0, 40.0));
    // 3 x 5 in: 25.4 mm to an inch.
    assert_eq!((ann.card_length_mm, ann.card_width_mm), (127.0, 76.2));
    let [food, drops] = rows.ingredients.as_slice() else { panic!("{rows:?}") };
    assert_eq!((food.part, food.item, food.amount), (Part::Food, Item::OWN_LABEL, 2.0));
    assert_eq!((drops.part, drops.item.id()), (Part::Enzyme, "lactase-drops"));
    assert_eq!((drops.amount, drops.measure), (5.0, Measure::Drop));
    assert_eq!(rows.readings.len(), 1);
    assert_eq!((rows.readings[0].minute, rows.readings[0].height_mm), (4.02, 12.35));
    assert_eq!(
        rows.set_aside.iter().map(|row| row.rule).collect::<Vec<_>>(),
        [Rule::Other, Rule::Leak]
    );
    assert_eq!((rows.meter[0].turn, rows.meter[0].air_ml), (Some(3), 40.0));
    // 1400 m: 856 hPa in the standard atmosphere of 1976.
    assert_eq!((rows.bags[0].room_celsius, rows.bags[0].pressure_hpa), (21.0, 860.0));
    let all = format!("{shared:?}");
    for word in ["Ann", "Bea", "Teacher", "ill", "First", "dripped", "2027", "Denver"] {
        assert!(!all.contains(word), "{word} in {all}");
    }
}

#[test]
fn a_plan_that_cannot_be_put_into_numbers_says_so_to_the_teacher() {
    let mut odd = plan();
    odd.bags[0].code = "bag of Ann".into();
    let refused = Shared::of(&odd, &[], &[], &[]).unwrap_err();
    assert!(matches!(refused, NotShared::Bag { .. }), "{refused}");
    let mut odd = plan();
    odd.questions[0].treatments[0].difference.food_amount = Some(amount("3 drops"));
    let refused = Shared::of(&odd, &[], &[], &[]).unwrap_err();
    assert!(refused.to_string().contains("Ann's"), "{refused}");
    let short = reading(code(0), -1.0);
    assert!(matches!(Shared::of(&plan(), &[short], &[], &[]), Err(NotShared::Rows(_))));
}
