//! The only place where things are combined: text, science, domain, paper.
//!
//! A face (`cli`, `web`) parses, calls one function here and shows the answer.

mod analyze;
mod assign;
mod beyond;
mod certificate;
mod charts;
mod check;
mod clock;
pub(crate) mod contents;
mod demo;
pub(crate) mod doors;
pub(crate) mod drawings;
pub(crate) mod editing;
mod failure;
mod for_cameras;
mod held_back;
mod law_pictures;
mod metered;
mod new_plan;
mod outlook;
pub(crate) mod own_copy;
mod paper;
pub(crate) mod pilot;
mod plan_file;
mod power;
#[allow(dead_code, reason = "parts that read all of a wish are still to come")]
pub(crate) mod print;
pub(crate) mod queue;
pub(crate) mod rehearse;
pub(crate) mod room;
mod round_two;
pub(crate) mod schedule;
pub(crate) mod shared;
pub(crate) mod start;
mod table;
mod taught;
mod together;
mod trust;
pub(crate) mod wording;

pub(crate) use analyze::{Analysis, analyze, analyze_bytes, analyze_record};
pub(crate) use assign::{Assignment, assignment, write_assigned};
pub(crate) use barm_documents::catalog::Catalog;
pub(crate) use barm_documents::chart::{Terminal, Words as ChartWords};
pub(crate) use barm_documents::page::LabelSheet;
pub(crate) use barm_documents::sheet::{PrepSheet, Prompted, WaterMix};
use barm_domain::plan::Plan;
use barm_domain::prep::Prep;
pub(crate) use barm_science::fact::Fact;
pub(crate) use barm_science::fit::curve::{CurveFit, Parameter, Shape};
pub(crate) use barm_science::statistics::levels::{Difference, Group};
pub(crate) use beyond::{beyond, beyond_of_bag, beyond_says};
pub(crate) use certificate::{Certificate, Source as CertificateSource, certificate};
pub(crate) use charts::{forecast_chart, interval_chart, interval_picture, voice};
pub(crate) use check::{Located, all_findings, check, faults_without_forecast, unprinted};
pub(crate) use clock::Clock;
pub(crate) use demo::{Demo, demo, demo_stage};
pub(crate) use drawings::qr;
pub(crate) use failure::DeskError;
pub(crate) use for_cameras::code_for_cameras;
pub(crate) use held_back::{held_back, held_back_along, what_holds, why_it_holds};
pub(crate) use law_pictures::law_pictures;
#[cfg(test)]
pub(crate) use metered::MeteredSays;
pub(crate) use metered::{METERED_HEADS, Metered, MeteredRow, Pushes, metered};
pub(crate) use new_plan::{must_be_free, new_plan, ready_plan, renew_bags, write_new};
#[cfg(test)]
pub(crate) use outlook::was_foreseen;
pub(crate) use outlook::{Outlook, further_days, has_own_reference, outlook};
pub(crate) use paper::{
    Size, forecast_pdf, pilot_pdf, pilot_report_pdf, prep_pdf, prep_sheet, results_pdf,
    unforeseen,
};
pub(crate) use pilot::{
    Kept, Lesson, Pilot, blank_readings, changes_chart, learn_pilot, pilot, summary,
    treatments_chart,
};
pub(crate) use plan_file::{OpenPlan, open_plan, questions};
pub(crate) use power::{Power, power};
pub(crate) use round_two::{
    BothRounds, Next, both_rounds, next_of, proposal, round_two, why_stricter, write_second,
};
pub(crate) use table::{Compared, chance, compare_table, figure, fit_table};
use taught::day_of_record;
pub(crate) use taught::{DAY_WORDS, DaySays, day_says};
pub(crate) use together::{by_hint, by_reason};
pub(crate) use trust::{Trust, trust};
pub(crate) use wording::{Wording, say};

/// What to buy, mix and lay out.
pub(crate) fn prep(plan: &Plan) -> Result<Prep, DeskError> {
    Ok(barm_domain::prep::prep(plan)?)
}

/// Hears how far long work has come.
pub(crate) trait Progress: Sync {
    /// `done` of `of` steps of what is being done.
    fn step(&self, doing: &'static str, done: usize, of: usize);
}

/// Nobody hears how far it has come.
pub(crate) struct Unheard;

impl Progress for Unheard {
    fn step(&self, _: &'static str, _: usize, _: usize) {}
}

/// Every constant and parameter of the program.
pub(crate) fn facts() -> Vec<Fact> {
    let mut facts = barm_science::facts::all();
    facts.extend_from_slice(barm_domain::bench::tools::FACTS);
    facts.extend_from_slice(barm_domain::prep::FACTS);
    facts.extend_from_slice(barm_domain::pilot::FACTS);
    facts
}
