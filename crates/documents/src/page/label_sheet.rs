//! Sheets of stick-on labels: where each label lies on its sheet.

use super::Paper;

/// A sheet of labels of a size that many makers sell.
///
/// # Source
/// Common practice for the size of a label, their number and the gap between columns; the margins
/// are derived by centring the grid on its paper. No maker's drawing was used, so a test print is
/// held against the sheet first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LabelSheet {
    /// US Letter, 3 by 10 labels of 2 5/8 by 1 in, 1/8 in between columns.
    ThirtyUp,
    /// US Letter, 2 by 5 labels of 4 by 2 in, 3/16 in between columns.
    TenUp,
    /// A4, 3 by 7 labels of 63.5 by 38.1 mm, 2.54 mm between columns.
    TwentyOneUp,
}

/// Where labels lie, in millimeters from the upper left corner of the paper.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Grid {
    /// Columns.
    pub columns: u32,
    /// Rows.
    pub rows: u32,
    /// Width of a label (mm).
    pub width: f64,
    /// Height of a label (mm).
    pub height: f64,
    /// From the left edge of one label to that of the next (mm).
    pub pitch_x: f64,
    /// From the upper edge of one label to that of the next (mm).
    pub pitch_y: f64,
    /// Left edge of the first label (mm).
    pub left: f64,
    /// Upper edge of the first label (mm).
    pub top: f64,
}

/// Millimeters of an inch, exactly (international inch of 1959).
const INCH: f64 = 25.4;

impl LabelSheet {
    /// All sheets.
    pub const ALL: [Self; 3] = [Self::ThirtyUp, Self::TenUp, Self::TwentyOneUp];

    /// How a sheet is asked for, such as `30-up`.
    pub const fn key(self) -> &'static str {
        match self {
            Self::ThirtyUp => "30-up",
            Self::TenUp => "10-up",
            Self::TwentyOneUp => "21-up",
        }
    }

    /// The sheet that is asked for by this key.
    pub fn of(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.key() == key)
    }

    /// What it is, in a few words.
    pub const fn says(self) -> &'static str {
        match self {
            Self::ThirtyUp => "30 labels of 1 × 2 5/8 in on letter paper",
            Self::TenUp => "10 labels of 2 × 4 in on letter paper",
            Self::TwentyOneUp => "21 labels of 63.5 × 38.1 mm on A4 paper",
        }
    }

    /// The sheet that is usual on that paper.
    pub const fn usual(paper: Paper) -> Self {
        match paper {
            Paper::Letter => Self::ThirtyUp,
            Paper::A4 => Self::TwentyOneUp,
        }
    }

    /// The paper it is made of; labels are printed on this whatever paper lies in the printer.
    pub const fn paper(self) -> Paper {
        match self {
            Self::ThirtyUp | Self::TenUp => Paper::Letter,
            Self::TwentyOneUp => Paper::A4,
        }
    }

    /// Number of labels.
    pub fn cells(self) -> u32 {
        let grid = self.grid();
        grid.columns * grid.rows
    }

    /// Where its labels lie. Rows touch; margins are what is left of the paper, halved:
    ///
    /// ```text
    /// 30-up: (8.5 − 3 · 2.625 − 2 · 0.125) / 2 = 0.1875 in; (11 − 10 · 1) / 2 = 0.5 in
    /// 10-up: (8.5 − 2 · 4 − 0.1875) / 2 = 0.15625 in; (11 − 5 · 2) / 2 = 0.5 in
    /// 21-up: (210 − 3 · 63.5 − 2 · 2.54) / 2 = 7.21 mm; (297 − 7 · 38.1) / 2 = 15.15 mm
    /// ```
    pub fn grid(self) -> Grid {
        let (columns, rows, width, height, gap) = match self {
            Self::ThirtyUp => (3, 10, 2.625 * INCH, INCH, 0.125 * INCH),
            Self::TenUp => (2, 5, 4.0 * INCH, 2.0 * INCH, 0.1875 * INCH),
            Self::TwentyOneUp => (3, 7, 63.5, 38.1, 2.54),
        };
        let (paper_width, paper_height) = self.paper().millimeters();
        let (across, down) = (f64::from(columns), f64::from(rows));
        let left = (paper_width - across * width - (across - 1.0) * gap) / 2.0;
        let top = (paper_height - down * height) / 2.0;
        Grid { columns, rows, width, height, pitch_x: width + gap, pitch_y: height, left, top }
    }
}

#[cfg(test)]
mod tests {
    use super::LabelSheet;

    #[test]
    fn every_sheet_is_found_by_its_key_and_has_as_many_cells_as_it_says() {
        for sheet in LabelSheet::ALL {
            assert_eq!(LabelSheet::of(sheet.key()), Some(sheet));
            assert!(sheet.key().starts_with(&sheet.cells().to_string()), "{}", sheet.key());
            assert!(sheet.says().starts_with(&sheet.cells().to_string()), "{}", sheet.says());
        }
    }
}
