//! The curves of a chart as a table: means over bags, and what was foretold.

use crate::chart::{Sheaf, Strand};
use crate::guard::guarded;
use crate::rfc4180;
use std::borrow::Cow;

/// The columns. Rises are in millimeters above a bag's own zero reading; a band holds 8 of 10 bags.
const HEADS: [&str; 7] = [
    "treatment",
    "minute",
    "bags drawn",
    "mean rise mm",
    "foretold low mm",
    "foretold median mm",
    "foretold high mm",
];

/// A row for each treatment and each minute of its mean, in UTF-8 with a mark, for spreadsheets. Where nothing was
/// foretold of a minute, its cells are blank. A name that a spreadsheet would take for a formula gets an apostrophe
/// before it.
pub fn chart_table(sheaves: &[Sheaf], bands: &[Strand]) -> Vec<u8> {
    let number = |value: f64| Cow::Owned(format!("{:.1}", (value * 10.0).round() / 10.0 + 0.0));
    let rows = sheaves.iter().flat_map(|sheaf| {
        let band = bands.iter().find(|band| band.name == sheaf.name);
        let bags = sheaf.bags.len().to_string();
        sheaf.mean.iter().map(move |(minute, mean)| {
            let near = |one: &&crate::chart::Moment| (one.minute - minute).abs() <= 0.5;
            let at = band.and_then(|band| band.moments.iter().find(near));
            let foretold = at.map(|at| [at.low, at.median, at.high]);
            let foretold = foretold.map_or_else(
                || [Cow::Borrowed(""), Cow::Borrowed(""), Cow::Borrowed("")],
                |values| values.map(number),
            );
            let mut row: Vec<Cow<'_, str>> = vec![
                Cow::Owned(guarded(&sheaf.name)),
                number(*minute),
                Cow::Owned(bags.clone()),
                number(*mean),
            ];
            row.extend(foretold);
            row
        })
    });
    let mut table = b"\xef\xbb\xbf".to_vec();
    table.extend(rfc4180::write(&HEADS, rows));
    table
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::{Look, Moment};

    #[test]
    fn means_stand_beside_what_was_foretold_for_them() {
        let look = Look(1);
        let mean = vec![(0.0, 0.0), (4.0, 2.5), (8.0, 7.04)];
        let sheaves =
            [Sheaf { name: "=Honey, \"raw\"".into(), look, bags: vec![Vec::new(); 2], mean }];
        let moment = |minute: f64| Moment {
            minute,
            median: minute,
            low: 0.5 * minute,
            high: 2.0 * minute,
        };
        // The forecast ends before the readings do.
        let moments = (0..=4).map(f64::from).map(moment).collect();
        let bands = [Strand { name: sheaves[0].name.clone(), look, moments }];
        let table = String::from_utf8(chart_table(&sheaves, &bands)).expect("UTF-8");
        let rows: Vec<&str> = table.trim_start_matches('\u{feff}').lines().collect();
        assert_eq!(rows.len(), 4, "{table}");
        assert!(rows[0].starts_with("treatment,minute,"), "{table}");
        assert_eq!(rows[2], "\"'=Honey, \"\"raw\"\"\",4.0,2,2.5,2.0,4.0,8.0");
        assert_eq!(rows[3], "\"'=Honey, \"\"raw\"\"\",8.0,2,7.0,,,");
    }
}
