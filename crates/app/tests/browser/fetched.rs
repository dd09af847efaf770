//! Checkers that others wrote, from the registry of Node packages; for tests only.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Mutex;

/// One at a time: tests run beside each other.
static FETCHING: Mutex<()> = Mutex::new(());

/// A file of a package of this version; says why if it is not to be had.
pub(crate) fn fetched(name: &str, version: &str, file: &str) -> Result<PathBuf, String> {
    let _one = FETCHING.lock().map_err(|_| format!("{name} could not be fetched before"))?;
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}-{version}"));
    let file = folder.join("node_modules").join(name).join(file);
    if file.is_file() {
        return Ok(file);
    }
    std::fs::create_dir_all(&folder).map_err(|_| format!("no place for {name}"))?;
    let arguments = ["install", "--no-save", "--no-audit", "--no-fund", "--ignore-scripts"];
    let npm = Command::new("npm")
        .args(arguments)
        .arg(format!("{name}@{version}"))
        .arg("--prefix")
        .arg(&folder)
        .output();
    let done = npm.map_err(|_| format!("npm is not installed, so {name} is not there"))?;
    if !done.status.success() {
        return Err(format!("npm could not install {name} {version}"));
    }
    if file.is_file() { Ok(file) } else { Err(format!("{name} is not where npm puts it")) }
}
