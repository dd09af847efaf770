//! A table with heads, as spreadsheets save it: what proposals and wishes have in common.

use csv::{Reader, ReaderBuilder, Trim};

/// The heads of a table in UTF-8 with commas, semicolons or tabs, and a reader of what stands below.
/// Nothing if it is no text in UTF-8.
pub(crate) fn opened(bytes: &[u8]) -> Option<(Vec<String>, Reader<&[u8]>)> {
    let text = std::str::from_utf8(bytes).ok()?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let first = text.lines().next().unwrap_or_default();
    let count = |sign: &char| first.matches(*sign).count();
    let delimiter = [',', ';', '\t'].into_iter().max_by_key(count).unwrap_or(',');
    let mut reader = ReaderBuilder::new()
        .delimiter(delimiter as u8)
        .flexible(true)
        .trim(Trim::All)
        .from_reader(text.as_bytes());
    let heads = reader
        .headers()
        .map(|heads| heads.iter().map(str::to_owned).collect())
        .unwrap_or_default();
    Some((heads, reader))
}
