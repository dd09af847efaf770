//! Spaces on paper keep to a grid of 4 pt, and to its half where a space lies inside a line or a cell.

use super::{root, tracked};
use std::fs;

/// What is followed by a space in the templates of pages.
const KEYS: [&str; 9] =
    ["above: ", "below: ", "top: ", "bottom: ", "left: ", "right: ", "gutter: ", "v(", "h("];

/// The space behind a key, in points; none if it is no plain number of points, or a stroke.
fn space(rest: &str) -> Option<f64> {
    let (number, behind) = rest.split_once("pt")?;
    let number: f64 = number.parse().ok()?;
    (!behind.starts_with(" +")).then_some(number)
}

#[test]
fn spaces_on_paper_keep_to_the_grid() {
    let mut seen = 0;
    for path in
        tracked().into_iter().filter(|path| path.extension().is_some_and(|e| e == "typ"))
    {
        let text = fs::read_to_string(root().join(&path)).expect("a template");
        for (at, line) in text.lines().enumerate() {
            for key in KEYS {
                let places = line.match_indices(key).map(|(place, _)| place);
                let whole = |place: &usize| {
                    let before = line[..*place].chars().next_back();
                    !before.is_some_and(|c| c.is_alphanumeric() || c == '-')
                };
                // A gutter has its axis before it.
                let places = places.filter(|place| key == "gutter: " || whole(place));
                for space in places.filter_map(|place| space(&line[place + key.len()..])) {
                    seen += 1;
                    let place = format!("{}:{}", path.display(), at + 1);
                    assert!(
                        space % 2.0 == 0.0,
                        "{place}: {key}{space}pt is off the grid: {line}"
                    );
                }
            }
        }
    }
    assert!(seen > 100, "only {seen} spaces were found");
}
