//! A cell in words.

use crate::desk::{Wording, say};

/// A cell as people say it, such as `2A at 8 min`; without a minute, the bag.
pub(super) fn cell(w: Wording, bag: &str, minute: Option<u32>) -> String {
    match minute {
        Some(0) => say!(w, "paper-cell-zero", bag = bag),
        Some(minute) => say!(w, "paper-cell", bag = bag, minute = minute.to_string()),
        None => bag.to_owned(),
    }
}
