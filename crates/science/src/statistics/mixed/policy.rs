//! What is done where the variance between groups comes out as zero or cannot be told.

/// What is done where the variance between groups comes out as zero or cannot be told.
///
/// It is never dropped: bags of one group are alike because the same hands made them, and a few
/// groups that happen to agree do not prove otherwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Policy {
    /// The estimate stays, 0 included; degrees of freedom count the variance between groups as
    /// estimated all the same, so that differences between groups have no more of them than the
    /// groups allow. A difference that hangs on a variance nobody can tell is not given.
    DegreesFromGroups,
    /// The variance between groups is taken as at least this share of the whole variance of a bag
    /// (1, from 0 to 0.99): where it comes out lower, and where it cannot be told.
    LeastShare(f64),
}

impl Policy {
    /// The smallest ratio of the variance between groups to that within (1).
    pub(super) fn least_ratio(self) -> f64 {
        match self {
            Self::DegreesFromGroups => 0.0,
            Self::LeastShare(share) if share > 0.0 => {
                let share = share.min(0.99);
                share / (1.0 - share)
            }
            Self::LeastShare(_) => 0.0,
        }
    }
}

/// Where the variance between groups comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GroupVariance {
    /// From the bags.
    Estimated,
    /// It came out as zero and stays so; degrees of freedom still count it.
    Zero,
    /// It came out below the share that the policy keeps, which stands in its place.
    Kept,
    /// There are not enough groups to tell it; the policy's share stands in its place.
    Assumed,
    /// There are not enough groups to tell it, and nothing stands in its place.
    NotTold,
    /// Every group made one bag: what groups differ by is part of what bags differ by.
    SingleBags,
}
