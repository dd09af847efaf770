//! Any plan that a person could have written.

use barm_domain::amount::Amount;
use barm_domain::pilot::Known;
use barm_domain::plan::{
    Answered, BagChoice, CONTROLS, CardChoice, Circumstance, Control, Day, Difference,
    Equipment, Extra, GroupSetting, Inquiry, LabelFood, Lies, Material, Period, Place, Plan,
    PlannedBag, Question, Recipe, Round, SetAsideRule, Standard, Timing, Treatment, Variable,
};
use barm_science::food::label::{Declared, LabelStarch, NaturalSugar, NutritionLabel, food};
use barm_science::setup::YeastKind;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Texts that are hard on a text format, trimmed as reading trims them.
fn text() -> BoxedStrategy<String> {
    let hard = select(vec![
        "a \"quoted\" word",
        "back\\slash",
        "it's",
        "''' and \"\"\"",
        "# no note",
        "[not a header]",
        "x = 1",
        "tab\there",
        "two\nlines",
        "ñ é 漢 👩‍🔬 °C",
        "true",
        "2027-03-09",
        "-",
    ]);
    prop_oneof![
        3 => "[A-Za-z][A-Za-z0-9 ,.?!'-]{0,30}[a-z]",
        1 => hard.prop_map(str::to_owned),
        1 => "\\PC{1,12}",
    ]
    .prop_map(|text| text.trim().to_owned())
    .prop_filter("not empty", |text| !text.is_empty())
    .boxed()
}

fn amount(written: &'static [&'static str]) -> impl Strategy<Value = Amount> {
    select(written).prop_map(|written| Amount::parse(written).unwrap())
}

fn mass() -> impl Strategy<Value = Amount> {
    amount(&["2 g", "1/4 tsp", "2,5 g", "1 1/2 tsp", "1 label tsp", "1 oz", "½ tsp"])
}

/// A number with a few decimals, or an awkward one.
fn number(low: f64, high: f64) -> impl Strategy<Value = f64> {
    prop_oneof![
        3 => (low * 10.0..high * 10.0).prop_map(|x| x.round() / 10.0),
        1 => low..high,
    ]
}

fn difference() -> BoxedStrategy<Difference> {
    let bag = select(vec!["snack", "Quart", "gallon freezer", "165 x 83 mm", "6.5 x 3.25 in"]);
    let bag = bag.prop_map(|written| BagChoice::parse(written).unwrap());
    let card = select(vec!["3 x 5 in", "76 × 127 mm"]);
    let card = card.prop_map(|written| CardChoice::parse(written).unwrap());
    let yeast = option::of(select(vec![
        YeastKind::Instant,
        YeastKind::ActiveDry,
        YeastKind::Compressed,
    ]));
    // Food and amount come together, as do enzyme and amount: the reader demands both.
    let food = prop_oneof![
        Just((Some(None), None)),
        (select(vec!["maple_syrup", "oat_flour", "salt"]), mass())
            .prop_map(|(food, amount)| (Some(Some(food.to_owned())), Some(amount))),
        Just((None, None)),
    ];
    let enzyme = prop_oneof![
        Just((Some(None), None)),
        (select(vec!["glucoamylase-powder", "amylase-powder"]), amount(&["2 mL", "5 drops"]))
            .prop_map(|(enzyme, amount)| (Some(Some(enzyme.to_owned())), Some(amount))),
        Just((None, None)),
    ];
    let extra = (select(vec!["salt", "vinegar", "baking_soda"]), mass())
        .prop_map(|(item, amount)| Extra { item: item.to_owned(), amount });
    let lies = prop_oneof![
        Just(Lies::Bench),
        Just(Lies::Towel),
        number(20.0, 45.0).prop_map(Lies::WarmTray),
    ];
    let water = amount(&["40 mL", "1/4 cup", "2 fl oz", "50 g"]);
    (
        option::of(bag),
        option::of(card),
        option::of(water),
        option::of(number(0.0, 60.0)),
        option::of(yeast),
        food,
        enzyme,
        option::of(vec(extra, 0..3)),
        option::of(lies),
    )
        .prop_map(|(bag, card, water, celsius, yeast, food, enzyme, extras, lies)| Difference {
            bag,
            card,
            water,
            water_celsius: celsius,
            yeast,
            yeast_amount: None,
            food: food.0,
            food_amount: food.1,
            enzyme: enzyme.0,
            enzyme_amount: enzyme.1,
            extras,
            lies,
        })
        .boxed()
}

fn base() -> BoxedStrategy<Recipe> {
    difference()
        .prop_map(|difference| {
            Recipe {
                bag: BagChoice::parse("snack").unwrap(),
                card: CardChoice::parse("3 x 5 in").unwrap(),
                water: Amount::parse("40 mL").unwrap(),
                water_celsius: 40.0,
                yeast: Some(YeastKind::Instant),
                yeast_amount: Amount::parse("2 g").unwrap(),
                food: None,
                food_amount: None,
                enzyme: None,
                enzyme_amount: None,
                extras: Vec::new(),
                lies: Lies::Bench,
            }
            .with(&difference)
        })
        .boxed()
}

