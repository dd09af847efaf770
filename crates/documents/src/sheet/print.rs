//! Sets the sheets: draws their charts, hands both to the template.

use serde::Serialize;
use serde_json::{Value, json};

use super::{
    ForecastPanel, ForecastSheet, Packet, PeriodResult, PrepSheet, QuestionResult,
    ResultsReport, SubstitutePack,
};
use crate::chart::{
    CurvesChart, DotPlot, ForecastChart, Frame, IntervalChart, IntervalRow, MeasuredGap, Strand,
};
use crate::page::{Paper, PdfError, press};

/// Rows of a chart that fit on one page; a chart with more is drawn in several pictures.
const ROWS_A_PAGE: usize = 20;

/// The results report as a PDF of several pages.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text in the report can make it do so.
pub fn results_pdf(report: &ResultsReport, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "results report";
    let frame = Frame::print(paper.entry_width());
    let plots: Vec<Value> = report
        .every_bag
        .chunks(ROWS_A_PAGE)
        .map(|rows| {
            let plot = DotPlot { title: &report.title, rows, gap: None };
            picture(&plot.svg(&frame), &plot.description(&frame))
        })
        .collect();
    let questions: Vec<Value> = report
        .questions
        .iter()
        .map(|question| question_pictures(report, question, &frame))
        .collect();
    let periods: Vec<Value> =
        report.periods.iter().map(|period| period_pictures(report, period, &frame)).collect();
    let pictures = json!({
        "every-bag": plots,
        "questions": questions,
        "periods": periods,
    });
    press(SHEET, include_str!("results.typ"), values(SHEET, report, &pictures)?, paper)
}

/// The prep sheet as a PDF of two or three pages.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text in the sheet can make it do so.
pub fn prep_pdf(sheet: &PrepSheet, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "prep sheet";
    press(SHEET, include_str!("prep.typ"), values(SHEET, sheet, &Value::Null)?, paper)
}

/// The forecast as a PDF of one page, for the teacher only.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text in the sheet can make it do so.
pub fn forecast_pdf(sheet: &ForecastSheet, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "forecast";
    let pictures = forecast_pictures(sheet, paper);
    press(SHEET, include_str!("forecast.typ"), values(SHEET, sheet, &pictures)?, paper)
}

/// The teacher's packet as a PDF with a bookmark for each chapter.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text in the packet can make it do so.
pub fn packet_pdf(packet: &Packet, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "packet";
    let mut values = values(SHEET, packet, &Value::Null)?;
    values["forecast"]["pictures"] = forecast_pictures(&packet.forecast, paper);
    press(SHEET, include_str!("packet.typ"), values, paper)
}

/// The pack for a substitute as a PDF of two pages.
///
/// # Errors
/// [`PdfError`] if the layout engine refuses; no text in the pack can make it do so.
pub fn substitute_pdf(pack: &SubstitutePack, paper: Paper) -> Result<Vec<u8>, PdfError> {
    const SHEET: &str = "pack for a substitute";
    press(SHEET, include_str!("substitute.typ"), values(SHEET, pack, &Value::Null)?, paper)
}

/// The curves and bands of a forecast: one picture for all questions, or one each.
fn forecast_pictures(sheet: &ForecastSheet, paper: Paper) -> Value {
    let frame = Frame::print(paper.entry_width());
    let draw = |strands: &[Strand], panel: &ForecastPanel| {
        let (last_reading, bell) = (panel.last_reading, panel.bell);
        let chart = ForecastChart { title: &sheet.title, strands, last_reading, bell };
        picture(&chart.svg(&frame), &chart.description(&frame))
    };
    let pictures: Vec<Value> = match together(&sheet.panels) {
        Some((strands, panel)) => vec![draw(&strands, panel)],
        None => sheet.panels.iter().map(|panel| draw(&panel.strands, panel)).collect(),
    };
    json!(pictures)
}

/// The strands of all questions for one chart, each treatment once, if the questions end at the same time.
fn together(panels: &[ForecastPanel]) -> Option<(Vec<Strand>, &ForecastPanel)> {
    let times =
        |panel: &ForecastPanel| (panel.last_reading.to_bits(), panel.bell.map(f64::to_bits));
    let first = panels.first()?;
    if panels.iter().any(|panel| times(panel) != times(first)) {
        return None;
    }
    let mut strands: Vec<Strand> = Vec::new();
    for strand in panels.iter().flat_map(|panel| &panel.strands) {
        if !strands.iter().any(|one| one.name == strand.name && one.look == strand.look) {
            strands.push(strand.clone());
        }
    }
    Some((strands, first))
}

pub(super) fn values(
    sheet: &'static str,
    of: &impl Serialize,
    pictures: &Value,
) -> Result<Value, PdfError> {
    let mut values = serde_json::to_value(of)
        .map_err(|error| PdfError::Values { sheet, cause: error.to_string() })?;
    if let Some(fields) = values.as_object_mut() {
        fields.insert("pictures".to_owned(), pictures.clone());
    }
    Ok(values)
}

pub(super) fn picture(svg: &str, alt: &str) -> Value {
    json!({ "svg": svg, "alt": alt })
}

fn question_pictures(
    report: &ResultsReport,
    question: &QuestionResult,
    frame: &Frame,
) -> Value {
    let rows: Vec<IntervalRow> = question
        .comparisons
        .iter()
        .map(|one| IntervalRow {
            name: one.treatment.clone(),
            look: one.look,
            difference: one.with_all.difference,
            verdict: one.with_all.verdict.clone(),
        })
        .collect();
    let intervals: Vec<Value> = rows
        .chunks(ROWS_A_PAGE)
        .map(|rows| {
            let reference = &question.reference;
            let chart = IntervalChart { title: &question.asks, reference, rows };
            picture(&chart.svg(frame), &chart.description(frame))
        })
        .collect();
    let curves = CurvesChart { title: &question.asks, sheaves: &question.curves };
    json!({
        "intervals": intervals,
        "curves": picture(&curves.svg(frame), &curves.description(frame)),
        "gap": gap_picture(report, question, frame),
    })
}

/// The first gap, drawn over the bags of its two treatments, if both stand in the plot of every bag.
fn gap_picture(report: &ResultsReport, question: &QuestionResult, frame: &Frame) -> Value {
    let row = |name: &str| report.every_bag.iter().find(|row| row.name == name).cloned();
    let Some(gap) = question.gaps.first() else { return Value::Null };
    let (Some(treatment), Some(reference)) = (row(&gap.treatment), row(&gap.reference)) else {
        return Value::Null;
    };
    let rows = [treatment, reference];
    let measured = MeasuredGap { row: 0, reference: 1, in_mads: gap.in_mads };
    let plot = DotPlot { title: &question.asks, rows: &rows, gap: Some(measured) };
    picture(&plot.svg(frame), &plot.description(frame))
}

/// Dots and curves of one period.
fn period_pictures(report: &ResultsReport, period: &PeriodResult, frame: &Frame) -> Value {
    let dots = period.every_bag.chunks(ROWS_A_PAGE).map(|rows| {
        let plot = DotPlot { title: &report.title, rows, gap: None };
        picture(&plot.svg(frame), &plot.description(frame))
    });
    let curves = period.questions.iter().map(|question| {
        let chart = CurvesChart { title: &question.asks, sheaves: &question.curves };
        picture(&chart.svg(frame), &chart.description(frame))
    });
    json!({ "every-bag": dots.collect::<Vec<_>>(), "questions": curves.collect::<Vec<_>>() })
}
