//! What a group is asked about its proposal: a child's question, never the answer.

use super::Judged;
use crate::finding::Severity;

/// A question that a group is asked before it hands in its plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Ask {
    /// Something is not said yet.
    Unsaid,
    /// Something is not in the cupboard.
    Cupboard,
    /// Two things change at once.
    TwoThings,
    /// The bags do not differ in what the group wants to change.
    Change,
    /// Two bags are made alike.
    Alike,
    /// There is nothing to compare with.
    Compare,
    /// One bag of a kind.
    Luck,
    /// Nothing in the bags makes gas.
    Gas,
    /// The water is hot.
    Hot,
    /// It cannot be measured out so.
    Make,
}

impl Ask {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Unsaid,
        Self::Cupboard,
        Self::TwoThings,
        Self::Change,
        Self::Alike,
        Self::Compare,
        Self::Luck,
        Self::Gas,
        Self::Hot,
        Self::Make,
    ];

    /// The word that stands in files and addresses.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Unsaid => "unsaid",
            Self::Cupboard => "cupboard",
            Self::TwoThings => "two-things",
            Self::Change => "change",
            Self::Alike => "alike",
            Self::Compare => "compare",
            Self::Luck => "luck",
            Self::Gas => "gas",
            Self::Hot => "hot",
            Self::Make => "make",
        }
    }

    /// The question that a finding becomes; nothing for what rests on a forecast and for what is
    /// the teacher's to see.
    fn of(code: &str) -> Option<Self> {
        Some(match code {
            "unclear-change" | "unclear-bags" | "too-many-levels" => Self::Unsaid,
            "not-in-cupboard" | "unclear-level" => Self::Cupboard,
            "two-variables" | "no-matching-reference" => Self::TwoThings,
            "other-variable" => Self::Change,
            "same-as-reference" | "levels-not-distinct" => Self::Alike,
            "no-reference" | "one-level" => Self::Compare,
            "no-replicate" => Self::Luck,
            "no-gas" => Self::Gas,
            "water-scalds" | "water-hot" => Self::Hot,
            "cannot-make" | "cannot-foresee" => Self::Make,
            _ => return None,
        })
    }
}

/// What a group is asked, each question once, in a fixed order. `judged` must be judged without a
/// forecast.
pub fn asks(judged: &Judged) -> Vec<Ask> {
    let grave = judged.found.iter().filter(|finding| finding.severity <= Severity::Warning);
    let mut asks: Vec<Ask> = grave.filter_map(|finding| Ask::of(finding.code)).collect();
    asks.sort_unstable();
    asks.dedup();
    asks
}
