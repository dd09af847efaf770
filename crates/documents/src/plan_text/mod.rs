//! The plan file: TOML that a teacher can edit by hand.
//!
//! [`read()`] reports every mistake at once, each with its place and what to do, and never panics,
//! whatever the bytes. [`write_new()`] writes a plan with notes; [`write()`] changes a person's own
//! file only where the plan differs from it; a [`Draft`] is a file that a form writes into.

mod bags;
mod class;
mod clock;
mod draft;
mod label;
pub(crate) mod literal;
mod measurable;
pub(crate) mod mistake;
mod names;
pub(crate) mod notes;
mod page;
mod places;
mod question;
mod read;
mod recipe;
mod references;
pub(crate) mod section;
mod section_lists;
mod supply;
pub(crate) mod syntax;
mod upgrade;
pub(crate) mod words;
mod write;
mod write_new;
mod write_recipe;

pub use clock::clock;
pub use draft::Draft;
pub use mistake::Mistake;
pub use places::{Place, Places};
pub use read::{Read, read, read_with_old_list};
pub use write::write;
pub use write_new::write_new;
