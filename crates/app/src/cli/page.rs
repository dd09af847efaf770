//! A page of text: headings with a double rule, ledger rows, wrapped paragraphs.

use crate::desk::{self, Outlook, Size, Terminal};
use barm_domain::outlook::OutlookError;
use barm_domain::plan::Plan;
use comfy_table::{CellAlignment, ContentArrangement, Table, TableStyle};
use std::io::{self, Write};

/// Widest page; a longer line is hard to read.
const WIDEST: u16 = 100;
/// Width where there is no terminal to ask.
const USUAL: u16 = 96;

/// Width of the page in columns.
pub(super) fn width() -> u16 {
    Table::new().width().map_or(USUAL, |width| width.clamp(40, WIDEST))
}

/// A title over a double rule.
pub(super) fn title(out: &mut impl Write, words: &str) -> io::Result<()> {
    writeln!(out, "{words}")?;
    writeln!(out, "{}", "═".repeat(usize::from(width())))
}

/// The head of a part of the page.
pub(super) fn part(out: &mut impl Write, words: &str) -> io::Result<()> {
    writeln!(out)?;
    writeln!(out, "{words}")?;
    writeln!(out, "{}", "─".repeat(usize::from(width())))
}

/// Rows under heads; columns named in `numbers` are set to the right.
pub(super) fn rows(
    out: &mut impl Write,
    heads: &[&str],
    numbers: &[usize],
    rows: impl IntoIterator<Item = Vec<String>>,
) -> io::Result<()> {
    let mut table = Table::new();
    table.load_style(TableStyle::new());
    table.set_content_arrangement(ContentArrangement::Dynamic);
    table.set_width(width());
    if heads.iter().any(|head| !head.is_empty()) {
        table.set_header(heads.iter().copied());
    }
    table.add_rows(rows);
    for column in numbers {
        if let Some(column) = table.column_mut(*column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    for line in table.lines() {
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}

/// A paragraph, wrapped to the page and set in by `indent` columns after its first line.
pub(super) fn paragraph(out: &mut impl Write, indent: usize, words: &str) -> io::Result<()> {
    wrapped(out, String::new(), indent, words)
}

/// A paragraph, wrapped to the page and set in by `indent` columns as a whole.
pub(super) fn note(out: &mut impl Write, indent: usize, words: &str) -> io::Result<()> {
    wrapped(out, " ".repeat(indent), indent, words)
}

fn wrapped(
    out: &mut impl Write,
    mut line: String,
    indent: usize,
    words: &str,
) -> io::Result<()> {
    let room = usize::from(width());
    for word in words.split_whitespace() {
        if !line.trim().is_empty() && line.chars().count() + 1 + word.chars().count() > room {
            writeln!(out, "{line}")?;
            line = " ".repeat(indent);
        } else if !line.trim().is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    writeln!(out, "{line}")
}

/// Says what a person should know on the error stream, beside an answer that only programs read.
pub(super) fn aside(notes: &[String]) -> io::Result<()> {
    let mut err = io::stderr().lock();
    notes.iter().try_for_each(|note| writeln!(err, "barm: {note}"))
}

/// One line about the lots that forecasts go by, if a pilot tried any.
pub(super) fn known(out: &mut impl Write, plan: &Plan) -> io::Result<()> {
    plan.known.says().map_or(Ok(()), |says| paragraph(out, 0, &says))
}

/// What the pages that were just written could not print of the plan's own words.
pub(super) fn unprinted(out: &mut impl Write, plan: &Plan) -> io::Result<()> {
    for finding in desk::unprinted(plan) {
        paragraph(out, 2, &format!("{} {}", finding.message, finding.fix))?;
    }
    Ok(())
}

/// Treatments without a forecast, each with its reason; nothing if there is none.
pub(super) fn unforeseen(out: &mut impl Write, outlook: &Outlook) -> io::Result<()> {
    failed(out, &outlook.failed)
}

/// The same for treatments alone.
pub(super) fn failed(out: &mut impl Write, failed: &[OutlookError]) -> io::Result<()> {
    if failed.is_empty() {
        return Ok(());
    }
    part(out, "No forecast")?;
    for error in failed {
        paragraph(out, 4, &desk::unforeseen(error))?;
    }
    Ok(())
}

/// Where forecasts go beyond what is known, a line a law; nothing if they nowhere do.
pub(super) fn beyond(out: &mut impl Write, lines: &[String]) -> Result<(), io::Error> {
    if lines.is_empty() {
        return Ok(());
    }
    part(out, "Beyond what is known")?;
    lines.iter().try_for_each(|line| paragraph(out, 4, line))
}

/// Paper to print on, as written on the command line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub(super) enum PaperSize {
    /// US Letter
    Letter,
    /// A4
    A4,
}

impl From<PaperSize> for Size {
    fn from(size: PaperSize) -> Self {
        match size {
            PaperSize::Letter => Self::Letter,
            PaperSize::A4 => Self::A4,
        }
    }
}

/// The terminal that charts are drawn for.
pub(super) fn terminal() -> Terminal {
    Terminal { width: usize::from(width()), unicode: true }
}

/// A chart, line by line.
pub(super) fn chart(out: &mut impl Write, chart: &str) -> io::Result<()> {
    for line in chart.lines() {
        writeln!(out, "{}", line.trim_end())?;
    }
    Ok(())
}
