//! A period with several waters: the teacher must see which bags get which.

mod program;

use program::{invented, run};
use std::fs;

#[test]
fn prep_says_which_bags_get_which_water() {
    let folder = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let name = "name = \"Maple syrup\"\n";
    let warm = plan.replacen(name, &format!("{name}water_temperature = \"45 °C\"\n"), 1);
    assert_ne!(plan, warm);
    fs::write(folder.path().join("plan.toml"), warm).expect("written");
    let (out, _) = run(folder.path(), &["prep", "plan.toml"]).ended(0);
    for water in ["Period 1, 40 °C", "Period 1, 45 °C", "Period 6, 45 °C"] {
        assert!(
            out.lines().any(|line| line.trim_start().starts_with(water)),
            "{water}:\n{out}"
        );
    }
    let whose = "Every period: 40 °C for all other bags; 45 °C for Maple syrup.";
    assert!(out.contains(whose), "{out}");

    let (json, _) = run(folder.path(), &["prep", "plan.toml", "--json"]).ended(0);
    let answer: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    let waters = answer["periods"][0]["water"].as_array().expect("waters");
    assert_eq!(waters[1]["treatments"], serde_json::json!(["Maple syrup"]), "{waters:?}");
    // One water for all needs no name.
    let (out, _) = run(&invented(), &["prep", "plan.toml"]).ended(0);
    assert!(!out.contains("all other bags") && !out.contains("Period 1, 40"), "{out}");
}
