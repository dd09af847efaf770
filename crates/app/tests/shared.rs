//! Data for others and from others, through the program: what is given away, what is taken, and classes
//! beside each other.

#[allow(dead_code)]
#[path = "../../documents/tests/by_hand/mod.rs"]
mod by_hand;
mod program;

use barm_documents::bundle::{Bundle, Limits};
use by_hand::{Part, deflated, stored, zip};
use program::{invented, run};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use tempfile::TempDir;

/// A folder with the invented plan and readings.
fn school() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    for name in ["plan.toml", "readings.csv"] {
        fs::copy(invented().join(name), folder.path().join(name)).expect("copied");
    }
    folder
}

fn share(folder: &Path, to: &str) -> (String, String) {
    run(folder, &["share", "plan.toml", "readings.csv", "--to", to]).ended(0)
}

/// The files of a zip.
fn unzipped(path: &Path) -> BTreeMap<String, Vec<u8>> {
    let bytes = fs::read(path).expect("the zip");
    let mut bundle = Bundle::open(&bytes, &Limits::USUAL).expect("a sound zip");
    let names: Vec<String> = bundle.names().map(str::to_owned).collect();
    let read = |name: String| {
        let bytes = bundle.read(&name).expect("sound").expect("there");
        (name, bytes)
    };
    names.into_iter().map(read).collect()
}

/// Every file of a folder and its folders by its path, but for what remembers what was written.
fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut files = BTreeMap::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(at) = folders.pop() {
        for entry in fs::read_dir(at).expect("a folder") {
            let path = entry.expect("a file").path();
            let name = path.strip_prefix(folder).expect("inside").display().to_string();
            if path.is_dir() {
                folders.push(path);
            } else if !name.contains(".barm-written") {
                files.insert(name, fs::read(&path).expect("its bytes"));
            }
        }
    }
    files
}

#[test]
fn a_package_is_written_once_and_never_over_anything() {
    let folder = school();
    let (out, _) = share(folder.path(), "data.zip");
    for part in [
        "Data for others",
        "treatments",
        "bags set aside",
        "data.zip",
        "Codes and numbers only",
    ] {
        assert!(out.contains(part), "{part}\n{out}");
    }
    let first = fs::read(folder.path().join("data.zip")).expect("the package");
    let arguments = ["share", "plan.toml", "readings.csv", "--to", "data.zip", "--grade"];
    let (_, err) = run(folder.path(), &arguments).ended(2);
    assert!(err.contains("data.zip is there already, and nothing was written"), "{err}");
    assert_eq!(fs::read(folder.path().join("data.zip")).expect("the package"), first);
    // As a folder it is the same, and written again it stays the same; a changed file stays, too.
    share(folder.path(), "data");
    assert_eq!(files(&folder.path().join("data")), unzipped(&folder.path().join("data.zip")));
    share(folder.path(), "data");
    let own = folder.path().join("data/README.md");
    fs::write(&own, "my own notes").expect("written");
    let (_, err) =
        run(folder.path(), &["share", "plan.toml", "readings.csv", "--to", "data"]).ended(2);
    assert!(err.contains("is there already"), "{err}");
    assert_eq!(fs::read_to_string(&own).expect("there"), "my own notes");
    // One plain table.
    share(folder.path(), "data.csv");
    let table = fs::read_to_string(folder.path().join("data.csv")).expect("the table");
    assert!(table.starts_with("\u{feff}bag,period,group,treatment,"), "{table}");
    for wrong in ["data.csv", "plan.toml"] {
        let arguments = ["share", "plan.toml", "readings.csv", "--to", wrong];
        let (_, err) = run(folder.path(), &arguments).ended(2);
        assert!(err.contains("is there already"), "{wrong}: {err}");
    }
}

#[test]
fn the_license_is_chosen_among_four_and_the_grade_is_told_when_asked() {
    let folder = school();
    let share = |to: &str, more: &[&str]| {
        let arguments = [&["share", "plan.toml", "readings.csv", "--to", to], more].concat();
        run(folder.path(), &arguments)
    };
    share("a.zip", &["--license", "CC0-1.0", "--grade"]).ended(0);
    let told =
        String::from_utf8(unzipped(&folder.path().join("a.zip"))["datapackage.json"].clone());
    let told = told.expect("UTF-8");
    assert!(told.contains("CC0-1.0") && told.contains("\"grade\": 8"), "{told}");
    share("b.zip", &[]).ended(0);
    let told = unzipped(&folder.path().join("b.zip"));
    let told = String::from_utf8_lossy(&told["datapackage.json"]).into_owned();
    assert!(told.contains("CC-BY-4.0") && told.contains("\"grade\": null"), "{told}");
    share("c.zip", &["--license", "mine"]).ended(2);
    assert!(!folder.path().join("c.zip").exists());
}

