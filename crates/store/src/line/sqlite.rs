//! The SQLite side of a connection.

use super::{Row, Value};
use crate::failure::StoreError;
use rusqlite::backup::{Backup, StepResult};
use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{Connection, ErrorCode, OpenFlags, ffi, params_from_iter};
use std::fs::File;
use std::io::Read as _;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Stands in the head of every file that this program makes ("Barm").
const APPLICATION: i64 = 0x4261_726d;
/// How long to wait for another connection of this program.
const WAIT: Duration = Duration::from_secs(10);

/// How long to wait before a copy is tried again.
const PAUSE: Duration = Duration::from_millis(20);

/// A connection to a SQLite file.
pub(crate) struct Lite {
    pub(crate) connection: Connection,
    pub(crate) path: PathBuf,
}

/// Whose a file is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Whose {
    /// There is nothing in it yet.
    Nobodys,
    /// This program made it.
    Ours,
    /// Another program made it.
    Another,
}

/// Whether a file that holds anything begins like a database; `None` if it is missing or empty.
pub(crate) fn looks_like_a_database(path: &Path) -> Result<Option<bool>, StoreError> {
    const HEAD: &[u8; 16] = b"SQLite format 3\0";
    let file = match File::open(path) {
        Ok(file) => file,
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(StoreError::file("open", path, error)),
    };
    let mut head = Vec::new();
    let read = file.take(HEAD.len() as u64).read_to_end(&mut head);
    read.map_err(|error| StoreError::file("read", path, error))?;
    Ok((!head.is_empty()).then(|| head == HEAD))
}

impl Lite {
    /// Opens the file for reading and writing, making it if it is not there.
    pub(crate) fn open(path: &Path) -> Result<Self, StoreError> {
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE
            | OpenFlags::SQLITE_OPEN_CREATE
            | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let connection =
            Connection::open_with_flags(path, flags).map_err(|error| explain(path, &error))?;
        let lite = Self { connection, path: path.to_owned() };
        if lite.connection.is_readonly("main").map_err(|error| lite.explain(&error))? {
            return Err(StoreError::ReadOnly { path: lite.path });
        }
        lite.connection.busy_timeout(WAIT).map_err(|error| lite.explain(&error))?;
        lite.connection.set_prepared_statement_cache_capacity(64);
        // What is deleted is overwritten with zeros; nothing is ever put in a file of its own.
        lite.pragmas(&["secure_delete = on", "temp_store = memory", "foreign_keys = on"])?;
        Ok(lite)
    }

    /// Makes every commit wait for the disk.
    pub(crate) fn durable(self) -> Result<Self, StoreError> {
        self.pragmas(&[
            "journal_mode = wal",
            "synchronous = full",
            "fullfsync = on",
            "checkpoint_fullfsync = on",
        ])?;
        Ok(self)
    }

    /// Turns a copy into a single file without a log beside it, to be written in one go.
    pub(crate) fn single(self) -> Result<Self, StoreError> {
        self.pragmas(&["journal_mode = delete", "synchronous = full"])?;
        Ok(self)
    }

    /// Copies everything into another file, as it stands at one moment; writing goes on.
    pub(crate) fn copy_into(&self, to: &mut Self) -> Result<(), StoreError> {
        let explain = |error: rusqlite::Error| explain(&to.path, &error);
        let copy = Backup::new(&self.connection, &mut to.connection).map_err(explain)?;
        // In one step, or every commit meanwhile would start it anew.
        while copy.step(-1).map_err(explain)? != StepResult::Done {
            std::thread::sleep(PAUSE);
        }
        Ok(())
    }

    /// Refuses to write from now on.
    pub(crate) fn only_reading(self) -> Result<Self, StoreError> {
        self.pragmas(&["query_only = on"])?;
        Ok(self)
    }

    /// Whose the file is.
    pub(crate) fn whose(&self) -> Result<Whose, StoreError> {
        let one =
            |sql| self.rows(sql, &[], |mut row| row.int()).map(|rows| rows.first().copied());
        Ok(match one("pragma application_id")? {
            Some(APPLICATION) => Whose::Ours,
            Some(0) if one("select count(*) from sqlite_master")? == Some(0) => Whose::Nobodys,
            _ => Whose::Another,
        })
    }

    /// Marks a new file as ours.
    pub(crate) fn claim(&self) -> Result<(), StoreError> {
        self.pragmas(&[&format!("application_id = {APPLICATION}")])
    }

