//! What the columns beside the heights say about a row.

use super::codes::Codes;
use super::heading::Column;
use super::height::LengthUnit;
use super::quoted::quoted;
use super::sheet::Sheet;
use super::table::Row;
use super::time::{TimeColumn, When, time};

/// A row with what its other columns say about its heights.
pub(super) struct Context<'a> {
    /// The row.
    pub(super) row: &'a Row,
    /// The headings over it.
    pub(super) sheet: &'a Sheet,
    /// The row's time, `None` if it has none, or why it cannot be read.
    pub(super) when: Option<Result<When, String>>,
    /// The unit that the row itself names.
    pub(super) unit: Option<LengthUnit>,
    /// What was noted.
    pub(super) event: Option<String>,
}

impl<'a> Context<'a> {
    /// What a row says about its heights.
    ///
    /// # Errors
    /// The reason for which the whole row cannot be read.
    pub(super) fn of(
        row: &'a Row,
        sheet: &'a Sheet,
        times: Option<(usize, TimeColumn)>,
    ) -> Result<Self, String> {
        let cell =
            |is: &Column| sheet.place(|column| column == is).map_or("", |at| row.cell(at));
        let unit = match cell(&Column::Unit) {
            "" => None,
            word => Some(LengthUnit::named(word).ok_or_else(|| {
                format!("the unit {} is none of mm, cm and in", quoted(word))
            })?),
        };
        let when =
            times.filter(|&(place, _)| !row.cell(place).is_empty()).map(|(place, kind)| {
                time(row.cell(place), kind).ok_or_else(|| not_a_time(row.cell(place), kind))
            });
        let event = Some(cell(&Column::Event).to_owned()).filter(|event| !event.is_empty());
        Ok(Self { row, sheet, when, unit, event })
    }

    /// The row's cell in a column; empty without one.
    pub(super) fn cell(&self, is: &Column) -> &'a str {
        self.sheet.place(|column| column == is).map_or("", |at| self.row.cell(at))
    }

    /// The place in the plan's list of the bag that the row belongs to.
    ///
    /// # Errors
    /// Why it belongs to none.
    pub(super) fn bag(&self, codes: &Codes<'_>) -> Result<usize, String> {
        let written = self.cell(&Column::Bag);
        if written.is_empty() {
            return Err("no bag code stands on this line".to_owned());
        }
        let place = codes.find(written)?;
        let period = self.cell(&Column::Period);
        match codes.bag(place) {
            Some(bag) if !period.is_empty() && !same_period(period, &bag.period) => {
                Err(format!(
                    "{} is a bag of period {}, but this line says period {}",
                    bag.code,
                    bag.period,
                    quoted(period)
                ))
            }
            _ => Ok(place),
        }
    }
}

/// Why a cell of times cannot be read.
pub(super) fn not_a_time(cell: &str, column: TimeColumn) -> String {
    let such_as = match column {
        TimeColumn::Minutes => "minutes such as 12 or 12:30",
        TimeColumn::Seconds => "seconds such as 90",
        TimeColumn::Either => "minutes such as 12 or a time of day such as 8:31",
        TimeColumn::Clock => "a time of day such as 8:31",
    };
    format!("{} is not {such_as}", quoted(cell))
}

/// Whether a cell of the set-aside column says that the bag counts.
pub(super) fn is_no(cell: &str) -> bool {
    matches!(
        cell.to_lowercase().as_str(),
        "" | "-" | "–" | "—" | "no" | "none" | "n" | "n/a" | "0"
    )
}

/// Whether two names mean the same period: `P1`, `period 1` and `1` do.
pub(super) fn same_period(written: &str, name: &str) -> bool {
    let bare = |text: &str| {
        let plain: String =
            text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect();
        let rest = ["periodo", "período", "period", "per", "pd", "p"]
            .iter()
            .find_map(|word| plain.strip_prefix(word))
            .filter(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
        rest.map_or_else(|| plain.clone(), str::to_owned)
    };
    bare(written) == bare(name)
}
