//! Sets labels, their test print and the join sheet: draws their square codes, hands both to the template.

use serde_json::{Value, json};

use super::print::{picture, values};
use super::{JoinSheet, Labels, TestPrint};
use crate::page::{LabelSheet, Paper, PdfError, press};
use crate::square::{QUIET, Square};

/// Labels as a PDF, a page a sheet, of the very size of the sheet.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on a label can make it do so.
pub fn labels_pdf(labels: &Labels, sheet: LabelSheet) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "label sheet";
    let codes: Vec<Vec<Value>> = labels
        .sheets
        .iter()
        .map(|sheet| {
            let own = sheet.iter().map(|label| match label.square.as_str() {
                "" => Value::Null,
                square => code(square, &label.square_says),
            });
            own.collect()
        })
        .collect();
    let values = values(SHEET, labels, &json!(codes))?;
    press(SHEET, include_str!("labels.typ"), values, sheet.paper())
}

/// The page to be held against a sheet of labels, as a PDF of its very size.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the page can make it do so.
pub fn test_print_pdf(page: &TestPrint, sheet: LabelSheet) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "test print";
    let values = values(SHEET, page, &Value::Null)?;
    press(SHEET, include_str!("test_print.typ"), values, sheet.paper())
}

/// The join sheet as a PDF of one page.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text on the page can make it do so.
pub fn join_pdf(page: &JoinSheet, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "join sheet";
    let values = values(SHEET, page, &code(&page.square, &page.square_says))?;
    press(SHEET, include_str!("join.typ"), values, paper)
}

/// A square code with its words, and which share of its side is quiet; nothing if the text is too long for one, which whoever fills the
/// sheet has ruled out.
fn code(text: &str, says: &str) -> Value {
    let Some(square) = Square::of(text) else { return Value::Null };
    let mut code = picture(&square.picture(), says);
    code["quiet"] = json!(QUIET as f64 / square.side() as f64);
    code
}
