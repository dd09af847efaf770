//! The licences of everything that is built into the program, from the sources on this machine.

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;

/// A part that is built in.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Part {
    pub(crate) name: String,
    pub(crate) version: String,
    /// What its manifest says.
    pub(crate) licence: String,
    folder: PathBuf,
}

/// Beginnings of the names of files that hold a licence or a notice, in small letters.
const NAMES: [&str; 6] = ["license", "licence", "copying", "copyright", "notice", "unlicense"];

/// Everything that is built into the program for a target, but the program's own crates.
pub(crate) fn parts(root: &Path, target: &str) -> Result<Vec<Part>, String> {
    let told = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
        .args(["metadata", "--format-version=1", "--locked", "--offline"])
        .args(["--filter-platform", target])
        .current_dir(root)
        .output()
        .map_err(|error| format!("cargo metadata: {error}"))?;
    if !told.status.success() {
        return Err(String::from_utf8_lossy(&told.stderr).into_owned());
    }
    let told: Value =
        serde_json::from_slice(&told.stdout).map_err(|error| error.to_string())?;
    let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let nodes: BTreeMap<String, Value> = list(&told["resolve"]["nodes"])
        .into_iter()
        .map(|node| (text(&node["id"]), node))
        .collect();
    let packages = list(&told["packages"]);
    let program = packages.iter().find(|one| one["name"] == "barm").ok_or("no program")?;
    let mut built_in = BTreeSet::new();
    let mut waiting = vec![text(&program["id"])];
    while let Some(id) = waiting.pop() {
        let deps = nodes.get(&id).map(|node| list(&node["deps"])).unwrap_or_default();
        if !built_in.insert(id) {
            continue;
        }
        // What only builds or only tests is not in the program.
        let normal =
            |dep: &Value| list(&dep["dep_kinds"]).iter().any(|kind| kind["kind"].is_null());
        waiting.extend(deps.iter().filter(|dep| normal(dep)).map(|dep| text(&dep["pkg"])));
    }
    let others = packages.iter().filter(|one| {
        built_in.contains(one["id"].as_str().unwrap_or_default()) && !one["source"].is_null()
    });
    let mut parts: Vec<Part> = others
        .map(|one| Part {
            name: text(&one["name"]),
            version: text(&one["version"]),
            licence: text(&one["license"]),
            folder: Path::new(&text(&one["manifest_path"]))
                .parent()
                .map(Path::to_owned)
                .unwrap_or_default(),
        })
        .collect();
    parts.sort();
    Ok(parts)
}

/// The texts that came with a part, by the name of their file.
fn texts(part: &Part) -> Vec<String> {
    let mut files: Vec<PathBuf> = Vec::new();
    for folder in [part.folder.clone(), part.folder.join("LICENSES")] {
        let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
        files.extend(entries.map(|entry| entry.path()).filter(|path| path.is_file()));
    }
    files.retain(|file| {
        let in_folder = file.parent().is_some_and(|above| above.ends_with("LICENSES"));
        let name = file.file_name().unwrap_or_default().to_string_lossy().to_lowercase();
        in_folder || NAMES.iter().any(|start| name.starts_with(start))
    });
    files.sort();
    let read = files.iter().filter_map(|file| std::fs::read(file).ok());
    read.map(|bytes| String::from_utf8_lossy(&bytes).replace('\r', "").trim().to_owned())
        .filter(|text| text.len() > 40)
        .collect()
}

/// One text of all parts: a list first, then every text once with the parts it came with.
pub(crate) fn of_others(parts: &[Part], fonts: &[String]) -> String {
    let mut by_text: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut without = Vec::new();
    for part in parts {
        let called = format!("{} {}", part.name, part.version);
        let texts = texts(part);
        if texts.is_empty() {
            without.push(format!("  {called} ({})", part.licence));
        }
        for text in texts {
            let of = by_text.entry(text).or_default();
            if !of.contains(&called) {
                of.push(called.clone());
            }
        }
    }
    let mut out = format!(
        "WHAT IS BUILT INTO BARM\n\n{} libraries, the SQLite library (in the public domain) and four \
         faces of two fonts.\n\n",
        parts.len()
    );
    for part in parts {
        out.push_str(&format!("  {} {}: {}\n", part.name, part.version, part.licence));
    }
    if !without.is_empty() {
        out.push_str(
            "\nThese name their licence, but no text came with them; the texts of their licences \
             stand below with other libraries:\n\n",
        );
        out.push_str(&without.join("\n"));
        out.push('\n');
    }
    for text in fonts {
        out.push_str(&format!("\n{RULE}\nA font\n\n{text}\n"));
    }
    // Those that most of it came with first.
    let mut texts: Vec<(String, Vec<String>)> = by_text.into_iter().collect();
    texts.sort_by_key(|(_, of)| std::cmp::Reverse(of.len()));
    for (text, of) in texts {
        out.push_str(&format!("\n{RULE}\n{}\n\n{text}\n", of.join(", ")));
    }
    out
}

const RULE: &str =
    "================================================================================";
