//! A pilot's readings: tables one under the other, each with its heading; any of them may be missing.

use super::cell::{Kind, Odd, amount};
use super::heading::{Column, Heading, Section};
use super::rows;
use crate::readings::quoted::quoted;
use crate::readings::table::Row;
use barm_domain::amount::Amount;
use barm_domain::nearest::plain;
use barm_domain::pilot::{
    BagHeights, Height, Made, PilotFault, PilotReadings, Seen, Shown, Temperature, Volume,
    Weight,
};

/// What a file of a pilot's readings holds.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PilotFile {
    /// What was taken.
    pub readings: PilotReadings,
    /// Everything that was not, by line.
    pub faults: Vec<PilotFault>,
    /// What a person should know about how the file was read.
    pub notes: Vec<String>,
}

/// Reads a pilot's readings; any bytes give an answer.
///
/// - A row whose first cell is `spoon`, `cooling`, `syringe`, `made`, `bag` or `ethanol` is a heading;
///   the rows under it are its table, up to the next heading.
/// - `date`, `room`, `yeast lot`, `bag lot`, `enzyme lot` and `meter name` have their value beside them.
/// - Values have their own unit, that of their heading in brackets, or the usual one (min, mm, mL, g, %);
///   a temperature must have one.
/// - Comma, semicolon, tab or bar between cells; blank rows and rows that start with # are passed over.
pub fn readings(bytes: &[u8]) -> PilotFile {
    let (rows, note) = rows::of(bytes);
    let mut file = PilotFile { notes: note.into_iter().collect(), ..PilotFile::default() };
    let mut heading: Option<Heading> = None;
    for row in rows.iter().filter(|row| !row.is_blank()) {
        if row.cell(0).starts_with('#') {
            continue;
        }
        if file.key(row) {
            continue;
        }
        if let Some(found) = Heading::of(row) {
            file.unknown_columns(row, &found);
            heading = Some(found);
            continue;
        }
        match &heading {
            Some(heading) => file.row(row, heading),
            None => file.fault(
                row,
                format!("{} stands under no heading", quoted(row.cell(0))),
                "write a heading above it, such as bag, 0, 5, 10 or spoon, mass (g)",
            ),
        }
    }
    file.faults.sort_by_key(|fault| fault.line);
    file
}

impl PilotFile {
    fn fault(&mut self, row: &Row, what: String, fix: impl Into<String>) {
        self.faults.push(PilotFault { line: row.line, what, fix: fix.into() });
    }

    fn odd(&mut self, row: &Row, odd: Odd) {
        self.fault(row, odd.what, odd.fix);
    }

    /// Takes a row that has one value beside its name.
    fn key(&mut self, row: &Row) -> bool {
        let (name, value) = (plain(row.cell(0)), row.cell(1));
        let lots = &mut self.readings.lots;
        let word = || (!value.is_empty()).then(|| value.to_owned());
        match name.as_str() {
            "yeastlot" => lots.yeast = word(),
            "baglot" | "boxofbags" => lots.bags = word(),
            "enzymelot" => lots.enzymes = word(),
            "metername" => lots.meter = word(),
            "room" | "roomtemperature" => match Kind::Celsius.read(value, None) {
                _ if value.is_empty() => {}
                Ok(celsius) => self.readings.room_celsius = Some(celsius),
                Err(odd) => self.odd(row, odd),
            },
            "date" => match value.parse() {
                _ if value.is_empty() => {}
                Ok(date) => self.readings.date = Some(date),
                Err(_) => {
                    let what = format!("{} is not a date", quoted(value));
                    self.fault(row, what, "write it like 2027-03-02");
                }
            },
            _ => return false,
        }
        true
    }

    fn unknown_columns(&mut self, row: &Row, heading: &Heading) {
        let example = heading.section.example();
        for (cell, _) in row
            .cells
            .iter()
            .zip(&heading.columns)
            .filter(|(cell, column)| column.is_none() && !cell.is_empty())
        {
            let what = format!("{} is no heading known here", quoted(cell));
            self.fault(row, what, format!("write it like {example}"));
        }
        let wanted: &[&str] = match heading.section {
            Section::Cooling => &["temperature"],
            Section::Syringe => &["height"],
            Section::Ethanol => &["meter"],
            Section::Bags if heading.place("at").is_none() => &["minute", "height"],
            Section::Bags | Section::Made | Section::Spoons => &[],
        };
        for role in wanted.iter().filter(|role| heading.place(role).is_none()) {
            let what = format!("the heading has no column for the {role}");
            self.fault(row, what, format!("write it like {example}"));
        }
    }

