//! The plan of one investigation: everything that is decided before the day.
//!
//! A plan is plain values; the text format (`documents`) reads and writes it, and the checks
//! judge it. Names of treatments, questions, days and periods are unique within a plan.

mod bag;
mod choice;
mod class;
mod lookup;
mod question;
mod recipe;
mod round;
mod supply;

use crate::pilot::Known;

pub use bag::PlannedBag;
pub use choice::ChoiceError;
pub use class::{
    Answered, Circumstance, Day, GroupSetting, Inquiry, Period, Place, SetAsideRule, Standard,
};
pub use question::{Control, Difference, Question, Treatment, Variable};
pub use recipe::{BagChoice, CardChoice, Extra, Lies, Recipe, Timing};
pub use round::Round;
pub use supply::{Equipment, LabelFood, Material};
// What a recipe is made of, for those who may not know the science.
pub use barm_science::setup::{Bag, Card, YeastKind};

/// The question under which bags of shared controls stand.
pub const CONTROLS: &str = "controls";

/// The plan of one investigation.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Title on every page.
    pub title: String,
    /// The school, if it is to stand on pages.
    pub school: Option<String>,
    /// Whether the school and every reading are made up; then every page says so.
    pub invented: bool,
    /// The class's big question.
    pub big_question: String,
    /// US grade, 6 to 8 (5 to 12 taken).
    pub grade: u8,
    /// How much is left to the students.
    pub inquiry: Inquiry,
    /// Whether its questions are looked at once or twice.
    pub round: Round,
    /// Standards that the investigation serves.
    pub standards: Vec<Standard>,
    /// School days, in order.
    pub days: Vec<Day>,
    /// Periods, in order.
    pub periods: Vec<Period>,
    /// Settings of single groups where they differ from their period's.
    pub group_settings: Vec<GroupSetting>,
    /// The smallest difference in rise that counts as readable (mm).
    pub readable_mm: f64,
    /// Spare materials as a share of what is needed (1).
    pub spare: f64,
    /// Rules, agreed before the day, by which a bag is set aside.
    pub set_aside_rules: Vec<SetAsideRule>,
    /// What else is true of the day and calls for a caution.
    pub circumstances: Vec<Circumstance>,
    /// Cautions that the teacher has answered.
    pub answered: Vec<Answered>,
    /// What every bag is unless its treatment says otherwise.
    pub base: Recipe,
    /// When things happen within a period.
    pub timing: Timing,
    /// Questions, in order.
    pub questions: Vec<Question>,
    /// Shared control bags.
    pub controls: Vec<Control>,
    /// Foods that the teacher describes from a nutrition label.
    pub label_foods: Vec<LabelFood>,
    /// Materials with pack size and price.
    pub materials: Vec<Material>,
    /// How many of each tool there are.
    pub equipment: Equipment,
    /// The bag list.
    pub bags: Vec<PlannedBag>,
    /// Codes of bags that left the list; none of them is ever given out again.
    pub retired_codes: Vec<String>,
    /// What pilots found of the lots in use. It stands in a file of its own, beside the plan's.
    pub known: Known,
}
