//! The one thread that writes.
//!
//! It takes what has gathered while the last commit was on its way to the disk, commits it in one
//! go, and only then tells those who wait. If the commit fails, each call is tried alone, so that
//! one that cannot be kept takes no other with it.

use crate::append::{self, Receipt};
use crate::failure::StoreError;
use crate::folder::Held;
use crate::line::Line;
use crate::notice::Notices;
use crate::pool::{Pool, Source};
use crate::wire::Kept;
use std::collections::{BTreeMap, BTreeSet};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::mpsc::Receiver;

/// What is told to those who wait for an append.
type Then = Box<dyn FnOnce(Result<Vec<Receipt>, StoreError>) + Send>;

/// Something to write.
pub(crate) enum Job {
    Append { id: i64, entries: Vec<Kept>, then: Then },
    Other(Box<dyn FnOnce(&mut Writer) + Send>),
}

/// A call whose entries wait for the next commit.
struct Call {
    id: i64,
    entries: Vec<Kept>,
    then: Then,
}

/// As many entries go into one commit at most.
const MOST: usize = 1000;

/// What the writing thread owns.
pub(crate) struct Writer {
    pub(crate) line: Line,
    pub(crate) pool: Arc<Pool>,
    pub(crate) source: Source,
    pub(crate) notices: Arc<Notices>,
    /// Investigations that are known to be there.
    pub(crate) known: BTreeSet<i64>,
    /// Let go after every connection is closed.
    pub(crate) held: Option<Held>,
}

impl Writer {
    /// Works until nobody can hand in anything any more.
    pub(crate) fn work(mut self, jobs: &Receiver<Job>) {
        let mut next = jobs.recv().ok();
        while let Some(job) = next.take() {
            match job {
                Job::Other(work) => {
                    self.mend();
                    work(&mut self);
                }
                Job::Append { id, entries, then } => {
                    let mut size = entries.len();
                    let mut calls = vec![Call { id, entries, then }];
                    while size < MOST {
                        match jobs.try_recv() {
                            Ok(Job::Append { id, entries, then }) => {
                                size += entries.len();
                                calls.push(Call { id, entries, then });
                            }
                            Ok(other) => {
                                next = Some(other);
                                break;
                            }
                            Err(_) => break,
                        }
                    }
                    self.commit(calls);
                }
            }
            if next.is_none() {
                next = jobs.recv().ok();
            }
        }
        // Connections are closed here, on a plain thread: some cannot be closed on others.
        drop(self.pool.keep_out());
        let Self { line, held, .. } = self;
        drop(line);
        drop(held);
    }

    /// Connects again if the connection was lost.
    fn mend(&mut self) {
        if !self.line.is_alive()
            // If it cannot be had, the next statement says so.
            && let Ok(line) = self.source.writer()
        {
            self.line = line;
        }
    }

    fn commit(&mut self, mut calls: Vec<Call>) {
        let mut done = self.try_all(&calls);
        if done.is_err() && !self.line.is_alive() {
            // Nobody knows whether that was committed; the keys make a second try safe.
            self.mend();
            done = self.try_all(&calls);
        }
        match done {
            Ok(results) => {
                let ids: Vec<i64> = calls.iter().map(|call| call.id).collect();
                let new = last_places(ids.into_iter().zip(&results));
                for (call, receipts) in calls.into_iter().zip(results) {
                    tell(call.then, Ok(receipts));
                }
                for (id, seq) in new {
                    self.notices.give(id, seq);
                }
            }
            Err(error) if calls.len() == 1 => {
                if let Some(call) = calls.pop() {
                    tell(call.then, Err(error));
                }
            }
            Err(_) => {
                for call in calls {
                    self.commit(vec![call]);
                }
            }
        }
    }

    fn try_all(&mut self, calls: &[Call]) -> Result<Vec<Vec<Receipt>>, StoreError> {
        let Self { line, known, notices, .. } = self;
        line.alone(|line| {
            let mut next = append::next_place(line)?;
            let mut results = Vec::with_capacity(calls.len());
            for call in calls {
                if !known.contains(&call.id) {
                    crate::plans::must_be_there(line, call.id)?;
                    known.insert(call.id);
                }
                results.push(append::add(line, call.id, &call.entries, &mut next)?);
            }
            for (id, seq) in last_places(calls.iter().map(|call| call.id).zip(&results)) {
                line.tell(&notices.message(id, seq))?;
            }
            Ok(results)
        })
    }
}

/// The last place of what is new, by investigation.
fn last_places<'r>(
    results: impl Iterator<Item = (i64, &'r Vec<Receipt>)>,
) -> BTreeMap<i64, i64> {
    let mut last = BTreeMap::new();
    for (id, receipts) in results {
        if let Some(seq) = receipts.iter().filter(|r| !r.known).map(|r| r.seq).max() {
            last.insert(id, seq);
        }
    }
    last
}

/// Tells one who waits. What they do with it must not stop the writer.
fn tell(then: Then, result: Result<Vec<Receipt>, StoreError>) {
    let _ = catch_unwind(AssertUnwindSafe(|| then(result)));
}