    fn row(&mut self, row: &Row, heading: &Heading) {
        let values: Vec<Option<f64>> = self.values(row, heading);
        let of =
            |role: &str| heading.place(role).and_then(|at| values.get(at).copied().flatten());
        let line = row.line;
        let all = &mut self.readings;
        match heading.section {
            Section::Spoons => {
                if let Some(grams) = of("mass").or_else(|| of("first")) {
                    all.spoons.push(Seen { value: Weight { grams }, line });
                }
            }
            Section::Cooling => {
                if let (Some(minute), Some(celsius)) = (of("first"), of("temperature")) {
                    all.dummy.push(Seen { value: Temperature { minute, celsius }, line });
                }
            }
            Section::Syringe => {
                if let (Some(air_ml), Some(height_mm)) = (of("first"), of("height")) {
                    all.syringe.push(Seen { value: Volume { air_ml, height_mm }, line });
                }
            }
            Section::Ethanol => {
                if let (Some(strength), Some(percent)) = (of("first"), of("meter")) {
                    let celsius = of("temperature");
                    all.meter.push(Seen { value: Shown { strength, celsius, percent }, line });
                }
            }
            Section::Bags => {
                let bag = row.cell(0).trim().to_uppercase();
                let mut seen = Vec::new();
                if let (Some(minute), Some(height_mm)) = (of("minute"), of("height")) {
                    seen.push(Height { minute, height_mm });
                }
                for (column, value) in heading.columns.iter().zip(&values) {
                    let minute = column.as_ref().and_then(|column| column.minute);
                    if let (Some(minute), Some(height_mm)) = (minute, *value) {
                        seen.push(Height { minute, height_mm });
                    }
                }
                if seen.is_empty() {
                    // A row of the blank sheet that was left so.
                    return;
                }
                let seen = seen.into_iter().map(|value| Seen { value, line });
                match all.bags.iter_mut().find(|known| known.bag == bag) {
                    Some(known) => known.heights.extend(seen),
                    None => all.bags.push(BagHeights { bag, heights: seen.collect() }),
                }
            }
            Section::Made => self.made(row, heading, &values),
        }
    }

    fn made(&mut self, row: &Row, heading: &Heading, values: &[Option<f64>]) {
        let of =
            |role: &str| heading.place(role).and_then(|at| values.get(at).copied().flatten());
        let mut amounts = [None, None, None];
        for (amount_of, role) in amounts.iter_mut().zip(["yeast", "food", "water"]) {
            let Some(at) = heading.place(role).filter(|at| !is_blank(row.cell(*at))) else {
                continue;
            };
            let unit = heading.columns[at].as_ref().and_then(|column| column.unit.as_deref());
            let unit = unit.or((role == "water").then_some("mL"));
            match amount(row.cell(at), unit) {
                Ok(read) => *amount_of = Some(read),
                // Water was read as a number before.
                Err(_) if role == "water" => {}
                Err(odd) => self.odd(row, odd),
            }
        }
        let [yeast, food, water]: [Option<Amount>; 3] = amounts;
        let bag = row.cell(0).trim().to_uppercase();
        let twice =
            self.readings.made.iter().find(|made| made.bag == bag).map(|made| made.line);
        if let Some(first) = twice {
            let what = format!("bag {bag} stands on line {first} already");
            self.fault(row, what, "keep the one that is right");
            return;
        }
        self.readings.made.push(Made {
            bag,
            line: row.line,
            yeast,
            food,
            water,
            water_celsius: of("temperature"),
            tray_celsius: of("tray"),
        });
    }

    /// Every number of a row; what is wrong with a cell is listed, and a blank cell is no reading.
    fn values(&mut self, row: &Row, heading: &Heading) -> Vec<Option<f64>> {
        let lone = heading.columns.iter().flatten().count() == 1;
        let mut values = Vec::new();
        for (at, column) in heading.columns.iter().enumerate() {
            let cell = row.cell(at);
            let column = column.as_ref().map(|column| kind_of(column, heading.section, lone));
            values.push(match column {
                Some((kind, unit)) if !is_blank(cell) => match kind {
                    Kind::Label | Kind::Amount => None,
                    _ => match kind.read(cell, unit) {
                        Ok(value) => Some(value),
                        Err(odd) => {
                            self.odd(row, odd);
                            None
                        }
                    },
                },
                _ => None,
            });
        }
        let beyond = row.cells.iter().skip(heading.columns.len()).find(|cell| !cell.is_empty());
        if let Some(cell) = beyond {
            let what = format!("{} stands beyond the last heading", quoted(cell));
            self.fault(row, what, "give it a heading, or quote a comma within a cell");
        }
        values
    }
}

/// What a column holds; the only column of spoons is their mass.
fn kind_of(column: &Column, section: Section, lone: bool) -> (Kind, Option<&str>) {
    let kind = if lone && section == Section::Spoons { Kind::Mass } else { column.kind };
    (kind, column.unit.as_deref())
}

/// A cell in which nothing was read.
pub(super) fn is_blank(cell: &str) -> bool {
    ["", "-", "–", "—", "n/a", "x"].contains(&cell.trim().to_lowercase().as_str())
}
