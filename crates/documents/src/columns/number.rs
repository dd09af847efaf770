//! Numbers in a column of any table.

/// Whether a cell of a column of numbers says that there is none.
pub(super) fn is_blank(cell: &str) -> bool {
    matches!(
        cell.to_lowercase().as_str(),
        "" | "-" | "–" | "—" | "." | "na" | "n/a" | "nan" | "null" | "none" | "#n/a"
    )
}

/// What a comma means in a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Decimals {
    /// Commas part decimals, points thousands.
    Comma,
    /// Points part decimals, commas thousands.
    Point,
    /// No cell tells; `1,234` could be either.
    Untold,
}

impl Decimals {
    /// Told by the cells in which a comma or a point can mean one thing only.
    pub(super) fn of<'a>(cells: impl Iterator<Item = &'a str>) -> Self {
        let (mut comma, mut point) = (false, false);
        for cell in cells.filter(|cell| cell.contains(',')) {
            match (cell.rfind(','), cell.rfind('.')) {
                (Some(c), Some(p)) => {
                    comma |= c > p;
                    point |= p > c;
                }
                _ if cell.matches(',').count() > 1 => point = true,
                _ => comma |= !could_be_thousands(cell),
            }
        }
        match (comma, point) {
            (true, false) => Self::Comma,
            (false, true) => Self::Point,
            _ => Self::Untold,
        }
    }

    /// The number in a cell.
    ///
    /// # Errors
    /// What is wrong with it, as the end of a sentence.
    pub(super) fn number(self, cell: &str) -> Result<f64, String> {
        const NONE: &str = "is not a number; write digits only, and the unit into the heading";
        let plain = match (cell.contains(','), self) {
            (false, _) => cell.to_owned(),
            (true, Self::Comma) => cell.replace('.', "").replacen(',', ".", 1),
            (true, Self::Point) => cell.replace(',', ""),
            (true, Self::Untold) if could_be_thousands(cell) => {
                return Err(format!(
                    "could be {} or {}; write it without the comma",
                    cell.replace(',', ""),
                    cell.replace(',', ".")
                ));
            }
            (true, Self::Untold) if cell.contains('.') => return Err(NONE.to_owned()),
            (true, Self::Untold) => cell.replacen(',', ".", 1),
        };
        let plain = plain.replace('−', "-");
        let shaped = plain.bytes().any(|b| b.is_ascii_digit())
            && plain
                .bytes()
                .all(|b| b.is_ascii_digit() || matches!(b, b'.' | b'-' | b'+' | b'e' | b'E'));
        let number: f64 = match plain.parse() {
            Ok(number) if shaped => number,
            _ => return Err(NONE.to_owned()),
        };
        // The statistics square numbers and add the squares up.
        if number.abs() > barm_science::statistics::linear::LARGEST {
            return Err(
                "is too large to be used; correct it or leave the cell blank".to_owned()
            );
        }
        Ok(number)
    }
}

/// Whether a comma stands before exactly three digits, after one to three that do not begin with 0.
fn could_be_thousands(cell: &str) -> bool {
    let bare = cell.trim_start_matches(['-', '−', '+']);
    let Some((whole, rest)) = bare.split_once(',') else { return false };
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    digits(whole)
        && digits(rest)
        && rest.len() == 3
        && (1..=3).contains(&whole.len())
        && !whole.starts_with('0')
}
