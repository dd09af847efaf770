//! The only place where things are combined: text, science, domain, paper.
//!
//! A face (`cli`, later `web`) parses, calls one function here and shows the answer.

mod failure;

pub(crate) use barm_science::fact::Fact;
pub(crate) use failure::DeskError;

/// Hears how far long work has come.
pub(crate) trait Progress: Sync {
    /// `done` of `of` steps of what is being done.
    fn step(&self, doing: &'static str, done: usize, of: usize);
}

/// Every constant and parameter of the program.
pub(crate) fn facts() -> Vec<Fact> {
    barm_science::facts::all()
}
