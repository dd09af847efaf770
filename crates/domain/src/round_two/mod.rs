//! Round two: which further bags would tell most, the plan that makes them, and what both rounds say
//! together.
//!
//! [`propose()`] lists what a class could make next, each with its reason, its forecast by what round one
//! taught, what it shares with round one and what it is expected to bring, the most telling first. Every
//! proposal carries the plan that makes it. [`pool()`] judges both rounds together, each period of each round a
//! block; what round one saw counts once there, as bags, while the proposals take it as what is believed. At which
//! level that may be done, and why, stands in `docs/science/years.md`; the whole in `docs/round-two.md`.

mod amounts;
mod before;
mod belief;
mod deal;
mod gain;
mod idea;
mod ideas;
mod limits;
mod merge;
mod pool;
mod propose;
mod refused;
mod shared;

pub use belief::Foreseen;
pub use gain::{By, Told};
pub use idea::{Pair, Reason};
pub use pool::{Handed, Looks, Pooled, pool};
pub use propose::{MOST, Proposal, Proposals, RoundOne, propose};
pub use refused::{NoRoundTwo, NotPooled};
pub use shared::Shared;
