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
