//! Sound plans of an invented school, as many as one likes: each asks one or two questions in the
//! way that a careful teacher would.

use crate::dice::Dice;
use barm_domain::bag_list;
use barm_domain::plan::{
    Control, Day, Difference, Equipment, Extra, Inquiry, Lies, Period, Place, Plan, Question,
    Recipe, Timing, Treatment, Variable,
};
use barm_domain::testing::{self, base_plan, enzyme};
pub(crate) use barm_domain::testing::{amount, bag, card, food, treatment};
use barm_science::setup::YeastKind;

/// What a sound plan asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Asks {
    /// Which food; no food is the reference.
    Food,
    /// How much sugar.
    FoodAmount,
    /// Which food, and whether lactase and glucoamylase help.
    FoodAndEnzyme,
    /// How warm.
    Warmth,
    /// How much yeast.
    YeastAmount,
    /// Salt or none.
    Salt,
    /// Bench or warm tray.
    Tray,
}

impl Asks {
    pub(crate) const ALL: [Self; 7] = [
        Self::Food,
        Self::FoodAmount,
        Self::FoodAndEnzyme,
        Self::Warmth,
        Self::YeastAmount,
        Self::Salt,
        Self::Tray,
    ];
}

fn question(
    id: &str,
    variable: Variable,
    reference: Option<&str>,
    treatments: Vec<Treatment>,
) -> Question {
    Question {
        asks: format!("What does the {} do?", variable.words()),
        variable,
        reference: reference.map(str::to_owned),
        replicates: 0,
        ..testing::question(id, treatments)
    }
}

/// Sugary foods, which show within a period.
const SWEET: &[(&str, &str)] = &[
    ("White sugar", "sugar_white"),
    ("Brown sugar", "sugar_brown_packed"),
    ("Honey", "honey"),
    ("Maple syrup", "maple_syrup"),
    ("Dextrose", "dextrose_monohydrate"),
    ("Molasses", "molasses"),
    ("Fructose", "fructose_powder"),
];

/// A sound plan without its bag list.
pub(crate) fn unlisted(asks: Asks, dice: &mut Dice) -> Plan {
    // So little that all of it as gas, on a low day at 1400 m, leaves a sandwich bag under 80 %.
    let grams = dice.pick(&["0.8 g", "0.9 g", "1 g", "1.2 g"]);
    let mut base = base(dice);
    let mut controls = vec![("No food", food_none())];
    let questions = match asks {
        Asks::Food => foods(dice, grams),
        Asks::FoodAmount => amounts(),
        Asks::FoodAndEnzyme => {
            controls.push(("Enzyme, no food", glucoamylase()));
            (base.bag, base.card) = (bag("snack"), card("3 x 5 in"));
            base.water = amount("40 mL");
            foods_and_enzymes(dice)
        }
        Asks::Warmth => {
            feed(&mut base, "1.2 g");
            base.yeast_amount = amount("3 g");
            base.lies = Lies::Towel;
            vec![warmth(dice)]
        }
        Asks::YeastAmount => {
            feed(&mut base, grams);
            vec![yeast(dice)]
        }
        Asks::Salt => {
            feed(&mut base, "1.2 g");
            base.yeast_amount = amount("3 g");
            vec![salt()]
        }
        Asks::Tray => {
            feed(&mut base, "1.2 g");
            base.yeast_amount = amount("3 g");
            vec![tray()]
        }
    };
    let yeastless = Difference { yeast: Some(None), ..food("sugar_white", grams) };
    controls.push(("Food, no yeast", yeastless));
    plan(base, questions, controls, dice)
}

/// A sound plan with its bag list.
pub(crate) fn sound(asks: Asks, dice: &mut Dice) -> Plan {
    listed(unlisted(asks, dice))
}

/// The plan with the bag list that the plain rule writes.
pub(crate) fn listed(mut plan: Plan) -> Plan {
    let list = bag_list::write(&plan).expect("codes enough");
    plan.bags = list.bags;
    plan.retired_codes = list.retired;
    plan
}

