//! Data sheets, and the squared paper that goes with them: the grid on which heights are typed in
//! later, row by row.

use super::clock::Hours;
use super::seats::{Bench, Seat, letter, seats};
use super::squares::squares;
use super::{face, look, student_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use crate::desk::room::benches::name;
use barm_documents::sheet::{
    self, DataRow, DataSheet, DataSheets, GraphPaper, GraphSheet, Head, Squares,
};
use barm_domain::code::BagCode;
use barm_domain::plan::PlannedBag;
use barm_domain::result::full_height_mm;
use barm_domain::schedule::schedule;

/// Lines for odd things; a group seldom sees more in a period.
const ODD: u32 = 3;

/// The data sheets as a PDF.
pub(crate) fn data_sheets_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let all = seats(job, "data-name", Bench::Too);
    let sheets = DataSheets {
        imprint: student_imprint(job, "DATA"),
        title: job.plan.title.clone(),
        sheets: all.iter().map(|seat| data_sheet(job, seat)).collect(),
    };
    Ok(sheet::data_sheets_pdf(&sheets, face(job))?)
}

fn data_sheet(job: &Job<'_>, seat: &Seat<'_>) -> DataSheet {
    let schedule = schedule(job.plan, seat.period, None);
    let mut minutes = schedule.minutes.clone();
    minutes.insert(0, 0);
    let bags = &seat.bags;
    let start = schedule.start_of(seat.group).unwrap_or(job.plan.timing.mixing_min);
    let hours = Hours::from(job.wish.size);
    let clock = |minute: &u32| hours.at_minute(seat.period.start, start + f64::from(*minute));
    let times: Vec<String> = minutes.iter().map(clock).collect();
    let digits = bags.iter().map(|bag| digits(job, bag)).max().unwrap_or(2);
    let row = |bag: &&PlannedBag| {
        let code = bag.code.parse::<BagCode>().ok();
        DataRow {
            code: bag.code.clone(),
            name: code.map_or_else(|| bag.code.clone(), name),
            letter: letter(bag),
            look: look(job.plan, &bag.treatment),
            treatment: job.wish.words.treatment(&bag.treatment),
            digits,
            times: times.clone(),
        }
    };
    DataSheet {
        head: seat.head.clone(),
        guess: seat.group > 0,
        across: match (digits, job.wish.large) {
            (..=2, false) => 7,
            (_, false) => 5,
            (..=2, true) => 4,
            (_, true) => 3,
        },
        rows: bags.iter().map(row).collect(),
        minutes,
        odd: ODD,
        curve: squares(job, seat.period),
    }
}

/// Digits of the greatest height that a bag of that size can have, in whole mm.
pub(super) fn digits(job: &Job<'_>, bag: &PlannedBag) -> u32 {
    if full_height_mm(job.plan, bag) < 100.0 { 2 } else { 3 }
}

/// The squared paper as a PDF: a sheet for every scale that a period needs.
pub(crate) fn graph_paper_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let words = job.wish.words;
    let mut scales: Vec<(Squares, Vec<&str>)> = Vec::new();
    for period in job.periods() {
        let Some(own) = squares(job, period) else { continue };
        match scales.iter_mut().find(|(scale, _)| *scale == own) {
            Some((_, periods)) => periods.push(&period.name),
            None => scales.push((own, vec![&period.name])),
        }
    }
    let alone = scales.len() == 1;
    let sheets = scales.into_iter().map(|(squares, periods)| {
        let period = words.say_with("wall-period", &[("period", &periods.join(", "))]);
        let name = if alone { String::new() } else { period };
        let whose = words.say("graph-name");
        GraphSheet { head: Head { sheet: "GRAPH".into(), sign: 0, whose, name }, squares }
    });
    let paper = GraphPaper {
        imprint: student_imprint(job, "GRAPH"),
        title: job.plan.title.clone(),
        sheets: sheets.collect(),
    };
    Ok(sheet::graph_paper_pdf(&paper, face(job))?)
}
