//! The table of facts in `docs/science/facts.md`, which the program writes itself.
//!
//! After a fact has changed, run this test with `BARM_RENEW=1` and read the difference.

mod program;

use program::{invented, run};
use serde_json::Value;
use std::fs;
use std::path::Path;

fn page() -> String {
    run(&invented(), &["facts", "--markdown"]).ended(0).0
}

#[test]
fn every_fact_stands_in_one_row_with_its_source() {
    let page = page();
    let all: Value = serde_json::from_str(&run(&invented(), &["facts", "--json"]).ended(0).0)
        .expect("an answer in JSON");
    let facts = all.as_array().expect("a list");
    let rows: Vec<&str> = page.lines().filter(|line| line.starts_with("| `")).collect();
    assert_eq!(rows.len(), facts.len());
    for fact in facts {
        let text = |key: &str| fact[key].as_str().expect("a text");
        let start = format!("| `{}` |", text("name"));
        let mut own = rows.iter().filter(|row| row.starts_with(&start));
        let row = own.next().unwrap_or_else(|| panic!("no row of {start}"));
        assert!(own.next().is_none(), "{start} twice");
        let source = text("source").replace('|', "\\|");
        assert!(row.contains(&source) && row.contains(text("status")), "{row}");
        // Six cells, whatever a source holds.
        assert_eq!(row.replace("\\|", "").matches('|').count(), 7, "{row}");
    }
}

#[test]
fn the_page_is_what_the_program_says() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/science/facts.md");
    let page = page();
    if std::env::var_os("BARM_RENEW").is_some() {
        fs::write(&file, &page).expect("the page is written");
    }
    let kept = fs::read_to_string(&file).expect("docs/science/facts.md");
    for (number, (now, then)) in page.lines().zip(kept.lines()).enumerate() {
        assert_eq!(now, then, "line {} of docs/science/facts.md", number + 1);
    }
    assert_eq!(page.lines().count(), kept.lines().count());
}

/// The same as in the documentation, which the laws' own test draws.
#[test]
fn the_laws_are_written_as_pictures_and_a_changed_one_is_left() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = |expected: &str| {
        let (out, err) = run(folder.path(), &["facts", "--pictures", "laws"]).ended(0);
        assert_eq!(err, "");
        assert!(out.contains(expected), "{out}");
        out
    };
    let docs = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/science/pictures");
    let kept: Vec<_> =
        fs::read_dir(docs).expect("pictures").map(|one| one.expect("one")).collect();
    out(&format!("{} pictures of laws", kept.len()));
    for one in &kept {
        let own = folder.path().join("laws").join(one.file_name());
        let (own, docs) =
            (fs::read(&own).expect("written"), fs::read(one.path()).expect("kept"));
        assert!(own == docs, "{:?}", one.file_name());
    }
    let meter = folder.path().join("laws/meter.svg");
    fs::write(&meter, "mine").expect("changed");
    let said = out("(yours was left as it is)");
    assert_eq!(said.matches("yours").count(), 1, "{said}");
    assert_eq!(fs::read_to_string(&meter).expect("it"), "mine");
    let wrong = run(folder.path(), &["facts", "--pictures", "laws", "--json"]);
    wrong.ended(2);
}
