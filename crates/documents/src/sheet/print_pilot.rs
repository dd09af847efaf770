//! Sets what a pilot needs on paper.

use serde_json::{Value, json};

use super::print::{picture, values};
use super::{PilotReport, PilotSheet};
use crate::chart::{BagBeforeAfterChart, BeforeAfterChart, BeforeAfterRow, Frame};
use crate::page::{Paper, PdfError, press};

/// The words of both pictures.
const WORDS: (&str, &str) = ("before", "now");

/// What to do in a pilot, with room for what is read, as a PDF of two or three pages.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the sheet can make it do so.
pub fn pilot_pdf(sheet: &PilotSheet, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "pilot";
    press(SHEET, include_str!("pilot.typ"), values(SHEET, sheet, &Value::Null)?, paper)
}

/// What a pilot taught as a PDF.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text in the report can make it do so.
pub fn pilot_report_pdf(report: &PilotReport, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "pilot report";
    let frame = Frame::print(paper.entry_width());
    let rows = |rows: &[BeforeAfterRow]| {
        let chart = BeforeAfterChart { title: &report.title, words: WORDS, rows };
        if rows.is_empty() {
            Value::Null
        } else {
            picture(&chart.svg(&frame), &chart.description())
        }
    };
    let bag = |bag: &super::PilotBagPicture| {
        let chart = BagBeforeAfterChart {
            title: &bag.name,
            words: WORDS,
            before: &bag.before,
            after: &bag.after,
            readings: &bag.readings,
        };
        picture(&chart.svg(&frame), &chart.description(&frame))
    };
    let pictures = json!({
        "changes": rows(&report.changes),
        "treatments": rows(&report.treatments),
        "bags": report.bags.iter().map(bag).collect::<Vec<_>>(),
    });
    press(SHEET, include_str!("pilot_report.typ"), values(SHEET, report, &pictures)?, paper)
}
