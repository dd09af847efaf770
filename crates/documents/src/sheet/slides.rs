//! What a class looks at while it talks about its own bags, and a page for families.

use super::{Entry, Imprint};
use crate::chart::{DotRow, Sheaf};

/// Slides for the talk after the day, 16 by 9, in the students' language.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Slides {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The class's big question.
    pub title: String,
    /// One run of slides for each period.
    pub classes: Vec<ClassSlides>,
    /// What the slides themselves say.
    pub words: SlideWords,
}

/// The slides of one period.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ClassSlides {
    /// The period, such as "Period 3".
    pub period: String,
    /// Number of its sign, from 1.
    pub sign: usize,
    /// Every bag at the minute at which bags are compared.
    pub every_bag: Vec<DotRow>,
    /// Minute of that reading, such as "24".
    pub minute: String,
    /// The questions of which the period has bags, each with its curves.
    pub questions: Vec<Drawn>,
    /// What to talk about, in order.
    pub prompts: Vec<Prompted>,
}

/// A question to talk about, with the numbers that it rests on.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Prompted {
    /// The question.
    pub asks: String,
    /// Its numbers in a sentence; empty where it rests on none.
    pub rests_on: String,
}

/// A question with its curves.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Drawn {
    /// The question.
    pub asks: String,
    /// All readings of its bags.
    pub curves: Vec<Sheaf>,
}

/// Words of the slides.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct SlideWords {
    /// Under the dots, with the minute filled in for each class by the template: before it.
    pub dots: String,
    /// Behind the minute.
    pub dots_after: String,
    /// Under the curves.
    pub curves: String,
    /// Over the prompts.
    pub talk: String,
    /// In place of a picture without readings.
    pub nothing: String,
}

/// One page for families and the principal; no group, no student, no single bag's code.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct FamilySummary {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// What the page is called.
    pub name: String,
    /// The class's big question.
    pub title: String,
    /// The date in words.
    pub summary: String,
    /// Names of the sections: what we did, found, how we know, safety, learned, home.
    pub heads: [String; 6],
    /// What was done, in a few sentences.
    pub did: String,
    /// What was found: verdict and sentence.
    pub found: Vec<Entry>,
    /// Under the picture.
    pub picture_note: String,
    /// The bags of the clearest findings, one mark each.
    pub every_bag: Vec<DotRow>,
    /// How it is known, and what is not known.
    pub know: String,
    /// Before the safety rules: whose they are.
    pub safe_lead: String,
    /// The safety rules that the plan asks for, a line each.
    pub safe: Vec<String>,
    /// Codes of standards, each with the student product that shows it.
    pub standards: Vec<Entry>,
    /// What to ask at home.
    pub home: String,
}
