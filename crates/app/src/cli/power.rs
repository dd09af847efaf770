//! `barm power`.

use super::failure::Failure;
use super::{FAULTY, page, progress};
use crate::desk::{self, Power};
use crate::json;
use barm_domain::pilot::Known;
use barm_domain::plan::Plan;
use barm_domain::power::{Chances, Pair, QuestionPower, Trial};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Say how likely the plan's bags will show what it asks, and what more bags would show
///
/// From how much bags and groups will differ, and by simulated classes whose readings are judged as
/// the real day's will be, slips and all. Takes up to a minute or two.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Leave out what pilots found, and go by what is usual
    #[arg(long)]
    prior: bool,
    /// Number of simulated classes for the plan's own bags; half as many for every other number
    #[arg(long, default_value_t = Trial::default().classes, value_parser = classes)]
    classes: usize,
    /// Seed; the same seed gives the same answer on every machine
    #[arg(long, default_value_t = Trial::default().seed)]
    seed: u64,
}

fn classes(text: &str) -> Result<usize, String> {
    let classes: usize = text.parse().map_err(|_| "write a whole number".to_owned())?;
    if (4..=10_000).contains(&classes) {
        Ok(classes)
    } else {
        Err("write a number from 4 to 10000".to_owned())
    }
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let mut open = desk::open_plan(&arguments.plan)?;
    if arguments.prior {
        open.plan.known = Known::default();
    }
    let trial = Trial { classes: arguments.classes, seed: arguments.seed, ..Trial::default() };
    let line = progress::Line::new();
    let power = desk::power(&open.plan, trial, &line)?;
    drop(line);
    let ended =
        if power.failed.is_empty() { ExitCode::SUCCESS } else { ExitCode::from(FAULTY) };
    let voice = desk::voice(&open.plan);
    if arguments.json {
        json::write(out, &json::powers(&power, open.plan.known.says(), voice))?;
        return Ok(ended);
    }
    page::title(out, &open.plan.title)?;
    page::known(out, &open.plan)?;
    for question in &power.questions {
        own_bags(out, &open.plan, question)?;
        more_bags(out, question)?;
        writeln!(out)?;
        page::paragraph(out, 0, &voice.power(question))?;
    }
    page::failed(out, &power.failed)?;
    writeln!(out)?;
    page::paragraph(out, 0, &ends(&power))?;
    Ok(ended)
}

/// What the plan's own bags will show of a question.
fn own_bags(
    out: &mut impl Write,
    plan: &Plan,
    question: &QuestionPower,
) -> Result<(), Failure> {
    let asks = desk::questions(plan).into_iter().find(|(id, _)| *id == question.question);
    let asks = asks.map_or(question.question.as_str(), |(_, asks)| asks);
    page::part(out, &format!("{asks}  Chance of a clear verdict:"))?;
    let row = |pair: &Pair| {
        let Chances { bags, bags_reference, by_spreads, tried, with_slips, .. } = &pair.own;
        let apart = pair.apart_mm.map(|(low, middle, high)| {
            format!("{} ({} to {})", whole(middle), whole(low), whole(high))
        });
        let finds = pair.own.usually_found_mm.map(|mm| format!("{mm:.1}"));
        vec![
            named(plan, question, pair),
            apart.unwrap_or_default(),
            format!("{bags} + {bags_reference}"),
            finds.unwrap_or_default(),
            by_spreads.map(percent).unwrap_or_default(),
            tried.map(percent).unwrap_or_default(),
            percent(*with_slips),
            bar(*with_slips),
        ]
    };
    page::rows(
        out,
        &["", "apart", "bags", "finds", "spreads", "tried", "slips", ""],
        &[1, 2, 3, 4, 5, 6],
        question.pairs.iter().map(row).collect::<Vec<_>>(),
    )?;
    for pair in &question.pairs {
        if let Some(why) = &pair.own.never {
            page::paragraph(out, 2, &format!("{}: never clear; {why}.", pair.treatment))?;
        }
    }
    Ok(())
}

/// A treatment, with what it stands beside where that is not its question's reference.
fn named(plan: &Plan, question: &QuestionPower, pair: &Pair) -> String {
    let asked = plan.questions.iter().find(|one| one.id == question.question);
    let reference = asked.and_then(|one| one.reference.as_ref());
    if reference == Some(&pair.reference) {
        return pair.treatment.clone();
    }
    format!("{} (beside {})", pair.treatment, pair.reference)
}

/// What 1, 2, 3 and more bags of each would show.
fn more_bags(out: &mut impl Write, question: &QuestionPower) -> Result<(), Failure> {
    let each =
        |pair: &Pair| -> Vec<u32> { pair.by_bags.iter().filter_map(|c| c.each).collect() };
    let counts = question.pairs.first().map(each).unwrap_or_default();
    if counts.is_empty() {
        return Ok(());
    }
    writeln!(out)?;
    let mut heads = vec!["Bags of each".to_owned()];
    heads.extend(counts.iter().map(ToString::to_string));
    heads.push(String::new());
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let rows = question.pairs.iter().map(|pair| {
        let mut row = vec![pair.treatment.clone()];
        row.extend(pair.by_bags.iter().map(|one| percent(one.with_slips)));
        row.push(pair.by_bags.iter().map(|one| step(one.with_slips)).collect());
        row
    });
    let numbers: Vec<usize> = (1..=counts.len()).collect();
    page::rows(out, &heads, &numbers, rows.collect::<Vec<_>>())?;
    Ok(())
}

/// How it was found, and what that leaves out.
fn ends(power: &Power) -> String {
    let Trial { classes, seed, .. } = power.trial;
    let minute = power.questions.iter().find_map(|question| question.minute);
    let at = minute.map(|minute| format!(" at minute {minute:.0}")).unwrap_or_default();
    format!(
        "Apart: how much more it rises (mm), the median over possible days and where 8 of 10 lie. Bags: \
         of it and of what it stands beside. Finds: the smallest difference (mm) that is clear 4 times \
         in 5. Spreads: by how much bags and groups will differ, nothing going wrong. Tried: {classes} simulated classes, compared{at} and judged as the real day will be \
         (seed {seed}). Slips: the same with the slips of a rehearsal, none of them mended. Bags of \
         each: with slips, by half as many classes. A share of {classes} classes may be off by {:.0} \
         in 100.",
        // Twice the standard error of one half.
        100.0 / (classes as f64).sqrt()
    )
}

fn percent(chance: f64) -> String {
    format!("{:.0} %", 100.0 * chance)
}

/// Whole millimeters; never `-0`.
fn whole(mm: f64) -> String {
    let rounded = mm.round();
    format!("{:.0}", if rounded.abs() < 0.5 { 0.0 } else { rounded })
}

/// A bar of ten.
fn bar(chance: f64) -> String {
    let full = (10.0 * chance).round().clamp(0.0, 10.0) as usize;
    format!("{}{}", "█".repeat(full), "░".repeat(10 - full))
}

/// A step of eight heights.
fn step(chance: f64) -> char {
    const STEPS: [char; 8] = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];
    let height = (8.0 * chance).floor().clamp(0.0, 7.0) as usize;
    STEPS[height]
}
