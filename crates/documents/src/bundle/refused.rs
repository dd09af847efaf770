//! Why something from outside is not taken.

use crate::readings::quoted::quoted;

/// Why a bundle or a file in it is not taken: where, what, and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// The file inside, if it is about one.
    pub file: Option<String>,
    /// Its line, from 1, if it is about one.
    pub line: Option<u64>,
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub fix: String,
}

impl Refused {
    /// About all of it.
    pub(crate) fn whole(what: &str, fix: &str) -> Self {
        Self { file: None, line: None, what: what.to_owned(), fix: fix.to_owned() }
    }

    /// About a file.
    pub(crate) fn of(file: &str, what: impl Into<String>, fix: &str) -> Self {
        let file = Some(file.to_owned());
        Self { file, line: None, what: what.into(), fix: fix.to_owned() }
    }

    /// The same, about a line of it.
    pub(crate) fn on(self, line: u64) -> Self {
        Self { line: Some(line), ..self }
    }
}

impl std::fmt::Display for Refused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match &self.file {
            // Names come from outside; a plain one needs no quotation marks.
            Some(file) if is_plain(file) => f.write_str(file)?,
            Some(file) => f.write_str(&quoted(file))?,
            None => {}
        }
        if let Some(line) = self.line {
            write!(f, ", line {line}")?;
        }
        if self.file.is_some() {
            f.write_str(": ")?;
        }
        write!(f, "{}; {}", self.what, self.fix)
    }
}

impl std::error::Error for Refused {}

fn is_plain(name: &str) -> bool {
    name.len() <= 40 && name.chars().all(|c| c.is_ascii_alphanumeric() || ".-_/".contains(c))
}
