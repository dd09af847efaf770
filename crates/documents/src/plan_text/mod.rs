//! The plan file: TOML that a teacher can edit by hand.
//!
//! [`read()`] reports every mistake at once, each with its place and what to do, and never panics,
//! whatever the bytes.

mod bags;
mod class;
mod label;
mod measurable;
mod mistake;
mod names;
mod notes;
mod places;
mod question;
mod read;
mod recipe;
mod section;
mod supply;
mod syntax;
mod upgrade;
mod words;

pub use mistake::Mistake;
pub use places::{Place, Places};
pub use read::{Read, read};