fn food_none() -> Difference {
    Difference { food: Some(None), ..Difference::default() }
}

fn feed(base: &mut Recipe, grams: &str) {
    base.food = Some("sugar_white".into());
    base.food_amount = Some(amount(grams));
}

fn base(dice: &mut Dice) -> Recipe {
    let (bag_name, card_name) =
        dice.pick(&[("sandwich", "4 x 6 in"), ("165 x 149 mm", "5 x 8 in")]);
    Recipe {
        bag: bag(bag_name),
        card: card(card_name),
        water: amount(dice.pick(&["40 mL", "50 mL", "60 mL", "1/4 cup"])),
        water_celsius: dice.pick(&[38.0, 39.0, 40.0, 41.0]),
        yeast: Some(dice.pick(&[YeastKind::Instant, YeastKind::ActiveDry])),
        yeast_amount: amount(dice.pick(&["2.5 g", "3/4 tsp", "1 tsp", "3 g"])),
        lies: dice.pick(&[Lies::Bench, Lies::Towel]),
        ..base_plan().base
    }
}

fn foods(dice: &mut Dice, grams: &str) -> Vec<Question> {
    let count = 2 + dice.below(3);
    let sweet = dice.some(SWEET, count);
    let mut treatments: Vec<Treatment> =
        sweet.into_iter().map(|(name, id)| treatment(name, food(id, grams))).collect();
    // A food that shows nothing within the hour is a fair question too.
    if dice.below(2) == 0 {
        treatments.push(treatment("Oat flour", food("oat_flour", grams)));
    }
    vec![question("food", Variable::Food, Some("No food"), treatments)]
}

fn amounts() -> Vec<Question> {
    let level = |much: &str| treatment(&format!("Sugar {much}"), food("sugar_white", much));
    let treatments = vec![level("0.3 g"), level("0.6 g"), level("1.2 g")];
    vec![question("amount", Variable::FoodAmount, Some("No food"), treatments)]
}

fn glucoamylase() -> Difference {
    enzyme("glucoamylase-powder", "3 mL")
}

/// Foods that are equal in mass, poor in sugar, and lifted by an enzyme of their own, in a bag that
/// is small enough to show it.
fn foods_and_enzymes(dice: &mut Dice) -> Vec<Question> {
    let (name, id) = dice.pick(&[("Grape juice", "grape_juice"), ("Banana", "banana")]);
    let food_question = question(
        "food",
        Variable::Food,
        Some("No food"),
        vec![
            treatment(name, food(id, "2 g")),
            treatment("Dry milk", food("milk_powder_nonfat", "2 g")),
            treatment("Oat flour", food("oat_flour", "2 g")),
        ],
    );
    let beside = |name: &str, beside: &str, difference: Difference| Treatment {
        beside: Some(beside.into()),
        ..treatment(name, difference)
    };
    let lactase = Difference {
        enzyme: Some(Some("lactase-drops".into())),
        enzyme_amount: Some(amount("4 drops")),
        ..food("milk_powder_nonfat", "2 g")
    };
    let cut = glucoamylase();
    let cut = Difference {
        enzyme: cut.enzyme,
        enzyme_amount: cut.enzyme_amount,
        ..food("oat_flour", "2 g")
    };
    let mut enzyme_question = question(
        "enzyme",
        Variable::Enzyme,
        None,
        vec![
            beside("Dry milk + lactase", "Dry milk", lactase),
            beside("Oat flour + glucoamylase", "Oat flour", cut),
        ],
    );
    enzyme_question.crossed_with = Some(Variable::Food);
    enzyme_question.uses = vec!["Dry milk".into(), "Oat flour".into()];
    vec![food_question, enzyme_question]
}

fn warmth(dice: &mut Dice) -> Question {
    let level = |celsius: f64| {
        let difference = Difference { water_celsius: Some(celsius), ..Difference::default() };
        treatment(&format!("Water {celsius} °C"), difference)
    };
    let warm = dice.pick(&[40.0, 42.0]);
    let levels = vec![level(20.0), level(30.0), level(warm)];
    question("warmth", Variable::WaterTemperature, Some("Water 20 °C"), levels)
}

