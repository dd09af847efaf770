//! How a rehearsal went, in words.

use super::{Caught, Report};
use barm_domain::code::BagCode;
use barm_domain::rehearsal::Mishap;

/// Something that went wrong at a bench, and whether the run page showed it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct WentWrong {
    /// The bag, as people say it: group and letter.
    pub(crate) bag: String,
    /// The planned minute, where it belongs to one.
    pub(crate) minute: Option<u32>,
    /// What happened.
    pub(crate) what: String,
    /// Whether the run page showed it, or the teacher dealt with it.
    pub(crate) shown: bool,
}

impl Report {
    /// What went wrong, in the order of the script. What did not come to happen is left out.
    pub(crate) fn went_wrong(&self) -> Vec<WentWrong> {
        self.caught.iter().filter(|one| one.happened).map(told).collect()
    }
}

fn told(caught: &Caught) -> WentWrong {
    let staged = caught.staged;
    let whole = matches!(staged.mishap, Mishap::WrongStart | Mishap::Copied | Mishap::Swapped);
    let other = staged.other.map(|other| format!(" (with {})", called(other)));
    WentWrong {
        bag: called(staged.bag),
        minute: staged.planned.filter(|_| !whole),
        what: format!("{}{}", staged.mishap.says(), other.unwrap_or_default()),
        shown: caught.shown,
    }
}

/// A bag as people say it: group and letter.
fn called(bag: BagCode) -> String {
    format!("{}{}", bag.group(), bag.letter())
}
