//! `barm prep`.

use super::failure::Failure;
use super::{page, progress};
use crate::desk::{self, PrepSheet, WaterMix};
use crate::json;
use barm_domain::outlook::Look;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// What to buy, mix and lay out, summed over the whole day
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The plan file
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
    /// Also write the prep sheet as a PDF to this file
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// Paper of the prep sheet
    #[arg(long, value_enum, default_value = "letter")]
    paper: page::PaperSize,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    if let Some(file) = &arguments.pdf {
        desk::must_be_free(file, "prep.pdf")?;
    }
    let open = desk::open_plan(&arguments.plan)?;
    let prep = desk::prep(&open.plan)?;
    let mut found = Vec::new();
    if let Some(file) = &arguments.pdf {
        let line = progress::Line::new();
        found = desk::all_findings(&open.plan, Look::default(), &line);
        let pdf = desk::prep_pdf(&open.plan, &prep, &found, arguments.paper.into())?;
        desk::write_new(file, &pdf)?;
    }
    if arguments.json {
        json::write(out, &json::prepared(&prep))?;
        return Ok(ExitCode::SUCCESS);
    }
    page::title(out, &open.plan.title)?;
    let faults = desk::faults_without_forecast(&open.plan);
    if faults > 0 {
        let word = if faults == 1 { "fault" } else { "faults" };
        let says = format!(
            "This plan has {faults} {word}. Run `barm check {}` before you buy anything.",
            arguments.plan.display()
        );
        page::paragraph(out, 0, &says)?;
    }
    let sheet = desk::prep_sheet(&open.plan, &prep, &found);
    shopping(out, &sheet)?;
    stocks(out, &sheet)?;
    water(out, &sheet)?;
    trays(out, &sheet)?;
    page::part(out, "Totals")?;
    let totals = sheet.totals.iter();
    let totals = totals.map(|t| vec![t.what.clone(), t.amount.clone(), t.note.clone()]);
    page::rows(out, &["", "", ""], &[1], totals.collect::<Vec<_>>())?;
    for note in &sheet.notes {
        page::paragraph(out, 4, &format!("{}: {}", note.head, note.says))?;
    }
    if let Some(file) = &arguments.pdf {
        writeln!(out)?;
        writeln!(out, "Prep sheet: {}", file.display())?;
        page::unprinted(out, &open.plan)?;
    }
    Ok(ExitCode::SUCCESS)
}

/// What to buy, in whole packs.
pub(super) fn shopping(out: &mut impl Write, sheet: &PrepSheet) -> Result<(), Failure> {
    page::part(out, "Buy")?;
    let rows = sheet.shopping.iter().map(|p| {
        let buy = if p.packs.is_empty() { "enough in stock" } else { &p.packs };
        vec![p.item.clone(), p.need.clone(), buy.to_owned(), p.cost.clone()]
    });
    page::rows(out, &["", "needed", "buy", "cost"], &[3], rows.collect::<Vec<_>>())?;
    let cost = sheet.cost.as_deref().unwrap_or("no price known");
    page::paragraph(out, 4, &format!("In all: {cost}. {}", sheet.cost_note))?;
    Ok(())
}

/// Solutions to make before school.
pub(super) fn stocks(out: &mut impl Write, sheet: &PrepSheet) -> Result<(), Failure> {
    if sheet.stocks.is_empty() {
        return Ok(());
    }
    page::part(out, "Make before school (the teacher, never students: enzyme dust)")?;
    for stock in &sheet.stocks {
        let says =
            format!("{}, {}: {} For {}.", stock.name, stock.makes, stock.recipe, stock.serves);
        page::paragraph(out, 4, &says)?;
    }
    Ok(())
}

/// Hot and cold water, period by period.
pub(super) fn water(out: &mut impl Write, sheet: &PrepSheet) -> Result<(), Failure> {
    page::part(out, "Water")?;
    let rows = sheet.water.iter().map(|w| {
        let (period, clock) = (which(w), w.clock.clone());
        vec![period, clock, w.hot.clone(), w.cold.clone(), w.jug.clone(), w.bag.clone()]
    });
    let heads = ["", "mix at", "hot", "cold", "in the jug then", "in the bag"];
    page::rows(out, &heads, &[1, 2, 3], rows.collect::<Vec<_>>())?;
    for says in whose(sheet) {
        page::paragraph(out, 4, &says)?;
    }
    page::paragraph(out, 4, &sheet.water_note)?;
    Ok(())
}

/// The name of a water: its period and, where that has several, its temperature.
pub(super) fn which(water: &WaterMix) -> String {
    let WaterMix { period, poured, whose, .. } = water;
    if whose.is_empty() { period.clone() } else { format!("{period}, {poured}") }
}

/// Which bags get which water, where a period has several; said once where all periods are alike.
fn whose(sheet: &PrepSheet) -> Vec<String> {
    let mut periods: Vec<(&str, Vec<String>)> = Vec::new();
    for water in sheet.water.iter().filter(|water| !water.whose.is_empty()) {
        let says = format!("{} for {}", water.poured, water.whose);
        match periods.last_mut() {
            Some((period, all)) if *period == water.period => all.push(says),
            _ => periods.push((&water.period, vec![says])),
        }
    }
    let alike = periods.windows(2).all(|two| two[0].1 == two[1].1);
    let alike = alike && sheet.water.iter().all(|water| !water.whose.is_empty());
    let told = if alike { 1 } else { periods.len() };
    let says = |(period, all): &(&str, Vec<String>)| {
        let period = if alike { "Every period" } else { period };
        format!("{period}: {}.", all.join("; "))
    };
    periods.iter().take(told).map(says).collect()
}

fn trays(out: &mut impl Write, sheet: &PrepSheet) -> Result<(), Failure> {
    for period in &sheet.trays {
        page::part(out, &format!("Trays of {}, {}", period.period, period.clock))?;
        if !period.every_tray.is_empty() {
            let every = period.every_tray.join(", ");
            page::paragraph(out, 4, &format!("Every tray: {every}"))?;
        }
        for tray in &period.trays {
            let bags: Vec<String> =
                tray.bags.iter().map(|bag| format!("{} {}", bag.code, bag.treatment)).collect();
            let mut says = format!("Group {}: {}", tray.group, bags.join(", "));
            if !tray.also.is_empty() {
                says = format!("{says}. Also: {}", tray.also.join(", "));
            }
            page::paragraph(out, 4, &says)?;
        }
    }
    Ok(())
}
