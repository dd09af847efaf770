//! A quiet plan with little in it that could hurt, and ways to change it.

use barm_domain::amount::Amount;
use barm_domain::outlook::{Curve, Entry, Overnight, Upper};
use barm_domain::plan::{
    BagChoice, CardChoice, Control, Day, Difference, Equipment, Inquiry, LabelFood, Lies,
    Material, Period, Place, Plan, PlannedBag, Question, Recipe, Timing, Treatment, Variable,
};
use barm_science::food::label::{self, Declared, LabelStarch, NaturalSugar, NutritionLabel};
use barm_science::setup::YeastKind;

/// A plan with what is expected of it.
pub(crate) struct Scene {
    pub(crate) plan: Plan,
    pub(crate) outlook: Vec<Entry>,
    pub(crate) overnight: Vec<Overnight>,
}

pub(crate) fn amount(text: &str) -> Amount {
    Amount::parse(text).unwrap()
}

/// One class of 20 with one question: maple syrup beside no food, in snack bags at 40 °C.
pub(crate) fn quiet() -> Scene {
    let fed = Difference {
        food: Some(Some("maple_syrup".into())),
        food_amount: Some(amount("2 g")),
        ..Difference::default()
    };
    let plan = Plan {
        title: "Which food feeds yeast best?".into(),
        school: Some("Tamarack Bend Middle School (invented)".into()),
        invented: true,
        big_question: "Which food feeds yeast best?".into(),
        grade: 8,
        inquiry: Inquiry::Guided,
        standards: Vec::new(),
        days: vec![Day {
            name: "Tuesday".into(),
            date: jiff::civil::date(2027, 3, 9),
            zone: "America/Denver".into(),
            room_celsius: 21.0,
            place: Place::Altitude(1400.0),
        }],
        periods: vec![period("1", "Tuesday", 8)],
        group_settings: Vec::new(),
        readable_mm: 3.0,
        spare: 0.1,
        set_aside_rules: Vec::new(),
        circumstances: Vec::new(),
        answered: Vec::new(),
        base: Recipe {
            bag: BagChoice::parse("snack").unwrap(),
            card: CardChoice::parse("3 x 5 in").unwrap(),
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
        questions: vec![Question {
            id: "food".into(),
            asks: "Which food feeds yeast best?".into(),
            variable: Variable::Food,
            crossed_with: None,
            reference: Some("No food".into()),
            treatments: vec![treatment("Maple syrup", fed)],
            uses: Vec::new(),
            replicates: 8,
        }],
        controls: vec![Control {
            treatment: treatment("No food", Difference::default()),
            per_period: 2,
        }],
        label_foods: Vec::new(),
        materials: Vec::new(),
        equipment: Equipment::default(),
        bags: Vec::new(),
        retired_codes: Vec::new(),
    };
    Scene { plan, outlook: Vec::new(), overnight: Vec::new() }
}

pub(crate) fn period(name: &str, day: &str, hour: i8) -> Period {
    Period {
        name: name.into(),
        day: day.into(),
        start: jiff::civil::time(hour, 10, 0, 0),
        length_min: 45.0,
        students: 20,
        groups: 7,
        grade: None,
        inquiry: None,
    }
}

pub(crate) fn treatment(name: &str, difference: Difference) -> Treatment {
    Treatment { name: name.into(), beside: None, replicates: None, difference }
}

/// A forecast in which nothing much happens.
pub(crate) fn calm(treatment: &str) -> Entry {
    let flat = |value: f64| Curve { median: vec![value], low: vec![value], high: vec![value] };
    Entry {
        question: "food".into(),
        treatment: treatment.into(),
        reference: false,
        control: false,
        beside: Some("No food".into()),
        rise_mm: flat(0.0),
        gas_ml: flat(0.0),
        ethanol_g: flat(0.0),
        celsius: vec![38.0],
        peak_fill: 0.3,
        vent_by_min: None,
        readable_at_min: None,
        chance_readable: Some(0.0),
        upper: Upper { ethanol_percent_last: 0.0, hottest_celsius: 39.0 },
    }
}

impl Scene {
    /// The quiet plan, changed.
    pub(crate) fn changed(change: impl FnOnce(&mut Plan)) -> Self {
        let mut scene = quiet();
        change(&mut scene.plan);
        scene
    }

    /// The quiet plan with one forecast, changed.
    pub(crate) fn expecting(change: impl FnOnce(&mut Entry)) -> Self {
        let mut entry = calm("Maple syrup");
        change(&mut entry);
        Self { outlook: vec![entry], ..quiet() }
    }

    /// The quiet plan with another food in place of maple syrup.
    pub(crate) fn food(id: &str) -> Self {
        Self::changed(|plan| {
            let treatment = &mut plan.questions[0].treatments[0];
            treatment.name = id.replace('_', " ");
            treatment.difference.food = Some(Some(id.into()));
        })
    }

    /// The quiet plan with an enzyme in each bag.
    pub(crate) fn enzyme(id: &str, how_much: &str) -> Self {
        Self::changed(|plan| {
            plan.base.enzyme = Some(id.into());
            plan.base.enzyme_amount = Some(amount(how_much));
        })
    }

    /// The quiet plan with a food described from its label.
    pub(crate) fn label(change: impl FnOnce(&mut NutritionLabel), allergens: &[&str]) -> Self {
        let mut label = NutritionLabel {
            serving_g: 30.0,
            carbohydrate: Declared::Grams(24.0),
            fiber: Declared::Grams(1.0),
            sugars: Declared::Grams(9.0),
            added_sugars: None,
            sugar_alcohols: None,
            fat_g: None,
            protein_g: None,
            sodium_mg: None,
            starch: LabelStarch::Raw,
            natural_sugar: NaturalSugar::Sucrose,
        };
        change(&mut label);
        let made_of = label::food(&label).unwrap();
        let mut scene = Self::food("Sunny Rings");
        scene.plan.label_foods = vec![LabelFood {
            name: "Sunny Rings".into(),
            grams_per_tsp: Some(2.5),
            label,
            composition: made_of.composition,
            content_sd: made_of.content_sd,
            allergens: allergens.iter().map(|&name| name.to_owned()).collect(),
        }];
        scene
    }

    /// The quiet plan without a single bag.
    pub(crate) fn empty() -> Self {
        Self::changed(|plan| {
            plan.questions.clear();
            plan.controls.clear();
        })
    }

    /// The quiet plan with something on the shopping list.
    pub(crate) fn buying(item: &str) -> Self {
        Self::changed(|plan| {
            plan.materials = vec![Material {
                item: item.into(),
                pack: amount("100 g"),
                price: None,
                in_stock: None,
            }];
        })
    }
}

/// One bag of a treatment in a period.
pub(crate) fn bag(period: &str, treatment: &str, replicate: u32) -> PlannedBag {
    PlannedBag {
        code: format!("{period}-{treatment}-{replicate}"),
        period: period.into(),
        group: 1,
        place: replicate,
        question: "food".into(),
        treatment: treatment.into(),
        replicate,
    }
}