    /// Asks the engine whether the file is sound; `deep` also compares tables with indexes.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] with the first thing that is wrong.
    pub(crate) fn check(&mut self, deep: bool) -> Result<(), StoreError> {
        let sql = if deep { "pragma integrity_check(5)" } else { "pragma quick_check(5)" };
        let said = self.rows(sql, &[], |mut row| row.text()).map_err(|error| match error {
            StoreError::Engine { place, said } => StoreError::Damaged { place, what: said },
            other => other,
        })?;
        if said != ["ok"] {
            return Err(self.damaged(&said.join("; ")));
        }
        let loose = if deep {
            self.rows("pragma foreign_key_check", &[], |mut row| row.text())?
        } else {
            Vec::new()
        };
        match loose.first() {
            None => Ok(()),
            Some(table) => Err(self.damaged(&format!("a row of {table} belongs to nothing"))),
        }
    }

    /// Brings everything into the main file and cuts the log to nothing.
    pub(crate) fn flush_log(&mut self) -> Result<(), StoreError> {
        let busy = self.rows("pragma wal_checkpoint(truncate)", &[], |mut row| row.int())?;
        match busy.first() {
            Some(0) | None => Ok(()),
            Some(_) => Err(StoreError::Engine {
                place: self.path.display().to_string(),
                said: "another reader holds on to the log".into(),
            }),
        }
    }

    pub(crate) fn run(&self, sql: &str, with: &[Value<'_>]) -> Result<u64, StoreError> {
        let run = || {
            let mut statement = self.connection.prepare_cached(&numbered(sql))?;
            statement.execute(params_from_iter(with))
        };
        run().map(|rows| rows as u64).map_err(|error| self.explain(&error))
    }

    pub(super) fn rows<T>(
        &self,
        sql: &str,
        with: &[Value<'_>],
        mut each: impl FnMut(Row) -> Result<T, StoreError>,
    ) -> Result<Vec<T>, StoreError> {
        let explain = |error: rusqlite::Error| self.explain(&error);
        let mut statement = self.connection.prepare_cached(&numbered(sql)).map_err(explain)?;
        let columns = statement.column_count();
        let mut rows = statement.query(params_from_iter(with)).map_err(explain)?;
        let mut made = Vec::new();
        while let Some(row) = rows.next().map_err(explain)? {
            let cells = (0..columns).map(|at| {
                Ok(match row.get_ref(at).map_err(explain)? {
                    ValueRef::Null => Value::Null,
                    ValueRef::Integer(number) => Value::Int(number),
                    ValueRef::Text(text) => {
                        Value::from(String::from_utf8_lossy(text).into_owned())
                    }
                    ValueRef::Real(_) | ValueRef::Blob(_) => {
                        return Err(self.damaged("a cell holds what was never put there"));
                    }
                })
            });
            made.push(each(Row::new(cells.collect::<Result<_, StoreError>>()?))?);
        }
        Ok(made)
    }

    pub(super) fn script(&self, sql: &str) -> Result<(), StoreError> {
        self.connection.execute_batch(sql).map_err(|error| self.explain(&error))
    }

    fn pragmas(&self, settings: &[&str]) -> Result<(), StoreError> {
        settings.iter().try_for_each(|setting| self.script(&format!("pragma {setting}")))
    }

    fn damaged(&self, what: &str) -> StoreError {
        let what = what.chars().take(200).collect();
        StoreError::Damaged { place: self.path.display().to_string(), what }
    }

    pub(crate) fn explain(&self, error: &rusqlite::Error) -> StoreError {
        explain(&self.path, error)
    }
}

impl rusqlite::ToSql for Value<'_> {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(match self {
            Value::Int(number) => ValueRef::Integer(*number),
            Value::Text(text) => ValueRef::Text(text.as_bytes()),
            Value::Null => ValueRef::Null,
        }))
    }
}

/// SQLite takes `$2` for a name, and counts names as they come; `?2` is the second.
fn numbered(sql: &str) -> String {
    sql.replace('$', "?")
}

/// What the engine's complaint means for the person who keeps the record.
fn explain(path: &Path, error: &rusqlite::Error) -> StoreError {
    let place = path.display().to_string();
    let path = path.to_owned();
    // The index of the log could not be made longer, for which there is no other reason.
    let no_room_for_index =
        error.sqlite_error().is_some_and(|e| e.extended_code == ffi::SQLITE_IOERR_SHMSIZE);
    match error.sqlite_error_code() {
        _ if no_room_for_index => StoreError::DiskFull { place },
        Some(ErrorCode::DiskFull) => StoreError::DiskFull { place },
        Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => {
            StoreError::ReadOnly { path }
        }
        Some(ErrorCode::NotADatabase) => StoreError::NotARecord { path },
        Some(ErrorCode::DatabaseCorrupt) => {
            StoreError::Damaged { place, what: error.to_string() }
        }
        _ => StoreError::Engine { place, said: error.to_string() },
    }
}
