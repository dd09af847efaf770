//! What is likely to happen. For the teacher only: students must not see the answer.

use super::{Entry, Imprint};
use crate::chart::{Estimate, Look, Strand};

/// The forecast of a plan on one page.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ForecastSheet {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// What is forecast, in a few words.
    pub summary: String,
    /// Question by question.
    pub panels: Vec<ForecastPanel>,
    /// What the forecast takes for granted, and anything else to know.
    pub notes: Vec<Entry>,
}

/// The forecast of one question.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ForecastPanel {
    /// The question as the plan asks it.
    pub asks: String,
    /// What the treatments are compared with; empty for controls, which are compared with nothing.
    pub reference: String,
    /// The curves, the reference's among them.
    pub strands: Vec<Strand>,
    /// Minute of the last reading, from the zero reading.
    pub last_reading: f64,
    /// Minute of the bell, from the zero reading.
    pub bell: Option<f64>,
    /// One row a treatment.
    pub rows: Vec<ForecastRow>,
}

/// The forecast of one treatment at the last reading.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ForecastRow {
    /// The treatment's name.
    pub treatment: String,
    /// Its hue and mark.
    pub look: Look,
    /// Rise in millimeters; 8 of 10 bags lie within the range.
    pub rise: Estimate,
    /// Wet gas in milliliters.
    pub gas_ml: Estimate,
    /// Ethanol in grams in the whole bag.
    pub ethanol_g: Estimate,
    /// The minute from which it can be told from the reference; none for the reference or never.
    pub readable_at: Option<f64>,
    /// The chance, 0 to 1, that two bags differ readably at the last reading; none for the reference.
    pub chance: Option<f64>,
    /// Liquid and gas over what the bag can hold, 0 to 1, judged high.
    pub fill: f64,
    /// The minute by which the bag must be vented; none if a day passes before that.
    pub vent_by: Option<f64>,
    /// What to make of it, such as "Shows" or "Bag too small".
    pub remark: String,
}
