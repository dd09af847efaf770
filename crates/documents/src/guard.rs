//! Cells that a spreadsheet would take for a formula.
//!
//! Source: OWASP Application Security Verification Standard 5.0, V1.2.10: cells that begin with
//! `=`, `+`, `-`, `@`, a tab or a NUL are written with a single quote before them; a carriage
//! return is among them in OWASP's page on CSV injection. Spreadsheets also pass over spaces and
//! line ends before a formula, and some take the wide forms of these signs for them, so those count
//! too (our choice).

/// Signs with which a spreadsheet begins a formula.
const SIGNS: [char; 8] = ['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

/// Whether a spreadsheet may compute a cell instead of showing it.
fn computes(cell: &str) -> bool {
    let shown = cell.trim_start_matches(|c: char| c.is_whitespace() || c.is_control());
    let before = cell.strip_suffix(shown).unwrap_or_default();
    before.contains(|c: char| c.is_control() && c != '\n') || shown.starts_with(SIGNS)
}

/// A cell that stays text; an apostrophe of its own is doubled, so that it is read again.
pub(crate) fn guarded(cell: &str) -> String {
    if computes(cell) || cell.starts_with('\'') { format!("'{cell}") } else { cell.to_owned() }
}

/// The cell that was guarded.
pub(crate) fn unguarded(cell: &str) -> &str {
    let guards = |rest: &&str| computes(rest) || rest.starts_with('\'');
    cell.strip_prefix('\'').filter(guards).unwrap_or(cell)
}
