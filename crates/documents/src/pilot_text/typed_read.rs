//! A file of readings as a typed sheet: cells as they stand there, with the unit of their column.

use super::heading::{Heading, Section};
use super::rows;
use super::typed::{HEADS, TypedSheet, WENT};
use crate::readings::table::Row;
use barm_domain::amount::number;
use barm_domain::nearest::plain;

impl TypedSheet {
    /// What a file of readings holds, cell by cell; what cannot be placed is left out, and the
    /// reader of the file says so. Any bytes give an answer.
    pub fn read(bytes: &[u8]) -> Self {
        let mut sheet = Self::default();
        let mut heading: Option<Heading> = None;
        for row in rows::of(bytes).0.iter().filter(|row| !row.is_blank()) {
            if row.cell(0).starts_with('#') {
                continue;
            }
            let word = plain(row.cell(0));
            let head = HEADS.iter().find(|(_, name)| plain(name) == word);
            if let Some((id, _)) = head {
                sheet.set(id, row.cell(1));
            } else if let Some(found) = Heading::of(row) {
                heading = Some(found);
            } else if let Some(heading) = &heading {
                sheet.row(row, heading);
            }
        }
        sheet
    }

    fn row(&mut self, row: &Row, heading: &Heading) {
        let cell = |role: &str| {
            let at = heading.place(role)?;
            let usual = usual(heading.section, role);
            Some(with_unit(row.cell(at), heading.columns[at].as_ref()?.unit.as_deref(), usual))
        };
        let first = cell("first").unwrap_or_default();
        match heading.section {
            Section::Spoons => {
                let mass = cell("mass").unwrap_or(first);
                let next = self.rows("spoon").last().map_or(0, |last| last + 1);
                self.set(&format!("spoon-{next}"), &mass);
            }
            Section::Cooling => self.pair("cooling", &first, cell("temperature"), None),
            Section::Syringe => self.pair("syringe", &first, cell("height"), None),
            Section::Ethanol => {
                self.pair("ethanol", &first, cell("meter"), cell("temperature"));
            }
            Section::Made => {
                let bag = row.cell(0).to_uppercase();
                for (id, _) in WENT {
                    if let Some(text) = cell(id) {
                        self.set(&format!("made-{bag}-{id}"), &text);
                    }
                }
            }
            Section::Bags => {
                let bag = row.cell(0).to_uppercase();
                if let (Some(minute), Some(height)) = (cell("minute"), cell("height")) {
                    self.height(&bag, &minute, &height);
                }
                for (at, column) in heading.columns.iter().enumerate() {
                    let Some(column) = column else { continue };
                    if let Some(minute) = column.minute {
                        let text = with_unit(row.cell(at), column.unit.as_deref(), "mm");
                        self.height(&bag, &minute.to_string(), &text);
                    }
                }
            }
        }
    }

    fn pair(&mut self, table: &str, at: &str, read: Option<String>, warm: Option<String>) {
        let Some(read) = read.filter(|read| !read.is_empty()) else { return };
        let next = self.rows(table).last().map_or(0, |last| last + 1);
        self.set(&format!("{table}-{next}-at"), at);
        self.set(&format!("{table}-{next}"), &read);
        self.set(&format!("{table}-{next}-warm"), &warm.unwrap_or_default());
    }

    fn height(&mut self, bag: &str, minute: &str, height: &str) {
        if height.is_empty() {
            return;
        }
        let value = |text: &str| number(text.trim_end_matches("min").trim()).ok();
        let same = |at: &usize| {
            let known = self.get(&format!("minute-{at}"));
            known == minute || value(known).is_some() && value(known) == value(minute)
        };
        let columns = self.rows("minute");
        // A bag that has a height at that minute already says something else: both are kept.
        let free = |at: &usize| self.get(&format!("bag-{bag}-{at}")).is_empty();
        let known = columns.iter().copied().find(|at| same(at) && free(at));
        let at = known.unwrap_or_else(|| columns.last().map_or(0, |last| last + 1));
        self.set(&format!("minute-{at}"), minute);
        self.set(&format!("bag-{bag}-{at}"), height);
    }
}

/// The unit that a bare number has in a cell of the sheet.
fn usual(section: Section, role: &str) -> &'static str {
    match (section, role) {
        (Section::Spoons, _) => "g",
        (Section::Cooling, "first") | (Section::Bags, "minute") => "min",
        (Section::Syringe, "first") | (Section::Made, "water") => "mL",
        (Section::Syringe | Section::Bags, _) => "mm",
        (Section::Ethanol, "first" | "meter") => "%",
        (Section::Made, "yeast" | "food") => "",
        (Section::Cooling | Section::Made | Section::Ethanol, _) => "°C",
    }
}

/// A cell with the unit of its column, where it has none of its own and the sheet would take it for
/// another. A cell in which nothing was read is blank.
fn with_unit(cell: &str, unit: Option<&str>, usual: &str) -> String {
    let cell = cell.trim();
    if super::readings::is_blank(cell) {
        return String::new();
    }
    match unit {
        Some(unit) if unit != usual && number(cell).is_ok() => format!("{cell} {unit}"),
        _ => cell.to_owned(),
    }
}
