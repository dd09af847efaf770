//! Every text that pages and scripts ask for is in the catalog, and nothing in it is asked for by
//! nobody.

use barm_documents::catalog::Catalog;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn sources(folder: &Path, all: &mut Vec<PathBuf>) {
    for file in fs::read_dir(folder).expect("a folder of sources") {
        let path = file.expect("a file").path();
        let source = path.extension().is_some_and(|e| e == "rs" || e == "js" || e == "typ");
        if path.is_dir() {
            sources(&path, all);
        } else if source {
            all.push(path);
        }
    }
}

/// Everything in double quotes in a source, comments left out.
fn quoted(text: &str, all: &mut BTreeSet<String>) {
    for line in text.lines().filter(|line| !line.trim_start().starts_with("//")) {
        all.extend(line.split('"').skip(1).step_by(2).map(str::to_owned));
    }
}

#[test]
fn keys_in_the_sources_and_in_the_catalog_are_the_same() {
    let mut files = Vec::new();
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut files);
    let mut paper = Vec::new();
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../documents/src"), &mut paper);
    let mut words = BTreeSet::new();
    for file in files.iter().chain(&paper) {
        quoted(&fs::read_to_string(file).expect("a source"), &mut words);
    }
    // The word at the end may be one of the trade, "how much" of something in two words, or a code.
    let mut trade = Vec::new();
    for room in ["../domain/src", "../science/src"] {
        sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join(room), &mut trade);
    }
    let mut ends = words.clone();
    ends.extend(words.iter().map(|word| word.to_lowercase()));
    for file in &trade {
        let mut own = BTreeSet::new();
        quoted(&fs::read_to_string(file).expect("a source"), &mut own);
        ends.extend(own.iter().map(|word| word.to_lowercase().replace(' ', "-")));
    }
    let keys: BTreeSet<String> = Catalog::of("en").keys().iter().cloned().collect();
    // A key may be put together of a beginning, a word that stands elsewhere, and an end.
    let begun: Vec<(&str, &str)> = words
        .iter()
        .filter_map(|word| {
            let (start, rest) = word.split_once("-{")?;
            Some((start, rest.split_once('}').map_or("", |(_, end)| end)))
        })
        .collect();
    let put_together = |key: &str| {
        begun.iter().any(|(start, end)| {
            let rest = key.strip_prefix(start).and_then(|rest| rest.strip_prefix('-'));
            rest.and_then(|rest| rest.strip_suffix(end)).is_some_and(|rest| ends.contains(rest))
        })
    };
    // Names of the cupboard are asked for by its ids, which the catalog's own tests walk.
    let of_larder = |key: &str| key.starts_with("larder-");
    let asked = |key: &String| words.contains(key) || put_together(key) || of_larder(key);
    let unused: Vec<&String> = keys.iter().filter(|key| !asked(key)).collect();
    assert!(unused.is_empty(), "nobody asks for {unused:?}");
    let mut missing = BTreeSet::new();
    let templates = paper.iter().filter(|file| file.extension().is_some_and(|e| e == "typ"));
    for file in files.iter().chain(templates) {
        let text = fs::read_to_string(file).expect("a source");
        // `t(` of the scripts stands behind a space, a bracket or a sign, never behind a letter.
        // `w(` of the templates the same; what ends in a dash is put together with a word.
        let calls = [
            "say(\"",
            "say_with(\"",
            " t(\"",
            "(t(\"",
            "[t(\"",
            "{t(\"",
            "counted(words, \"",
            " w(\"",
            "(w(\"",
            "[w(\"",
            "#w(\"",
        ];
        for call in calls {
            let asked = text.split(call).skip(1).filter_map(|rest| rest.split('"').next());
            let asked = asked.filter(|key| !key.ends_with('-'));
            let unknown = asked.filter(|key| !keys.contains(*key));
            missing.extend(unknown.map(|key| format!("{}: {key}", file.display())));
        }
    }
    assert!(missing.is_empty(), "not in the catalog: {missing:#?}");
}
