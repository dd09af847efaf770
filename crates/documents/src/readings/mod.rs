//! Readings as a teacher types them from paper or exports them from a spreadsheet.
//!
//! One file may have one row a reading, one row a bag or one row a time; its headings, in
//! English or Spanish, say which. Nothing is dropped without being listed, and nothing is
//! changed without a note.

mod by_hand;
mod cells;
mod codes;
mod context;
mod evidence;
mod heading;
mod headless;
mod height;
mod meter;
mod number;
pub(crate) mod quoted;
mod reader;
mod row;
mod settle;
mod sheet;
mod swapped;
pub(crate) mod table;
pub(crate) mod text;
mod time;
mod typed;
mod write;

pub use by_hand::{clock_written, height_written};
pub use cells::Cells;
pub use sheet::Layout;
pub use write::write;

use barm_domain::plan::Plan;
use barm_domain::reading::{Reading, Rejected, Remark, SetAside};
use barm_domain::result::meter::MeterReading;
use barm_science::meter::Blank;
use codes::Codes;
use quoted::quoted;
use reader::Reader;
use row::Taking;
use std::collections::BTreeMap;
use swapped::Swapped;
use table::Row;

/// The time of day of a bag's zero reading, as a file says it.
#[derive(Debug, Clone, PartialEq)]
pub struct ZeroTime {
    /// Code of the bag.
    pub bag: String,
    /// Seconds after midnight; after midnight or noon if `half_known` is false.
    pub seconds: f64,
    /// Whether morning and afternoon are told apart.
    pub half_known: bool,
}

/// What a file of readings holds.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ReadingsFile {
    /// Readings that were taken, in the order of the file.
    pub readings: Vec<Reading>,
    /// Times of day of zero readings, where the file tells any.
    pub zero_times: Vec<ZeroTime>,
    /// Bags that the file sets aside; whether the rule exists is for the analysis to say.
    pub set_aside: Vec<SetAside>,
    /// What a breath meter showed of bags, in the order of the file.
    pub meter: Vec<MeterReading>,
    /// What it showed of clean air, by period.
    pub blanks: BTreeMap<String, Vec<Blank>>,
    /// Notes that stand beside no reading.
    pub remarks: Vec<Remark>,
    /// Rows and cells that were not taken, each with its line and reason, by line.
    pub rejected: Vec<Rejected>,
    /// What a person should know about how the file was read.
    pub notes: Vec<String>,
    /// How the file is laid out; `None` if no headings were found, and then nothing was taken.
    pub layout: Option<Layout>,
    /// What became of the cells in which a height may stand.
    pub cells: Cells,
    /// What has to be said of the file as a whole before anything else, in one sentence: that it
    /// is empty, say, or that two of its columns are swapped.
    pub above_all: Option<String>,
}

/// Reads a file of readings for a plan; any bytes give an answer.
///
/// - Comma, semicolon, tab or bar between cells; UTF-8, UTF-16 or Windows-1252.
/// - A height without a unit has that of its heading; without one there, millimeters are taken
///   and a note says so.
/// - A time is in minutes after the bag's own zero reading or a time of day, counted from the
///   bag's own zero reading.
/// - A column "meter" holds what a breath meter showed, in percent; a row whose bag is "clean air" what it
///   showed of that.
/// - Of two different heights for one bag and minute the later is listed, naming the first.
pub fn read(bytes: &[u8], plan: &Plan) -> ReadingsFile {
    let codes = Codes::of(plan);
    let decoded = text::decode(bytes);
    let named = table::named_delimiter(&decoded.text);
    let interval_min = plan.timing.interval_min;
    let delimiter =
        named.unwrap_or_else(|| sheet::delimiter(&decoded.text, &codes, interval_min));
    let mut file = ReadingsFile::default();
    file.notes.extend(decoded.note);
    let all = table::rows(&decoded.text, delimiter);
    // The line that names the delimiter is no row.
    let rows = &all[usize::from(named.is_some()).min(all.len())..];
    let filled = |rows: &[Row]| rows.iter().filter(|row| !row.is_blank()).count();
    let found = sheet::find(rows, &codes);
    let headless =
        if found.is_none() { headless::sheet(rows, &codes, interval_min) } else { None };
    file.above_all = headless.as_ref().map(headless::said);
    // Above headings that are not there stands nothing, and every row is under them.
    let under = found
        .map(|(place, sheet)| (place, place + 1, sheet))
        .or_else(|| headless.map(|sheet| (0, 0, sheet)));
    if let Some((above, first, sheet)) = under {
        reject_all(&rows[..above], "it stands above the headings", &mut file);
        file.layout = Some(sheet.layout);
        let (rows, line) = (&rows[first..], sheet.line);
        let swapped = Swapped::find(rows, &sheet, &codes, interval_min);
        let mut taking = Taking::new(plan, &codes);
        let mut reader = Reader::new(&decoded.text, delimiter, &codes, sheet);
        match &swapped {
            Some(swapped) => reader.reject(rows, &swapped.reason(), &mut taking),
            None => reader.rows(rows, &mut taking),
        }
        taking.finish(&mut file);
        file.above_all = match (filled(rows), swapped) {
            (0, _) => Some(no_rows(line)),
            (count, Some(swapped)) => Some(swapped.said(count)),
            _ if file.cells.taken + file.cells.rejected == 0
                && file.rejected.is_empty()
                && file.meter.is_empty() =>
            {
                Some(NO_HEIGHTS.to_owned())
            }
            _ => file.above_all,
        };
    } else {
        let count = filled(rows);
        reject_all(
            rows,
            "no headings were found: the first row must name its columns, such as bag, minute, \
             height, or bag, 0, 4, 8",
            &mut file,
        );
        file.above_all = Some(if count == 0 { EMPTY.to_owned() } else { no_headings(count) });
    }
    file.rejected.sort_by_key(|rejected| rejected.line);
    file
}

const EMPTY: &str =
    "The file is empty: type the readings into it, or name the file that holds them.";

const NO_HEIGHTS: &str = "All cells for heights are blank: type the heights into the file, or \
                          name the file that holds them.";

fn no_rows(line: u64) -> String {
    format!(
        "The file has headings on line {line} but no row under them: type the readings there, or \
         name the file that holds them."
    )
}

fn no_headings(rows: usize) -> String {
    let none = if rows == 1 {
        "its one row was not taken".to_owned()
    } else {
        format!("none of its {rows} rows was taken")
    };
    format!(
        "The file has no row of headings that can be understood, so {none}: write a first row \
         such as bag,minute,height (mm) over the readings and read the file again."
    )
}

fn reject_all(rows: &[Row], reason: &str, file: &mut ReadingsFile) {
    for row in rows.iter().filter(|row| !row.is_blank()) {
        let first = row.cells.iter().find(|cell| !cell.is_empty()).map_or("", String::as_str);
        let reason = format!("{} was not read: {reason}", quoted(first));
        file.rejected.push(Rejected { line: row.line, reason });
    }
}
