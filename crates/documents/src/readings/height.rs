//! The height in one cell.

use super::quoted::quoted;
use barm_domain::amount::{AmountError, number};

/// A unit of length that a ruler carries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LengthUnit {
    /// Millimeters in one of it.
    pub(super) mm: f64,
}

impl LengthUnit {
    /// Millimeters.
    pub(super) const MILLIMETER: Self = Self { mm: 1.0 };

    /// The unit that a word or sign names, English or Spanish: millimeters, centimeters or
    /// inches (25.4 mm exactly, NIST SP 811, 2008, appendix B).
    pub(super) fn named(word: &str) -> Option<Self> {
        let word = word.trim().trim_end_matches('.').to_lowercase();
        let mm = match word.as_str() {
            "mm" | "millimeter" | "millimeters" | "millimetre" | "millimetres"
            | "milimetro" | "milimetros" | "milímetro" | "milímetros" => 1.0,
            "cm" | "centimeter" | "centimeters" | "centimetre" | "centimetres"
            | "centimetro" | "centimetros" | "centímetro" | "centímetros" => 10.0,
            "in" | "inch" | "inches" | "pulg" | "pulgada" | "pulgadas" | "\"" | "''" | "″"
            | "”" | "“" | "´´" | "’’" | "′′" => 25.4,
            _ => return None,
        };
        Some(Self { mm })
    }
}

/// The tallest card height taken (mm): no zip bag of a kitchen lifts a card so far. A gallon bag
/// drawn drum-tight is about 140 mm thick.
const TALLEST_MM: f64 = 250.0;

/// What a cell of heights holds.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum HeightCell {
    /// Nothing: the bag was not read.
    Blank,
    /// A mark such as `n/a` or a dash, which people write for "not read".
    Mark,
    /// A height, and whether its unit was only assumed.
    Height {
        /// The height (mm).
        mm: f64,
        /// Whether neither the cell nor its column names a unit.
        assumed: bool,
    },
    /// Something that is no height, and why.
    Wrong(String),
}

/// Reads a cell of heights; the cell's own unit wins over that of its column.
pub(super) fn height(cell: &str, column_unit: Option<LengthUnit>) -> HeightCell {
    let cell = cell.trim();
    if cell.is_empty() {
        return HeightCell::Blank;
    }
    if is_not_read(cell) {
        return HeightCell::Mark;
    }
    if let Some(reason) = not_typed(cell) {
        return HeightCell::Wrong(reason);
    }
    let split = cell
        .char_indices()
        .find(|&(_, sign)| sign.is_alphabetic() || "\"'″”“´’".contains(sign))
        .map_or(cell.len(), |(at, _)| at);
    let (written, unit) = cell.split_at(split);
    let wrong = |why: &str| HeightCell::Wrong(format!("{} {why}", quoted(cell)));
    let own = match unit.trim() {
        "" => None,
        word => match LengthUnit::named(word) {
            Some(unit) => Some(unit),
            None => return wrong("is not a height in mm, cm or in"),
        },
    };
    let value = match number(written) {
        Ok(value) => value,
        Err(AmountError::Comma { thousands, decimal }) => {
            return wrong(&format!("can mean {decimal} or {thousands}: write it with a point"));
        }
        Err(_) => return wrong("is not a height such as 12, 1.2 cm or 1/2 in"),
    };
    let unit = own.or(column_unit);
    let mm = value * unit.unwrap_or(LengthUnit::MILLIMETER).mm;
    if mm > TALLEST_MM {
        return wrong(&format!(
            "would be {mm:.0} mm, higher than any bag lifts a card: is the unit right?"
        ));
    }
    HeightCell::Height { mm, assumed: unit.is_none() }
}

/// Marks that people write where nothing was read.
fn is_not_read(cell: &str) -> bool {
    matches!(
        cell.to_lowercase().as_str(),
        "-" | "--" | "–" | "—" | "n/a" | "na" | "n.a." | "not read" | "missed" | "no leído"
    )
}

/// Why a cell cannot have been typed as a height, if so.
fn not_typed(cell: &str) -> Option<String> {
    if cell.contains('\0') {
        return Some(format!("{} holds unreadable signs", quoted(cell)));
    }
    if cell.contains(['\r', '\n']) {
        return Some(format!(
            "{} runs over several lines: is a quotation mark missing or too many?",
            quoted(cell)
        ));
    }
    if cell.starts_with(['=', '@', '+']) {
        return Some(format!(
            "{} looks like a spreadsheet formula: save its value instead",
            quoted(cell)
        ));
    }
    if cell.starts_with(['-', '−', '–']) {
        return Some(format!("{} is below zero, which a card cannot be", quoted(cell)));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::{HeightCell, LengthUnit, height};

    fn mm(cell: &str, column: Option<LengthUnit>) -> f64 {
        match height(cell, column) {
            HeightCell::Height { mm, .. } => mm,
            other => panic!("{cell}: {other:?}"),
        }
    }

    /// 1 in = 25.4 mm exactly (NIST SP 811, 2008, appendix B).
    #[test]
    fn lengths_are_read_in_every_form_that_a_ruler_suggests() {
        let rows = [
            ("12", 12.0),
            ("12mm", 12.0),
            ("12 mm.", 12.0),
            ("1.2 cm", 12.0),
            ("1,2cm", 12.0),
            ("1 3/8 in", 34.925),
            ("1-3/8 in.", 34.925),
            ("3/8\"", 9.525),
            ("1⅜″", 34.925),
            ("½ inch", 12.7),
            ("1 pulgada", 25.4),
            ("0", 0.0),
        ];
        for (cell, expected) in rows {
            assert!((mm(cell, None) - expected).abs() < 1e-9, "{cell}");
        }
    }

    #[test]
    fn the_unit_of_a_cell_wins_over_that_of_its_column() {
        let inch = LengthUnit::named("in");
        assert!(inch.is_some());
        assert!((mm("0.5", inch) - 12.7).abs() < 1e-9);
        assert!((mm("1.2 cm", inch) - 12.0).abs() < 1e-9);
        assert_eq!(height("3", None), HeightCell::Height { mm: 3.0, assumed: true });
        assert_eq!(height("3", inch), HeightCell::Height { mm: 3.0 * 25.4, assumed: false });
    }

    #[test]
    fn what_is_no_height_is_said_to_be_none() {
        for cell in [
            "abc",
            "12 lb",
            "=A1+3",
            "+3",
            "-3",
            "−3",
            "1,250",
            "12 m",
            "1 ft",
            "12\u{0}13",
            "1\n2",
            "@x",
            "999",
            "inf",
            "NaN",
            "12 13",
            "~12",
            "12?",
        ] {
            assert!(matches!(height(cell, None), HeightCell::Wrong(_)), "{cell}");
        }
        assert_eq!(height("  ", None), HeightCell::Blank);
        for mark in ["-", "—", "n/a", "NA", "missed"] {
            assert_eq!(height(mark, None), HeightCell::Mark);
        }
    }
}
