//! A quiet plan with little in it that could hurt, and ways to change it.

use barm_domain::outlook::{Curve, Entry, Overnight, Upper};
use barm_domain::plan::{
    Control, Difference, LabelFood, Material, Period, Plan, PlannedBag, Question,
};
use barm_domain::testing::{self, base_plan, food, question};
pub(crate) use barm_domain::testing::{amount, treatment};
use barm_science::food::label::{self, Declared, LabelStarch, NaturalSugar, NutritionLabel};

/// A plan with what is expected of it.
pub(crate) struct Scene {
    pub(crate) plan: Plan,
    pub(crate) outlook: Vec<Entry>,
    pub(crate) overnight: Vec<Overnight>,
}

/// One class of 20 with one question: maple syrup beside no food, in snack bags at 40 °C.
pub(crate) fn quiet() -> Scene {
    let fed = treatment("Maple syrup", food("maple_syrup", "2 g"));
    let plan = Plan {
        title: "Which food feeds yeast best?".into(),
        school: Some("Tamarack Bend Middle School (invented)".into()),
        periods: vec![period("1", "Tuesday", 8)],
        questions: vec![Question {
            reference: Some("No food".into()),
            replicates: 8,
            ..question("food", vec![fed])
        }],
        controls: vec![Control {
            treatment: treatment("No food", Difference::default()),
            per_period: 2,
        }],
        ..base_plan()
    };
    Scene { plan, outlook: Vec::new(), overnight: Vec::new() }
}

pub(crate) fn period(name: &str, day: &str, hour: i8) -> Period {
    Period {
        day: day.into(),
        start: jiff::civil::time(hour, 10, 0, 0),
        students: 20,
        groups: 7,
        ..testing::period(name)
    }
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
        beyond: Vec::new(),
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
