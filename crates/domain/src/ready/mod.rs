//! Ready plans: whole lessons to start from, fitted to a school by six answers.
//!
//! Each is sound as it comes: it passes the checks without a fault for every answer that is taken,
//! and everything in it may be edited afterwards.

mod answers;
mod dose;
mod larder;
mod lesson;
mod swap;

pub use answers::{Answers, MINUTES, QUESTIONS, ReadyError, WARMTH};
pub use larder::{OFFERED, Offered, USUAL};
pub use swap::{SwapError, foods_of, swap};

use crate::bag_list;
use crate::nearest::{nearest, plain};
use crate::plan::{Inquiry, Plan};
use crate::starter;

/// A ready plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Ready {
    /// A food against none, in a short lesson.
    FoodOrNot,
    /// Foods of the cupboard against none.
    WhichFood,
    /// More and less of one food.
    HowMuch,
    /// Cold, lukewarm and warm water.
    HowWarm,
    /// A food with more and less salt.
    Salt,
    /// Foods with and without the enzyme that cuts them.
    Enzyme,
    /// The groups ask their own questions.
    OwnQuestion,
}

impl Ready {
    /// All ready plans, the most guided first.
    pub const ALL: [Self; 7] = [
        Self::FoodOrNot,
        Self::WhichFood,
        Self::HowMuch,
        Self::HowWarm,
        Self::Salt,
        Self::Enzyme,
        Self::OwnQuestion,
    ];

    /// The name by which it is asked for.
    pub const fn name(self) -> &'static str {
        match self {
            Self::FoodOrNot => "food-or-not",
            Self::WhichFood => "which-food",
            Self::HowMuch => "how-much",
            Self::HowWarm => "how-warm",
            Self::Salt => "salt",
            Self::Enzyme => "enzyme",
            Self::OwnQuestion => "own-question",
        }
    }

    /// The ready plan of that name, read loosely; otherwise the name that was probably meant.
    ///
    /// # Errors
    /// [`ReadyError::Unknown`] if there is none of that name.
    pub fn named(name: &str) -> Result<Self, ReadyError> {
        let wanted = plain(name);
        let found = Self::ALL.into_iter().find(|ready| plain(ready.name()) == wanted);
        found.ok_or_else(|| ReadyError::Unknown {
            written: name.to_owned(),
            meant: nearest(name, Self::ALL.map(Self::name)),
        })
    }

    /// Its title.
    pub const fn title(self) -> &'static str {
        match self {
            Self::FoodOrNot => "Does yeast need food to make gas?",
            Self::WhichFood => "Which food feeds yeast best?",
            Self::HowMuch => "Does more food make more gas?",
            Self::HowWarm => "Does warm water make yeast faster?",
            Self::Salt => "Does salt slow yeast down?",
            Self::Enzyme => "Does an enzyme help yeast to eat?",
            Self::OwnQuestion => "What do you want to find out about yeast?",
        }
    }

    /// What happens in it, in a sentence or two for the teacher.
    pub const fn says(self) -> &'static str {
        match self {
            Self::FoodOrNot => {
                "Bags with one food beside bags with none. Everything is given, so half an hour is \
                 enough."
            }
            Self::WhichFood => {
                "Two to four foods of your cupboard, each beside bags with none."
            }
            Self::HowMuch => "A little, some and more of one food, beside none.",
            Self::HowWarm => "One food in cold, lukewarm and warm water.",
            Self::Salt => "One food with no salt, a little and more.",
            Self::Enzyme => {
                "One or two foods that yeast can hardly eat, with and without the enzyme that cuts \
                 them. You mix the enzyme before school."
            }
            Self::OwnQuestion => {
                "Groups ask their own question from the foods you put out, and you approve it. \
                 Until then, bags of these foods keep the places."
            }
        }
    }

    /// How much is left to the students.
    pub const fn inquiry(self) -> Inquiry {
        match self {
            Self::FoodOrNot => Inquiry::Confirmation,
            Self::HowMuch | Self::HowWarm | Self::Salt => Inquiry::Structured,
            Self::WhichFood | Self::Enzyme => Inquiry::Guided,
            Self::OwnQuestion => Inquiry::Open,
        }
    }

    /// Minutes of a period that it needs to be of use.
    pub const fn good_from_min(self) -> u32 {
        match self {
            Self::FoodOrNot => 30,
            Self::WhichFood | Self::HowMuch | Self::HowWarm | Self::Salt => 40,
            Self::Enzyme | Self::OwnQuestion => 45,
        }
    }
}

/// Writes a ready plan for these answers, with its bag list.
///
/// # Errors
/// [`ReadyError`] says which answer it cannot do with, and what to answer.
pub fn plan(ready: Ready, answers: &Answers) -> Result<Plan, ReadyError> {
    let dose = dose::of(answers)?;
    let mut plan = starter::frame(&answers.school)?;
    let larder = larder::sort(&answers.cupboard)?;
    plan.big_question = ready.title().into();
    plan.inquiry = ready.inquiry();
    let dose = if ready == Ready::Enzyme { dose.of_starch() } else { dose };
    dose::into_base(&mut plan, &dose)?;
    lesson::write(ready, &mut plan, &dose, &larder)?;
    let open = if ready == Ready::OwnQuestion { &answers.cupboard[..] } else { &[] };
    plan.materials = larder::packs(&plan, open)?;
    plan.bags = bag_list::write(&plan).map_err(starter::StarterError::from)?.bags;
    Ok(plan)
}
