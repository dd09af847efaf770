//! Reads the small tables of published and computed values under `tests/rows`.

use std::collections::HashMap;

/// Rows of a comma-separated text whose lines that start with `#` say where it comes from; the
/// first other line names the columns.
pub(crate) fn rows(text: &str) -> Vec<HashMap<String, String>> {
    let mut lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    let names = cells(lines.next().expect("a line that names the columns"));
    lines.map(|line| names.iter().cloned().zip(cells(line)).collect()).collect()
}

fn cells(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            c => cells.last_mut().expect("never empty").push(c),
        }
    }
    cells
}

/// A number in a cell.
pub(crate) fn number(cell: &str) -> f64 {
    match cell.trim() {
        "Inf" => f64::INFINITY,
        text => text.parse().unwrap_or_else(|_| panic!("not a number: {text}")),
    }
}
