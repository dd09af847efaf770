//! What the program does with sound, faulty and senseless input, seen from its exit codes
//! (0 fine, 1 the plan or the data have faults, 2 unreadable input or wrong use) and its words.

mod program;

use program::{barm, invented, run};
use std::fs;
use std::io::Read;
use std::path::Path;
use std::process::Stdio;
use tempfile::TempDir;

/// A folder with a copy of the invented plan, changed by `change`.
fn with_plan(change: impl FnOnce(String) -> String) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    fs::write(folder.path().join("plan.toml"), change(plan)).expect("written");
    folder
}

/// A text with one passage replaced, which must be there.
fn replaced(text: &str, passage: &str, by: &str) -> String {
    assert!(text.contains(passage), "the invented plan has no “{passage}”");
    text.replacen(passage, by, 1)
}

fn line_of(folder: &Path, words: &str) -> usize {
    let plan = fs::read_to_string(folder.join("plan.toml")).expect("the plan");
    plan.lines().position(|line| line.contains(words)).expect("the line") + 1
}

const EVERY_USE: [&[&str]; 6] = [
    &["check", "plan.toml"],
    &["predict", "plan.toml", "--draws", "64"],
    &["power", "plan.toml", "--classes", "4"],
    &["prep", "plan.toml"],
    &["bags", "plan.toml"],
    &["analyze", "plan.toml", "readings.csv"],
];

#[test]
fn a_missing_file_is_2_and_named() {
    let folder = tempfile::tempdir().expect("a folder");
    for arguments in EVERY_USE {
        let (out, err) = run(folder.path(), arguments).ended(2);
        assert_eq!(out, "");
        assert!(err.starts_with("barm: cannot read plan.toml\n"), "{err}");
        assert!(err.contains("  try: "), "{err}");
    }
    let folder = with_plan(|plan| plan);
    let (_, err) = run(folder.path(), &["analyze", "plan.toml", "readings.csv"]).ended(2);
    assert!(err.starts_with("barm: cannot read readings.csv\n"), "{err}");
}

#[test]
fn a_folder_in_place_of_a_plan_is_2() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join("plan.toml")).expect("made");
    let (_, err) = run(folder.path(), &["check", "plan.toml"]).ended(2);
    assert!(err.starts_with("barm: cannot read plan.toml\n"), "{err}");
}

#[test]
fn wrong_use_is_2_and_points_to_the_help() {
    let folder = with_plan(|plan| plan);
    for arguments in [
        &["frobnicate"][..],
        &["predict"],
        &["predict", "plan.toml", "--draws", "3"],
        &["predict", "plan.toml", "--seed", "sunny"],
        &["power"],
        &["power", "plan.toml", "--classes", "2"],
        &["prep", "plan.toml", "--paper", "foolscap"],
        &["round-two", "plan.toml"],
        &["round-two", "plan.toml", "readings.csv", "--take", "1"],
        &["round-two", "plan.toml", "readings.csv", "--by", "luck"],
        &["trust", "--classes", "0"],
        &["trust", "--cell", "b4-p3"],
        &["trust", "--json", "--markdown"],
        &["new", "mine.toml"],
        &["new", "mine.toml", "--date", "tomorrow"],
        &["new", "mine.toml", "--date", "2027-03-09", "--altitude", "high"],
    ] {
        let (out, err) = run(folder.path(), arguments).ended(2);
        assert_eq!(out, "", "{arguments:?}");
        assert!(err.contains("--help") || err.contains("Usage:"), "{arguments:?}: {err}");
    }
    assert!(!folder.path().join("mine.toml").exists());
}

