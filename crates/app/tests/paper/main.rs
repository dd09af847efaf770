//! Everything that can be printed, looked at from outside with the tools that a printer would use.
//!
//! All prints are made once for a run of these tests; see [`prints`]. A file a part.

mod asked;
mod join;
mod labels;
mod picture;
mod bounds;
mod calendar;
#[path = "../browser/fetched.rs"]
mod fetched;
mod handed_out;
mod packet;
mod prints;
#[path = "../program/mod.rs"]
mod program;
mod signs;
mod sound;
mod tools;
