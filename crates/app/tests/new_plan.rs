//! `barm new` and `barm bags`: a plan that can be used at once, and a bag list kept in step.

mod program;

use program::{invented, run};
use std::fs;

#[test]
fn a_new_plan_can_be_used_at_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let new = ["new", "plan.toml", "--date", "2027-03-09", "--altitude", "4600 ft"];
    let (out, err) = run(folder.path(), &new).ended(0);
    assert!(out.contains("barm check plan.toml"), "{out}");
    assert_eq!(err, "");
    let fresh = fs::read_to_string(folder.path().join("plan.toml")).expect("the plan");
    assert!(fresh.lines().any(|line| line.starts_with('#')), "it has notes for people");

    let (out, _) = run(folder.path(), &["check", "plan.toml"]).ended(0);
    assert!(out.contains("No faults."), "{out}");
    run(folder.path(), &["predict", "plan.toml", "--draws", "64"]).ended(0);
    run(folder.path(), &["prep", "plan.toml"]).ended(0);
    run(folder.path(), &["bags", "plan.toml"]).ended(0);
    let after = fs::read_to_string(folder.path().join("plan.toml")).expect("the plan");
    assert_eq!(fresh, after, "its bag list was in step");

    let (out, err) = run(folder.path(), &new).ended(2);
    assert_eq!(out, "");
    assert!(err.starts_with("barm: plan.toml is there already"), "{err}");
    assert_eq!(fs::read_to_string(folder.path().join("plan.toml")).expect("it"), fresh);
}

#[test]
fn a_new_plan_that_cannot_be_is_2_and_leaves_no_file() {
    let folder = tempfile::tempdir().expect("a folder");
    for wish in [
        ["--periods", "0"],
        ["--periods", "200"],
        ["--students", "0"],
        ["--title", ""],
        ["--altitude", "20000 m"],
        ["--zone", "Mars/Olympus"],
    ] {
        let mut arguments = vec!["new", "plan.toml", "--date", "2027-03-09"];
        arguments.extend(wish);
        let (out, err) = run(folder.path(), &arguments).ended(2);
        assert_eq!(out, "", "{wish:?}");
        let own: Vec<&str> = err.lines().filter(|line| !line.starts_with("  ")).collect();
        assert_eq!(own.len(), 1, "one sentence: {err}");
        assert!(own[0].starts_with("barm: "), "{err}");
        assert!(!folder.path().join("plan.toml").exists(), "{wish:?}");
    }
}

#[test]
fn a_date_as_it_is_written_in_the_us_is_told_how_to_be_written() {
    let folder = tempfile::tempdir().expect("a folder");
    for (written, told) in [
        ("03/09/2027", "if you mean March 9, 2027, write 2027-03-09"),
        ("3-9-2027", "if you mean March 9, 2027, write 2027-03-09"),
        ("13/09/2027", "write year-month-day, such as 2027-03-09"),
        ("2027-02-30", "write year-month-day, such as 2027-03-09"),
        ("soon", "write year-month-day, such as 2027-03-09"),
    ] {
        let (out, err) = run(folder.path(), &["new", "plan.toml", "--date", written]).ended(2);
        assert_eq!(out, "");
        let first = err.lines().next().expect("a line");
        assert!(first.contains(&format!("'{written}'")) && first.ends_with(told), "{err}");
    }
}

/// Code and place (period, group, question, treatment) of every bag of a plan.
fn bags(plan: &str) -> Vec<(String, [String; 4])> {
    let plan: toml::Table = plan.parse().expect("TOML");
    let list = plan["bag_list"]["bags"].as_array().expect("a list");
    let of = |bag: &toml::Value, key: &str| bag[key].to_string();
    list.iter()
        .map(|bag| {
            let place = ["period", "group", "question", "treatment"].map(|key| of(bag, key));
            (of(bag, "code"), place)
        })
        .collect()
}

#[test]
fn a_renewed_bag_list_keeps_notes_and_codes() {
    const NOTE: &str = "# Ms. Alder's note: more bags of everything.";
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("plan.toml");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    // The food question stands first.
    let before = plan.replacen("replicates = 8 ", &format!("{NOTE}\nreplicates = 9 "), 1);
    assert_ne!(plan, before);
    fs::write(&path, &before).expect("written");
    let (out, _) = run(folder.path(), &["bags", "plan.toml"]).ended(0);
    let after = fs::read_to_string(&path).expect("it");
    assert_ne!(bags(&before), bags(&after), "the list follows the question");
    let said = format!("{} bags, {} before.", bags(&after).len(), bags(&before).len());
    assert!(out.contains(&said), "{out}");

    let notes = |text: &str| -> Vec<String> {
        let notes = text.lines().filter_map(|line| line.split_once('#'));
        notes.map(|(_, note)| note.to_owned()).collect()
    };
    assert_eq!(notes(&before), notes(&after), "every note stays, in its order");
    assert!(after.contains(NOTE));
    // A code means one bag forever: it keeps its place and treatment, or is retired.
    let retired: toml::Table = after.parse().expect("TOML");
    let retired =
        retired["bag_list"].get("retired").map(toml::Value::to_string).unwrap_or_default();
    for (code, place) in bags(&before) {
        match bags(&after).iter().find(|(other, _)| *other == code) {
            Some((_, now)) => assert_eq!(*now, place, "{code} became another bag"),
            None => assert!(retired.contains(&code), "{code} was lost"),
        }
    }
    run(folder.path(), &["bags", "plan.toml"]).ended(0);
    assert_eq!(fs::read_to_string(&path).expect("it"), after, "a second time changes nothing");
}

