//! Sets what shows results beside the report: slides for the class, a page for families.

use serde_json::{Value, json};

use super::print::{picture, values};
use super::{ClassSlides, FamilySummary, Slides};
use crate::chart::{CurvesChart, DotPlot, DotRow, Frame, Words};
use crate::page::{Paper, PdfError, press};

/// Width of a chart on a slide (pt), which is the slide's less its margins.
const SLIDE_CHART: f64 = 864.0;
/// Letters of a chart on a slide (pt), to be read from the back of a room; its small ones have 18 pt.
const SLIDE_TYPE: f64 = 19.0;
/// Height that a slide has for a chart under a title of two lines (pt).
const SLIDE_ROOM: f64 = 360.0;

/// Rows of dots on the page for families: more would push the words off it.
const ROWS_FOR_FAMILIES: usize = 4;

/// Slides of 16 by 9 as a PDF.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on a slide can make it do so.
pub fn slides_pdf(slides: &Slides, words: Words) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "slides";
    let frame = Frame { words, type_size: SLIDE_TYPE, ..Frame::print(SLIDE_CHART) };
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
    let set = &class.every_bag;
    let dots: Vec<Value> =
        shared_out(set, frame).map(|rows| dots(title, rows, set, false, frame)).collect();
    let curves = class.questions.iter().map(|question| {
        let chart =
            CurvesChart { title: &question.asks, sheaves: &question.curves, bands: &[] };
        picture(&chart.svg(frame), &chart.description(frame))
    });
    json!({ "every-bag": dots, "questions": curves.collect::<Vec<_>>() })
}

/// Rows on as few slides as have room for them, as evenly as may be.
fn shared_out<'a>(set: &'a [DotRow], frame: &Frame) -> impl Iterator<Item = &'a [DotRow]> {
    let fits = |rows: &[DotRow]| {
        let plot = DotPlot { title: "", rows, gap: None, set, brief: false };
        plot.height(frame) <= SLIDE_ROOM
    };
    let a_slide = (1..=set.len())
        .map(|slides| set.len().div_ceil(slides))
        .find(|rows| set.chunks(*rows).all(fits));
    set.chunks(a_slide.unwrap_or(1))
}

fn dots(title: &str, rows: &[DotRow], set: &[DotRow], brief: bool, frame: &Frame) -> Value {
    let plot = DotPlot { title, rows, gap: None, set, brief };
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
    let pictures: Vec<Value> = if rows.is_empty() {
        Vec::new()
    } else {
        vec![dots(&summary.title, rows, &[], true, &frame)]
    };
    press(SHEET, include_str!("summary.typ"), values(SHEET, summary, &json!(pictures))?, paper)
}