#[test]
fn a_plan_with_mistakes_is_1_with_place_and_fix_whoever_reads_it() {
    let folder = with_plan(|plan| {
        let plan = replaced(&plan, "grade = 8\n", "grade = 88\n");
        replaced(&plan, "water = \"40 mL\"", "water = \"40 mLx\"")
    });
    fs::copy(invented().join("readings.csv"), folder.path().join("readings.csv")).expect("it");
    let before = fs::read(folder.path().join("plan.toml")).expect("it");
    let grade = line_of(folder.path(), "grade = 88");
    let water = line_of(folder.path(), "40 mLx");
    for arguments in EVERY_USE {
        let (out, err) = run(folder.path(), arguments).ended(1);
        // `check` answers with findings; the others cannot answer at all.
        let said = if arguments[0] == "check" { &out } else { &err };
        // The value begins in column 9 of both lines.
        for place in [format!("plan.toml:{grade}:9"), format!("plan.toml:{water}:9")] {
            assert!(said.contains(&place), "{arguments:?}: no {place} in\n{said}");
        }
        assert!(said.contains("write a whole number from 5 to 12"), "{said}");
        assert!(said.contains("did you mean ml?"), "{said}");
    }
    assert_eq!(
        fs::read(folder.path().join("plan.toml")).expect("it"),
        before,
        "left as it was"
    );
}

#[test]
fn a_faulty_plan_is_1_and_says_what_to_mend() {
    let folder =
        with_plan(|plan| replaced(&plan, "food = \"oat flour\"", "food = \"maple syrup\""));
    let (out, err) = run(folder.path(), &["check", "plan.toml"]).ended(1);
    assert_eq!(err, "");
    assert!(out.contains("Faults: mend these first"), "{out}");
    assert!(out.contains("levels-not-distinct"), "two treatments made alike:\n{out}");
    assert!(!out.contains("No faults."), "{out}");
}

/// After every caution it would drown them; a machine that reads one of them needs it there.
#[test]
fn whose_rules_come_first_is_said_once_to_people_and_with_each_caution_to_machines() {
    const RULES: &str = "Your school's and state's rules come first.";
    let (out, _) = run(&invented(), &["check", "plan.toml"]).ended(0);
    let said: Vec<&str> =
        out.lines().filter(|line| line.contains("rules come first")).collect();
    assert_eq!(said, [RULES], "{out}");
    assert!(out.contains(&format!("{RULES}\nS0")), "over the cautions:\n{out}");
    let (json, _) = run(&invented(), &["check", "plan.toml", "--json"]).ended(0);
    assert!(json.matches(RULES).count() > 5, "{json}");
}

#[test]
fn what_is_no_text_or_no_toml_is_2_with_a_place_and_what_to_do() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("plan.toml");
    for (bytes, place, word, fix) in [
        (
            &b"format = 1\ntitle = \"\xff\xfe\0\x1b[2J\"\n"[..],
            "plan.toml:2:10",
            "UTF-8",
            "save the file again as plain text",
        ),
        (b"format = 1\ntitle = \"No end\n", "plan.toml:2:", "TOML", "straight quotes"),
        (b"format = 1\ngrade = 8\ngrade = 7\n", "plan.toml:3:1", "duplicate", "take one"),
    ] {
        fs::write(&file, bytes).expect("written");
        let (out, _) = run(folder.path(), &["check", "plan.toml"]).ended(2);
        let out = unwrapped(&out);
        assert!(out.contains(place) && out.contains(word) && out.contains(fix), "{out}");
        let (out, _) = run(folder.path(), &["check", "plan.toml", "--json"]).ended(2);
        let found: serde_json::Value = serde_json::from_str(&out).expect("JSON");
        assert!(found[0]["where"]["line"].as_u64() > Some(1), "{out}");
        for arguments in EVERY_USE.iter().filter(|arguments| arguments[0] != "check") {
            let (out, err) = run(folder.path(), arguments).ended(2);
            assert_eq!(out, "");
            assert!(err.starts_with("barm: plan.toml cannot be read as a plan: "), "{err}");
            assert!(err.contains(place) && err.contains(word) && err.contains(fix), "{err}");
        }
        let (out, err) = run(folder.path(), &["predict", "plan.toml", "--json"]).ended(2);
        assert!(out.is_empty() && err.contains(place), "{out}{err}");
    }
    // Nothing at all is TOML, and a plan with much missing.
    fs::write(&file, b"").expect("written");
    let (out, _) = run(folder.path(), &["check", "plan.toml"]).ended(1);
    assert!(out.contains("plan.toml:1:1") && out.contains("format"), "{out}");
}

