//! Sets the sheets: draws their charts, hands both to the template.

use serde::Serialize;
use serde_json::{Value, json};

use super::{
    DayPart, ForecastPanel, ForecastSheet, Gap, Packet, PeriodResult, PrepSheet,
    QuestionResult, ResultsReport, SubstitutePack,
};
use crate::chart::{
    BeforeAfterChart, CurvesChart, DotPlot, DotRow, ForecastChart, Frame, IntervalChart,
    IntervalRow, MeasuredGap, Sheaf, Strand,
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
        .map(|rows| dots(&report.title, rows, &report.every_bag, None, &frame))
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
        "day": report.day.as_ref().map_or(Value::Null, |day| before_after(report, day, &frame)),
    });
    press(SHEET, include_str!("results.typ"), values(SHEET, report, &pictures)?, paper)
}

/// What a day changed, as a picture; nothing where nothing did.
fn before_after(report: &ResultsReport, day: &DayPart, frame: &Frame) -> Value {
    let (before, after) = &day.words;
    let chart =
        BeforeAfterChart { title: &report.title, words: (before, after), rows: &day.rows };
    if day.rows.is_empty() {
        Value::Null
    } else {
        picture(&chart.svg(frame), &chart.description())
    }
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

/// A plot of some rows of a set that share one scale; a gap is measured in it if both its treatments are there.
fn dots(
    title: &str,
    rows: &[DotRow],
    set: &[DotRow],
    gap: Option<&Gap>,
    frame: &Frame,
) -> Value {
    let row = |name: &str| rows.iter().position(|row| row.name == name);
    let gap = gap.and_then(|gap| {
        let (row, reference) = (row(&gap.treatment)?, row(&gap.reference)?);
        Some(MeasuredGap { row, reference, in_mads: gap.in_mads })
    });
    let plot = DotPlot { title, rows, gap, set, brief: false };
    picture(&plot.svg(frame), &plot.description(frame))
}

/// The widest of some gaps.
fn widest<'a>(gaps: impl Iterator<Item = &'a Gap>) -> Option<&'a Gap> {
    gaps.max_by(|a, b| a.gap.abs().total_cmp(&b.gap.abs()))
}

/// The pictures of a question, on the scale of the whole report.
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
    json!({
        "intervals": intervals,
        "curves": curves(&question.asks, &question.curves, frame),
        "gap": gap_picture(report, question, frame),
    })
}

fn curves(title: &str, sheaves: &[Sheaf], frame: &Frame) -> Value {
    let chart = CurvesChart { title, sheaves, bands: &[] };
    picture(&chart.svg(frame), &chart.description(frame))
}

/// The widest gap, drawn over the bags of its two treatments, if both stand in the plot of every bag.
fn gap_picture(report: &ResultsReport, question: &QuestionResult, frame: &Frame) -> Value {
    let row = |name: &str| report.every_bag.iter().find(|row| row.name == name).cloned();
    let Some(gap) = widest(question.gaps.iter()) else { return Value::Null };
    let (Some(treatment), Some(reference)) = (row(&gap.treatment), row(&gap.reference)) else {
        return Value::Null;
    };
    let rows = [treatment, reference];
    dots(&question.asks, &rows, &report.every_bag, Some(gap), frame)
}

/// Dots of one period with its widest gap, and its curves.
fn period_pictures(report: &ResultsReport, period: &PeriodResult, frame: &Frame) -> Value {
    let gap = widest(period.questions.iter().flat_map(|question| &question.gaps));
    let rows = period.every_bag.chunks(ROWS_A_PAGE);
    let dots = rows.map(|rows| dots(&report.title, rows, &report.every_bag, gap, frame));
    json!({
        "every-bag": dots.collect::<Vec<_>>(),
        "curves": curves(&report.title, &period.curves, frame),
    })
}
