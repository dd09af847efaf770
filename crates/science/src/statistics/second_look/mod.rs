//! A question that is looked at twice: after round one, and again when further bags were made.
//!
//! # The rule
//! Round one is judged at a nominal level of its own; the second look takes both rounds together, the
//! round as block, at another. The two levels are chosen so that without a true difference "clear"
//! comes out of either look in at most 5 % of classes. What the first look used up is gone: told at the
//! full 5 %, it leaves nothing for a second one ([`TwoLooks::left_after`] gives 0).
//!
//! ```text
//! P(|Z₁| > c₁ or |Z₂| > c₂) = α      correlation of Z₁ and Z₂ = √s      s = I₁/(I₁ + I₂)
//! ```
//!
//! with I the information of a round, one over the variance of its difference. For Student's t the same
//! nominal levels are used, each with its own degrees of freedom; [`TwoLooks::by_student`] works the
//! joint chance out for them, which at few degrees of freedom is a little more than normal values say.
//!
//! What choices a teacher has, and what each costs, stands in `docs/science/years.md`.
//!
//! # Source
//! Pocock (1977), *Biometrika* 64, 191–199; O'Brien & Fleming (1979), *Biometrics* 35, 549–556; Lan &
//! DeMets (1983), *Biometrika* 70, 659–663; Jennison & Turnbull (2000), *Group Sequential Methods*,
//! chapters 2, 3 and 7 (all from memory; their tables are held by the tests).

mod error;
mod rule;
mod sides;
mod two_looks;

pub use error::SecondLookError;
pub use rule::Rule;
pub use sides::{Sides, share_of_bags};
pub use two_looks::{Levels, TwoLooks};

/// The chance of a false "clear" that both looks together may have, by the rule of the program (1).
pub const TOTAL: f64 = 0.05;

/// The level for round one of a plan that foresees a second round (1): judgement, weighed in
/// `docs/science/years.md`.
pub const FIRST_OF_TWO: f64 = 0.02;
