//! What a breath meter showed: of bags, and of clean air.

use super::context::{Context, same_period};
use super::heading::Column;
use super::number::decimal;
use super::quoted::quoted;
use super::time::When;
use barm_domain::plan::Plan;
use barm_domain::result::meter::MeterReading;
use barm_science::meter::{Blank, Sample};
use std::collections::BTreeMap;

/// What the rows said of a meter so far.
#[derive(Debug, Default)]
pub(super) struct Metering {
    pub(super) readings: Vec<MeterReading>,
    pub(super) blanks: BTreeMap<String, Vec<Blank>>,
}

/// Highest percent that any display shows; whatever is more has lost its decimal point.
const HIGHEST: f64 = 10.0;

/// Whether a cell in the column of bags names no bag but clean air.
fn is_air(written: &str) -> bool {
    let plain: String =
        written.chars().filter(|c| c.is_alphabetic()).flat_map(char::to_lowercase).collect();
    matches!(plain.as_str(), "air" | "cleanair" | "blank" | "aire" | "airelimpio" | "blanco")
}

/// The percent of a cell; nothing where nothing was read.
fn percent(cell: &str) -> Result<Option<f64>, String> {
    let plain = cell.trim().trim_end_matches('%').trim_end();
    if matches!(plain.to_lowercase().as_str(), "" | "-" | "–" | "—" | "n/a") {
        return Ok(None);
    }
    let wrong = || {
        format!(
            "{} is not what a breath meter shows; write percent, such as 0.12",
            quoted(cell)
        )
    };
    let percent = decimal(plain).map_err(|_| wrong())?;
    if percent <= HIGHEST { Ok(Some(percent)) } else { Err(wrong()) }
}

impl Metering {
    /// Takes the cells of one bag's row that a meter filled.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub(super) fn bag(&mut self, code: &str, context: &Context<'_>) -> Result<(), String> {
        let Some(percent) = percent(context.cell(&Column::Meter))? else { return Ok(()) };
        let minute = match &context.when {
            None => None,
            Some(Ok(When::Minute(minute))) => Some(*minute),
            Some(Ok(When::Clock(_))) => {
                return Err(
                    "a reading of the breath meter needs the minute after the bag's zero \
                            reading, not the time of day"
                        .to_owned(),
                );
            }
            Some(Err(reason)) => return Err(reason.clone()),
        };
        self.readings.push(MeterReading {
            bag: code.to_owned(),
            percent,
            turn: turn(context)?,
            minute,
            celsius: None,
            sample: Sample::UNTHINNED,
            line: context.row.line,
        });
        Ok(())
    }

    /// Takes a row of clean air; tells whether it is one.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub(super) fn air(&mut self, context: &Context<'_>, plan: &Plan) -> Result<bool, String> {
        let has_meter = context.sheet.place(|column| *column == Column::Meter).is_some();
        if !has_meter || !is_air(context.cell(&Column::Bag)) {
            return Ok(false);
        }
        let Some(percent) = percent(context.cell(&Column::Meter))? else { return Ok(true) };
        let turn = turn(context)?.ok_or(
            "clean air needs its turn at the meter: write in the column \"turn\" as the how many-th \
             push it came",
        )?;
        let written = context.cell(&Column::Period);
        let named = |name: &str| written.is_empty() || same_period(written, name);
        let mut periods = plan.periods.iter().filter(|period| named(&period.name));
        let period = match (periods.next(), periods.next()) {
            (Some(one), None) => one.name.clone(),
            _ => {
                return Err("clean air belongs to one period: write its name in the column \
                            \"period\""
                    .to_owned());
            }
        };
        self.blanks.entry(period).or_default().push(Blank { turn, percent });
        Ok(true)
    }
}

/// The place of a push in the meter's order, if it was written down.
fn turn(context: &Context<'_>) -> Result<Option<u32>, String> {
    let cell = context.cell(&Column::Turn);
    if cell.is_empty() {
        return Ok(None);
    }
    let turn: Option<u32> = cell.parse().ok().filter(|turn| (1..=1000).contains(turn));
    turn.map(Some).ok_or_else(|| format!("{} is no turn; write 1, 2, 3 …", quoted(cell)))
}
