//! `barm round-two`.

use super::failure::Failure;
use super::{FAULTY, page, progress};
use crate::desk::{self, BothRounds, Next};
use crate::json;
use barm_domain::plan::Plan;
use barm_domain::result::{ClassResult, Compared};
use barm_domain::round_two::{By, Pair, Proposal};
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Propose what a class could make next, the most telling first, and judge both rounds together
///
/// From what the readings taught: more bags of what round one could not tell, other amounts of what did
/// best, more of what held bags back. Each with the chance of a clear verdict and how much narrower its
/// interval would become. Takes up to a minute. Told in docs/round-two.md.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file of round one
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// The readings of round one
    #[arg(value_name = "READINGS")]
    readings: PathBuf,
    /// What proposals are ranked by
    #[arg(long, value_enum, default_value = "clear-per-bag")]
    by: Rank,
    /// Number of proposals to show
    #[arg(long, value_name = "NUMBER", default_value_t = 10, value_parser = clap::value_parser!(u32).range(1..=200))]
    show: u32,
    /// Take the proposal of this rank
    #[arg(long, value_name = "RANK", requires = "to")]
    take: Option<usize>,
    /// New file for the plan of the proposal that is taken
    #[arg(long, value_name = "FILE", requires = "take")]
    to: Option<PathBuf>,
    /// Judge round one together with a second round, in place of proposing one
    #[arg(long, num_args = 2, value_names = ["SECOND_PLAN", "SECOND_READINGS"], conflicts_with_all = ["take", "to", "by", "show"])]
    pool: Option<Vec<PathBuf>>,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
}

/// What proposals are ranked by, as written on the command line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Rank {
    /// Clear verdicts that are expected, for each bag
    ClearPerBag,
    /// The same for each dollar, where prices are known
    ClearPerDollar,
    /// The same, whatever it takes
    Clear,
    /// How much narrower the interval becomes, for each bag
    NarrowerPerBag,
    /// The same for each dollar, where prices are known
    NarrowerPerDollar,
}

impl From<Rank> for By {
    fn from(rank: Rank) -> Self {
        match rank {
            Rank::ClearPerBag => Self::ClearPerBag,
            Rank::ClearPerDollar => Self::ClearPerDollar,
            Rank::Clear => Self::Clear,
            Rank::NarrowerPerBag => Self::ShrinksPerBag,
            Rank::NarrowerPerDollar => Self::ShrinksPerDollar,
        }
    }
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(file) = &arguments.to {
        desk::must_be_free(file, "round-two.toml")?;
    }
    let open = desk::open_plan(&arguments.plan)?;
    if let Some([plan, readings]) = arguments.pool.as_deref() {
        let second = desk::open_plan(plan)?;
        let both = desk::both_rounds((&open, &arguments.readings), (&second, readings))?;
        if arguments.json {
            json::write(out, &json::pooled(&both, desk::voice(&open.plan)))?;
        } else {
            show_both(out, &open.plan, &both)?;
        }
        return Ok(ExitCode::SUCCESS);
    }
    let line = progress::Line::new();
    let next = desk::round_two(&open, &arguments.readings, arguments.by.into(), &line)?;
    drop(line);
    if let (Some(rank), Some(file)) = (arguments.take, &arguments.to) {
        let taken = desk::proposal(&next, rank)?;
        desk::write_second(&arguments.plan, &taken.plan, file)?;
    }
    let ended = if next.proposals.failed.is_empty() {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(FAULTY)
    };
    if arguments.json {
        json::write(
            out,
            &json::proposed(&next, open.plan.known.says(), desk::voice(&open.plan)),
        )?;
    } else {
        show(out, &open.plan, &next, arguments)?;
    }
    Ok(ended)
}

