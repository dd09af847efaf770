//! Guards the house rules that `docs/ARCHITECTURE.md` states as absences.

mod guide;
mod markup;
mod spaces;

use barm_domain::code::BagCode;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().expect("workspace root")
}

/// Every file that git tracks or would track, relative to the root.
fn tracked() -> Vec<PathBuf> {
    let output = Command::new("git")
        .args(["ls-files", "--cached", "--others", "--exclude-standard"])
        .current_dir(root())
        .output()
        .expect("git is needed to list the files");
    let listing = String::from_utf8(output.stdout).expect("file names are UTF-8");
    let files: Vec<PathBuf> = listing.lines().map(PathBuf::from).collect();
    assert!(files.len() > 30, "git listed only {} files", files.len());
    files.into_iter().filter(|file| root().join(file).is_file()).collect()
}

fn rust_files(under: &str) -> Vec<(PathBuf, String)> {
    let found: Vec<_> = tracked()
        .into_iter()
        .filter(|file| file.starts_with(under) && file.extension().is_some_and(|e| e == "rs"))
        .map(|file| {
            let text = fs::read_to_string(root().join(&file)).expect("a source file is UTF-8");
            (file, text)
        })
        .collect();
    assert!(!found.is_empty(), "no source under {under}");
    found
}

/// Fails with every place under `folder` where one of `words` stands outside comments.
fn absent(folder: &str, words: &[&str], why: &str) {
    let mut offences = Vec::new();
    for (file, text) in rust_files(folder) {
        for (number, line) in text.lines().enumerate() {
            let code = line.split("//").next().unwrap_or_default();
            for word in words.iter().filter(|word| code.contains(**word)) {
                offences.push(format!("{}:{}: {word}", file.display(), number + 1));
            }
        }
    }
    assert!(offences.is_empty(), "{why}:\n{}", offences.join("\n"));
}

/// Names under `[dependencies]` of a crate.
fn dependencies(name: &str) -> BTreeSet<String> {
    let path = root().join("crates").join(name).join("Cargo.toml");
    let text = fs::read_to_string(path).expect("a manifest");
    let manifest: toml::Table = text.parse().expect("a manifest is TOML");
    let table = manifest.get("dependencies").and_then(|d| d.as_table());
    table.map(|t| t.keys().cloned().collect()).unwrap_or_default()
}

#[test]
fn crates_point_one_way() {
    for (name, ours) in [
        ("science", &[][..]),
        ("domain", &["barm-science"][..]),
        ("store", &["barm-domain"][..]),
        ("documents", &["barm-science", "barm-domain"][..]),
    ] {
        for dependency in dependencies(name).iter().filter(|d| d.starts_with("barm")) {
            assert!(ours.contains(&dependency.as_str()), "{name} must not know {dependency}");
        }
    }
}

#[test]
fn science_does_not_serialize_or_draw_its_own_chance() {
    let dependencies = dependencies("science");
    for forbidden in ["serde", "serde_json", "rand", "jiff", "tokio", "rayon"] {
        assert!(!dependencies.contains(forbidden), "science must not depend on {forbidden}");
    }
}

#[test]
fn science_and_domain_know_no_outside_world() {
    for folder in ["crates/science/src", "crates/domain/src"] {
        absent(
            folder,
            &[
                "std::fs",
                "std::net",
                "std::env",
                "std::io",
                "SystemTime",
                "Instant::now",
                "thread::sleep",
                "println!",
                "serde",
            ],
            "science and domain do not read, write, wait, print or serialize",
        );
    }
}

#[test]
fn science_uses_the_same_mathematics_on_every_machine() {
    absent(
        "crates/science/src",
        &[".exp()", ".ln()", ".log10()", ".powf(", ".sin()", ".cos()", ".tanh()", ".exp_m1()"],
        "science takes transcendental functions from libm, so that results do not depend on \
         the machine",
    );
}

#[test]
fn documents_turn_bytes_into_bytes() {
    absent(
        "crates/documents/src",
        &["std::fs", "std::net", "std::env", "SystemTime", "println!"],
        "documents take and give bytes; files belong to app",
    );
}

#[test]
fn the_store_knows_no_science_page_or_network_face() {
    let dependencies = dependencies("store");
    for forbidden in ["libm", "axum", "tower", "tokio", "maud", "typst", "clap"] {
        assert!(!dependencies.contains(forbidden), "store must not depend on {forbidden}");
    }
    absent(
        "crates/store/src",
        &["barm_science", "Timestamp::now", "println!", "std::env::var"],
        "store keeps what it is given; time and place come from those who call it",
    );
}

