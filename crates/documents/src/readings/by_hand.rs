//! A single cell that is typed on a page, read as it would be in a file.

use super::height::{HeightCell, height};
use super::time::{ClockTime, TimeColumn, When, time};

/// Reads a height such as `12`, `1.2 cm` or `3/8 in`; gives mm, and nothing for a blank cell or a
/// mark such as `-` that says "not read". Without a unit it is in millimeters.
///
/// # Errors
/// What is wrong with it, as the end of a sentence.
pub fn height_written(cell: &str) -> Result<Option<f64>, String> {
    match height(cell, None) {
        HeightCell::Blank | HeightCell::Mark => Ok(None),
        HeightCell::Height { mm, .. } => Ok(Some(mm)),
        HeightCell::Wrong(reason) => Err(reason),
    }
}

/// Reads a time of day such as `10:34`, `10:34:30` or `1:05 pm`; gives the seconds after midnight
/// and whether morning and afternoon are told apart. Nothing for anything else.
#[must_use]
pub fn clock_written(cell: &str) -> Option<(f64, bool)> {
    match time(cell, TimeColumn::Clock)? {
        When::Clock(ClockTime { seconds, half_known, .. }) => Some((seconds, half_known)),
        When::Minute(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{clock_written, height_written};

    #[test]
    fn heights_are_read_as_in_a_file() {
        // 1 in = 25.4 mm exactly (NIST SP 811, 2008, appendix B).
        for (cell, mm) in [("12", 12.0), ("12,5", 12.5), ("1.2 cm", 12.0), ("3/8 in", 9.525)] {
            let read = height_written(cell).expect("a height").expect("not blank");
            assert!((read - mm).abs() < 1e-9, "{cell}");
        }
        for blank in ["", "  ", "-", "n/a"] {
            assert_eq!(height_written(blank), Ok(None));
        }
        assert!(height_written("tall").is_err() && height_written("999").is_err());
    }

    #[test]
    fn times_of_day_are_read_as_in_a_file() {
        assert_eq!(clock_written("10:34"), Some((10.0 * 3600.0 + 34.0 * 60.0, false)));
        assert_eq!(clock_written("1:05 pm"), Some((13.0 * 3600.0 + 5.0 * 60.0, true)));
        assert_eq!(clock_written("10:34:30").map(|(seconds, _)| seconds % 60.0), Some(30.0));
        assert_eq!(clock_written("34"), None);
        assert_eq!(clock_written("soon"), None);
    }
}