#[test]
fn without_a_height_there_is_nothing_to_share() {
    let folder = school();
    fs::write(folder.path().join("readings.csv"), "bag,minute,height (mm)\n").expect("written");
    let (_, err) =
        run(folder.path(), &["share", "plan.toml", "readings.csv", "--to", "data.zip"])
            .ended(1);
    assert!(err.contains("there is nothing to share"), "{err}");
    assert!(!folder.path().join("data.zip").exists());
}

/// Stands in every planted text and nowhere else.
const MARK: &str = "Zibbeldorn";

/// Texts of a plan that people word as they like, or that refer to such.
const FREE: [&str; 18] = [
    "title",
    "school",
    "big_question",
    "wording",
    "shown_by",
    "name",
    "day",
    "label",
    "says",
    "answer",
    "id",
    "asks",
    "reference",
    "beside",
    "uses",
    "question",
    "treatment",
    "period",
];

/// The value with the mark in every text of those keys.
fn marked(key: &str, value: &mut toml::Value) {
    match value {
        toml::Value::String(text) => {
            let free = FREE.contains(&key) && text != "controls";
            if free || text == "Aunt's own mix" {
                *text = format!("{text} {MARK}");
            }
        }
        toml::Value::Array(all) => all.iter_mut().for_each(|one| marked(key, one)),
        toml::Value::Table(fields) => {
            for (key, one) in fields.iter_mut() {
                marked(key, one);
            }
        }
        _ => {}
    }
}

/// The invented school with a name in every text of its plan and beside its readings.
fn named() -> TempDir {
    let folder = school();
    let file = folder.path().join("plan.toml");
    let plan = fs::read_to_string(&file).expect("the plan");
    let label = "[[label_food]]\nname = \"Aunt's own mix\"\nserving = \"40 g\"\ncarbohydrate = \"28 g\"\n\
                 sugars = \"12 g\"\nstarch = \"raw\"\nnatural_sugar = \"unknown\"\n\
                 allergens = [\"Zibbeldorn\"]\n\n[[set_aside]]\nrule = \"Zibbeldorn's rule\"\n\
                 says = \"Dropped.\"\n\n";
    let plan = plan.replacen("[base]\n", &format!("{label}[base]\n"), 1).replacen(
        "food = \"maple syrup\"",
        "food = \"Aunt's own mix\"",
        1,
    );
    let mut plan: toml::Value = plan.parse().map(toml::Value::Table).expect("TOML");
    marked("", &mut plan);
    let plan = toml::to_string(&plan).expect("TOML");
    assert!(plan.matches(MARK).count() > 100, "{plan}");
    fs::write(&file, plan).expect("written");
    let readings = fs::read_to_string(folder.path().join("readings.csv")).expect("readings");
    let mut lines: Vec<String> = readings.lines().map(str::to_owned).collect();
    for (at, line) in lines.iter_mut().enumerate() {
        // Who read it, beside every row; and notes.
        line.push_str(if at == 0 { ",read by" } else { ",Zibbeldorn" });
    }
    let bag = "P1-00A-G";
    lines.push(format!("{bag},26,,Zibbeldorn dropped it,Zibbeldorn's rule,"));
    fs::write(folder.path().join("readings.csv"), lines.join("\n")).expect("written");
    folder
}

