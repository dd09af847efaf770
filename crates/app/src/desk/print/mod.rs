//! Everything that can be printed for a plan: one table, one way to ask, one file a part.
//!
//! A part is a row of [`PARTS`]. What goes onto its pages is filled in by a file of `desk::paper`;
//! here is only decided what there is, what it is called and whether a plan has use for it.

mod address;
mod files;
mod job;
mod parts;
mod wish;

pub(crate) use address::Address;
pub(crate) use files::write_printed;
pub(crate) use job::Job;
pub(crate) use parts::{PARTS, Part};
pub(crate) use wish::Wish;

use super::DeskError;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// One file, made and not yet written.
#[derive(Debug)]
pub(crate) struct Sheet {
    /// The part that it is.
    pub(crate) part: &'static Part,
    /// Its name.
    pub(crate) name: String,
    /// What is in it.
    pub(crate) bytes: Vec<u8>,
}

/// The parts of that name, or all that the plan has use for if none is named; each once, in the
/// order of the table.
pub(crate) fn wanted(job: &Job<'_>, keys: &[String]) -> Vec<&'static Part> {
    let named = |part: &&Part| keys.iter().any(|key| key == part.key);
    let of_use = |part: &&Part| keys.is_empty() && (part.of_use)(job);
    PARTS.iter().filter(|part| named(part) || of_use(part)).collect()
}

/// Makes these parts, several at a time.
///
/// # Errors
/// What the first part of the table that cannot be made says; nothing is written either way.
pub(crate) fn print(job: &Job<'_>, parts: &[&'static Part]) -> Result<Vec<Sheet>, DeskError> {
    job.can_be_done()?;
    let (next, done) = (AtomicUsize::new(0), AtomicUsize::new(0));
    let made = Mutex::new(Vec::new());
    // Threads of their own: a part may wait for a forecast that another has begun, and the pool
    // that works on the forecast must never do the waiting.
    let workers = thread::available_parallelism().map_or(2, usize::from).min(parts.len());
    thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                while let Some(part) = parts.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let sheet = one(job, part);
                    job.step(done.fetch_add(1, Ordering::Relaxed) + 1, parts.len());
                    made.lock()
                        .unwrap_or_else(|broken| broken.into_inner())
                        .push((part, sheet));
                }
            });
        }
    });
    let mut made = made.into_inner().unwrap_or_else(|broken| broken.into_inner());
    let place = |part: &Part| parts.iter().position(|other| other.key == part.key);
    made.sort_by_key(|(part, _)| place(part));
    made.into_iter().map(|(_, sheet)| sheet).collect()
}

/// Makes one part.
pub(crate) fn one(job: &Job<'_>, part: &'static Part) -> Result<Sheet, DeskError> {
    job.can_be_done()?;
    let bytes = (part.make)(job)?;
    Ok(Sheet { part, name: part.file_name(job), bytes })
}

#[cfg(test)]
mod tests;
