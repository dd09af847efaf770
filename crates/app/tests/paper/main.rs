//! Everything that can be printed, looked at from outside with the tools that a printer would use.
//!
//! All prints are made once for a run of these tests; see [`prints`]. A file a part.

mod asked;
mod bounds;
mod calendar;
#[path = "../browser/fetched.rs"]
mod fetched;
mod gauge;
mod given;
mod handed_out;
mod hands;
mod join;
mod labels;
mod packet;
mod packet_says;
mod pages;
mod picture;
mod prints;
#[path = "../program/mod.rs"]
mod program;
mod reading;
mod results;
mod signs;
mod sound;
mod tools;
mod trays;
