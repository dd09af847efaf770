//! The teacher's investigation: plan, groups, bags, fair tests, preparation, cautions, results.
//!
//! This crate knows no database, network, file or page. It takes bytes from nobody: text formats
//! live in `documents`, the record in `store`.

pub mod agenda;
pub mod amount;
pub mod assign;
pub mod bag_list;
pub mod bench;
pub mod board;
pub mod check;
pub mod claim;
pub mod code;
pub mod cupboard;
pub mod discussion;
pub mod finding;
pub mod grades;
pub mod marks;
pub mod nearest;
pub mod outlook;
pub mod paper;
pub mod pilot;
pub mod plan;
pub mod power;
pub mod prep;
pub mod proposal;
pub mod reading;
pub mod ready;
pub mod record;
pub mod rehearsal;
pub mod result;
pub mod roster;
pub mod round_two;
pub mod schedule;
pub mod shared;
pub mod sheet_code;
pub mod slip;
pub mod standards;
pub mod starter;
#[cfg(feature = "testing")]
pub mod testing;
pub mod trust;
pub mod words;
pub mod years;
