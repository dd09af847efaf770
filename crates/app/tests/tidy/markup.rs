//! What reaches a page without having been escaped, in templates and in scripts.

use super::{root, rust_files, tracked};
use std::fs;
use std::path::PathBuf;

/// Lines of templates that escape nothing, with the reason why they need not.
const RAW: [(&str, &str, &str); 30] = [
    ("bench/amounts.rs", "(PreEscaped(one.svg(&title, chart_words, name)))", CHART),
    ("bench/opened.rs", "(PreEscaped(curves.svg(title, chart_words, name)))", CHART),
    ("bench/page.rs", "(PreEscaped(text))", "JSON in which no `<` is left"),
    ("enter/page.rs", "(PreEscaped(mark(row.look, 16.0)))", CHART),
    ("claim/home_page.rs", "(PreEscaped(curves))", CHART),
    ("every_bag/curves.rs", "(PreEscaped(&shown.pictures[0]))", CHART),
    ("every_bag/curves.rs", "(PreEscaped(&shown.pictures[1]))", CHART),
    ("every_bag/page.rs", "(PreEscaped(&pictures[0]))", CHART),
    ("every_bag/page.rs", "(PreEscaped(&pictures[1]))", CHART),
    ("marks/one_page.rs", "(PreEscaped(curves))", CHART),
    ("plan/page.rs", "(PreEscaped(&chart.narrow))", CHART),
    ("plan/page.rs", "(PreEscaped(&chart.wide))", CHART),
    ("prepare/page.rs", "(PreEscaped(mark(bag.look, 16.0)))", CHART),
    ("results/page.rs", "(PreEscaped(&answered.pictures[0]))", CHART),
    ("results/page.rs", "(PreEscaped(&answered.pictures[1]))", CHART),
    ("results/page.rs", "(PreEscaped(&pictures[0]))", CHART),
    ("results/page.rs", "(PreEscaped(&pictures[1]))", CHART),
    ("run/codes.rs", "(PreEscaped(qr(", SQUARE),
    ("run/codes.rs", "(PreEscaped(qr(&join, &say!(w, \"codes-address\"))))", SQUARE),
    ("run/lists.rs", "PreEscaped(drawings::bag_curve(w, bag, width))", CHART),
    ("run/lists.rs", "PreEscaped(drawings::mark(bag.bag.look, 18.0))", CHART),
    ("run/lists.rs", "PreEscaped(drawings::spark(w, bag, width, doubtful))", CHART),
    ("signs.rs", "(PreEscaped(path))", "a shape that stands in the same file"),
    ("wall/page.rs", "(PreEscaped(curves.svg(&title, chart_words, false)))", CHART),
    ("wall/page.rs", "(PreEscaped(curves.svg(&title, chart_words, true)))", CHART),
    ("years/lots.rs", "(PreEscaped(lots_picture(w, &found.lots, 340.0)))", CHART),
    ("years/lots.rs", "(PreEscaped(lots_picture(w, &found.lots, 960.0)))", CHART),
    ("years/page.rs", "(PreEscaped(years_picture(&found.classes, of, 340.0)))", CHART),
    ("years/page.rs", "(PreEscaped(years_picture(&found.classes, of, 960.0)))", CHART),
    ("wall/page.rs", "(PreEscaped(qr(&address, &words.say(\"wall-place-square\"))))", SQUARE),
];
const CHART: &str = "drawn by `documents::chart`, which escapes every word";
const SQUARE: &str = "a square code, whose title loses every `<`, `>`, `&` and quote";

/// Files with markup between quotation marks.
const BY_HAND: [(&str, &str); 6] = [
    ("crates/app/src/desk/drawings.rs", SQUARE),
    ("crates/app/src/web/class_day.rs", "a test that looks for it"),
    ("crates/app/src/web/signs.rs", "shapes in which nothing is filled in"),
    ("crates/documents/src/chart/svg.rs", "the writer of all charts, which escapes"),
    ("crates/documents/src/page/proof.rs", "asks whether a text is a picture"),
    ("crates/documents/src/square.rs", "numbers only"),
];

