//! What a day's readings say about the yeast, the enzymes, the cooling and the cards.
//!
//! Every number of the bag model that is not known has a prior ([`crate::prior`]): a standard normal
//! deviate on a scale of its own. Those that all bags of a day share are estimated; those of a period, a
//! group or a bag are not estimated but add to what separates readings, so that two readings of one bag,
//! or of one group, count as the one witness they are:
//!
//! ```text
//! y = f(z, b) + e,   z, b ~ N(0, 1),   e ~ N(0, R)
//! f(z, b) ≈ m + F (z − ẑ) + B b        over z ~ N(ẑ, C) and b
//! ẑ makes (y − m)ᵀ V⁻¹ (y − m) + zᵀz least,   V = R + B Bᵀ
//! C = (Fᵀ V⁻¹ F + I)⁻¹
//! ```
//!
//! m is the mean of f and F, B the lines that go through it best, over what is left open: where f is bent, the
//! best point is not the middle of what is left open, and the middle is what is wanted.
//!
//! # Range
//! The numbers of bags enter by lines: good as long as one bag's spoons change its rise by less than about a
//! third. Where the readings scatter more than the model allows, the noise is taken as that much larger
//! (Birge), so that a wrong model widens what it says.
//!
//! # Source
//! Linear approximation of a mixed model: S. L. Beal, L. B. Sheiner (1982), "Estimating population
//! kinetics", *CRC Crit. Rev. Biomed. Eng.* 8, 195-222. Lines over what is left open:
//! Á. F. García-Fernández, L. Svensson, M. R. Morelande, S. Särkkä (2015), *IEEE Trans. Signal Process.*
//! 63, 5561-5573. Scale of the noise: R. T. Birge (1932), *Phys. Rev.* 40, 207-227. From memory.

mod arrived;
mod block;
mod counting;
mod curves;
mod effects;
mod gas;
mod gathered;
mod learned;
mod place;
mod remembered;
mod scatter;
mod search;
mod stand;
mod starts;
mod tops;
mod tried;
mod unlike;
mod way;

pub use effects::{Effect, Level, effects};
pub use learned::DayFit;
pub use search::fit_day;

use crate::forecast::SetupError;
use crate::setup::Setup;
use thiserror::Error;

/// One bag of the day with its readings.
#[derive(Debug, Clone, PartialEq)]
pub struct BagSeen {
    /// What went in, as it was meant or measured.
    pub setup: Setup,
    /// Which period it was in.
    pub period: u32,
    /// Which group of the period.
    pub group: u32,
    /// Minutes from the bag's own zero reading (more than 0) and rise above it (mm).
    pub readings: Vec<(f64, f64)>,
}

/// Why a day cannot be fitted.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DayError {
    /// No bag has a reading.
    #[error("no bag has a height after its zero reading; read at least one")]
    NoReadings,
    /// A reading that is no number, or before the zero reading.
    #[error(
        "bag {bag}: a rise of {rise_mm} mm at minute {minute} cannot be; minutes count from the \
         zero reading"
    )]
    Reading {
        /// Place of the bag in what was given, from 0.
        bag: usize,
        /// Its minute.
        minute: f64,
        /// Its rise.
        rise_mm: f64,
    },
    /// A bag that cannot be.
    #[error(transparent)]
    Setup(#[from] SetupError),
    /// The search did not arrive.
    #[error("the readings fit no day that the model knows; check their units")]
    Lost,
}
