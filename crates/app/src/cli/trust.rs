//! `barm trust`.

use super::failure::Failure;
use super::{page, progress};
use crate::desk::{self, Trust};
use crate::json;
use barm_domain::nearest::nearest;
use barm_domain::trust::{Bar, CELLS, Cell, Count, Held, OVER_ALL, Tally, cell, over_all};
use std::io::Write;
use std::process::ExitCode;

/// Tell how far "clear" and "can't tell" can be trusted, on invented classes
///
/// Invents classes of 26 kinds, some with slips, and puts their heights through what judges a real
/// day, from the record to the words: once with no true difference, and once with one of twice the
/// spread of bags. What a kind of class is stands in docs/trust.md.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Classes of each kind
    #[arg(long, value_name = "N", default_value_t = USUAL, value_parser = clap::value_parser!(u64).range(1..=1_000_000))]
    classes: u64,
    /// Only this kind of class, such as b4-p3-t3-own-g1
    #[arg(long, value_name = "NAME", value_parser = named)]
    cell: Option<&'static Cell>,
    /// Seed; the same seed gives the same classes on every machine
    #[arg(long, default_value_t = 20_270_309)]
    seed: u64,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Answer as a Markdown table
    #[arg(long, conflicts_with = "json")]
    markdown: bool,
}

/// Classes of a kind for which the bars are meant.
const USUAL: u64 = 2000;

fn named(text: &str) -> Result<&'static Cell, String> {
    cell(text).ok_or_else(|| match nearest(text, CELLS.iter().map(|cell| cell.name)) {
        Some(meant) => format!("there is no such kind of class; did you mean {meant}?"),
        None => "there is no such kind of class; docs/trust.md lists all 24".to_owned(),
    })
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let cells: Vec<&'static Cell> = match arguments.cell {
        Some(one) => vec![one],
        None => CELLS.iter().collect(),
    };
    let line = progress::Line::new();
    let trust = desk::trust(&cells, arguments.classes, arguments.seed, &line)?;
    drop(line);
    if arguments.json {
        json::write(out, &json::trusted(&trust))?;
    } else if arguments.markdown {
        markdown(out, &trust)?;
    } else {
        told(out, &trust)?;
    }
    Ok(ExitCode::SUCCESS)
}

fn told(out: &mut impl Write, trust: &Trust) -> Result<(), Failure> {
    page::title(out, "How far the words can be trusted")?;
    let heads =
        ["kind of class", "false clear", "false large gap", "hold", "clear found", "foretold"];
    let rows = trust.cells.iter().map(|(cell, tally)| {
        vec![
            cell.name.to_owned(),
            wrong(Bar::Clear, cell, tally),
            wrong(Bar::Large, cell, tally),
            marked(per_cent(tally.held), Bar::Together, cell, tally),
            per_cent(tally.true_clear),
            foretold(trust, cell),
        ]
    });
    page::rows(out, &heads, &[1, 2, 3, 4, 5], rows.collect::<Vec<_>>())?;
    writeln!(out)?;
    page::paragraph(
        out,
        0,
        &format!(
            "Of {} classes of each kind (seed {}): how many heard \"clear\" of any comparison with no \
             true difference, or found a gap large enough by the school's rule, each with the upper \
             99 % bound in brackets; in how many all 95 % intervals held; and how many heard \"clear\" \
             of a true difference of twice the spread of bags, beside how many of them are foretold to. \
             ! marks what misses its bar.",
            trust.classes, trust.seed
        ),
    )?;
    writeln!(out)?;
    for says in says(trust) {
        page::paragraph(out, 2, &says)?;
    }
    Ok(())
}