#[test]
fn no_name_of_a_plan_or_a_record_is_in_anything_that_is_given_away() {
    let folder = named();
    let at = folder.path();
    // The names are there as long as nothing is given away.
    let (out, _) = run(at, &["analyze", "plan.toml", "readings.csv"]).ended(0);
    assert!(out.contains(MARK), "{out}");
    for to in ["data.zip", "data", "data.csv"] {
        let (out, _) = share(at, to);
        assert!(!out.contains(MARK), "{out}");
    }
    let mut given = unzipped(&at.join("data.zip"));
    assert_eq!(given.len(), 8);
    given.extend(
        files(&at.join("data")).into_iter().map(|(name, b)| (format!("data/{name}"), b)),
    );
    given.insert("data.csv".into(), fs::read(at.join("data.csv")).expect("the table"));
    // What a colleague makes of it cannot have any name either.
    run(at, &["take", "data.zip", "--to", "taken"]).ended(0);
    given.extend(
        files(&at.join("taken")).into_iter().map(|(name, b)| (format!("taken/{name}"), b)),
    );
    assert_eq!(given.len(), 8 + 8 + 1 + 2);
    for (name, bytes) in &given {
        let text = String::from_utf8(bytes.clone()).expect("UTF-8").to_lowercase();
        assert!(!text.contains(&MARK.to_lowercase()), "{name}: {text}");
        for word in ["tamarack", "aunt", "2027-03-09", "denver", "1400", "tuesday"] {
            assert!(!text.contains(word), "{word} in {name}");
        }
    }
    // The bag that was set aside by a rule of their own is, and the rule has no words.
    let aside = String::from_utf8_lossy(&given["set-aside.csv"]).into_owned();
    assert!(aside.contains("P1-00A-G,other"), "{aside}");
    let foods = String::from_utf8_lossy(&given["ingredients.csv"]).into_owned();
    assert!(foods.contains("own-label"), "{foods}");
}

#[test]
fn what_a_colleague_shared_is_shown_and_analyzed() {
    let folder = school();
    share(folder.path(), "data.zip");
    let (shown, _) = run(folder.path(), &["take", "data.zip"]).ended(0);
    assert!(
        shown.contains("Nothing was written") && shown.contains("maple syrup 0.8 g"),
        "{shown}"
    );
    let (out, _) = run(folder.path(), &["take", "data.zip", "--to", "theirs"]).ended(0);
    for part in
        ["License: CC-BY-4.0", "no class made these bags", "barm analyze theirs/plan.toml"]
    {
        assert!(out.contains(part), "{part}\n{out}");
    }
    let theirs = folder.path().join("theirs");
    assert_eq!(files(&theirs).len(), 2);
    let (found, _) = run(&theirs, &["analyze", "plan.toml", "readings.csv"]).ended(0);
    assert!(found.contains("maple syrup 0.8 g") && found.contains("clear"), "{found}");
    // What was taken is shared again as the same rows.
    let again = ["share", "theirs/plan.toml", "theirs/readings.csv", "--to", "again.zip"];
    run(folder.path(), &again).ended(0);
    let (first, second) = ("data.zip", "again.zip");
    let [first, second] = [first, second].map(|name| unzipped(&folder.path().join(name)));
    for (name, bytes) in first.iter().filter(|(name, _)| name.ends_with(".csv")) {
        assert_eq!(
            String::from_utf8_lossy(bytes),
            String::from_utf8_lossy(&second[name]),
            "{name}"
        );
    }
    // A changed file is not overwritten.
    fs::write(theirs.join("plan.toml"), "mine").expect("written");
    let (_, err) = run(folder.path(), &["take", "data.zip", "--to", "theirs"]).ended(2);
    assert!(err.contains("is there already"), "{err}");
    assert_eq!(fs::read_to_string(theirs.join("plan.toml")).expect("there"), "mine");
}

