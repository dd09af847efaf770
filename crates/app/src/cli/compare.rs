//! `barm compare`.

use super::failure::Failure;
use super::page;
use crate::desk::{self, Compared, Difference, chance, figure};
use crate::json;
use std::io::{self, Write};
use std::path::PathBuf;
use std::process::ExitCode;

/// Compare the levels of any table: do they differ by more than chance?
///
/// DATA is a CSV file with headings, one row a bag (or whatever was measured once). Gives the analysis of
/// variance, every pair (Tukey), each level against the control (Dunnett), a test by ranks, and
/// dealing the labels out again as cross-check.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The table
    #[arg(value_name = "DATA")]
    data: PathBuf,
    /// Heading of the values
    #[arg(long, value_name = "COL")]
    value: String,
    /// Heading of the levels that are compared
    #[arg(long, value_name = "COL")]
    by: String,
    /// Heading of the blocks, such as class periods, whose differences are taken out
    #[arg(long, value_name = "COL")]
    block: Option<String>,
    /// Level that every other is compared with
    #[arg(long, value_name = "LEVEL", allow_hyphen_values = true)]
    control: Option<String>,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
}

/// Pairs that are shown one by one.
const SHOWN: usize = 45;

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let Arguments { data, value, by, block, control, json } = arguments;
    let compared = desk::compare_table(data, value, by, block.as_deref(), control.as_deref())?;
    if *json {
        page::aside(&compared.notes)?;
        json::write(out, &json::compared(&compared))?;
        return Ok(ExitCode::SUCCESS);
    }
    let blocks = compared.block.as_ref().map(|block| format!(", in blocks of {block}"));
    let blocks = blocks.unwrap_or_default();
    page::title(out, &format!("{} by {}{blocks}", compared.value, compared.by))?;
    for says in &compared.says {
        page::paragraph(out, 0, says)?;
    }
    groups(out, &compared)?;
    tests(out, &compared)?;
    pairs(out, &compared)?;
    against(out, &compared)?;
    if !compared.notes.is_empty() {
        page::part(out, "How the table was read")?;
        for note in &compared.notes {
            page::paragraph(out, 2, note)?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn groups(out: &mut impl Write, compared: &Compared) -> io::Result<()> {
    page::part(out, "Levels (MAD: mean distance from the mean)")?;
    let adjusted = compared.block.is_some();
    let mut heads = vec!["", "n", "mean", "sd", "MAD"];
    if adjusted {
        heads.insert(3, "adjusted");
    }
    let row = |(name, group): (&String, &desk::Group)| {
        let summary = &group.summary;
        let sd = summary.sd.map_or_else(|| "–".to_owned(), figure);
        let mut row = vec![
            name.clone(),
            summary.n.to_string(),
            figure(summary.mean),
            sd,
            figure(summary.mad),
        ];
        if adjusted {
            row.insert(3, figure(group.adjusted_mean));
        }
        row
    };
    let rows: Vec<Vec<String>> =
        compared.names.iter().zip(&compared.told.groups).map(row).collect();
    let numbers: Vec<usize> = (1..heads.len()).collect();
    page::rows(out, &heads, &numbers, rows)
}

fn tests(out: &mut impl Write, compared: &Compared) -> io::Result<()> {
    page::part(out, "Do the levels differ at all? (p: chance of so much if none did)")?;
    let told = &compared.told;
    let mut rows = vec![vec![
        if compared.block.is_some() {
            "analysis of variance, after the blocks"
        } else {
            "analysis of variance"
        }
        .to_owned(),
        format!("F({}, {}) = {}", told.anova.df, told.rest.df, figure(told.anova.f)),
        chance(told.anova.p),
    ]];
    if let Some(welch) = told.welch {
        rows.push(vec![
            "spreads not taken to be equal (Welch)".to_owned(),
            format!("F({}, {}) = {}", figure(welch.df1), figure(welch.df2), figure(welch.f)),
            chance(welch.p),
        ]);
    }
    if let Some(ranks) = told.by_ranks {
        let name = if compared.block.is_some() { "Friedman" } else { "Kruskal–Wallis" };
        rows.push(vec![
            format!("by ranks alone ({name})"),
            format!("chi-square({}) = {}", ranks.df, figure(ranks.h)),
            chance(ranks.p),
        ]);
    }
    let dealt = &told.randomization;
    let how = if dealt.smallest.is_some() { "all deals" } else { "draws" };
    rows.push(vec![
        "labels dealt out again".to_owned(),
        format!("{} {how}", dealt.draws),
        chance(dealt.p),
    ]);
    page::rows(out, &["", "", "p"], &[2], rows)
}

fn pairs(out: &mut impl Write, compared: &Compared) -> io::Result<()> {
    page::part(out, "Every pair (Tukey; 95 % intervals that hold together)")?;
    let mut pairs: Vec<&Difference> = compared.told.pairs.iter().collect();
    let more = pairs.len().saturating_sub(SHOWN);
    if more > 0 {
        pairs.sort_by(|a, b| a.p.total_cmp(&b.p));
        pairs.truncate(SHOWN);
    }
    differences(out, compared, &pairs)?;
    if more > 0 {
        writeln!(out, "The {SHOWN} with the smallest p; {more} more with --json")?;
    }
    Ok(())
}

fn against(out: &mut impl Write, compared: &Compared) -> io::Result<()> {
    let Some(against) = &compared.told.against else { return Ok(()) };
    let control = &compared.names[against.control];
    page::part(
        out,
        &format!("Each against {control} (Dunnett; 95 % intervals that hold together)"),
    )?;
    let all: Vec<&Difference> = against.together.differences.iter().collect();
    differences(out, compared, &all)?;
    if !against.by_quadrature {
        // As an upper bound, so that it is never told too small.
        let error = (against.error * 1e6).ceil() / 1e6;
        writeln!(out, "These p are drawn from points, good to {error:.6}.")?;
    }
    Ok(())
}

fn differences(
    out: &mut impl Write,
    compared: &Compared,
    list: &[&Difference],
) -> io::Result<()> {
    let row = |d: &&Difference| {
        let [level, from] = [d.level, d.from].map(|at| &compared.names[at]);
        vec![
            format!("{level} − {from}"),
            figure(d.difference),
            figure(d.low),
            figure(d.high),
            chance(d.p),
        ]
    };
    let rows: Vec<Vec<String>> = list.iter().map(row).collect();
    page::rows(out, &["", "difference", "from", "to", "p"], &[1, 2, 3, 4], rows)
}
