//! How the teacher's words are asked for.

pub(crate) use barm_documents::catalog::{Filling, Wording};

/// The text of a key in the language of a [`Wording`], its open places filled by name:
/// `say!(w, "run-bags", count = 3, period = name)`. Key and names stand in the call as they are,
/// so that a test can hold each call against the catalog.
macro_rules! say {
    ($words:expr, $key:literal $(,)?) => {
        $words.say($key)
    };
    ($words:expr, $key:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $words.fill(
            $key,
            &[$((stringify!($name), $crate::desk::wording::Filling::from($value))),+],
        )
    };
}
pub(crate) use say;

/// `A`, `A and B`, `A, B and C`.
pub(crate) fn listed(w: Wording, all: &[String]) -> String {
    match all {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => say!(w, "word-and", first = first.join(", "), last = last),
    }
}
