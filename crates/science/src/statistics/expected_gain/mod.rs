//! What a second round is expected to bring, before any of its bags is made.
//!
//! # What is assumed
//! Round one left a difference d₁ with a spread s₁ of bags (f₁ degrees of freedom). What is believed of
//! the true difference is a normal distribution or draws. Round two measures it anew with bags that
//! truly differ by σ; both rounds are then looked at together, the round as block:
//!
//! ```text
//! d₂ ~ N(θ, σ²/I₂)      D = (I₁ d₁ + I₂ d₂)/(I₁ + I₂)      I = 1/(1/n + 1/n₀)
//! S² = (f₁ s₁² + σ² χ²(n + n₀ − 2) + (d₂ − d₁)² I₁ I₂/(I₁ + I₂)) / F      F = f₁ + n + n₀ − 1
//! clear:  |D| > c S/√(I₁ + I₂)  and  |D| ≥ what can be read
//! ```
//!
//! What round one saw stays as it is seen; chance is only in what is still to come. Everything follows
//! by quadrature, no chance is drawn. Bags that one group makes count less
//! ([`effective_bags`](super::power::effective_bags)); that the groups' ways also change the spread seen
//! is left out, so that such a round finds a little less than is said.
//!
//! # Source
//! Assurance: Spiegelhalter & Freedman (1986), *Stat. Med.* 5, 1–13; O'Hagan, Stevens & Campbell (2005),
//! *Pharm. Stat.* 4, 187–201 (both from memory). The formulas are derived.

mod belief;
mod clear;
mod error;
mod gain;
mod rank;

pub use belief::Belief;
pub use error::GainError;
pub use gain::{Added, Candidate, Gain, Seen, Verdicts, gain};
pub use rank::{By, rank};
