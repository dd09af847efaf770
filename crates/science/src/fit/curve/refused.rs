//! Reasons why no curve can be laid.

use crate::statistics::slope::LineError;

/// Why no curve can be laid through points.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum CurveError {
    /// Another number of x than of y.
    #[error("there are {x} x and {y} y; each point needs both")]
    Uneven {
        /// Number of x.
        x: usize,
        /// Number of y.
        y: usize,
    },
    /// A number is not finite, or too large to be squared.
    #[error(
        "a point is ({x:e}, {y:e}), which is too large to be used; correct it or set it aside"
    )]
    OutOfReach {
        /// Which point, from 0.
        at: usize,
        /// Its x.
        x: f64,
        /// Its y.
        y: f64,
    },
    /// No more points than parameters.
    #[error(
        "{found} points cannot tell {parameters} parameters and how sure they are; {} or more are needed",
        parameters + 1
    )]
    TooFew {
        /// Points.
        found: usize,
        /// Parameters of the shape.
        parameters: usize,
    },
    /// Too few different x.
    #[error(
        "the points have {found} different x, and this shape needs {needed} or more; measure at other x too"
    )]
    FewPlaces {
        /// Different x.
        found: usize,
        /// Needed.
        needed: usize,
    },
    /// All y are equal.
    #[error("all y are {value}, so there is no curve to find")]
    AllEqual {
        /// The y.
        value: f64,
    },
    /// No line can be laid.
    #[error(transparent)]
    Line(#[from] LineError),
    /// No start leads anywhere.
    #[error("no curve of this shape comes near the points; try another shape")]
    NoFit,
}
