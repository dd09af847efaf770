//! Sheets for people: what the desk found, laid out by `documents`.

mod bench_card;
mod calendar;
mod care;
mod clock;
mod data_sheet;
mod forecast;
mod hour;
mod join;
mod labels;
mod looks;
mod packet;
mod pilot;
mod planning;
mod prep;
pub(in crate::desk) mod prompts;
mod results;
mod results_parts;
mod seats;
mod slides;
mod squares;
mod substitute;
mod summary;
mod tally;
mod todo;
mod trays;
mod water;

pub(crate) use bench_card::bench_cards_pdf;
pub(crate) use calendar::{calendar_ics, plan_mark};
pub(crate) use data_sheet::{data_sheets_pdf, graph_paper_pdf};
pub(crate) use forecast::{forecast_sheet, strand};
pub(crate) use join::join_pdf;
pub(crate) use labels::{On, labels_pdf, test_print_pdf};
pub(crate) use looks::look;
pub(crate) use packet::packet_pdf;
pub(crate) use pilot::{pilot_pdf, pilot_report_pdf};
pub(crate) use planning::planning_pdf;
pub(crate) use prep::prep_sheet;
pub(crate) use prompts::asked;
pub(crate) use results::{all_curves, dot_rows, results_report};
pub(crate) use slides::slides_pdf;
pub(crate) use substitute::substitute_pdf;
pub(crate) use summary::summary_pdf;
pub(crate) use tally::{gauges_pdf, tally_pdf};

use super::print::Job;
use super::room::Kind;
use super::{Analysis, DeskError, Outlook, Wording, say};
use barm_documents::catalog::Catalog;
use barm_documents::page::Paper;
use barm_documents::sheet::{self, Caution, Entry, Face, Imprint};
use barm_domain::check;
use barm_domain::code::BagCode;
use barm_domain::finding::{Finding, Severity};
use barm_domain::outlook::OutlookError;
use barm_domain::plan::Plan;
use barm_domain::prep::Prep;
use barm_domain::record::older_version;

/// Paper to print on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Size {
    /// US Letter.
    Letter,
    /// A4.
    A4,
}

impl From<Size> for Paper {
    fn from(size: Size) -> Self {
        match size {
            Size::Letter => Self::Letter,
            Size::A4 => Self::A4,
        }
    }
}

/// The results report as a PDF.
pub(crate) fn results_pdf(
    plan: &Plan,
    analysis: &Analysis,
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    results_pdf_with(Kind::Real, plan, analysis, &Beside::default(), size)
}

/// What a report says besides what the readings say.
#[derive(Debug, Default)]
pub(crate) struct Beside {
    /// A sentence for each group that worked with numbers that were not its own.
    pub(crate) lent: Vec<String>,
    /// The treatments of which no bag was read yet.
    pub(crate) not_run: Vec<String>,
}

/// The same of an investigation on a shelf.
pub(crate) fn results_pdf_with(
    kind: Kind,
    plan: &Plan,
    analysis: &Analysis,
    beside: &Beside,
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    let mut report = results_report(plan, analysis);
    let note = |says: &String| Entry { head: "Not its own".to_owned(), says: says.clone() };
    report.did_not_work.extend(beside.lent.iter().map(note));
    if !beside.not_run.is_empty() {
        let says = format!("{}. No bag of them was read so far.", beside.not_run.join(", "));
        report.did_not_work.push(Entry { head: "Not run yet".to_owned(), says });
    }
    mark(&mut report.imprint, kind);
    Ok(sheet::results_pdf(&report, size.into())?)
}

/// The forecast as a PDF, for the teacher only.
pub(crate) fn forecast_pdf(
    plan: &Plan,
    outlook: &Outlook,
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    forecast_pdf_of(Kind::Real, plan, outlook, size)
}

/// The same of an investigation on a shelf.
pub(crate) fn forecast_pdf_of(
    kind: Kind,
    plan: &Plan,
    outlook: &Outlook,
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    let mut forecast = forecast_sheet(plan, outlook);
    mark(&mut forecast.imprint, kind);
    Ok(sheet::forecast_pdf(&forecast, size.into())?)
}

/// The preparation as a PDF.
pub(crate) fn prep_pdf(
    plan: &Plan,
    prep: &Prep,
    found: &[Finding],
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    prep_pdf_of(Kind::Real, plan, prep, found, size)
}

/// The same of an investigation on a shelf.
pub(crate) fn prep_pdf_of(
    kind: Kind,
    plan: &Plan,
    prep: &Prep,
    found: &[Finding],
    size: Size,
) -> Result<Vec<u8>, DeskError> {
    let mut sheet = prep::on_paper(plan, prep, found, size.into());
    mark(&mut sheet.imprint, kind);
    Ok(sheet::prep_pdf(&sheet, size.into())?)
}

/// How what students hold is set.
fn face(job: &Job<'_>) -> Face {
    Face { words: job.wish.words, paper: job.wish.size.into(), large: job.wish.large }
}

/// The number that the codes of a period's bags carry, and its sign with them; none without bags.
fn period_number(plan: &Plan, period: &str) -> Option<usize> {
    let own = plan.bags.iter().filter(|bag| bag.period == period);
    own.filter_map(|bag| bag.code.parse::<BagCode>().ok())
        .map(|code| code.period().into())
        .next()
}

