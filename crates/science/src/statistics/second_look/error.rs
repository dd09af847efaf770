//! Why two looks cannot be planned.

/// Why there is no rule for a second look.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SecondLookError {
    /// A share or a level that is none.
    #[error("{what} is {value}, but must lie between 0 and 1, both left out")]
    NoShare {
        /// What it stands for.
        what: &'static str,
        /// The number given.
        value: f64,
    },
    /// No comparison at all.
    #[error("no comparison is looked at; there must be at least one")]
    NoComparison,
    /// Degrees of freedom that two such looks cannot have.
    #[error(
        "{first} degrees of freedom at the first look and {pooled} at the second do not fit: the first needs at least 1, and both rounds together at least one more"
    )]
    NoFreedom {
        /// Those of the first look.
        first: f64,
        /// Those of the pooled look.
        pooled: f64,
    },
    /// A side without bags.
    #[error("{bags} bags on a side are too few; each side needs at least one in each round")]
    NoBags {
        /// The number given.
        bags: f64,
    },
}