fn show(
    out: &mut impl Write,
    plan: &Plan,
    next: &Next,
    arguments: &Arguments,
) -> Result<(), Failure> {
    let voice = desk::voice(plan);
    let all = &next.proposals;
    page::title(out, &format!("Round two: {}", plan.title))?;
    page::known(out, plan)?;
    for note in &next.notes {
        page::paragraph(out, 0, note)?;
    }
    writeln!(out)?;
    page::paragraph(out, 0, voice.second_look(all.round))?;
    let shown = &all.ranked[..all.ranked.len().min(arguments.show as usize)];
    page::part(
        out,
        &format!(
            "{} of {} second rounds, the most telling first",
            shown.len(),
            all.ranked.len()
        ),
    )?;
    let row = |(at, one): (usize, &Proposal)| {
        vec![
            (at + 1).to_string(),
            voice.proposal(one),
            format!("{:.0}", one.gain.bags),
            format!("{:.2}", one.gain.clear),
            format!("{:.1}", one.gain.half_now),
            format!("{:.1}", one.gain.half_then),
            if one.worth.dollars > 0.0 {
                format!("{:.2}", one.worth.dollars)
            } else {
                "–".into()
            },
        ]
    };
    page::rows(
        out,
        &["", "make", "bags", "clear", "± now", "± then", "$"],
        &[0, 2, 3, 4, 5, 6],
        shown.iter().enumerate().map(row).collect::<Vec<_>>(),
    )?;
    for (at, one) in shown.iter().enumerate().take(DETAILED) {
        page::part(out, &format!("Number {}", at + 1))?;
        page::paragraph(out, 0, &format!("{}.", voice.proposal(one)))?;
        page::paragraph(out, 0, &voice.proposal_why(one))?;
        for told in &one.told {
            page::paragraph(out, 2, &voice.proposal_expects(told))?;
        }
        page::paragraph(out, 0, &voice.proposal_shares(&one.shared))?;
        page::paragraph(out, 0, &voice.proposal_costs(one))?;
    }
    page::failed(out, &all.failed)?;
    writeln!(out)?;
    page::paragraph(out, 0, ENDS)?;
    if let (Some(rank), Some(file)) = (arguments.take, &arguments.to) {
        let bags = desk::proposal(next, rank)?.plan.bags.len();
        writeln!(out)?;
        page::paragraph(
            out,
            0,
            &format!(
                "Number {rank} is written to {}: {bags} bags with codes of their own, a week after round one. \
                 Change its days and periods, then `barm check` it.",
                file.display()
            ),
        )?;
    }
    Ok(())
}

/// Proposals that are told in full.
const DETAILED: usize = 3;

/// What the columns are.
const ENDS: &str = "Bags: all that are made, shared controls among them. Clear: verdicts that are expected to be \
     clear, of the comparisons it makes. ± now and then: half the interval (mm), the mean of its \
     comparisons; of a treatment that nobody made yet, what the forecast leaves open now, and what the \
     bags would measure. $: what the bags use up, where prices are known. Groups make every treatment \
     beside its reference. Write the plan of one with --take RANK --to FILE; once it was made, judge both \
     with --pool.";

fn show_both(out: &mut impl Write, plan: &Plan, both: &BothRounds) -> Result<(), Failure> {
    let voice = desk::voice(plan);
    let pooled = &both.pooled;
    page::title(out, &format!("Both rounds together: {}", plan.title))?;
    for note in &both.notes {
        page::paragraph(out, 0, note)?;
    }
    for looks in &pooled.looks {
        let asked = pooled.plan.questions.iter().find(|one| one.id == looks.question);
        page::part(out, asked.map_or(looks.question.as_str(), |one| one.asks.as_str()))?;
        page::paragraph(out, 0, &voice.looked(looks))?;
        for pair in &looks.again {
            writeln!(out)?;
            let say = |result: &ClassResult| found(result, pair).map(|c| voice.comparison(c));
            if let Some(says) = say(&pooled.first) {
                page::paragraph(out, 2, &format!("Round one: {says}"))?;
            }
            let Some(compared) = found(&pooled.both, pair) else { continue };
            if looks.pooled.is_some() {
                page::paragraph(
                    out,
                    2,
                    &format!("Both rounds: {}", voice.comparison(compared)),
                )?;
                page::paragraph(out, 2, &voice.why(compared))?;
            } else if let Some(says) = say(&pooled.second) {
                page::paragraph(out, 2, &format!("Round two by itself: {says}"))?;
            }
            if let Some(says) =
                voice.without_set_aside(compared).filter(|_| looks.pooled.is_some())
            {
                page::paragraph(out, 2, &says)?;
            }
            page::paragraph(out, 2, &measured(compared))?;
        }
    }
    if !both.rejected.is_empty() {
        page::part(out, "Not taken")?;
        for (round, row) in &both.rejected {
            let says = format!("Round {round}, line {}: {}", row.line, row.reason);
            page::paragraph(out, 4, &says)?;
        }
    }
    page::part(out, "For your students")?;
    for says in desk::why_stricter() {
        page::paragraph(out, 0, &says)?;
    }
    Ok(())
}

fn found<'a>(result: &'a ClassResult, pair: &Pair) -> Option<&'a Compared> {
    let answer = result.questions.iter().find(|one| one.question == pair.question)?;
    let same = |c: &&Compared| c.treatment == pair.treatment && c.reference == pair.reference;
    answer.comparisons.iter().find(same)
}

/// The difference of both rounds with its interval.
fn measured(compared: &Compared) -> String {
    let judged = &compared.with;
    match &judged.difference {
        Some(seen) => format!(
            "{} less {}, both rounds: {:.1} mm ({:.1} to {:.1}), {} and {} bags.",
            compared.treatment,
            compared.reference,
            seen.difference,
            seen.low,
            seen.high,
            judged.n,
            judged.n_reference
        ),
        None => {
            format!("{} and {} cannot be compared.", compared.treatment, compared.reference)
        }
    }
}
