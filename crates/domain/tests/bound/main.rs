//! A sealed bag stays what it was, whatever is edited afterwards.

mod edits;
mod school;
mod stories;