fn timing() -> impl Strategy<Value = Timing> {
    (number(0.5, 20.0), number(0.0, 30.0), number(0.0, 20.0), number(0.0, 10.0)).prop_map(
        |(interval_min, mixing_min, clearing_min, wet_before_zero_min)| Timing {
            interval_min,
            mixing_min,
            clearing_min,
            wet_before_zero_min,
        },
    )
}

fn label_food(index: usize) -> BoxedStrategy<LabelFood> {
    let line = |grams: std::ops::RangeInclusive<u32>| {
        prop_oneof![
            grams.prop_map(|grams| Declared::Grams(f64::from(grams))),
            Just(Declared::LessThanOne)
        ]
    };
    let starch = select(vec![LabelStarch::Raw, LabelStarch::Cooked, LabelStarch::Dextrin]);
    let sugar = select(vec![NaturalSugar::Unknown, NaturalSugar::Milk, NaturalSugar::Dextrose]);
    (
        line(20..=24),
        line(0..=3),
        line(5..=9),
        option::of(line(0..=5)),
        option::of(0u32..=400),
        (starch, sugar),
        option::of(number(1.0, 8.0)),
        vec(select(vec!["wheat", "milk", "tree nuts"]), 0..3),
    )
        .prop_map(
            move |(carbohydrate, fiber, sugars, added, sodium, kinds, spoon, allergens)| {
                let label = NutritionLabel {
                    serving_g: 30.0,
                    carbohydrate: match carbohydrate {
                        Declared::LessThanOne => Declared::Grams(22.0),
                        grams => grams,
                    },
                    fiber,
                    sugars,
                    added_sugars: added.filter(|_| sugars != Declared::LessThanOne),
                    sugar_alcohols: None,
                    fat_g: sodium.map(|_| 1.5),
                    protein_g: sodium.map(|_| 2.0),
                    sodium_mg: sodium.map(f64::from),
                    starch: kinds.0,
                    natural_sugar: kinds.1,
                };
                let known = food(&label).unwrap();
                LabelFood {
                    name: format!("Invented rings {index}"),
                    label,
                    grams_per_tsp: spoon,
                    composition: known.composition,
                    content_sd: known.content_sd,
                    allergens: allergens.into_iter().map(str::to_owned).collect(),
                }
            },
        )
        .boxed()
}

fn inquiry() -> impl Strategy<Value = Inquiry> {
    select(Inquiry::ALL.to_vec())
}

fn day(index: usize) -> BoxedStrategy<Day> {
    let place = prop_oneof![
        number(-400.0, 3000.0).prop_map(Place::Altitude),
        (70_000.0..105_000.0_f64).prop_map(Place::Pressure),
        (700u32..1050).prop_map(|hpa| Place::Pressure(f64::from(hpa) * 100.0)),
    ];
    let zone = select(vec!["America/Denver", "America/New_York", "UTC", "Pacific/Honolulu"]);
    (2020i16..2040, 1i8..=12, 1i8..=28, zone, number(5.0, 40.0), place)
        .prop_map(move |(year, month, day, zone, room_celsius, place)| Day {
            name: format!("Day {index}"),
            date: jiff::civil::date(year, month, day),
            zone: zone.to_owned(),
            room_celsius,
            place,
        })
        .boxed()
}

fn periods() -> BoxedStrategy<Vec<Period>> {
    let period =
        (0i8..24, 0i8..60, number(20.0, 90.0), 1u32..40, 1u32..=12, option::of(5u8..=12))
            .prop_flat_map(|parts| (Just(parts), option::of(inquiry())));
    vec(period, 1..5)
        .prop_map(|periods| {
            let numbered = periods.into_iter().enumerate();
            numbered
                .map(
                    |(
                        index,
                        ((hour, minute, length_min, students, groups, grade), inquiry),
                    )| {
                        Period {
                            name: format!("{}", index + 1),
                            day: "Day 0".into(),
                            start: jiff::civil::time(hour, minute, 0, 0),
                            length_min,
                            students,
                            groups,
                            grade,
                            inquiry,
                        }
                    },
                )
                .collect()
        })
        .boxed()
}

