//! Files written for a person, never over the person's own changes.

use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

/// Name of the file that remembers what was written into a folder.
pub const MEMORY: &str = ".barm-written";

/// What became of a file that was to be written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// It was not there, or was as we last wrote it: now it holds the new bytes.
    Written,
    /// It holds those bytes already.
    AlreadyThere,
    /// A person has changed or made it: it was left alone.
    KeptYours,
}

/// A folder or file that could not be read or written.
#[derive(Debug, thiserror::Error)]
#[error("cannot {doing} {}", path.display())]
pub struct WriteError {
    /// What was being done.
    pub doing: &'static str,
    /// The file or folder.
    pub path: PathBuf,
    /// What the system said.
    pub source: io::Error,
}

/// A folder with a memory of the files that were written into it.
#[derive(Debug)]
pub struct Folder {
    path: PathBuf,
    written: BTreeMap<String, String>,
}

impl Folder {
    /// Opens the folder, making it if needed.
    ///
    /// # Errors
    /// [`WriteError`] if it cannot be made, or if its memory cannot be read.
    pub fn open(path: &Path) -> Result<Self, WriteError> {
        let fails = |doing, path: &Path| {
            let path = path.to_owned();
            move |source| WriteError { doing, path, source }
        };
        fs::create_dir_all(path).map_err(fails("make the folder", path))?;
        let memory = path.join(MEMORY);
        let text = match fs::read(&memory) {
            Ok(bytes) => String::from_utf8_lossy(&bytes).into_owned(),
            Err(error) if error.kind() == io::ErrorKind::NotFound => String::new(),
            Err(error) => return Err(fails("read", &memory)(error)),
        };
        // A line we cannot read means a file that we do not know, which is then left alone.
        let written = text
            .lines()
            .filter_map(|line| line.split_once("  "))
            .map(|(print, name)| (name.to_owned(), print.to_owned()))
            .collect();
        Ok(Self { path: path.to_owned(), written })
    }

    /// Where the file of that name lies.
    pub fn path_of(&self, name: &str) -> PathBuf {
        self.path.join(name)
    }

    /// Whether a file of that name would be left alone because a person has changed or made it.
    ///
    /// # Errors
    /// [`WriteError`] if the file is there and cannot be read.
    pub fn keeps_yours(&self, name: &str, bytes: &[u8]) -> Result<bool, WriteError> {
        let path = self.path.join(name);
        match fs::read(&path) {
            Ok(there) => {
                let found = fingerprint(&there);
                Ok(self.written.get(name) != Some(&found) && found != fingerprint(bytes))
            }
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
            Err(source) => Err(WriteError { doing: "read", path, source }),
        }
    }

    /// Writes a file whole or not at all, unless a person has changed it since.
    ///
    /// # Errors
    /// [`WriteError`] if the file can be neither read nor written; the old file then stays.
    pub fn write(&mut self, name: &str, bytes: &[u8]) -> Result<Outcome, WriteError> {
        let path = self.path.join(name);
        let fails = |doing| {
            let path = path.clone();
            move |source| WriteError { doing, path, source }
        };
        let print = fingerprint(bytes);
        match fs::read(&path) {
            Ok(there) => {
                let found = fingerprint(&there);
                if self.written.get(name) != Some(&found) {
                    return Ok(if found == print {
                        Outcome::AlreadyThere
                    } else {
                        Outcome::KeptYours
                    });
                }
                if found == print {
                    return Ok(Outcome::AlreadyThere);
                }
            }
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(fails("read")(error)),
        }
        // The memory goes first: if we die between the two, the file is left alone next time.
        self.written.insert(name.to_owned(), print);
        self.save_memory()?;
        replace(&path, bytes).map_err(fails("write"))?;
        Ok(Outcome::Written)
    }

    fn save_memory(&self) -> Result<(), WriteError> {
        let path = self.path.join(MEMORY);
        let text: String =
            self.written.iter().map(|(name, print)| format!("{print}  {name}\n")).collect();
        replace(&path, text.as_bytes()).map_err(|source| WriteError {
            doing: "write",
            path,
            source,
        })
    }
}

/// Puts bytes in place of a file in one step, so that no reader ever sees half of them.
///
/// # Errors
/// What the system said; the old file then stays.
pub fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut beside = path.as_os_str().to_owned();
    beside.push(".part");
    let beside = PathBuf::from(beside);
    let result = fs::File::create(&beside).and_then(|mut file| {
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(&beside, path)
    });
    if result.is_err() {
        // Best effort: the half-written file is of no use to anyone.
        let _ = fs::remove_file(&beside);
    }
    result
}

fn fingerprint(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}
