//! Labels for bags and for the cards on them, and the page that shows whether they are hit.

use super::{looks, student_imprint, teacher_imprint};
use crate::desk::DeskError;
use crate::desk::print::Job;
use crate::desk::room::benches::name;
use barm_documents::page::LabelSheet;
use barm_documents::sheet::{self, Label, Labels, TestPrint};
use barm_domain::code::BagCode;
use barm_domain::plan::{Plan, PlannedBag};
use barm_domain::schedule::schedule;

/// What a label is stuck on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum On {
    /// A bag: it says what is in it.
    Bag,
    /// The card on a bag: it says when to read it.
    Card,
}

/// Labels as a PDF.
pub(crate) fn labels_pdf(job: &Job<'_>, on: On) -> Result<Vec<u8>, DeskError> {
    Ok(sheet::labels_pdf(&labels(job, on)?, job.wish.label_sheet())?)
}

/// The labels of all bags, in the order of the bag list.
pub(crate) fn labels(job: &Job<'_>, on: On) -> Result<Labels, DeskError> {
    let sheet = job.wish.label_sheet();
    let mut labels: Vec<Label> = Vec::new();
    for bag in job.bags() {
        // A code that is none cannot be in a plan that was read; it would have no label either.
        let Ok(code) = bag.code.parse::<BagCode>() else { continue };
        let first = labels.last().is_none_or(|before| before.period != code.period());
        labels.push(label(job, on, bag, code, first));
    }
    if labels.is_empty() {
        return Err(DeskError::NoBags);
    }
    let words = job.wish.words;
    let code = match on {
        On::Bag => "LABELS",
        On::Card => "CARDS",
    };
    Ok(Labels {
        imprint: student_imprint(job, code),
        title: job.plan.title.clone(),
        margin: words.say("label-margin"),
        grid: sheet.grid(),
        sheets: on_sheets(labels, job.wish.start_cell - 1, sheet.cells()),
    })
}

/// Labels dealt onto sheets, the first of which is used up to a cell.
fn on_sheets(labels: Vec<Label>, used: u32, cells: u32) -> Vec<Vec<Label>> {
    let mut sheets: Vec<Vec<Label>> = Vec::new();
    for (place, mut label) in (used..).zip(labels) {
        label.cell = place % cells;
        match sheets.last_mut() {
            Some(sheet) if label.cell > 0 => sheet.push(label),
            _ => sheets.push(vec![label]),
        }
    }
    sheets
}

fn label(job: &Job<'_>, on: On, bag: &PlannedBag, code: BagCode, first: bool) -> Label {
    let words = job.wish.words;
    let (look, says) = match on {
        On::Bag => {
            (Some(looks::look(job.plan, &bag.treatment)), words.treatment(&bag.treatment))
        }
        On::Card => (None, when_to_read(job, bag)),
    };
    let (period, name, code) = (code.period(), name(code), code.to_string());
    Label {
        cell: 0,
        period,
        first,
        name,
        group: own_label(job.plan, bag),
        square: match &job.wish.address {
            Some(address) => address.of_bag(&code),
            None => code.clone(),
        },
        square_says: words.say_with("label-square", &[("bag", &code)]),
        code,
        look,
        says,
    }
}

/// What the bag's group calls itself; empty if it has only its number.
fn own_label(plan: &Plan, bag: &PlannedBag) -> String {
    let own = plan
        .group_settings
        .iter()
        .find(|setting| setting.period == bag.period && setting.group == bag.group);
    own.and_then(|setting| setting.label.clone()).unwrap_or_default()
}

/// When the card on a bag is read, in words.
fn when_to_read(job: &Job<'_>, bag: &PlannedBag) -> String {
    let words = job.wish.words;
    let planned = job.plan.period(&bag.period).map(|period| schedule(job.plan, period, None));
    match planned.as_ref().map(|planned| planned.minutes.as_slice()) {
        Some([first, .., last]) => words.say_with(
            "label-card-read",
            &[("every", &first.to_string()), ("last", &last.to_string())],
        ),
        Some([only]) => words.say_with("label-card-once", &[("last", &only.to_string())]),
        _ => words.say("label-card"),
    }
}

/// The page to be held against a sheet of labels, as a PDF.
pub(crate) fn test_print_pdf(job: &Job<'_>) -> Result<Vec<u8>, DeskError> {
    let sheet = job.wish.label_sheet();
    Ok(sheet::test_print_pdf(&test_print(job, sheet), sheet)?)
}

fn test_print(job: &Job<'_>, sheet: LabelSheet) -> TestPrint {
    let grid = sheet.grid();
    let steps = [
        "Print this page on plain paper, at 100 %, not fitted to the page.",
        "Measure both scales: each is 100 mm. If not, look for “actual size” when you print.",
        "Hold this page and a label sheet to the light: each frame lies on a label.",
        "All off the same way? Move the paper guides. 2 mm off spoils nothing.",
        "Sheet partly used? Start at the number of its first free label.",
    ];
    TestPrint {
        imprint: teacher_imprint(job, "TEST"),
        title: "Test print for labels".to_owned(),
        sheet: sheet.says().to_owned(),
        steps: steps.map(str::to_owned).to_vec(),
        measure: format!(
            "The frames begin {:.1} mm from the top edge of the paper and {:.1} mm from the left: \
             common practice, by centring. Your own sheet decides.",
            grid.top, grid.left
        ),
        grid,
    }
}