fn question(index: usize) -> BoxedStrategy<Question> {
    (text(), select(Variable::ALL.to_vec()), vec(difference(), 1..4), 1u32..9, any::<bool>())
        .prop_map(move |(asks, variable, differences, replicates, refers)| Question {
            id: format!("question-{index}"),
            asks,
            variable,
            crossed_with: (refers && variable != Variable::Food).then_some(Variable::Food),
            reference: refers.then(|| "Control 0".to_owned()),
            treatments: differences
                .into_iter()
                .enumerate()
                .map(|(t, difference)| Treatment {
                    name: format!("Treatment {index}.{t}"),
                    beside: (t > 0).then(|| "Control 0".to_owned()),
                    replicates: (t == 1).then_some(replicates + 1),
                    difference,
                })
                .collect(),
            uses: if index > 0 && refers { vec!["Treatment 0.0".into()] } else { Vec::new() },
            replicates,
        })
        .boxed()
}

fn materials() -> BoxedStrategy<Vec<Material>> {
    let item =
        select(vec!["yeast", "bags", "maple_syrup", "glucoamylase-powder", "lactase-drops"]);
    let price =
        prop_oneof![(0u32..10_000).prop_map(|cents| f64::from(cents) / 100.0), 0.0..100.0_f64];
    let material = (item, mass(), option::of(price), option::of(mass())).prop_map(
        |(item, pack, price, in_stock)| Material {
            item: item.to_owned(),
            pack,
            price,
            in_stock,
        },
    );
    vec(material, 0..5).boxed()
}

fn equipment() -> impl Strategy<Value = Equipment> {
    vec(option::of(0u32..100), 6).prop_map(|counts| Equipment {
        thermometers: counts[0],
        meters: counts[1],
        rulers: counts[2],
        kettles: counts[3],
        balances: counts[4],
        goggles: counts[5],
    })
}

/// A plan without a bag list.
fn bare_plan() -> BoxedStrategy<Plan> {
    let circumstances = vec(select(Circumstance::ALL.to_vec()), 0..3);
    let words =
        (text(), option::of(text()), any::<bool>(), text(), 5u8..=12, inquiry(), circumstances);
    let limits = (number(0.5, 50.0), 0.0..=1.0_f64);
    let class = (vec(text(), 0..3), day(0), option::of(day(1)), periods());
    let lab = (base(), timing(), vec(difference(), 1..3), materials(), equipment());
    let questions = (question(0), option::of(question(1)));
    (words, limits, class, lab, questions, option::of(label_food(0)))
        .prop_map(|(words, limits, class, lab, questions, label_food)| {
            let (title, school, invented, big_question, grade, inquiry, circumstances) = words;
            let (texts, day, second_day, periods) = class;
            let (base, timing, controls, materials, equipment) = lab;
            let standards = texts.iter().enumerate().map(|(i, wording)| Standard {
                code: format!("MS-{i}"),
                wording: wording.clone(),
                shown_by: (i == 0).then(|| wording.clone()),
            });
            let rules = texts
                .iter()
                .enumerate()
                .map(|(i, says)| SetAsideRule { id: format!("rule-{i}"), says: says.clone() });
            let answered = texts
                .iter()
                .map(|answer| Answered { caution: "S10".into(), answer: answer.clone() });
            Plan {
                title,
                school,
                invented,
                big_question,
                grade,
                inquiry,
                circumstances,
                round: if invented { Round::First } else { Round::Only },
                standards: standards.collect(),
                days: std::iter::once(day).chain(second_day).collect(),
                group_settings: texts
                    .first()
                    .map(|label| GroupSetting {
                        period: periods[0].name.clone(),
                        group: 1,
                        label: Some(label.clone()),
                        grade: None,
                        inquiry: Some(inquiry),
                    })
                    .into_iter()
                    .collect(),
                periods,
                readable_mm: limits.0,
                spare: limits.1,
                set_aside_rules: rules.collect(),
                answered: answered.collect(),
                base,
                timing,
                questions: std::iter::once(questions.0).chain(questions.1).collect(),
                controls: controls
                    .into_iter()
                    .enumerate()
                    .map(|(c, difference)| Control {
                        treatment: Treatment {
                            name: format!("Control {c}"),
                            beside: None,
                            replicates: None,
                            difference,
                        },
                        per_period: 1 + c as u32,
                    })
                    .collect(),
                label_foods: label_food.into_iter().collect(),
                materials,
                equipment,
                bags: Vec::new(),
                retired_codes: Vec::new(),
                known: Known::default(),
            }
        })
        .boxed()
}

/// Any plan, most of them with a bag list.
pub(crate) fn plan() -> BoxedStrategy<Plan> {
    (bare_plan(), any::<bool>())
        .prop_map(|(mut plan, with_bags)| {
            if with_bags && let Ok(list) = barm_domain::bag_list::write(&plan) {
                plan.bags = list.bags;
                // One bag has been taken out by hand.
                plan.retired_codes = plan.bags.pop().map(|bag| bag.code).into_iter().collect();
                assert!(
                    plan.bags
                        .iter()
                        .all(|bag: &PlannedBag| bag.group > 0 || bag.question == CONTROLS)
                );
            }
            plan
        })
        .boxed()
}