/// The invented plan in a folder, with a fifth class at the end of the day.
fn with_a_fifth_class() -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let fifth = "[[period]]\nname = \"7\"\nday = \"Tuesday\"\nstart = \"13:55\"\n\
                 length = \"45 min\"\nstudents = 24\ngroups = 8\n\n";
    let at = plan.find("# Groups that differ").expect("the end of the periods");
    let grown = format!("{}{fifth}{}", &plan[..at], &plan[at..]);
    fs::write(folder.path().join("plan.toml"), &grown).expect("written");
    (folder, plan)
}

#[test]
fn a_class_that_comes_late_leaves_printed_labels_true() {
    let (folder, before) = with_a_fifth_class();
    let path = folder.path().join("plan.toml");
    let (out, _) = run(folder.path(), &["bags", "plan.toml"]).ended(0);
    let count = bags(&before).len();
    assert!(
        out.contains(&format!("{count} stay as they were, 4 are new, 0 are gone.")),
        "{out}"
    );
    assert!(out.contains("Period 7: 8 groups have no bag."), "{out}");
    let after = fs::read_to_string(&path).expect("it");
    for bag in bags(&before) {
        assert!(bags(&after).contains(&bag), "{bag:?} was lost or changed");
    }
    let (out, _) = run(folder.path(), &["check", "plan.toml"]).ended(0);
    assert!(out.contains("idle-group"), "{out}");

    // Asked for, the whole list is dealt again; codes that leave it are retired, not lost.
    let (out, _) = run(folder.path(), &["bags", "plan.toml", "--anew"]).ended(0);
    assert!(!out.contains(" 0 are gone"), "{out}");
    let anew = fs::read_to_string(&path).expect("it");
    for (code, place) in bags(&after) {
        let now = bags(&anew).into_iter().find(|(other, _)| *other == code);
        assert!(now.is_none_or(|(_, there)| there == place), "{code} became another bag");
        assert!(anew.contains(&code), "{code} was lost");
    }
}

#[test]
fn a_group_or_a_class_that_goes_leaves_its_codes_retired() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("plan.toml");
    let before = fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let fewer = before.replacen("groups = 8", "groups = 7", 1);
    assert_ne!(before, fewer);
    fs::write(&path, &fewer).expect("written");
    let (_, err) = run(folder.path(), &["prep", "plan.toml"]).ended(1);
    assert!(err.contains("  try: ") && err.contains("barm bags plan.toml"), "{err}");
    let (out, _) = run(folder.path(), &["bags", "plan.toml"]).ended(0);
    let gone: Vec<_> = bags(&before)
        .into_iter()
        .filter(|(_, [period, group, ..])| period == "\"1\"" && group == "8")
        .collect();
    assert!(!gone.is_empty());
    assert!(out.contains(&format!(" {} are gone.", gone.len())), "{out}");
    let after = fs::read_to_string(&path).expect("it");
    let table: toml::Table = after.parse().expect("TOML");
    let retired = table["bag_list"]["retired"].to_string();
    for bag in bags(&before) {
        assert_ne!(bags(&after).contains(&bag), gone.contains(&bag), "{bag:?}");
        assert_eq!(retired.contains(&bag.0), gone.contains(&bag), "{bag:?}");
    }
    run(folder.path(), &["prep", "plan.toml"]).ended(0);
}

#[test]
fn ready_plans_are_listed_and_each_can_be_used_at_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let (out, err) = run(folder.path(), &["new", "--ready"]).ended(0);
    assert_eq!(err, "");
    let names: Vec<&str> = out
        .lines()
        .filter(|line| line.ends_with("min)"))
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    assert!(names.len() >= 5, "{names:?}");
    for name in names {
        let file = format!("{name}.toml");
        run(folder.path(), &["new", &file, "--ready", name, "--date", "2027-03-09"]).ended(0);
        let (out, _) = run(folder.path(), &["check", &file]).ended(0);
        assert!(out.contains("No faults."), "{name}: {out}");
        run(folder.path(), &["prep", &file]).ended(0);
        run(folder.path(), &["bags", &file]).ended(0);
    }
}

#[test]
fn a_ready_plan_that_cannot_be_says_what_to_write() {
    let folder = tempfile::tempdir().expect("a folder");
    let day = ["--date", "2027-03-09"];
    for (wish, says) in [
        (&["--ready", "wich-food"][..], "did you mean which-food?"),
        (&["--ready", "salt", "--length", "20 min"], "25 to 180 min"),
        (&["--ready", "salt", "--water", "60 °C"], "30 to 48 °C"),
        (&["--ready", "salt", "--cupboard", "honny"], "did you mean honey?"),
        (&["--ready", "salt", "--bag", "60 x 60 mm"], "snack, sandwich, quart or gallon"),
    ] {
        let mut arguments = vec!["new", "plan.toml"];
        arguments.extend(day);
        arguments.extend(wish);
        let (out, err) = run(folder.path(), &arguments).ended(2);
        assert_eq!(out, "", "{wish:?}");
        assert!(err.contains(says), "{wish:?}: {err}");
        assert!(!folder.path().join("plan.toml").exists(), "{wish:?}");
    }
    let (_, err) = run(folder.path(), &["new", "--ready", "salt"]).ended(2);
    assert!(err.contains("--date"), "{err}");
}
