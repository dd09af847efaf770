//! Every format that comes in or goes out: bytes to domain types and back.
//!
//! This crate knows no file, database or network; it takes bytes and returns bytes.

pub mod bundle;
pub mod calendar;
pub mod catalog;
pub mod chart;
mod chart_table;
pub mod columns;
mod guard;
mod headed;
pub mod laws;
pub mod package;
pub mod page;
pub mod pilot_text;
pub mod plan_text;
pub mod proposals;
pub mod readings;
mod rfc4180;
pub mod roster;
pub mod sheet;
pub mod square;
pub mod wishes;

pub use chart_table::chart_table;