/// School, sheet code and language at the foot of every page.
fn imprint(plan: &Plan, sheet: &str) -> Imprint {
    Imprint {
        school: plan.school.clone().unwrap_or_default(),
        sheet: sheet.to_owned(),
        invented: plan.invented,
        rehearsal: false,
        language: "en".to_owned(),
    }
}

/// Says at the foot of every page what was read in no class.
const fn mark(imprint: &mut Imprint, kind: Kind) {
    match kind {
        Kind::Real => {}
        Kind::Rehearsal => imprint.rehearsal = true,
        Kind::Invented => imprint.invented = true,
    }
}

/// The foot of a part's pages for the teacher.
fn teacher_imprint(job: &Job<'_>, sheet: &str) -> Imprint {
    let mut imprint = imprint(job.plan, sheet);
    mark(&mut imprint, job.kind);
    imprint
}

/// The foot of a part's pages for students and families, in their language.
fn student_imprint(job: &Job<'_>, sheet: &str) -> Imprint {
    Imprint { language: job.wish.words.code().to_owned(), ..teacher_imprint(job, sheet) }
}

/// What `(plan 1)` behind a name means, if one of the names of a sheet for the teacher has it.
fn older_names<'n>(names: impl IntoIterator<Item = &'n str>) -> Option<Entry> {
    let version = names.into_iter().find_map(older_version)?.to_string();
    let says = say!(Wording::english(), "head-older-plan", version = version);
    Some(Entry { head: "Older plan".to_owned(), says })
}

/// The same for students and families, in their language.
fn older_names_told<'n>(
    words: &Catalog,
    names: impl IntoIterator<Item = &'n str>,
) -> Option<String> {
    let version = names.into_iter().find_map(older_version)?.to_string();
    Some(words.say_with("bench-older-plan", &[("version", &version)]))
}

/// What is said of a treatment without a forecast, on paper and on the screen.
pub(crate) fn unforeseen(error: &OutlookError) -> String {
    let name = error.treatment().unwrap_or("Every treatment");
    format!("{name}: {}.", error.reason().trim_end_matches('.'))
}

/// The cautions among findings. The sheets say once, over all of them, whose rules come first. One
/// that the plan answers stays: whoever sets up the room reads what can hurt, and the answer, such
/// as the place of the eyewash, is what she needs then.
fn cautions(found: &[Finding]) -> Vec<Caution> {
    let answered = |finding: &Finding| {
        finding.severity == Severity::Note
            && check::CAUTION_RULES.iter().any(|rule| rule.code == finding.code)
    };
    let stands = |f: &&Finding| f.severity == Severity::Caution || answered(f);
    found.iter().filter(stands).map(caution).collect()
}

fn caution(finding: &Finding) -> Caution {
    let says = check::without_answer(&finding.message);
    let answer = finding.message[says.len()..].trim();
    let says = format!("{says} {} {answer}", check::without_local_rules(&finding.fix));
    Caution {
        code: finding.code.to_owned(),
        says: says.trim().to_owned(),
        source: finding.source.map(str::to_owned),
    }
}

/// Cautions that concern emptying bags and talking about ethanol.
fn disposal_cautions(plan: &Plan, outlook: &Outlook) -> Vec<Caution> {
    const AFTER: [&str; 6] = ["S07", "S08", "S14", "S15", "S17", "S31"];
    let mut found = cautions(&check::check(plan, &outlook.entries));
    found.retain(|caution| AFTER.contains(&caution.code.as_str()));
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_caution_on_paper_leaves_whose_rules_come_first_to_the_head() {
        let fix = format!("Wear goggles. {}", check::LOCAL_RULES);
        let finding = Finding::new(Severity::Caution, "S05", "Bags can splash.", fix);
        let [caution] = cautions(&[finding]).try_into().unwrap();
        assert_eq!(caution.says, "Bags can splash. Wear goggles.");
    }

    #[test]
    fn a_caution_that_the_plan_answers_stays_on_the_sheet_with_its_answer() {
        let read = barm_documents::plan_text::read(include_bytes!("../../demo/plan.toml"));
        let mut plan = read.plan.expect("the demonstration plan");
        plan.answered.clear();
        let before = cautions(&check::check(&plan, &[]));
        let first = before.first().expect("a caution").clone();
        let answer = "Eyewash beside the door, tested on Monday.".to_owned();
        let caution = first.code.clone();
        plan.answered.push(barm_domain::plan::Answered { caution, answer });
        let after = cautions(&check::check(&plan, &[]));
        assert_eq!(after.len(), before.len());
        let own = after.iter().find(|one| one.code == first.code).expect("it stays");
        assert!(own.says.starts_with(&first.says), "{}", own.says);
        assert!(
            own.says.ends_with("“Eyewash beside the door, tested on Monday.”"),
            "{}",
            own.says
        );
    }

    #[test]
    fn a_name_of_an_older_plan_is_explained_on_paper() {
        assert!(older_names(["Honey", "Honey (planned)"]).is_none());
        let says = older_names(["Honey", "Honey (plan 2)"]).expect("said").says;
        assert!(says.contains("(plan 2)") && says.contains("version 2 of the plan"), "{says}");
        for words in Catalog::all() {
            assert_eq!(older_names_told(words, ["Honey"]), None);
            let says = older_names_told(words, ["Honey (plan 2)"]).expect("said");
            assert!(says.contains("(plan 2)"), "{says}");
        }
    }
}
