//! What can go wrong with the record, in sentences for the person who keeps it.

use barm_domain::record::Key;
use std::io;
use std::path::{Path, PathBuf};

/// Why the record could not be opened, read or written.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum StoreError {
    /// The folder or the file takes no writing.
    #[error(
        "nothing can be written in {}; allow writing there or choose another folder",
        path.display()
    )]
    ReadOnly {
        /// Folder or file.
        path: PathBuf,
    },
    /// A file that is something else lies where the record should be.
    #[error(
        "{} is not a record of this program; move it elsewhere or choose another folder",
        path.display()
    )]
    NotARecord {
        /// The file.
        path: PathBuf,
    },
    /// Another copy of the program has it.
    #[error(
        "another copy of this program{} has the record in {} open; use that one or close it",
        pid.map(|pid| format!(" (process {pid})")).unwrap_or_default(),
        folder.display()
    )]
    InUse {
        /// The folder.
        folder: PathBuf,
        /// The other's process, if it said so.
        pid: Option<u32>,
    },
    /// No room.
    #[error(
        "the disk that holds {place} is full, so this was not kept; free some space and try again"
    )]
    DiskFull {
        /// The record.
        place: String,
    },
    /// The check found something wrong.
    #[error("the record in {place} is damaged ({what}); restore the newest backup")]
    Damaged {
        /// The record.
        place: String,
        /// What the check said, shortened.
        what: String,
    },
    /// The tables are from a newer program.
    #[error(
        "the record in {place} was written by Barm {program}; open it with that or a newer one"
    )]
    Newer {
        /// The record.
        place: String,
        /// Version of the program that wrote it.
        program: String,
    },
    /// One entry is from a newer program.
    #[error(
        "entry {seq} ({kind}, shape {shape}) needs Barm {program} or newer; nothing is lost, but \
         this one cannot read it"
    )]
    NewerEntry {
        /// Its place in the record.
        seq: i64,
        /// What kind of entry.
        kind: String,
        /// Layout of its body.
        shape: i64,
        /// The version that can read it, or one newer than ours.
        program: String,
    },
    /// An entry that says nothing that can be read, although its shape is known.
    #[error("entry {seq} ({kind}) cannot be read: {what}; restore the newest backup")]
    Unreadable {
        /// Its place in the record.
        seq: i64,
        /// What kind of entry.
        kind: String,
        /// What is wrong.
        what: String,
    },
    /// The same key with other content.
    #[error(
        "an entry with the key {key} is on record already and says something else; nothing of \
         this was kept"
    )]
    Clash {
        /// The key.
        key: Key,
    },
    /// An entry that cannot be written down.
    #[error("the entry {key} cannot be written down: {what}; nothing of this was kept")]
    Unwritable {
        /// Its key.
        key: Key,
        /// What is wrong.
        what: String,
    },
    /// No such investigation.
    #[error("there is no investigation number {id} in this record")]
    NoInvestigation {
        /// Its number.
        id: i64,
    },
    /// No such version of a plan.
    #[error("investigation {id} has no version {version} of its plan")]
    NoPlan {
        /// Number of the investigation.
        id: i64,
        /// The version.
        version: u32,
    },
    /// A file of that name is there already.
    #[error("{} is there already; choose another name", path.display())]
    AlreadyThere {
        /// The file or folder.
        path: PathBuf,
    },
    /// Restoring would write over a record that has something in it.
    #[error("the database already holds investigations; restore into an empty one")]
    NotEmpty,
    /// The words of a person's own have another key already.
    #[error("other words lie under the key {key} already")]
    WordsClash {
        /// The key.
        key: String,
    },
    /// The record was closed.
    #[error("the record is closed; start the program again")]
    Closed,
    /// A file or folder could not be read or written.
    #[error("cannot {doing} {}: {source}", path.display())]
    File {
        /// What was being done.
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// The database engine said something else.
    #[error("the record in {place} could not be read or written: {said}")]
    Engine {
        /// The record.
        place: String,
        /// What the engine said.
        said: String,
    },
}

impl StoreError {
    /// What to say of a file that could not be read or written.
    pub(crate) fn file(doing: &'static str, path: &Path, source: io::Error) -> Self {
        let path = path.to_owned();
        match source.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => {
                Self::DiskFull { place: path.display().to_string() }
            }
            io::ErrorKind::ReadOnlyFilesystem => Self::ReadOnly { path },
            _ => Self::File { doing, path, source },
        }
    }
}
