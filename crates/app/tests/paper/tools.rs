//! The outside tools: qpdf, poppler, zbar.

use std::path::Path;
use std::process::Command;

/// What a tool says, and whether it was content; none if it is not installed.
pub(crate) fn say(tool: &str, arguments: &[&str]) -> Option<(bool, String)> {
    let output = Command::new(tool).args(arguments).output().ok()?;
    let mut text = String::from_utf8_lossy(&output.stdout).into_owned();
    text.push_str(&String::from_utf8_lossy(&output.stderr));
    Some((output.status.success(), text))
}

/// A path as an argument.
pub(crate) fn name(path: &Path) -> &str {
    path.to_str().expect("a plain name")
}
