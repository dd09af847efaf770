//! Files whose first row is a reading already.

use super::codes::Codes;
use super::evidence::Evidence;
use super::heading::Column;
use super::sheet::{Layout, Sheet};
use super::table::Row;
use super::time::TimeColumn;

/// The columns of a file without headings, if nothing else can be meant: every row has a bag of
/// the plan in the same column, one of the two others counts minutes, and the other holds heights.
pub(super) fn sheet(rows: &[Row], codes: &Codes<'_>, interval_min: f64) -> Option<Sheet> {
    let filled: Vec<&Row> = rows.iter().filter(|row| !row.is_blank()).collect();
    let width = filled.iter().map(|row| row.cells.len()).max()?;
    let used: Vec<usize> = (0..width)
        .filter(|&column| filled.iter().any(|row| !row.cell(column).is_empty()))
        .collect();
    let &[a, b, c] = used.as_slice() else { return None };
    let all_bags =
        |column: &usize| filled.iter().all(|row| codes.exact(row.cell(*column)).is_some());
    let bag = [a, b, c].into_iter().find(all_bags)?;
    let others: Vec<usize> = used.into_iter().filter(|&column| column != bag).collect();
    let evidence = |column: usize| Evidence::of(rows, bag, column, codes, interval_min);
    let fits = |&(minute, height): &(usize, usize)| {
        evidence(minute).counts_minutes() && evidence(height).holds_heights()
    };
    let (minute, height) =
        [(others[0], others[1]), (others[1], others[0])].into_iter().find(fits)?;
    let mut sheet = Sheet {
        line: 0,
        headings: vec![String::new(); width],
        columns: vec![Column::Unused; width],
        layout: Layout::Long,
    };
    for (place, heading, column) in [
        (bag, "bag", Column::Bag),
        (minute, "minute", Column::Time(TimeColumn::Minutes)),
        (height, "height", Column::Height(None)),
    ] {
        heading.clone_into(&mut sheet.headings[place]);
        sheet.columns[place] = column;
    }
    Some(sheet)
}

/// What was understood, for the person who typed the file.
pub(super) fn said(sheet: &Sheet) -> String {
    let named: Vec<&str> = sheet
        .headings
        .iter()
        .map(String::as_str)
        .filter(|heading| !heading.is_empty())
        .collect();
    format!(
        "The file has no row of headings, so its columns were taken for {}; if that is wrong, \
         write the right headings over them.",
        named.join(", ")
    )
}
