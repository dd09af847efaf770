//! What became of the cells in which a height may stand.

/// How many cells were taken, rejected or blank; together they are all the cells in which a
/// height may stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Cells {
    /// Taken as readings.
    pub taken: usize,
    /// Listed with their reason.
    pub rejected: usize,
    /// Not read: nothing, or a mark such as `n/a`, stands there.
    pub blank: usize,
}