/// Places where a script reads markup or puts it into a page, with where it comes from.
const IN_SCRIPTS: [(&str, &str, &str); 10] = [
    (
        "bench-page.js",
        "new DOMParser().parseFromString(drawn,",
        "what the server gave the page",
    ),
    ("enter-file.js", "new DOMParser().parseFromString(await answer.text(),", ANSWER),
    ("enter.js", "if (said.innerHTML !== told.said) said.innerHTML = told.said;", ANSWER),
    ("enter.js", "      said.innerHTML = told.said;", ANSWER),
    ("live.js", "page = new DOMParser().parseFromString(await answer.text(),", ANSWER),
    ("live.js", "(part) => part.innerHTML.replace(", "only read, to be compared"),
    ("live.js", "show(new DOMParser().parseFromString(await answer.text(),", ANSWER),
    ("look-first.js", "new DOMParser().parseFromString(await answer.text(),", ANSWER),
    ("pilot.js", "new DOMParser().parseFromString(await answer.text(),", ANSWER),
    ("plan.js", "place.innerHTML !== markup) place.innerHTML = markup;", ANSWER),
];
const ANSWER: &str = "an answer of the server, which a template escaped";

/// What makes elements, or runs, of a text.
const SINKS: [&str; 13] = [
    "innerHTML",
    "outerHTML",
    "insertAdjacentHTML",
    "setHTML",
    "createContextualFragment",
    "DOMParser",
    "document.write",
    "srcdoc",
    "javascript:",
    "eval(",
    "Function(",
    "setTimeout(\"",
    "setInterval(\"",
];

/// The lines of a source file that are built into the program.
fn built(text: &str) -> impl Iterator<Item = &str> {
    let lines = text.lines().take_while(|line| !line.starts_with("#[cfg(test)]"));
    lines.map(|line| if line.trim_start().starts_with("//") { "" } else { line.trim() })
}

#[test]
fn a_template_escapes_everything_but_what_is_named() {
    let mut raw = Vec::new();
    let mut pages = 0;
    for (file, text) in rust_files("crates/app/src") {
        for line in built(&text) {
            if line.contains("PreEscaped(") {
                let name = file.strip_prefix("crates/app/src/web").unwrap_or(&file);
                raw.push((name.to_string_lossy().into_owned(), line.to_owned()));
            }
            // A whole page is made by a template.
            if line.contains("Html(") && !line.contains("PreEscaped(") {
                assert!(line.contains(".into_string())"), "{}: {line}", file.display());
                pages += 1;
            }
            assert!(!line.contains("Render for"), "{} writes its own markup", file.display());
        }
    }
    assert!(pages > 3, "only {pages} pages were found");
    for (file, line) in &raw {
        let named = RAW.iter().any(|(of, says, _)| file == of && line.contains(says));
        assert!(named, "{file}: escape it, or say in this list why not: {line}");
    }
    for (file, says, why) in RAW {
        let stands = raw.iter().any(|(of, line)| file == of && line.contains(says));
        assert!(stands, "{file}: {says} ({why}) stands there no more");
    }
}

#[test]
fn markup_is_written_by_hand_in_named_files_only() {
    let tag = |line: &str| {
        line.match_indices("\"<").any(|(at, start)| {
            let next = line[at + start.len()..].trim_start_matches('/').chars().next();
            next.is_some_and(|c| c.is_ascii_lowercase())
        })
    };
    let mut found = std::collections::BTreeSet::new();
    for folder in ["crates/app/src", "crates/documents/src", "crates/domain/src"] {
        for (file, text) in rust_files(folder) {
            let proof = file.starts_with("crates/app/src/web/proof");
            if !proof && built(&text).any(tag) {
                found.insert(file.to_string_lossy().into_owned());
            }
        }
    }
    let named: std::collections::BTreeSet<String> =
        BY_HAND.iter().map(|(file, _)| (*file).to_owned()).collect();
    assert_eq!(found, named);
}

#[test]
fn scripts_put_in_no_markup_but_answers_of_the_server() {
    let mut seen = [0_usize; IN_SCRIPTS.len()];
    let mut scripts = 0;
    let is_script = |file: &PathBuf| file.extension().is_some_and(|e| e == "js" || e == "mjs");
    for file in tracked().into_iter().filter(is_script) {
        scripts += 1;
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let text = fs::read_to_string(root().join(&file)).expect("a script is UTF-8");
        for line in text.lines() {
            let mut rest = line.to_owned();
            for (row, (of, says, _)) in IN_SCRIPTS.iter().enumerate() {
                if name == *of && rest.contains(says) {
                    rest = rest.replacen(says, "", 1);
                    seen[row] += 1;
                }
            }
            for sink in SINKS {
                assert!(!rest.contains(sink), "{}: {sink} in {line}", file.display());
            }
        }
    }
    assert!(scripts > 20, "only {scripts} scripts were found");
    // The plan page has one place for its parts and one for what stands beside fields.
    assert_eq!(seen, [1, 1, 1, 1, 1, 1, 1, 1, 1, 2]);
}