#[test]
fn only_the_store_speaks_to_a_database() {
    for folder in
        ["crates/science/src", "crates/domain/src", "crates/documents/src", "crates/app/src"]
    {
        absent(folder, &["rusqlite", "postgres::"], "what is kept on disk belongs to store");
    }
    // The layouts of entries are read and written in one place.
    for (file, text) in rust_files("crates/store/src") {
        let is_wire = file.starts_with("crates/store/src/wire");
        assert!(
            is_wire || !text.contains("Deserialize"),
            "{} reads a layout; only wire does",
            file.display()
        );
    }
}

#[test]
fn faces_go_through_the_desk() {
    absent(
        "crates/app/src/cli",
        &["barm_science::", "barm_store::", "barm_documents::"],
        "the command line combines nothing; it calls desk and shows what it says",
    );
    absent(
        "crates/app/src/web",
        &["barm_science::", "barm_store::", "barm_documents::"],
        "pages combine nothing; they call desk and show what it says",
    );
}

#[test]
fn every_address_stands_in_the_one_table() {
    for (file, text) in rust_files("crates/app/src/web") {
        let table = file.ends_with("web/routes.rs");
        let adds = text.matches(".route(").count();
        assert_eq!(adds, usize::from(table), "{} adds addresses", file.display());
    }
}

#[test]
fn pages_hold_no_style_and_no_script_of_their_own() {
    absent(
        "crates/app/src/web",
        &["style=", "onclick=", "onload=", "javascript:"],
        "the content security policy allows nothing inline: use a class and a file",
    );
}

#[test]
fn no_room_is_a_lumber_room() {
    for file in tracked() {
        let name = file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        for lumber in ["common", "utils", "util", "types", "helpers", "misc", "stuff"] {
            assert_ne!(name, lumber, "{} says nothing about who lives there", file.display());
        }
    }
}

/// A double click must work alike everywhere, and what cannot be alike must be found in one place
/// to be tried on another system.
#[test]
fn what_differs_by_operating_system_stands_in_one_file_of_a_crate() {
    const OWN: [&str; 2] = ["crates/app/src/system.rs", "crates/store/src/system.rs"];
    let words = [
        "std::os::",
        "consts::OS",
        "target_os",
        "target_family",
        "MAIN_SEPARATOR",
        "signal::unix",
        "signal::windows",
    ];
    // Under `cfg`, the short names of the two families count as well.
    let asks = |line: &str| {
        let short = line.contains("unix") || line.contains("windows");
        words.iter().any(|word| line.contains(word))
            || (line.contains("cfg!(") || line.contains("cfg(")) && short
    };
    let mut offences = Vec::new();
    let mut own = 0;
    for krate in ["app", "documents", "domain", "science", "store"] {
        for (file, text) in rust_files(&format!("crates/{krate}/src")) {
            for (number, line) in text.lines().enumerate() {
                let code = line.split("//").next().unwrap_or_default();
                if !asks(code) {
                    continue;
                }
                if OWN.iter().any(|place| file == Path::new(place)) {
                    own += 1;
                } else {
                    offences.push(format!(
                        "{}:{}: {}",
                        file.display(),
                        number + 1,
                        code.trim()
                    ));
                }
            }
        }
    }
    assert!(own >= 8, "the search finds what stands in the two files: {own}");
    assert!(offences.is_empty(), "move it to a system.rs:\n{}", offences.join("\n"));
}

#[test]
fn most_files_are_short() {
    let mut long = Vec::new();
    let mut all = 0;
    for folder in [
        "crates/science/src",
        "crates/domain/src",
        "crates/store/src",
        "crates/documents/src",
        "crates/app/src",
    ] {
        for (file, text) in rust_files(folder) {
            all += 1;
            let lines = text.lines().count();
            // A flat table of rows is easier to read whole.
            let table = text.contains("//! A flat table");
            assert!(lines <= 500 || table, "{} has {lines} lines: split it", file.display());
            if lines > 250 && !table {
                long.push(format!("{} ({lines})", file.display()));
            }
        }
    }
    assert!(
        long.len() * 10 <= all,
        "over a tenth of {all} files are long: {}",
        long.join(", ")
    );
}

#[test]
fn no_file_holds_both_sides_of_a_merge() {
    // Put together here, so that this file is none.
    let marks = ["<".repeat(7) + " ", ">".repeat(7) + " "];
    for file in tracked() {
        let Ok(text) = fs::read_to_string(root().join(&file)) else { continue };
        let at = text.lines().position(|line| marks.iter().any(|mark| line.starts_with(mark)));
        assert!(at.is_none(), "{}: line {}", file.display(), at.unwrap_or(0) + 1);
    }
}

