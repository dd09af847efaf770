//! Why differences cannot be put together.

/// Why there is no summary; places count from 1.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum MetaError {
    /// Nothing was given.
    #[error("there is no difference to put together; give that of one year or class at least")]
    Nothing,
    /// A difference that is no usable number.
    #[error(
        "the difference in place {place} is {value}, which is not a usable number; correct it or leave that year out"
    )]
    Unusable {
        /// Which one, counted from 1.
        place: usize,
        /// The number given.
        value: f64,
    },
    /// A standard error that none can be.
    #[error(
        "the standard error in place {place} is {se}, but must be more than 0; correct it or leave that year out"
    )]
    NoStandardError {
        /// Which one, counted from 1.
        place: usize,
        /// The number given.
        se: f64,
    },
    /// Degrees of freedom that none can be.
    #[error(
        "the degrees of freedom in place {place} are {df}, but must be at least 1; correct them or leave them out"
    )]
    NoFreedom {
        /// Which one, counted from 1.
        place: usize,
        /// The number given.
        df: f64,
    },
    /// Numbers of sizes that cannot belong together.
    #[error(
        "the numbers in place {place} and in place {other} differ so much in size that they cannot be put together; look for a wrong unit or a slip of the pen"
    )]
    TooUnequal {
        /// Which one, counted from 1.
        place: usize,
        /// The one with the smallest standard error, counted from 1.
        other: usize,
    },
}
