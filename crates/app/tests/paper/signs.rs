//! The signs of periods, as a black-or-white copier sees them.

use crate::picture::{Area, Picture, pixels};
use crate::program::{run, skip};
use std::collections::BTreeMap;

/// A piece of the strip of a label, above the number, with what a hard copy leaves of it.
fn pattern(page: &Picture, cell: usize) -> Picture {
    let at = |millimeters: f64| pixels(millimeters).round() as usize;
    // 21 to a sheet of A4: labels of 63.5 by 38.1 mm, pitch 66.04 mm, first at 7.21 and 15.15 mm.
    let x = 7.21 + (cell % 3) as f64 * 66.04 + 2.0;
    let y = 15.15 + (cell / 3) as f64 * 38.1 + 2.0;
    page.cut(Area {
        left: at(x + 0.2),
        top: at(y + 0.3),
        right: at(x + 10.8),
        bottom: at(y + 12.0),
    })
}

/// How unevenly ink lies over rows or columns: 0 for even, 1 for full and empty by turns.
fn uneven(counts: &[usize], full: usize) -> f64 {
    let shares: Vec<f64> = counts.iter().map(|count| *count as f64 / full as f64).collect();
    let mean = shares.iter().sum::<f64>() / shares.len() as f64;
    let spread = shares.iter().map(|share| (share - mean).abs()).sum::<f64>();
    spread / shares.len() as f64 / (2.0 * mean * (1.0 - mean)).max(0.01)
}

/// Share of ink, unevenness of rows and of columns, the fullest row, and whether the left edge is a
/// bar.
fn features(pattern: &Picture) -> [f64; 5] {
    let (rows, columns) = (pattern.rows(), pattern.columns());
    let share = rows.iter().sum::<usize>() as f64 / (pattern.wide * pattern.high) as f64;
    let fullest = *rows.iter().max().expect("rows") as f64 / pattern.wide as f64;
    let first = &columns[..pixels(0.5) as usize];
    let bar = first.iter().all(|count| *count == pattern.high);
    let uneven = (uneven(&rows, pattern.wide), uneven(&columns, pattern.high));
    [share, uneven.0, uneven.1, fullest, f64::from(u8::from(bar))]
}

#[test]
fn no_two_of_twelve_signs_are_alike_without_color() {
    let home = tempfile::tempdir().expect("a folder");
    let mut new = vec!["new", "plan.toml", "--date", "2027-03-09", "--length", "38 min"];
    new.extend(["--periods", "12", "--groups", "2", "--students", "6"]);
    run(home.path(), &new).ended(0);
    let mut print = vec!["print", "plan.toml", "--what", "labels", "--labels", "21-up"];
    print.extend(["--out", "paper"]);
    run(home.path(), &print).ended(0);
    let plan = std::fs::read_to_string(home.path().join("plan.toml")).expect("the plan");
    let plan: toml::Table = plan.parse().expect("TOML");
    let bags = plan["bag_list"]["bags"].as_array().expect("a list");
    // The first label of each period.
    let mut first: BTreeMap<u32, usize> = BTreeMap::new();
    for (place, bag) in bags.iter().enumerate() {
        let code = bag["code"].as_str().expect("a code");
        let period = code[1..].split('-').next().and_then(|number| number.parse().ok());
        first.entry(period.expect("a number")).or_insert(place);
    }
    assert_eq!(first.keys().copied().collect::<Vec<_>>(), (1..=12).collect::<Vec<_>>());
    let pdf = home.path().join("paper/labels.pdf");
    let mut seen: Vec<(u32, [f64; 5])> = Vec::new();
    for (period, place) in first {
        let Some(page) = Picture::of_page(&pdf, place / 21 + 1) else {
            return skip("signs of periods", "poppler is not installed");
        };
        let found = features(&pattern(&page, place % 21));
        for (other, known) in &seen {
            let apart = found.iter().zip(known).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            assert!(apart > 0.15, "P{period} {found:?} looks like P{other} {known:?}");
        }
        assert!((0.05..0.75).contains(&found[0]), "P{period}: {found:?}");
        seen.push((period, found));
    }
}