#[test]
fn no_file_points_out_of_the_project() {
    // Assembled here so that this file does not offend against itself.
    let workplace = ["/wo", "rk/"].concat();
    let helper = ["before", "-stop"].concat();
    for file in tracked() {
        let Ok(text) = fs::read_to_string(root().join(&file)) else { continue };
        for word in [&workplace, &helper] {
            assert!(!text.contains(word.as_str()), "{} mentions {word}", file.display());
        }
    }
}

/// Whether a word has the shape of a bag code: `P1-02B-6`.
fn is_code_shaped(word: &str) -> bool {
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    let mut parts = word.split('-');
    let period = parts.next().and_then(|part| part.strip_prefix('P'));
    let group = parts.next().and_then(|part| part.split_at_checked(2));
    let check = parts.next();
    period.is_some_and(digits)
        && group.is_some_and(|(group, letter)| {
            digits(group) && letter.len() == 1 && letter.bytes().all(|b| b.is_ascii_uppercase())
        })
        && check.is_some_and(|check| check.len() == 1)
        && parts.next().is_none()
}

/// A teacher may type what a page shows. Tests hold wrong codes on purpose, and so do the demo's
/// readings; anywhere else a line with a wrong code has to say that it is wrong.
#[test]
fn every_code_that_people_are_shown_is_one() {
    let is_shown = |file: &Path| {
        let text = ["md", "rs", "toml", "txt", "typ"];
        let in_tests = file.components().any(|part| part.as_os_str() == "tests");
        file.extension().is_some_and(|e| text.iter().any(|known| e == *known))
            && (!in_tests || file.ends_with("snapshots/help.txt"))
    };
    let (mut seen, mut offences) = (0, Vec::new());
    for file in tracked().into_iter().filter(|file| is_shown(file)) {
        let text = fs::read_to_string(root().join(&file)).expect("UTF-8");
        for (number, line) in text.lines().enumerate() {
            let words = line.split(|c: char| !c.is_ascii_alphanumeric() && c != '-');
            for word in words.filter(|word| is_code_shaped(word)) {
                seen += 1;
                if word.parse::<BagCode>().is_err() && !line.contains("wrong") {
                    offences.push(format!("{}:{}: {word}", file.display(), number + 1));
                }
            }
        }
    }
    assert!(seen > 100, "only {seen} codes were found");
    assert!(offences.is_empty(), "these are no bag codes:\n{}", offences.join("\n"));
}

#[test]
fn every_licence_allows_passing_the_program_on() {
    // Only what is built on this kind of machine lies here for certain.
    let rustc = Command::new("rustc").arg("-vV").output().expect("rustc");
    let about = String::from_utf8_lossy(&rustc.stdout).into_owned();
    let host = about.lines().find_map(|line| line.strip_prefix("host: ")).expect("a host");
    let output = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version=1", "--locked", "--offline"])
        .args(["--filter-platform", host])
        .current_dir(root())
        .output()
        .expect("cargo metadata");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let metadata: serde_json::Value =
        serde_json::from_slice(&output.stdout).expect("cargo metadata is JSON");
    let allowed = [
        "MIT",
        "MIT-0",
        "Apache-2.0",
        "Apache-2.0 WITH LLVM-exception",
        "BSD-2-Clause",
        "BSD-3-Clause",
        "ISC",
        "Zlib",
        "Unicode-3.0",
        "Unicode-DFS-2016",
        "CC0-1.0",
        "0BSD",
        "Unlicense",
        "MPL-2.0",
        "BSL-1.0",
        "OFL-1.1",
        "bzip2-1.0.6",
        "CDLA-Permissive-2.0",
    ];
    let mut offences = Vec::new();
    for package in metadata["packages"].as_array().expect("packages") {
        let licence = package["license"].as_str().unwrap_or_default().replace('/', " OR ");
        // One alternative whose every part is allowed is enough.
        let fits = licence.split(" OR ").any(|alternative| {
            alternative
                .split(" AND ")
                .map(|part| part.trim().trim_matches(['(', ')']))
                .all(|part| allowed.contains(&part))
        });
        if !fits {
            offences.push(format!("{} {}: {licence}", package["name"], package["version"]));
        }
    }
    assert!(offences.is_empty(), "licences to look at:\n{}", offences.join("\n"));
}