/// What holds and what does not, a sentence or two a bar.
fn says(trust: &Trust) -> Vec<String> {
    let mut says: Vec<String> = Bar::ALL.into_iter().map(|bar| bar_says(trust, bar)).collect();
    let sums = over_all(trust.cells.iter().map(|(cell, tally)| (*cell, tally)));
    if trust.cells.len() > 1 {
        for (sum, rule) in sums.into_iter().zip(["the teacher's rule", "the school's rule"]) {
            let end = if sum.at_most() <= OVER_ALL { "holds" } else { "does not hold" };
            says.push(format!(
                "Over all kinds in which \"clear\" can be had, by {rule}: {} wrong, at most 5.3 % asked \
                 of the bound: {end}.",
                bounded(sum)
            ));
        }
    }
    let (off, of) = trust.not_as_foretold();
    if of > 0 {
        let end = if off.is_empty() {
            format!("holds in all {of}")
        } else {
            format!("holds in {} of {of}, not in {}", of - off.len(), off.join(", "))
        };
        says.push(format!(
            "\"Clear\" found as often as power foretells, to 5 percentage points: {end}."
        ));
    }
    for (cell, tally) in &trust.cells {
        if let Some(cost) = trust.slips_cost(cell, tally) {
            says.push(format!(
                "{}: \"clear\" is found in {:.1} percentage points fewer classes than without slips.",
                cell.name,
                100.0 * cost
            ));
        }
    }
    if trust.classes < USUAL {
        says.push(format!(
            "The bars are meant for {USUAL} classes of a kind: with fewer, the bounds are wide, and \
             miss them by that alone."
        ));
    }
    says
}

fn bar_says(trust: &Trust, bar: Bar) -> String {
    let asked = match bar {
        Bar::Clear => {
            "False \"clear\" (bound at most 6.5 %; never with one bag each or one group to a treatment)"
        }
        Bar::Large => "False large gap (the same by the school's rule)",
        Bar::Together => "Intervals hold together (93 to 98 %, without slips)",
    };
    let held = |wanted: Held| {
        let all =
            trust.cells.iter().filter(move |(cell, tally)| bar.holds(cell, tally) == wanted);
        all.map(|(cell, _)| cell.name).collect::<Vec<_>>()
    };
    let (yes, no) = (held(Held::Yes), held(Held::No));
    let of = yes.len() + no.len();
    if of == 0 {
        format!("{asked}: not asked here.")
    } else if no.is_empty() {
        format!("{asked}: holds in all {of}.")
    } else {
        format!("{asked}: holds in {} of {of}, not in {}.", yes.len(), no.join(", "))
    }
}

fn markdown(out: &mut impl Write, trust: &Trust) -> Result<(), Failure> {
    writeln!(
        out,
        "| kind of class | who makes what | slips | false clear | false large gap | hold together | \
         clear found | foretold | large gap found | slips cost |"
    )?;
    writeln!(out, "|---|---|---|---:|---:|---:|---:|---:|---:|---:|")?;
    for (cell, tally) in &trust.cells {
        let cost =
            trust.slips_cost(cell, tally).map(|cost| format!("{:.1} points", 100.0 * cost));
        writeln!(
            out,
            "| `{}` | {} | {} | {} | {} | {} | {} | {} | {} | {} |",
            cell.name,
            cell.made.says(),
            cell.slips.word(),
            wrong(Bar::Clear, cell, tally),
            wrong(Bar::Large, cell, tally),
            marked(per_cent(tally.held), Bar::Together, cell, tally),
            per_cent(tally.true_clear),
            foretold(trust, cell),
            per_cent(tally.true_large),
            cost.unwrap_or_default(),
        )?;
    }
    writeln!(out)?;
    writeln!(
        out,
        "{} classes of each kind, seed {}. ! marks what misses its bar.",
        trust.classes, trust.seed
    )?;
    writeln!(out)?;
    for says in says(trust) {
        writeln!(out, "- {says}")?;
    }
    Ok(())
}

fn wrong(bar: Bar, cell: &Cell, tally: &Tally) -> String {
    marked(bounded(bar.counted(tally)), bar, cell, tally)
}

fn marked(says: String, bar: Bar, cell: &Cell, tally: &Tally) -> String {
    let missed = bar.holds(cell, tally) == Held::No;
    if missed { format!("{says} !") } else { says }
}

fn bounded(count: Count) -> String {
    if count.of == 0 {
        return String::new();
    }
    format!("{} ({:.1})", per_cent(count), 100.0 * count.at_most())
}

fn foretold(trust: &Trust, cell: &Cell) -> String {
    trust.foretold(cell).map(|share| format!("{:.1} %", 100.0 * share)).unwrap_or_default()
}

fn per_cent(count: Count) -> String {
    count.share().map(|share| format!("{:.1} %", 100.0 * share)).unwrap_or_default()
}
