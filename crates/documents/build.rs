//! Lists the files of the teacher's words, so that another language is a file and nothing else.

use std::path::{Path, PathBuf};
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let root = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").unwrap_or_default());
    let home = root.join("src/catalog/teacher");
    println!("cargo:rerun-if-changed={}", home.display());
    let mut rows = String::new();
    for language in listed(&home)? {
        let code = language.file_name().unwrap_or_default().to_string_lossy();
        rows.push_str(&format!("    ({code:?}, &["));
        let text = |file: &PathBuf| file.extension().is_some_and(|end| end == "ftl");
        for file in listed(&language)?.into_iter().filter(text) {
            rows.push_str(&format!("include_str!({:?}), ", file.display().to_string()));
        }
        rows.push_str("]),\n");
    }
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    fs::write(out.join("teacher.rs"), format!("&[\n{rows}]\n"))
}

/// What lies in a folder, by name.
fn listed(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder)? {
        found.push(entry?.path());
    }
    found.sort();
    Ok(found)
}
