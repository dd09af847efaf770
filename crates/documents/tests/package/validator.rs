//! Packages under the eyes of others: `frictionless` (Python, MIT licence), in an environment of its
//! own. Where it cannot be had, the test says that it was skipped.

use crate::any::{any_shared, small};
use crate::files;
use crate::plan::package;
use barm_documents::package::{About, Licence, write};
use proptest::strategy::{Strategy as _, ValueTree as _};
use proptest::test_runner::TestRunner;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const VERSION: &str = "5.21.0";

/// The validator's Python; says why if it is not to be had.
fn python() -> Result<PathBuf, String> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("frictionless-{VERSION}"));
    let python = folder.join("bin/python");
    let ran = |command: &mut Command| command.output().is_ok_and(|done| done.status.success());
    if ran(Command::new(&python).args(["-c", "import frictionless"])) {
        return Ok(python);
    }
    if !ran(Command::new("python3").args(["-m", "venv", "--clear"]).arg(&folder)) {
        return Err("python3 with venv is not installed".into());
    }
    let wanted = format!("frictionless=={VERSION}");
    if !ran(Command::new(&python).args(["-m", "pip", "install", "--quiet", &wanted])) {
        return Err(format!("pip could not install {wanted}"));
    }
    Ok(python)
}

/// Says whether each package is valid, and what is wrong with it.
const SCRIPT: &str = "
import sys
from frictionless import Package
for path in sys.argv[1:]:
    report = Package(path).validate()
    print('valid' if report.valid else report.flatten(['type', 'note', 'message']))
";

fn judged(python: &Path, packages: &[PathBuf]) -> Vec<String> {
    let output =
        Command::new(python).args(["-c", SCRIPT]).args(packages).output().expect("python runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("UTF-8").lines().map(str::to_owned).collect()
}

/// Lays a package out in a folder and gives its descriptor.
fn laid_out(folder: &Path, zip: &[u8]) -> PathBuf {
    fs::create_dir_all(folder).expect("a folder");
    for (name, bytes) in files(zip) {
        fs::write(folder.join(name), bytes).expect("written");
    }
    folder.join("datapackage.json")
}

#[test]
fn others_find_packages_valid_and_damaged_ones_not() {
    let python = match python() {
        Ok(python) => python,
        Err(why) => return skip("others_find_packages_valid", &why),
    };
    let home = tempfile::tempdir().expect("a folder");
    let mut good =
        vec![laid_out(&home.path().join("small"), &write(&small(), &About::default()))];
    let mut runner = TestRunner::deterministic();
    for (at, licence) in Licence::ALL.into_iter().cycle().take(12).enumerate() {
        let shared = any_shared().new_tree(&mut runner).expect("a value").current();
        let zip = write(
            &shared,
            &About { licence, grade: Some(8), made_up: at % 2 == 0, ..About::default() },
        );
        good.push(laid_out(&home.path().join(at.to_string()), &zip));
    }
    let demo = package();
    good.push(laid_out(&home.path().join("demo"), &demo));
    // As a teacher hands it on.
    let zip = home.path().join("demo.zip");
    fs::write(&zip, demo).expect("written");
    good.push(zip);
    for (path, said) in good.iter().zip(judged(&python, &good)) {
        assert_eq!(said, "valid", "{}", path.display());
    }
    // What the schema promises, it also asks for.
    let spoilt = [
        ("readings.csv", "4.02", "soon"),
        ("readings.csv", "7.5", "1001"),
        ("readings.csv", "P1-02B-6,4", "P1-02B-7,4"),
        ("readings.csv", "4.02", "0"),
        ("bags.csv", "T01", "T02"),
        ("bags.csv", "P1-02B-6", "Ann"),
        ("treatments.csv", "instant", "wild"),
        ("treatments.csv", "T01", ""),
        ("ingredients.csv", "honey", "jam"),
        ("set-aside.csv", "leak", "ill"),
        ("meter.csv", "0.12", ""),
    ];
    let bad: Vec<PathBuf> = spoilt
        .iter()
        .enumerate()
        .map(|(at, (file, old, new))| {
            let folder = home.path().join(format!("bad-{at}"));
            let descriptor = laid_out(&folder, &write(&small(), &About::default()));
            // The size of a file is checked as well; the right one leaves the other rule to find it.
            let text = fs::read_to_string(folder.join(file)).expect("a table");
            let spoilt = text.replacen(old, new, 1);
            assert_ne!(spoilt, text, "{file}: {old}");
            let size = |text: &str| format!("\"bytes\": {},", text.len());
            let all = fs::read_to_string(&descriptor).expect("a descriptor");
            let (before, after) =
                all.split_once(&format!("\"path\": \"{file}\"")).expect("a file");
            let after = after.replacen(&size(&text), &size(&spoilt), 1);
            fs::write(&descriptor, format!("{before}\"path\": \"{file}\"{after}"))
                .expect("written");
            fs::write(folder.join(file), spoilt).expect("written");
            descriptor
        })
        .collect();
    for (said, spoilt) in judged(&python, &bad).iter().zip(spoilt) {
        assert_ne!(said, "valid", "{spoilt:?}");
        assert!(!said.contains("byte"), "{spoilt:?}: {said}");
    }
}

/// Says that a test could not run, on the error stream and in the file named by `BARM_SKIPS`.
fn skip(name: &str, why: &str) {
    use std::io::Write as _;
    let line = format!("{name}: {why}\n");
    std::io::stderr().write_all(line.as_bytes()).expect("an error stream");
    if let Some(list) = std::env::var_os("BARM_SKIPS") {
        let list = fs::OpenOptions::new().append(true).create(true).open(list);
        list.and_then(|mut list| list.write_all(line.as_bytes())).expect("the list grows");
    }
}
