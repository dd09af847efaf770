//! `barm assign`.

mod how_good;

use super::failure::Failure;
use super::{FAULTY, page};
use crate::desk::{self, Assignment};
use crate::json;
use barm_domain::assign::day::Day;
use barm_domain::assign::{Assigned, Clash, Taken};
use barm_domain::plan::{GroupSetting, Plan};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Decide who does what: questions, treatments and controls for every group of every period
///
/// Every period has a control of each question run there, every group makes its own where it makes
/// two bags or more, and what there is of rulers and meters suffices. Then, each before the next:
/// every treatment in as many periods as possible, as many bags as the plan asks for, the groups'
/// wishes, evenness. Exit code 1 if it cannot be done; then the rules that clash are named.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Table of what groups wish and the teacher sets (docs/assign.md)
    #[arg(value_name = "WISHES.csv")]
    wishes: PathBuf,
    /// Seed of what is left to chance: benches, who pours first, who of equals gets what
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    seed: u64,
    /// Bags of a group that has no number of its own [default: by what the plan asks for]
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u32).range(1..=8))]
    bags: Option<u32>,
    /// Take no more of a material than the plan has in stock
    #[arg(long)]
    stock_only: bool,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Also write the plan with these bags to this new file
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(file) = &arguments.out {
        desk::must_be_free(file, "plan.toml")?;
    }
    let taken = Taken { bags: arguments.bags, stock_only: arguments.stock_only };
    let assignment =
        desk::assignment(&arguments.plan, &arguments.wishes, arguments.seed, taken)?;
    if let (Ok((_, with)), Some(file)) = (&assignment.outcome, &arguments.out) {
        desk::write_assigned(&arguments.plan, with, file)?;
    }
    if arguments.json {
        json::write(out, &json::assigned(&assignment, arguments.seed))?;
    } else {
        show(&assignment, arguments, out)?;
    }
    Ok(if assignment.outcome.is_ok() { ExitCode::SUCCESS } else { ExitCode::from(FAULTY) })
}

fn show(
    assignment: &Assignment,
    arguments: &Arguments,
    out: &mut impl Write,
) -> Result<(), Failure> {
    let Assignment { plan, day, bags, notes, outcome } = assignment;
    page::title(out, &format!("Who does what: {}", plan.title))?;
    let says = format!(
        "{} groups in {} periods, {bags} bags each unless they say otherwise. Seed {}.",
        day.groups.len(),
        day.periods.len(),
        arguments.seed
    );
    page::paragraph(out, 0, &says)?;
    for note in notes {
        page::paragraph(out, 2, note)?;
    }
    let (found, with) = match outcome {
        Ok((found, with)) => (found, with),
        Err(clash) => return clashes(day, clash, out),
    };
    for period in 0..day.periods.len() {
        table(day, found, plan, period, out)?;
    }
    spread(day, found, out)?;
    how_good::wishes(day, found, out)?;
    how_good::proof(day, found, out)?;
    if let Some(file) = &arguments.out {
        let gone = with.retired_codes.len() - plan.retired_codes.len();
        let says = format!(
            "Written to {}: {} bags; {gone} codes of bags that are gone are never used again.",
            file.display(),
            with.bags.len()
        );
        writeln!(out)?;
        page::paragraph(out, 0, &says)?;
    }
    Ok(())
}

fn clashes(day: &Day, clash: &Clash, out: &mut impl Write) -> Result<(), Failure> {
    page::part(out, "It cannot be done")?;
    let says = if clash.smallest {
        "These clash, and no fewer do: take one of them back."
    } else if clash.minimal {
        "These clash; without any one of them the others can be kept. Take one of them back."
    } else {
        "These clash; it was not found out whether all of them are needed for that."
    };
    page::paragraph(out, 0, says)?;
    for rule in &clash.rules {
        page::paragraph(out, 4, &format!("  • {}", day.rules[*rule].words(day)))?;
    }
    Ok(())
}

/// One period: its groups by bench.
fn table(
    day: &Day,
    found: &Assigned,
    plan: &Plan,
    period: usize,
    out: &mut impl Write,
) -> Result<(), Failure> {
    page::part(out, &format!("Period {}", day.periods[period]))?;
    let both = day.groups.iter().zip(&found.groups);
    let rows = both.filter(|(group, _)| group.period == period).map(|(group, made)| {
        let arm = &day.arms[made.arm];
        let own = |setting: &&GroupSetting| {
            setting.period == day.periods[period] && setting.group == group.number
        };
        let label = plan.group_settings.iter().find(own).and_then(|own| own.label.as_ref());
        let bags: Vec<String> = made
            .bags
            .iter()
            .map(|bag| {
                let name = &day.treatments[*bag];
                if arm.reference == Some(*bag) {
                    format!("{name} (control)")
                } else {
                    name.clone()
                }
            })
            .collect();
        let rank = group.ranks.iter().position(|ranked| *ranked == arm.question);
        let wish = match (rank, group.ranks.is_empty()) {
            (Some(rank), _) => format!("choice {}", rank + 1),
            (None, true) => String::new(),
            (None, false) => "not wished".to_owned(),
        };
        vec![
            label.map_or(group.number.to_string(), |label| format!("{} {label}", group.number)),
            day.questions[arm.question].clone(),
            bags.join(", "),
            wish,
            made.place.to_string(),
            made.turn.to_string(),
        ]
    });
    let heads =
        ["group", "question", "bags, in the order of pouring", "wish", "bench", "pours"];
    page::rows(out, &heads, &[4, 5], rows.collect::<Vec<_>>())?;
    Ok(())
}

/// Where each treatment stands.
fn spread(day: &Day, found: &Assigned, out: &mut impl Write) -> Result<(), Failure> {
    page::part(out, "Bags of each treatment, period by period")?;
    let mut heads = vec!["question", "treatment"];
    heads.extend(day.periods.iter().map(String::as_str));
    heads.extend(["in all", "asked"]);
    let mut rows = Vec::new();
    for (a, arm) in day.arms.iter().enumerate() {
        for (treatment, asked) in arm.treatments.iter().zip(&arm.asked) {
            let bags = found.spread(day, a, *treatment);
            let mut row =
                vec![day.questions[arm.question].clone(), day.treatments[*treatment].clone()];
            row.extend(bags.iter().map(usize::to_string));
            row.extend([bags.iter().sum::<usize>().to_string(), asked.to_string()]);
            rows.push(row);
        }
    }
    let numbers: Vec<usize> = (2..heads.len()).collect();
    page::rows(out, &heads, &numbers, rows)?;
    for (question, id) in day.questions.iter().enumerate() {
        if !found.connected(day, question) {
            let says = format!(
                "“{id}” falls apart: some of its treatments never meet in a period, not even by \
                 others between them, and cannot be compared."
            );
            page::paragraph(out, 2, &says)?;
        }
    }
    Ok(())
}
