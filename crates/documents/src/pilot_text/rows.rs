//! A pilot's readings as rows of cells.

use crate::readings::table::{DELIMITERS, Row, named_delimiter, rows};
use crate::readings::text::decode;

/// The rows of a file, and what has to be said of how it was read.
pub(super) fn of(bytes: &[u8]) -> (Vec<Row>, Option<String>) {
    let decoded = decode(bytes);
    let named = named_delimiter(&decoded.text);
    let delimiter = named.unwrap_or_else(|| likely(&decoded.text));
    let mut all = rows(&decoded.text, delimiter);
    if named.is_some() && !all.is_empty() {
        all.remove(0);
    }
    (all, decoded.note)
}

/// The sign that parts most rows: one that stands in prose only, or in a decimal comma, does not.
fn likely(text: &str) -> u8 {
    let lines = || text.lines().filter(|line| !line.trim().is_empty());
    let of = |sign: u8| lines().filter(|line| line.bytes().any(|byte| byte == sign)).count();
    let semicolons = of(b';');
    // Where there are semicolons, commas are those of decimals.
    if semicolons * 2 >= lines().count().max(1) {
        return b';';
    }
    let best = DELIMITERS.into_iter().max_by_key(|sign| (of(*sign), *sign == b','));
    best.unwrap_or(b',')
}
