//! The teacher's packet: everything for the day in one file, a chapter a page or more.

use super::{Caution, Entry, ForecastSheet, Imprint, PrepSheet};
use crate::chart::{Estimate, Look};

/// The teacher's packet.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Packet {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// The days and how much there is to do, in a few words.
    pub summary: String,
    /// The first page.
    pub overview: Overview,
    /// What is bought, mixed and laid out.
    pub prep: PrepSheet,
    /// A page a period.
    pub runs: Vec<RunSheet>,
    /// What is done between periods, day by day.
    pub changeovers: Vec<Changeovers>,
    /// Cautions with what in the plan brings them up.
    pub hazards: Vec<Hazard>,
    /// What is likely to happen.
    pub forecast: ForecastSheet,
    /// What holds each treatment back.
    pub limits: Vec<LimitRow>,
    /// What is done with what is left.
    pub clearing: Vec<Entry>,
}

/// The investigation on one page.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Overview {
    /// The class's big question; empty if it is the title.
    pub big_question: String,
    /// The questions, each with its treatments.
    pub questions: Vec<Asked>,
    /// The periods in order.
    pub periods: Vec<PeriodRow>,
    /// What is to be done when, before the first day and after the last.
    pub dates: Vec<Dated>,
    /// Standards: the code, and the student product that shows it.
    pub standards: Vec<Entry>,
    /// What must be known first, such as faults of the plan; mostly empty.
    pub first: Vec<String>,
}

/// A question with its treatments.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Asked {
    /// The question as the plan asks it.
    pub asks: String,
    /// The one thing it changes, such as "food".
    pub changes: String,
    /// Its treatments.
    pub treatments: Vec<Named>,
}

/// A treatment by its name and mark.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Named {
    /// Its name.
    pub name: String,
    /// Its hue and mark.
    pub look: Look,
}

/// One period in the list of the day.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct PeriodRow {
    /// Its name, such as "3".
    pub period: String,
    /// Its day, if there are several; else empty.
    pub day: String,
    /// Bell and bell, such as "10:20 to 11:05".
    pub clock: String,
    /// Students.
    pub students: String,
    /// Groups.
    pub groups: String,
    /// Bags, those of the teacher's bench among them.
    pub bags: String,
    /// First zero reading, such as "10:34".
    pub zero: String,
    /// Last reading of the last group.
    pub last: String,
    /// When bags are opened.
    pub vent: String,
}

/// Something to do on a date.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Dated {
    /// Such as "Tue Feb 16".
    pub date: String,
    /// What is to be done.
    pub what: String,
}

/// The hour of one period, minute by minute.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct RunSheet {
    /// The period, such as "Period 3".
    pub period: String,
    /// Number of its sign, from 1: the one that its bags' codes carry.
    pub sign: usize,
    /// Clock, groups and bags in a few words.
    pub summary: String,
    /// Minutes from bell to bell.
    pub length: f64,
    /// The parts of the period along the ruler.
    pub stretches: Vec<Stretch>,
    /// What must be known where readings and clearing away come close; mostly empty.
    pub tight: String,
    /// What happens, in order.
    pub steps: Vec<Step>,
    /// Minutes after the zero reading at which bags are read; 0 first.
    pub minutes: Vec<String>,
    /// When each group reads.
    pub rows: Vec<GroupTimes>,
    /// What each treatment of the period is expected to rise by the last reading (mm), highest
    /// first.
    pub hoped: Vec<Hoped>,
    /// The few cautions that bite in this hour.
    pub heeds: Vec<Heed>,
    /// Cautions of the plan in all, told on their own page.
    pub cautions: usize,
}

/// A caution at the bench, in few words.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Heed {
    /// Its code, such as `S05`.
    pub code: String,
    /// What can hurt.
    pub hazard: String,
    /// What is done about it in the hour.
    pub does: String,
}

/// A part of the period along the ruler.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Stretch {
    /// What is done.
    pub says: String,
    /// From this minute.
    pub from: f64,
    /// To this minute.
    pub to: f64,
}

/// One line of the run sheet.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Step {
    /// Clock, such as "10:35:30".
    pub clock: String,
    /// Minute after the bell, such as "15½".
    pub minute: String,
    /// What happens; the first words in bold if `loud`.
    pub what: String,
    /// What must not be missed, in bold after it; mostly empty.
    pub loud: String,
    /// Who does it.
    pub who: String,
}

/// When one group reads.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct GroupTimes {
    /// Number or word of the group.
    pub group: String,
    /// Its bags: letter and mark.
    pub bags: Vec<Lettered>,
    /// A clock time for each of the minutes.
    pub times: Vec<String>,
}

/// A bag by its letter.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Lettered {
    /// The letter of its code.
    pub letter: String,
    /// The mark of its treatment.
    pub look: Look,
}

/// What one treatment is expected to do.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Hoped {
    /// Its name.
    pub name: String,
    /// Its mark.
    pub look: Look,
    /// Rise at the last reading (mm); 8 of 10 bags lie within the range.
    pub rise: Estimate,
}

/// What is done before, between and after the periods of a day.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Changeovers {
    /// The day.
    pub day: String,
    /// Its gaps: before the first period, between two, after the last.
    pub gaps: Vec<Pause>,
    /// What is done, a row a task.
    pub rows: Vec<PauseRow>,
}

/// A gap between two periods.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Pause {
    /// Such as "1 → 2".
    pub name: String,
    /// Such as "8:55 to 9:00".
    pub clock: String,
    /// Such as "5 min"; empty before the first and after the last.
    pub length: String,
}

/// A task with its gaps.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct PauseRow {
    /// What is done.
    pub what: String,
    /// How, in a few words.
    pub how: String,
    /// One for each gap: a time or an amount beside the box; none where there is nothing to do.
    pub cells: Vec<Option<String>>,
}

/// A caution with what brings it up.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Hazard {
    /// What can hurt, in a few words.
    pub hazard: String,
    /// What in the plan brings it up.
    pub trigger: String,
    /// What to do, and who says so.
    pub caution: Caution,
}

/// What holds one treatment back.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct LimitRow {
    /// Its name.
    pub treatment: String,
    /// Its mark.
    pub look: Look,
    /// What holds it back, in a word or two.
    pub by: String,
    /// Why, in a sentence for the talk after the day.
    pub why: String,
    /// What holds it back one after the other, if it is more than one thing.
    pub along: Option<String>,
    /// Gain from a quarter more of food, yeast, enzyme, time (1); none where that makes no sense.
    pub gains: [Option<f64>; 4],
}
