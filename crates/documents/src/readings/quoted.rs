//! Cells as they are shown in a reason.

/// The longest piece of a cell that is shown.
const SHOWN: usize = 40;

/// A cell in quotation marks on one line, cut where it is long, so that no file can spoil the
/// page or the terminal on which the reason is shown.
pub(crate) fn quoted(cell: &str) -> String {
    let mut shown: String = cell
        .trim()
        .chars()
        .take(SHOWN)
        .map(|c| match c {
            '"' => '\'',
            c if c.is_whitespace() => ' ',
            c if c.is_control() || is_direction_mark(c) => '\u{FFFD}',
            c => c,
        })
        .collect();
    if cell.trim().chars().nth(SHOWN).is_some() {
        shown.push('…');
    }
    format!("\"{shown}\"")
}

/// Marks that turn the direction of writing could make a reason read as another.
fn is_direction_mark(c: char) -> bool {
    matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}
