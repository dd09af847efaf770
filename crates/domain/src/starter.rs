//! A first plan to edit, from a few answers.

use crate::amount::{Amount, AmountError};
use crate::bag_list::{self, BagListError};
use crate::pilot::Known;
use crate::plan::{
    BagChoice, CardChoice, ChoiceError, Control, Day, Difference, Equipment, Inquiry, Lies,
    Material, Period, Place, Plan, Question, Recipe, Round, SetAsideRule, Standard, Timing,
    Treatment, Variable,
};
use barm_science::setup::YeastKind;
use jiff::civil::{Date, Time};

/// What must be known for a first plan; everything else is filled in and may be edited.
#[derive(Debug, Clone, PartialEq)]
pub struct Answers {
    /// Title of the investigation.
    pub title: String,
    /// The school day.
    pub date: Date,
    /// IANA time zone, such as `America/Chicago`.
    pub zone: String,
    /// Where the school stands.
    pub place: Place,
    /// Start of the first period.
    pub first_start: Time,
    /// Length of a period (min).
    pub length_min: f64,
    /// Periods on that day, 1 to 12.
    pub periods: u32,
    /// Groups in a period, 1 to 99.
    pub groups: u32,
    /// Students in a period.
    pub students: u32,
}

/// Why no first plan can be written.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum StarterError {
    /// A day has no room for them.
    #[error("{periods} periods of that length do not fit into a day; write 1 to 12")]
    Periods {
        /// What was answered.
        periods: u32,
    },
    /// Nobody would make bags.
    #[error("{groups} groups make no class; write 1 to 99")]
    Groups {
        /// What was answered.
        groups: u32,
    },
    /// The bag list cannot be written.
    #[error(transparent)]
    Bags(#[from] BagListError),
    /// An amount of the first plan cannot be read.
    #[error(transparent)]
    Amount(#[from] AmountError),
    /// A bag or card of the first plan is not known.
    #[error(transparent)]
    Choice(#[from] ChoiceError),
}

/// Minutes between two periods; common practice, no source.
const PASSING_MIN: f64 = 5.0;

/// Writes a first plan: three foods of the cupboard against no food, in snack bags, with its bag
/// list. Each group has about two bags of a treatment and one of its own without food.
///
/// # Errors
/// [`StarterError`] if the numbers of periods or groups make no school day.
pub fn plan(answers: &Answers) -> Result<Plan, StarterError> {
    let mut plan = frame(answers)?;
    plan.bags = bag_list::write(&plan)?.bags;
    Ok(plan)
}

/// The first plan without its bag list.
pub(crate) fn frame(answers: &Answers) -> Result<Plan, StarterError> {
    // Counted from midnight: the last period must end by the next midnight.
    let begin =
        f64::from(answers.first_start.hour()) * 60.0 + f64::from(answers.first_start.minute());
    let end = begin + minutes_later(answers, answers.periods) + answers.length_min;
    if !(1..=12).contains(&answers.periods) || end.is_nan() || end > 24.0 * 60.0 {
        return Err(StarterError::Periods { periods: answers.periods });
    }
    if !(1..=99).contains(&answers.groups) {
        return Err(StarterError::Groups { groups: answers.groups });
    }
    let foods = [
        ("White sugar", "sugar_white"),
        ("Honey", "honey"),
        ("White flour", "wheat_flour_white"),
    ];
    let bags = 2 * answers.periods * answers.groups;
    Ok(Plan {
        title: answers.title.clone(),
        school: None,
        invented: false,
        big_question: "Which food from the cupboard feeds yeast best?".into(),
        grade: 8,
        inquiry: Inquiry::Guided,
        round: Round::Only,
        circumstances: Vec::new(),
        standards: vec![Standard {
            code: "MS-LS1-7".into(),
            wording:
                "Model how food is taken apart and rearranged in living things, which frees \
                      energy or builds new matter. (Put your state's wording here.)"
                    .into(),
            shown_by: None,
        }],
        days: vec![Day {
            name: "Day 1".into(),
            date: answers.date,
            zone: answers.zone.clone(),
            room_celsius: 21.0,
            place: answers.place,
        }],
        periods: (1..=answers.periods).map(|number| period(answers, number)).collect(),
        group_settings: Vec::new(),
        readable_mm: 3.0,
        spare: 0.1,
        set_aside_rules: set_aside_rules(),
        answered: Vec::new(),
        base: base()?,
        timing: Timing {
            interval_min: 4.0,
            mixing_min: 14.0,
            clearing_min: 6.0,
            wet_before_zero_min: 3.0,
        },
        questions: vec![Question {
            id: "food".into(),
            asks: "Which food from the cupboard feeds yeast best?".into(),
            variable: Variable::Food,
            crossed_with: None,
            reference: Some("No food".into()),
            treatments: foods.map(|(name, food)| with_food(name, food)).to_vec(),
            uses: Vec::new(),
            replicates: bags.div_ceil(3),
        }],
        controls: controls(),
        label_foods: Vec::new(),
        materials: materials()?,
        equipment: Equipment {
            thermometers: Some(2),
            meters: None,
            rulers: Some(answers.groups),
            kettles: Some(1),
            balances: Some(1),
            goggles: Some(answers.students),
        },
        bags: Vec::new(),
        retired_codes: Vec::new(),
        known: Known::default(),
    })
}

/// Minutes between the start of the first period and that of the period of that number.
fn minutes_later(answers: &Answers, number: u32) -> f64 {
    f64::from(number.saturating_sub(1)) * (answers.length_min + PASSING_MIN)
}

fn period(answers: &Answers, number: u32) -> Period {
    let later = minutes_later(answers, number).round();
    let span = jiff::SignedDuration::from_mins(later as i64);
    Period {
        name: number.to_string(),
        day: "Day 1".into(),
        start: answers.first_start.saturating_add(span),
        length_min: answers.length_min,
        students: answers.students,
        groups: answers.groups,
        grade: None,
        inquiry: None,
    }
}

fn base() -> Result<Recipe, StarterError> {
    Ok(Recipe {
        bag: BagChoice::parse("snack")?,
        card: CardChoice::parse("3 x 5 in")?,
        water: Amount::parse("40 mL")?,
        water_celsius: 40.0,
        yeast: Some(YeastKind::Instant),
        yeast_amount: Amount::parse("2 g")?,
        food: None,
        food_amount: Some(Amount::parse("0.5 g")?),
        enzyme: None,
        enzyme_amount: None,
        extras: Vec::new(),
        lies: Lies::Bench,
    })
}

pub(crate) fn with_food(name: &str, food: &str) -> Treatment {
    let difference = Difference { food: Some(Some(food.to_owned())), ..Difference::default() };
    Treatment { name: name.to_owned(), beside: None, replicates: None, difference }
}

fn controls() -> Vec<Control> {
    let no_food = Treatment {
        name: "No food".into(),
        beside: None,
        replicates: None,
        difference: Difference::default(),
    };
    let mut no_yeast = with_food("White sugar, no yeast", "sugar_white");
    no_yeast.difference.yeast = Some(None);
    [no_food, no_yeast].map(|treatment| Control { treatment, per_period: 1 }).to_vec()
}

pub(crate) fn set_aside_rules() -> Vec<SetAsideRule> {
    [
        (
            "leak",
            "The seal was seen or heard to leak, or the card fell by more than 3 mm between two \
             readings.",
        ),
        ("amount", "The group wrote down that the bag got a wrong amount of something."),
        ("no-zero", "The zero reading is missing, so that no rise can be worked out."),
        ("moved", "The card was pressed, lifted or moved after the zero reading."),
    ]
    .map(|(id, says)| SetAsideRule { id: id.into(), says: says.into() })
    .to_vec()
}

/// Packs as they are often sold; the teacher puts the store's prices in.
fn materials() -> Result<Vec<Material>, StarterError> {
    let pack = |item: &str, pack: &str| -> Result<Material, StarterError> {
        let pack = Amount::parse(pack)?;
        Ok(Material { item: item.into(), pack, price: None, in_stock: None })
    };
    [
        ("yeast", "113 g"),
        ("sugar_white", "1 lb"),
        ("honey", "8 oz"),
        ("wheat_flour_white", "2 lb"),
        ("bags", "100 bags"),
        ("cards", "100 cards"),
        ("labels", "300 labels"),
        ("cups", "50 pieces"),
        ("spoons", "48 pieces"),
    ]
    .into_iter()
    .map(|(item, size)| pack(item, size))
    .collect()
}
