//! `barm check --json`.

use crate::invented::check;
use crate::program;
use crate::shape::*;
use serde_json::Value;
use std::fs;
use std::path::Path;

const FINDING: [(&str, Kind); 6] = [
    ("severity", TEXT),
    ("code", TEXT),
    ("message", TEXT),
    ("fix", TEXT),
    ("where", |place| place.is_object() || place.is_null()),
    ("source", TEXT_OR_NULL),
];

/// Fails unless every finding has its shape and a code that `docs/findings.md` lists.
fn findings(found: &[Value]) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/findings.md");
    let listed = fs::read_to_string(path).expect("docs/findings.md");
    for finding in found {
        shaped(text(finding, "code"), finding, &FINDING);
        let severity = text(finding, "severity");
        assert!(["fault", "warning", "note", "caution"].contains(&severity), "{finding}");
        let code = text(finding, "code");
        let known = listed.contains(&format!("`{code}`"))
            || listed.lines().any(|line| line.starts_with(&format!("| {code} |")));
        assert!(known, "{code} is not in docs/findings.md");
        assert!(!text(finding, "message").is_empty(), "{finding}");
        assert!(!text(finding, "fix").is_empty(), "{finding}");
        let place = &finding["where"];
        if !place.is_null() {
            shaped("where", place, &[("line", COUNT), ("column", COUNT)]);
            assert!(place["line"].as_u64() >= Some(1) && place["column"].as_u64() >= Some(1));
        }
    }
}

#[test]
fn findings_have_the_promised_shape() {
    let found = check().as_array().expect("a list");
    findings(found);
    assert!(found.iter().any(|finding| finding["severity"] == "caution"));
    assert!(found.iter().all(|finding| finding["severity"] != "fault"));
}

#[test]
fn mistakes_of_a_file_are_findings_with_a_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(program::invented().join("plan.toml")).expect("the plan");
    let slip = plan.replace("grade = 8\n", "grade = 88\n");
    assert_ne!(plan, slip);
    let line = slip.lines().position(|line| line == "grade = 88").expect("the slip") + 1;
    fs::write(folder.path().join("slip.toml"), slip).expect("written");
    let (out, _) = program::run(folder.path(), &["check", "slip.toml", "--json"]).ended(1);
    let found: Value = serde_json::from_str(&out).expect("JSON");
    let found = found.as_array().expect("a list");
    findings(found);
    assert_eq!(found.len(), 1, "{out}");
    assert_eq!(found[0]["code"], "plan-text");
    assert_eq!(found[0]["severity"], "fault");
    assert_eq!(found[0]["where"]["line"].as_u64(), u64::try_from(line).ok());
}
