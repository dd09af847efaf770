//! Markup judged by the Nu Html Checker of the W3C, which knows nothing of this program.

use crate::fetched::fetched;
use serde_json::Value;
use std::cell::RefCell;
use std::path::PathBuf;
use std::process::Command;
use tempfile::TempDir;

/// The checker, and the pages that it is to judge.
pub(crate) struct Nu {
    jar: PathBuf,
    folder: TempDir,
    names: RefCell<Vec<String>>,
}

impl Nu {
    /// Finds it (vnu-jar 26.9.27); says why if it is not to be had.
    pub(crate) fn found() -> Result<Self, String> {
        let java = Command::new("java").arg("-version").output();
        if !java.is_ok_and(|said| said.status.success()) {
            return Err("java is not installed".to_owned());
        }
        let jar = fetched("vnu-jar", "26.9.27", "build/dist/vnu.jar")?;
        let folder = tempfile::tempdir().map_err(|_| "no place for pages".to_owned())?;
        Ok(Self { jar, folder, names: RefCell::new(Vec::new()) })
    }

    /// Keeps a page until all are judged: starting the checker takes long.
    pub(crate) fn keep(&self, name: &str, markup: &str) {
        let mut names = self.names.borrow_mut();
        let file = self.folder.path().join(format!("{}.html", names.len()));
        std::fs::write(file, markup).expect("kept");
        names.push(name.to_owned());
    }

    /// Everything that it finds wrong or doubtful: page, line, what it says, the markup there.
    pub(crate) fn judged(&self) -> Vec<String> {
        let names = self.names.borrow();
        assert!(!names.is_empty(), "there is something to judge");
        let files = (0..names.len()).map(|at| self.folder.path().join(format!("{at}.html")));
        let said = Command::new("java")
            .arg("-jar")
            .arg(&self.jar)
            .args(["--format", "json", "--stdout", "--exit-zero-always"])
            .args(files)
            .output()
            .expect("the checker runs");
        let said: Value = serde_json::from_slice(&said.stdout).expect("it answers in JSON");
        let messages = said["messages"].as_array().expect("a list");
        let grave = messages.iter().filter(|one| {
            let warns = one["type"] == "info" && one["subType"] == "warning";
            one["type"] != "info" || warns
        });
        let mut all: Vec<String> = grave
            .map(|one| {
                let url = one["url"].as_str().unwrap_or_default();
                let number = url.rsplit('/').next().and_then(|file| file.strip_suffix(".html"));
                let name = number.and_then(|at| names.get(at.parse::<usize>().ok()?));
                let text = |field: &str| one[field].as_str().unwrap_or_default().to_owned();
                let line = &one["lastLine"];
                let name = name.map_or("?", String::as_str);
                format!("{name}, line {line}: {} ({})", text("message"), text("extract"))
            })
            .collect();
        all.sort();
        all
    }
}
