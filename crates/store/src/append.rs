//! Adding entries to the record.

use crate::failure::StoreError;
use crate::line::Line;
use crate::store::Store;
use crate::wire::{self, Kept, Unread};
use crate::writer::Job;
use barm_domain::record::{Entry, Key};
use std::sync::mpsc;

/// The acknowledgement of an entry: it is on disk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Receipt {
    /// Its key.
    pub key: Key,
    /// Its place in the record; rises over all investigations.
    pub seq: i64,
    /// It was on record before, and was not stored again.
    pub known: bool,
}

const ADD: &str = "insert into entry (seq, investigation, key, subject, period, grp, bag, kind, \
     measured, arrived, who, who_period, who_group, shape, body) \
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15) \
     on conflict (key) do nothing";

const THERE: &str = "select investigation, seq, key, subject, period, grp, bag, kind, measured, \
     arrived, who, who_period, who_group, shape, body from entry where key = $1";

const AFTER: &str = "select seq, key, subject, period, grp, bag, kind, measured, arrived, who, \
     who_period, who_group, shape, body from entry \
     where investigation = $1 and seq > $2 order by seq";

impl Store {
    /// Adds entries, all or none, and returns when they are on disk, with one receipt for each.
    ///
    /// An entry whose key is known and that says the same is acknowledged again.
    ///
    /// # Errors
    /// [`StoreError::Clash`] if a known key comes with other content; or why nothing was kept.
    pub fn append(
        &self,
        id: i64,
        entries: impl AsRef<[Entry]>,
    ) -> Result<Vec<Receipt>, StoreError> {
        let (tell, told) = mpsc::sync_channel(1);
        self.append_then(id, entries, move |result| {
            // Whoever asked is waiting below.
            let _ = tell.send(result);
        });
        told.recv().unwrap_or(Err(StoreError::Closed))
    }

    /// Adds entries like [`Store::append`] without waiting; `then` runs on the writing thread
    /// after they are on disk, or with the reason why nothing was kept. It must not wait for this
    /// store.
    pub fn append_then(
        &self,
        id: i64,
        entries: impl AsRef<[Entry]>,
        then: impl FnOnce(Result<Vec<Receipt>, StoreError>) + Send + 'static,
    ) {
        match entries.as_ref().iter().map(Kept::of).collect() {
            Ok(entries) => self.hand_in(Job::Append { id, entries, then: Box::new(then) }),
            Err(error) => then(Err(error)),
        }
    }

    /// The entries of an investigation that lie after a place in the record (0 for all), each
    /// with its place, in the order in which they were added.
    ///
    /// # Errors
    /// [`StoreError::NewerEntry`] if one of them needs a newer program; or why it cannot be read.
    pub fn entries(&self, id: i64, after: i64) -> Result<Vec<(i64, Entry)>, StoreError> {
        self.read(|line| entries(line, id, after))
    }
}

pub(crate) fn entries(
    line: &mut Line,
    id: i64,
    after: i64,
) -> Result<Vec<(i64, Entry)>, StoreError> {
    let found = line.rows(AFTER, &[id.into(), after.into()], |row| Ok(wire::read(row)))?;
    found.into_iter().map(|entry| entry.map_err(|unread| say(line, unread))).collect()
}

/// Names the program that it takes to read a newer entry.
fn say(line: &mut Line, unread: Unread) -> StoreError {
    let (seq, kind, shape) = match unread {
        Unread::Failed(error) => return error,
        Unread::Newer { seq, kind, shape } => (seq, kind, shape),
    };
    let program = line.first(
        "select program from shape where kind = $1 and shape = $2",
        &[kind.as_str().into(), shape.into()],
        |mut row| row.text(),
    );
    match program {
        Ok(Some(program)) => StoreError::NewerEntry { seq, kind, shape, program },
        Ok(None) => {
            let program = format!("after {}", crate::migrate::PROGRAM);
            StoreError::NewerEntry { seq, kind, shape, program }
        }
        Err(error) => error,
    }
}

/// The next free place in the record, to be asked for within a transaction.
pub(crate) fn next_place(line: &mut Line) -> Result<i64, StoreError> {
    let last = line.first("select max(seq) from entry", &[], |mut row| row.maybe_int())?;
    Ok(last.flatten().unwrap_or_default() + 1)
}

/// Adds the entries of one call within a transaction, which must be given up on an error.
pub(crate) fn add(
    line: &mut Line,
    id: i64,
    entries: &[Kept],
    next: &mut i64,
) -> Result<Vec<Receipt>, StoreError> {
    let mut receipts = Vec::with_capacity(entries.len());
    for entry in entries {
        let key = entry.key;
        if line.run(ADD, &entry.cells(*next, id))? == 1 {
            receipts.push(Receipt { key, seq: *next, known: false });
            *next += 1;
            continue;
        }
        let there = line.first(THERE, &[key.to_string().into()], |mut row| {
            Ok((row.int()?, wire::read(row)))
        })?;
        match there {
            Some((theirs, Ok((seq, there))))
                if theirs == id && entry.says_the_same_as(&there) =>
            {
                receipts.push(Receipt { key, seq, known: true });
            }
            Some((_, Err(unread @ Unread::Failed(_)))) => return Err(say(line, unread)),
            _ => return Err(StoreError::Clash { key }),
        }
    }
    Ok(receipts)
}