#[test]
fn what_is_no_package_is_refused_with_a_reason_and_nothing_is_written() {
    let folder = school();
    let at = folder.path();
    share(at, "data");
    let package = files(&at.join("data"));
    let parts = || -> Vec<Part> { package.iter().map(|(name, b)| stored(name, b)).collect() };
    let with = |name: &str, bytes: &[u8]| {
        let mut parts = parts();
        parts.retain(|part| part.name != name.as_bytes());
        parts.push(stored(name, bytes));
        zip(&parts, b"")
    };
    let text = |name: &str| String::from_utf8(package[name].clone()).expect("UTF-8");
    let newer = text("datapackage.json").replace("\"format\": 1", "\"format\": 2");
    let outside = text("datapackage.json").replace("\"bags.csv\"", "\"../plan.toml\"");
    let bomb = Part { size: 100 * 1024 * 1024, ..deflated("bomb.csv", b"0") };
    let climbing = stored("../plan.toml", b"gone");
    let height = text("readings.csv").replacen("\r\n", "\r\nP1-02B-6,0,soon\r\n", 1);
    let whole = zip(&parts(), b"");
    let cases: Vec<(Vec<u8>, &str)> = vec![
        (b"bag,minute\n".to_vec(), "this is no zip file"),
        (whole[..whole.len() / 2].to_vec(), "the zip file is damaged"),
        (with("datapackage.json", newer.as_bytes()), "open it with a newer program"),
        (
            with("datapackage.json", outside.as_bytes()),
            "\"../plan.toml\", which is not in the zip",
        ),
        (with("datapackage.json", b"{}"), "lacks the tables"),
        (with("readings.csv", height.as_bytes()), "readings.csv, line 2: "),
        (with("bags.csv", b"\xff\xfe"), "UTF-16"),
        (zip(&[parts(), vec![bomb]].concat(), b""), "would have 100 MiB, more than 64 MiB"),
        (zip(&[parts(), vec![climbing]].concat(), b""), "; "),
    ];
    let before = files(at);
    for (bytes, expected) in cases {
        fs::write(at.join("theirs.zip"), bytes).expect("written");
        for arguments in
            [&["take", "theirs.zip", "--to", "taken"][..], &["years", "theirs.zip"]]
        {
            let (out, err) = run(at, arguments).ended(2);
            assert!(out.is_empty(), "{out}");
            assert!(
                err.starts_with("barm: theirs.zip is not taken, and nothing was done: "),
                "{err}"
            );
            assert!(err.contains(expected), "“{expected}” in {err}");
        }
        fs::remove_file(at.join("theirs.zip")).expect("removed");
        assert_eq!(files(at), before, "{expected}");
    }
    fs::create_dir(at.join("empty")).expect("made");
    let (_, err) = run(at, &["take", "empty", "--to", "taken"]).ended(2);
    assert!(err.contains("no datapackage.json in the folder"), "{err}");
    let (_, err) = run(at, &["years", "empty"]).ended(2);
    assert!(err.contains("there is no data package in empty"), "{err}");
    run(at, &["take", "nowhere.zip"]).ended(2);
    // Room for a whole package is there, but no plan comes of its rows.
    let rooms = text("bags.csv").replacen(",21,", ",30,", 1);
    fs::write(at.join("data/bags.csv"), rooms).expect("written");
    let (_, err) = run(at, &["take", "data", "--to", "taken"]).ended(1);
    assert!(err.contains("rooms of different warmth"), "{err}");
    assert!(!at.join("taken").exists());
}

/// Packages of three classes: the invented day, and twice with other heights.
fn classes() -> TempDir {
    let folder = school();
    fs::create_dir(folder.path().join("classes")).expect("made");
    let readings = fs::read_to_string(folder.path().join("readings.csv")).expect("readings");
    for (name, factor) in [("2027", 1.0), ("2028", 1.3), ("2029", 0.8)] {
        let line = |line: &str| {
            let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
            if let Some(height) = cells.get(2).and_then(|cell| cell.parse::<f64>().ok()) {
                cells[2] = format!("{:.0}", 4.0 + factor * (height - 4.0));
            }
            cells.join(",")
        };
        let lines: Vec<String> = readings.lines().map(line).collect();
        fs::write(folder.path().join("other.csv"), lines.join("\n")).expect("written");
        let to = format!("classes/{name}.zip");
        run(folder.path(), &["share", "plan.toml", "other.csv", "--to", &to]).ended(0);
    }
    folder
}

#[test]
fn the_same_question_of_three_classes_is_put_together() {
    let folder = classes();
    let at = folder.path();
    let (out, _) = run(at, &["years", "classes"]).ended(0);
    for part in [
        "2027",
        "maple syrup 0.8 g, beside no food; mm at minute",
        "all classes",
        "the next class",
        "Over 3 classes, “maple syrup 0.8 g” rose ",
        "Another class like these would find between",
    ] {
        assert!(out.contains(part), "{part}\n{out}");
    }
    let (some, _) = run(at, &["years", "classes", "--about", "lactase"]).ended(0);
    assert!(some.contains("actase") && !some.contains("maple"), "{some}");
    // The same class by another name counts once; one that is refused is named, and the rest told.
    fs::copy(at.join("classes/2027.zip"), at.join("classes/copy.zip")).expect("copied");
    let (twice, _) = run(at, &["years", "classes"]).ended(0);
    assert!(twice.contains("copy holds the same data as 2027 and counts once."), "{twice}");
    fs::write(at.join("classes/broken.zip"), "PK").expect("written");
    let (told, _) = run(at, &["years", "classes"]).ended(1);
    assert!(told.contains("Not read: classes/broken.zip is not taken"), "{told}");
    assert!(told.contains("Over 3 classes"), "{told}");
    let (one, _) = run(at, &["years", "classes/2027.zip"]).ended(0);
    assert!(
        one.contains("No two of these classes compared bags that were made alike"),
        "{one}"
    );
}