/// A page as one line.
fn unwrapped(out: &str) -> String {
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The lines of a message that say what happened, and those that say what to do.
fn said(err: &str) -> (Vec<&str>, Vec<&str>) {
    err.lines().partition(|line| !line.starts_with("  try: "))
}

#[test]
fn a_folder_in_place_of_a_new_file_is_told_in_one_sentence() {
    let folder = with_plan(|plan| plan);
    fs::create_dir(folder.path().join("out")).expect("made");
    fs::copy(invented().join("readings.csv"), folder.path().join("readings.csv")).expect("it");
    for (arguments, example) in [
        (&["prep", "plan.toml", "--pdf", "out"][..], "out/prep.pdf"),
        (&["predict", "plan.toml", "--pdf", "out/"], "out/forecast.pdf"),
        (&["analyze", "plan.toml", "readings.csv", "--pdf", "out"], "out/results.pdf"),
        (&["prep", "plan.toml", "--pdf", "nowhere/"], "nowhere/prep.pdf"),
        (&["new", "out", "--date", "2027-03-09"], "out/plan.toml"),
    ] {
        let (out, err) = run(folder.path(), arguments).ended(2);
        assert_eq!(out, "", "{arguments:?}");
        let (what, fix) = said(&err);
        assert_eq!(what.len(), 1, "{err}");
        assert!(what[0].contains("is a folder, not a file"), "{err}");
        assert!(fix.len() == 1 && fix[0].ends_with(example), "{err}");
    }
    assert_eq!(fs::read_dir(folder.path().join("out")).expect("it").count(), 0);
}

#[test]
fn letters_that_no_page_has_are_named_before_anything_is_printed() {
    let folder =
        with_plan(|plan| replaced(&plan, "label = \"Otters\"", "label = \"Otters 🦦\""));
    let line = line_of(folder.path(), "Otters 🦦");
    let (out, _) = run(folder.path(), &["check", "plan.toml"]).ended(0);
    let place = format!("(plan.toml:{line}:");
    assert!(out.contains("letters-missing") && out.contains("Otters 🦦"), "{out}");
    let out = unwrapped(&out);
    assert!(out.contains("for “🦦”.") && out.contains(&place), "{out}");
    let arguments = ["prep", "plan.toml", "--pdf", "prep.pdf"];
    let (out, _) = run(folder.path(), &arguments).ended(0);
    assert!(out.contains("“Otters 🦦” will show [?] for “🦦”."), "{out}");
}

#[test]
fn facts_can_be_narrowed() {
    let all = run(&invented(), &["facts"]).ended(0).0;
    let some = run(&invented(), &["facts", "RATE"]).ended(0).0;
    let none = run(&invented(), &["facts", "quetzalcoatl"]).ended(0).0;
    let count = |text: &str| -> usize {
        let last = text.lines().last().expect("a last line");
        last.strip_suffix(" facts")
            .and_then(|n| n.parse().ok())
            .unwrap_or_else(|| panic!("{last}"))
    };
    // Two lines a fact: value, then status and source.
    for text in [&all, &some, &none] {
        assert_eq!(text.lines().count(), 2 * count(text) + 1);
    }
    assert!(count(&all) > count(&some) && count(&some) > 0 && count(&none) == 0);
    let lines: Vec<&str> = some.lines().collect();
    for fact in lines.chunks_exact(2) {
        let held = fact.join("\n").to_lowercase();
        assert!(held.contains("rate"), "{held}");
        assert!(all.contains(&fact.join("\n")), "{held}");
    }
    run(&invented(), &["facts", "quetzalcoatl", "--json"]).ended(0);
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    for arguments in [&["facts"][..], &["facts", "--json"]] {
        let mut child = barm()
            .args(arguments)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("barm starts");
        // The answer is longer than a pipe holds: barm is still writing when the pipe breaks.
        let mut answer = child.stdout.take().expect("its answer");
        answer.read_exact(&mut [0]).expect("it begins");
        drop(answer);
        let output = child.wait_with_output().expect("barm ends");
        let err = String::from_utf8_lossy(&output.stderr);
        assert_eq!((output.status.code(), &*err), (Some(0), ""), "{arguments:?}");
    }
}

#[test]
fn nonsense_in_place_of_readings_is_said_once_and_listed_row_by_row() {
    let folder = with_plan(|plan| plan);
    // Bytes of a fixed pseudorandom walk (multiplier and increment: Knuth, The Art of Computer
    // Programming 2, 3.3.4, from memory): no file of readings, no text in any encoding.
    let mut state: u64 = 1;
    let nonsense: Vec<u8> = std::iter::repeat_with(|| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        state.to_be_bytes()[0]
    })
    .take(3000)
    .collect();
    fs::write(folder.path().join("readings.csv"), &nonsense).expect("written");
    let (out, err) = run(folder.path(), &["analyze", "plan.toml", "readings.csv"]).ended(1);
    assert_eq!(err, "");
    assert!(out.contains("no row of headings"), "{out}");
    assert!(out.lines().count() < 8, "one sentence, not one a row:\n{out}");
    let control = out.chars().find(|c| c.is_control() && *c != '\n');
    assert_eq!(control, None, "no byte of the file reaches the terminal as a command");

    let (out, _) =
        run(folder.path(), &["analyze", "plan.toml", "readings.csv", "--json"]).ended(1);
    let answer: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let rejected = answer["rejected"].as_array().expect("a list");
    assert!(!rejected.is_empty(), "every row has its reason");
    for question in answer["questions"].as_array().expect("a list") {
        for comparison in question["comparisons"].as_array().expect("a list") {
            assert_eq!(comparison["verdict"], "not-comparable", "{comparison}");
            assert!(comparison["difference_mm"].is_null(), "{comparison}");
        }
    }
}

