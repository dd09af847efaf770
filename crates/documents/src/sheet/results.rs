//! What the class found.

use super::{Caution, Entry, Imprint};
use crate::chart::{BeforeAfterRow, DotRow, Estimate, Look, Sheaf};

/// The results report of a class day: what can be said, every bag, and all that was left out.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ResultsReport {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The class's big question, or the plan's title.
    pub title: String,
    /// What was done, in a few words, such as "4 periods, 95 bags".
    pub summary: String,
    /// What can be said, strongest first.
    pub claims: Vec<Claim>,
    /// Every bag at the last reading, one plot for all questions that share it.
    pub every_bag: Vec<DotRow>,
    /// The minute of that reading.
    pub minute: f64,
    /// Question by question.
    pub questions: Vec<QuestionResult>,
    /// Gas and ethanol of each treatment, worked out from the heights.
    pub gas: Vec<GasRow>,
    /// What the day's readings teach; nothing where nobody asked.
    pub day: Option<DayPart>,
    /// What the breath meter says of bags; nothing where none was held to it.
    pub meter: Option<MeterPart>,
    /// Bags set aside by a rule agreed before the day.
    pub left_out: Vec<LeftOut>,
    /// What did not work and why; an empty list prints "Nothing."
    pub did_not_work: Vec<Entry>,
    /// Rows of the readings file that could not be taken.
    pub rejected: Vec<Rejected>,
    /// How the numbers were worked out.
    pub method: Vec<Entry>,
    /// Cautions for emptying the bags and for talking about ethanol.
    pub cautions: Vec<Caution>,
    /// What each period found by itself; empty for a day of one period.
    pub periods: Vec<PeriodResult>,
}

/// What one period found by itself, in short.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PeriodResult {
    /// The period, such as "Period 3".
    pub period: String,
    /// Number of its sign, from 1.
    pub sign: usize,
    /// Groups and bags, in a few words.
    pub summary: String,
    /// What can be said from its bags alone.
    pub claims: Vec<Claim>,
    /// Its bags at the last reading.
    pub every_bag: Vec<DotRow>,
    /// All readings of the bags of its questions, each treatment once.
    pub curves: Vec<Sheaf>,
    /// Its questions that have bags, answered from these alone; without slopes and curves of their own.
    pub questions: Vec<QuestionResult>,
    /// Its bags that were set aside; an empty list prints that there were none.
    pub left_out: Vec<LeftOut>,
    /// What did not work in it; an empty list prints that there is nothing to report.
    pub did_not_work: Vec<Entry>,
}

/// One thing that can be said, or cannot.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Claim {
    /// The verdict, such as "Clear" or "Can’t tell".
    pub verdict: String,
    /// The claim in one short sentence.
    pub claim: String,
    /// The numbers behind it, in a sentence.
    pub evidence: String,
}

/// One question of the plan with its answer.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct QuestionResult {
    /// The question as the plan asks it.
    pub asks: String,
    /// What the treatments are compared with, such as "No food".
    pub reference: String,
    /// The last time that all bags of the comparison share, in minutes after the zero reading.
    pub minute: f64,
    /// All readings of the question's bags, the reference's among them.
    pub curves: Vec<Sheaf>,
    /// Each treatment against the reference.
    pub comparisons: Vec<Comparison>,
    /// Grade 7: gaps in mean absolute deviations; empty below grade 7.
    pub gaps: Vec<Gap>,
    /// Grade 8: how fast the card rose; empty below grade 8.
    pub slopes: Vec<Slope>,
}

/// One treatment against the question's reference.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Comparison {
    /// The treatment's name.
    pub treatment: String,
    /// Its hue and mark.
    pub look: Look,
    /// What it is compared with, if that is not the question's reference.
    pub reference: Option<String>,
    /// With every bag.
    pub with_all: Counted,
    /// Without the bags that were set aside.
    pub without_set_aside: Counted,
    /// Why the verdict is what it is, in a sentence.
    pub reason: String,
}

/// A comparison over a certain choice of bags.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Counted {
    /// Bags of the treatment.
    pub n: usize,
    /// Bags of the reference.
    pub n_reference: usize,
    /// Adjusted difference in millimeters with its 95 % interval.
    pub difference: Option<Estimate>,
    /// The verdict in a word or two.
    pub verdict: String,
}

/// The gap between two treatments, measured in the larger mean absolute deviation.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Gap {
    /// The treatment's name.
    pub treatment: String,
    /// Its hue and mark.
    pub look: Look,
    /// What it is compared with.
    pub reference: String,
    /// Difference of the two means in millimeters.
    pub gap: f64,
    /// The larger of the two mean absolute deviations in millimeters.
    pub mad: f64,
    /// The gap over the larger deviation; none if that is zero.
    pub in_mads: Option<f64>,
    /// Bags in the smaller of the two treatments.
    pub bags: usize,
    /// The multiple that keeps false alarms at 1 in 20 for that many bags, groups and gaps; none if there is none.
    pub asked: Option<f64>,
    /// What follows, such as "larger than asked".
    pub says: String,
}

/// How fast the card rose over the straight part of the curve.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Slope {
    /// The treatment's name.
    pub treatment: String,
    /// Its hue and mark.
    pub look: Look,
    /// Bags that had enough readings.
    pub bags: usize,
    /// Millimeters per minute with its 95 % interval.
    pub slope: Estimate,
    /// The first minute of the straight part.
    pub from: f64,
    /// The last minute of the straight part.
    pub to: f64,
}

/// Gas and ethanol of one treatment, per bag, at the last reading.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct GasRow {
    /// The treatment's name.
    pub treatment: String,
    /// Its hue and mark.
    pub look: Look,
    /// Bags that count.
    pub bags: usize,
    /// Wet gas in milliliters at the bag's temperature, with its 95 % interval.
    pub gas_ml: Estimate,
    /// Ethanol in grams in the whole bag, with its 95 % interval.
    pub ethanol_g: Estimate,
}

/// What a day's readings teach of yeast, waking, enzymes, cooling and cards.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct DayPart {
    /// What it rests on.
    pub rests: String,
    /// The words over then and now.
    pub words: (String, String),
    /// A row a number that changed.
    pub rows: Vec<BeforeAfterRow>,
    /// What could not be told, and bags to look at.
    pub says: Vec<Entry>,
}

/// What the breath meter says, one bag against another.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct MeterPart {
    /// What has to stand beside every number.
    pub note: String,
    /// Comparisons, each under a word, and warnings.
    pub says: Vec<Entry>,
    /// Heads of the table of bags.
    pub heads: Vec<String>,
    /// Its rows, as many cells each as there are heads; the first is the bag's code.
    pub bags: Vec<Vec<String>>,
}

/// A bag that was set aside.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct LeftOut {
    /// The bag's code.
    pub bag: String,
    /// What it held.
    pub treatment: String,
    /// The name of the rule, such as "leak".
    pub rule: String,
    /// What was seen that the rule speaks of.
    pub seen: String,
}

/// A row of the readings file that was not taken.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Rejected {
    /// The line in the file, counted from 1.
    pub line: usize,
    /// Why it could not be taken.
    pub reason: String,
}
