//! What the program keeps on disk.
//!
//! So far that is one thing: files written for a person, with a memory of what was written, so
//! that a file the person has changed since is never overwritten. The append-only record of the
//! class day will live here too.

pub mod written;
