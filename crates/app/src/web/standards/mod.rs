//! Standards: which of them the groups' products show, in the words of a state.

mod answer;
mod page;
mod words_form;

pub(super) use answer::{save, show};
