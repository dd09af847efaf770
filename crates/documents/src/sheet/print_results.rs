//! Sets what shows results beside the report: slides for the class, a page for families.

use serde_json::{Value, json};

use super::print::{picture, values};
use super::{ClassSlides, FamilySummary, Slides};
use crate::chart::{CurvesChart, DotPlot, DotRow, Frame, Words};
use crate::page::{Paper, PdfError, press};

/// Rows of dots on one slide.
const ROWS_A_SLIDE: usize = 8;

/// Width at which a chart is drawn for a slide (pt); it is shown about twice as large, and its
/// letters with it.
const SLIDE_CHART: f64 = 430.0;

/// Rows of dots on the page for families: more would push the words off it.
const ROWS_FOR_FAMILIES: usize = 4;

/// Slides of 16 by 9 as a PDF.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on a slide can make it do so.
pub fn slides_pdf(slides: &Slides, words: Words) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "slides";
    let frame = Frame { words, ..Frame::print(SLIDE_CHART) };
    let pictures: Vec<Value> = slides
        .classes
        .iter()
        .map(|class| class_pictures(&slides.title, class, &frame))
        .collect();
    // The paper of slides is their own.
    press(
        SHEET,
        include_str!("slides.typ"),
        values(SHEET, slides, &json!(pictures))?,
        Paper::Letter,
    )
}

fn class_pictures(title: &str, class: &ClassSlides, frame: &Frame) -> Value {
    let dots = class.every_bag.chunks(ROWS_A_SLIDE).map(|rows| dots(title, rows, frame));
    let curves = class.questions.iter().map(|question| {
        let chart = CurvesChart { title: &question.asks, sheaves: &question.curves };
        picture(&chart.svg(frame), &chart.description(frame))
    });
    json!({ "every-bag": dots.collect::<Vec<_>>(), "questions": curves.collect::<Vec<_>>() })
}

fn dots(title: &str, rows: &[DotRow], frame: &Frame) -> Value {
    let plot = DotPlot { title, rows, gap: None };
    picture(&plot.svg(frame), &plot.description(frame))
}

/// The page for families and the principal as a PDF of one page.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the page can make it do so.
pub fn summary_pdf(
    summary: &FamilySummary,
    words: Words,
    paper: Paper,
) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "summary";
    let frame = Frame { words, ..Frame::print(paper.entry_width()) };
    let rows = &summary.every_bag[..summary.every_bag.len().min(ROWS_FOR_FAMILIES)];
    let pictures: Vec<Value> =
        if rows.is_empty() { Vec::new() } else { vec![dots(&summary.title, rows, &frame)] };
    press(SHEET, include_str!("summary.typ"), values(SHEET, summary, &json!(pictures))?, paper)
}
