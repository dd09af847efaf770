//! A difference that several years or classes measured, put together.
//!
//! # What is assumed
//! Every year has its own true difference θ_i, drawn from a normal distribution around the mean of
//! all years that there could be, and measures it with a standard error of its own:
//!
//! ```text
//! y_i = θ_i + e_i      θ_i ~ N(μ, τ²)      e_i ~ N(0, v_i)      w_i = 1/(v_i + τ²)
//! μ̂ = Σ w_i y_i / W      W = Σ w_i
//! ```
//!
//! A year is a class, a day, a school: whatever differs from the next in more than its bags. Years
//! that chose themselves (only those that worked were kept) are not such a draw, and nothing here
//! mends that.

mod between;
mod error;
mod heterogeneity;
mod pooled;
mod profile;
mod scaled;
mod study;
mod tail;
mod weighed;

pub use between::Between;
pub use error::MetaError;
pub use heterogeneity::Heterogeneity;
pub use pooled::{Pooled, Summary, pool};
pub use study::Study;