fn yeast(dice: &mut Dice) -> Question {
    let level = |much: &str| {
        let difference =
            Difference { yeast_amount: Some(amount(much)), ..Difference::default() };
        treatment(&format!("Yeast {much}"), difference)
    };
    let most = dice.pick(&["2.5 g", "3 g"]);
    let levels = vec![level("0.5 g"), level("2 g"), level(most)];
    question("yeast", Variable::YeastAmount, Some("Yeast 0.5 g"), levels)
}

fn salt() -> Question {
    let salted = |much: &str| Difference {
        extras: Some(vec![Extra { item: "salt".into(), amount: amount(much) }]),
        ..Difference::default()
    };
    let levels =
        vec![treatment("Plain", Difference::default()), treatment("Salt 5 g", salted("5 g"))];
    question("salt", Variable::Extra, Some("Plain"), levels)
}

fn tray() -> Question {
    let lying = |name: &str, lies: Lies| {
        treatment(name, Difference { lies: Some(lies), ..Difference::default() })
    };
    let levels = vec![lying("Bench", Lies::Bench), lying("Tray", Lies::WarmTray(40.0))];
    question("tray", Variable::Lies, Some("Bench"), levels)
}

fn plan(
    base: Recipe,
    mut questions: Vec<Question>,
    controls: Vec<(&str, Difference)>,
    dice: &mut Dice,
) -> Plan {
    let count = 2 + dice.below(4);
    let length = dice.pick(&[42.0, 45.0, 47.0, 50.0]);
    let gap = dice.pick(&[4, 5, 6]);
    let groups = 6 + dice.below(3) as u32;
    let students = groups * 3 + dice.below(4) as u32;
    let periods = (0..count).map(|p| {
        let from_midnight = 8 * 60 + 10 + p as i32 * (length as i32 + gap);
        Period {
            start: jiff::civil::time(
                (from_midnight / 60) as i8,
                (from_midnight % 60) as i8,
                0,
                0,
            ),
            length_min: length,
            students,
            groups,
            ..testing::period(&(p + 1).to_string())
        }
    });
    // Every group has something to make.
    let kinds: usize = questions.iter().map(|question| question.treatments.len()).sum();
    let busy = (count as u32 * groups).div_ceil(kinds as u32);
    for question in &mut questions {
        question.replicates = busy.max(count as u32 * (1 + dice.below(2) as u32));
    }
    let place = dice.pick(&[
        Place::Altitude(0.0),
        Place::Altitude(1400.0),
        Place::Pressure(98_000.0),
        Place::Altitude(300.0),
    ]);
    Plan {
        title: "A sound plan".into(),
        school: Some("Tamarack Bend Middle School (invented)".into()),
        big_question: "What makes yeast work?".into(),
        grade: dice.pick(&[6, 7, 8]),
        inquiry: dice.pick(&Inquiry::ALL),
        days: vec![Day {
            room_celsius: dice.pick(&[20.0, 21.0, 22.0]),
            place,
            ..testing::day()
        }],
        periods: periods.collect(),
        base,
        timing: Timing {
            interval_min: dice.pick(&[4.0, 5.0]),
            mixing_min: dice.pick(&[11.0, 12.0, 14.0]),
            clearing_min: dice.pick(&[5.0, 6.0]),
            ..base_plan().timing
        },
        questions,
        controls: controls
            .into_iter()
            .map(|(name, difference)| Control {
                treatment: treatment(name, difference),
                per_period: 1,
            })
            .collect(),
        equipment: Equipment {
            thermometers: Some(2),
            meters: None,
            rulers: Some(groups),
            kettles: dice.pick(&[None, Some(1)]),
            balances: Some(2),
            goggles: Some(students + 2),
        },
        ..base_plan()
    }
}
