//! Runs the program as a person would and holds what it said.

use std::path::{Path, PathBuf};
use std::process::Command;

/// How one run of the program ended.
pub(crate) struct Ran {
    code: Option<i32>,
    out: String,
    err: String,
}

impl Ran {
    /// Both streams of a run that must have ended with this exit code, and without a panic.
    pub(crate) fn ended(self, code: i32) -> (String, String) {
        let Self { code: found, out, err } = self;
        assert_eq!(found, Some(code), "exit code; it said:\n{out}\n{err}");
        assert!(!err.contains("panicked"), "{err}");
        (out, err)
    }
}

/// The program, told the same width and colors (none) wherever the tests run.
pub(crate) fn barm() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_barm"));
    for name in ["COLUMNS", "LINES", "CLICOLOR_FORCE", "FORCE_COLOR", "RUST_BACKTRACE"] {
        command.env_remove(name);
    }
    command
}

/// Runs the program in a folder.
pub(crate) fn run(folder: &Path, arguments: &[&str]) -> Ran {
    let output = barm().args(arguments).current_dir(folder).output().expect("barm starts");
    Ran {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).expect("answers are UTF-8"),
        err: String::from_utf8(output.stderr).expect("messages are UTF-8"),
    }
}

/// The folder of the invented plan and readings.
pub(crate) fn invented() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src/demo")
}

/// Puts the invented plan into a folder, one treatment of it with more water than its bag holds.
#[allow(dead_code)]
pub(crate) fn soak(folder: &Path, treatment: &str) {
    with_line(folder, treatment, "water = \"400 mL\"");
}

/// Puts the invented plan into a folder, the water of one treatment hotter than yeast's law is known
/// for, which ends at 60 °C.
#[allow(dead_code)]
pub(crate) fn heat(folder: &Path, treatment: &str) {
    with_line(folder, treatment, "water_temperature = \"70 °C\"");
}

#[allow(dead_code)]
fn with_line(folder: &Path, treatment: &str, line: &str) {
    let plan = std::fs::read_to_string(invented().join("plan.toml")).expect("the plan");
    let name = format!("name = \"{treatment}\"\n");
    assert_eq!(plan.matches(&name).count(), 1, "{treatment}");
    let with = plan.replacen(&name, &format!("{name}{line}\n"), 1);
    std::fs::write(folder.join("plan.toml"), with).expect("written");
}

/// Says that a test could not run, on the error stream and in the file named by `BARM_SKIPS`.
#[allow(dead_code)]
pub(crate) fn skip(name: &str, why: &str) {
    use std::io::Write;
    let line = format!("{name}: {why}\n");
    std::io::stderr().write_all(line.as_bytes()).expect("an error stream");
    if let Some(list) = std::env::var_os("BARM_SKIPS") {
        let list = std::fs::OpenOptions::new().append(true).create(true).open(list);
        list.and_then(|mut list| list.write_all(line.as_bytes())).expect("the list grows");
    }
}

/// The readings of the first period of the invented day, as a file.
#[allow(dead_code, reason = "some tests take the whole day")]
pub(crate) fn first_period() -> String {
    let all = std::fs::read_to_string(invented().join("readings.csv")).expect("the readings");
    let own = all.lines().filter(|line| line.starts_with("bag,") || line.starts_with("P1-"));
    own.map(|line| format!("{line}\n")).collect()
}
