//! Every format that comes in or goes out: bytes to domain types and back.
//!
//! This crate knows no file, database or network; it takes bytes and returns bytes.

pub mod calendar;
pub mod catalog;
pub mod chart;
pub mod columns;
mod headed;
pub mod laws;
pub mod page;
pub mod pilot_text;
pub mod plan_text;
pub mod proposals;
pub mod readings;
pub mod sheet;
pub mod square;
pub mod wishes;
