//! The log in the data folder: what was refused, what went wrong, who came and went. No codes,
//! no tokens, no names.

use jiff::Timestamp;
use std::fs::File;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// A file that grows past this is put beside as `barm.log.old`.
const MOST: u64 = 2_000_000;

/// A log. If it cannot be written, the class goes on without it.
pub(super) struct Log {
    path: Option<PathBuf>,
    file: Mutex<Option<File>>,
}

impl Log {
    /// The log of a data folder.
    pub(super) fn in_folder(folder: &Path) -> Self {
        Self { path: Some(folder.join("barm.log")), file: Mutex::new(None) }
    }

    /// Adds a line: the time in UTC, and what happened with everything escaped that could begin
    /// another line or move a terminal's cursor.
    pub(super) fn write(&self, now: Timestamp, what: &str) {
        let Some(path) = &self.path else { return };
        let line = line(now, what);
        let mut file = self.file.lock().unwrap_or_else(PoisonError::into_inner);
        let long = file.as_ref().and_then(|file| file.metadata().ok());
        if long.is_some_and(|about| about.len() > MOST) {
            *file = None;
            let _ = std::fs::rename(path, path.with_extension("log.old"));
        }
        if file.is_none() {
            *file = File::options().append(true).create(true).open(path).ok();
        }
        if let Some(file) = file.as_mut() {
            let _ = file.write_all(line.as_bytes());
        }
    }
}

fn line(now: Timestamp, what: &str) -> String {
    let mut line = format!("{now:.3} ");
    for c in what.trim().chars().take(2000) {
        if c.is_control() || matches!(c, '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}') {
            line.extend(c.escape_unicode());
        } else {
            line.push(c);
        }
    }
    line.push('\n');
    line
}

#[cfg(test)]
mod tests {
    use super::line;
    use jiff::Timestamp;

    #[test]
    fn one_call_is_one_line_with_its_time_in_utc() {
        let now = Timestamp::from_second(0).expect("a time");
        let line = line(now, "tried\r\n1970-01-01T00:00:00Z 200 all is well\u{1b}[2J\u{2028}");
        assert!(line.starts_with("1970-01-01T00:00:00.000Z tried\\u{d}\\u{a}1970"), "{line}");
        assert_eq!(line.chars().filter(|c| c.is_control()).count(), 1, "the end of the line");
    }
}