/// The invented readings with their rows and headings changed, analyzed.
fn analyzed(change: impl Fn(usize, &str) -> Option<String>, code: i32) -> (String, Vec<u64>) {
    let folder = with_plan(|plan| plan);
    let readings = fs::read_to_string(invented().join("readings.csv")).expect("the readings");
    let changed: Vec<String> =
        readings.lines().enumerate().filter_map(|(at, line)| change(at, line)).collect();
    fs::write(folder.path().join("readings.csv"), changed.join("\n")).expect("written");
    let analyze = ["analyze", "plan.toml", "readings.csv"];
    let (out, err) = run(folder.path(), &analyze).ended(code);
    assert_eq!(err, "");
    let (json, _) = run(folder.path(), &[&analyze[..], &["--json"]].concat()).ended(code);
    let answer: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    let lines = answer["rejected"].as_array().expect("a list").iter();
    let said = out.lines().nth(2).expect("a line under the title").to_owned();
    let note = answer["notes"][0].as_str().unwrap_or_default();
    assert!(note.starts_with(&said), "{said}\n{note}");
    (out, lines.map(|row| row["line"].as_u64().expect("a line")).collect())
}

#[test]
fn what_is_wrong_with_a_whole_file_is_said_once_and_first() {
    let cells = |line: &str| line.split(',').map(str::to_owned).collect::<Vec<_>>();
    let (out, rejected) = analyzed(
        |at, line| {
            let mut cells = cells(line);
            if at > 0 {
                cells.swap(1, 2);
            }
            Some(cells.join(","))
        },
        1,
    );
    assert!(out.contains("look swapped"), "{out}");
    assert!(!out.contains("line 2") && out.lines().count() < 8, "{out}");
    assert!(rejected.len() > 600, "every row is listed: {}", rejected.len());
    let (out, rejected) = analyzed(|at, line| (at == 0).then(|| line.to_owned()), 1);
    assert!(out.contains("no row under them") && rejected.is_empty(), "{out}");
    let (out, rejected) = analyzed(|_, _| None, 1);
    assert!(out.contains("is empty") && rejected.is_empty(), "{out}");
    assert!(!out.contains("Nothing was left out."), "{out}");
}

#[test]
fn a_pdf_is_written_once_and_never_over_another_file() {
    let folder = with_plan(|plan| plan);
    let arguments = ["prep", "plan.toml", "--pdf", "prep.pdf", "--paper", "a4"];
    run(folder.path(), &arguments).ended(0);
    let pdf = fs::read(folder.path().join("prep.pdf")).expect("the sheet");
    assert!(pdf.starts_with(b"%PDF"));
    let (_, err) = run(folder.path(), &arguments).ended(2);
    assert!(err.starts_with("barm: prep.pdf is there already"), "{err}");
    assert_eq!(fs::read(folder.path().join("prep.pdf")).expect("the sheet"), pdf);
}
