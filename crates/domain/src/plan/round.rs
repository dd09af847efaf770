//! Whether a plan's questions are looked at once or twice.

use barm_science::statistics::compare::LEVEL;
use barm_science::statistics::second_look::FIRST_OF_TWO;

/// Which round of a question a plan's bags are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub enum Round {
    /// The only one: nobody means to judge the same question again with further bags.
    #[default]
    Only,
    /// The first of two: more bags will be made, and both rounds will be judged together.
    First,
    /// The second of two: its bags are judged together with those of the first round.
    Second,
}

impl Round {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Only, Self::First, Self::Second];

    /// The words used in plans.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Only => "only",
            Self::First => "first of two",
            Self::Second => "second of two",
        }
    }

    /// The chance with which a question of this round by itself may come out clear where there is no
    /// difference (1); nothing where it has no verdict by itself.
    ///
    /// A first look takes part of the chance that both looks have together (`docs/science/years.md`).
    pub const fn level(self) -> Option<f64> {
        match self {
            Self::Only => Some(LEVEL),
            Self::First => Some(FIRST_OF_TWO),
            Self::Second => None,
        }
    }
}
