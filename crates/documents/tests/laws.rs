//! The pictures of the laws: each stands in a page of the docs, and is what the program draws.

use barm_documents::laws::pictures;
use barm_science::model::validity::laws;
use std::path::PathBuf;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../docs/science")
}

/// Renewed with `BARM_RENEW=1`. The same on every computer, for the science counts with its own
/// functions and coordinates have two decimals.
#[test]
fn every_picture_in_the_docs_is_what_the_program_draws() {
    for picture in pictures() {
        let file = folder().join(format!("pictures/{}.svg", picture.file));
        if std::env::var_os("BARM_RENEW").is_some() {
            std::fs::create_dir_all(file.parent().expect("a folder")).expect("made");
            std::fs::write(&file, &picture.svg).expect("written");
        }
        let kept = std::fs::read_to_string(&file).unwrap_or_default();
        assert!(kept == picture.svg, "{} is old: BARM_RENEW=1", file.display());
    }
}

#[test]
fn every_page_of_a_law_shows_a_picture_and_every_picture_has_its_page() {
    let pages = std::fs::read_dir(folder()).expect("pages");
    let pages = pages.map(|entry| entry.expect("a page").path());
    let pages: Vec<(String, String)> = pages
        .filter(|path| path.extension().is_some_and(|ending| ending == "md"))
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("text");
            (path.file_name().expect("a name").to_string_lossy().into_owned(), text)
        })
        .collect();
    let link = |file: &str| format!("](pictures/{file}.svg)");
    // A list of pages, a table, and methods.
    let others = [
        "README.md",
        "facts.md",
        "fit.md",
        "tests.md",
        "power.md",
        "tables.md",
        "curves.md",
        "years.md",
    ];
    let laws = pages.iter().filter(|(name, _)| !others.contains(&name.as_str()));
    for (name, text) in laws {
        assert!(text.contains("](pictures/"), "{name} shows no picture");
    }
    for picture in pictures() {
        let shown = pages.iter().any(|(_, text)| text.contains(&link(picture.file)));
        assert!(shown, "no page shows {}", picture.file);
    }
    let kept = std::fs::read_dir(folder().join("pictures")).expect("pictures");
    assert_eq!(kept.count(), pictures().len(), "no picture is left over");
}

/// The list of pages names every page, and every range that is watched in a bag as the program has it.
#[test]
fn the_list_of_pages_has_every_page_and_every_range() {
    let list = std::fs::read_to_string(folder().join("README.md")).expect("the list");
    for entry in std::fs::read_dir(folder()).expect("pages") {
        let name = entry.expect("a page").file_name().to_string_lossy().into_owned();
        if name.ends_with(".md") && name != "README.md" {
            assert!(list.contains(&format!("]({name})")), "{name} is not in the list");
        }
    }
    for law in laws() {
        let row = list.lines().find(|row| row.starts_with(&format!("| `{}` |", law.name)));
        let row = row.unwrap_or_else(|| panic!("{} is not in the list", law.name));
        let (low, high) = law.holds;
        let unit = if law.unit.is_empty() { String::new() } else { format!(" {}", law.unit) };
        assert!(row.ends_with(&format!("| {low} to {high}{unit} |")), "{row}");
    }
}

#[test]
fn every_line_of_a_law_lies_within_its_chart() {
    for picture in pictures() {
        // The first path is the ground.
        for numbers in picture.svg.split(" d=\"M").skip(2) {
            let path = numbers.split('"').next().expect("a path");
            for point in path.split('L') {
                let place: Vec<f64> =
                    point.split(' ').filter_map(|number| number.parse().ok()).collect();
                let [x, y] = place[..] else { continue };
                assert!((40.0..=760.0).contains(&x), "{}: {x}", picture.file);
                assert!((20.0..=380.0).contains(&y), "{}: {y}", picture.file);
            }
        }
    }
}
