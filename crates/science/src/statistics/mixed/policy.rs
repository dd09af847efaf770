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
    /// Something is known beforehand of how much groups differ, and the bags add to that.
    Expected(Expected),
}

/// What is known beforehand of the variance between groups, as a number of pairs would tell it: of
/// means of two bags of one group, `df` degrees of freedom saw 1 + 2 `ratio` times the variance of
/// bags.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    /// The variance between groups over that within (1, at least 0).
    pub ratio: f64,
    /// How well it is known, in degrees of freedom (1, above 0).
    pub df: f64,
}

impl Expected {
    /// What it adds to minus twice the restricted log-likelihood (1).
    pub(super) fn criterion(self, gamma: f64) -> f64 {
        let of_pairs = 1.0 + 2.0 * gamma;
        self.df * (libm::log(of_pairs) + (1.0 + 2.0 * self.ratio) / of_pairs)
    }

    /// What it adds to twice the slope of that likelihood along γ (1).
    pub(super) fn slope(self, gamma: f64) -> f64 {
        let of_pairs = 1.0 + 2.0 * gamma;
        2.0 * self.df / of_pairs * ((1.0 + 2.0 * self.ratio) / of_pairs - 1.0)
    }

    /// What it adds to the information of the variances within and between groups: the squares and
    /// the product of ½ d (∂ ln(1 + 2γ))².
    pub(super) fn information(self, gamma: f64) -> [f64; 3] {
        let of_pairs = 1.0 + 2.0 * gamma;
        let (within, between) = (-2.0 * gamma / of_pairs, 2.0 / of_pairs);
        [within * within, within * between, between * between].map(|part| 0.5 * self.df * part)
    }
}

impl Policy {
    /// The smallest ratio of the variance between groups to that within (1).
    pub(super) fn least_ratio(self) -> f64 {
        match self {
            Self::LeastShare(share) if share > 0.0 => {
                let share = share.min(0.99);
                share / (1.0 - share)
            }
            Self::LeastShare(_) | Self::DegreesFromGroups | Self::Expected(_) => 0.0,
        }
    }

    pub(super) fn expected(self) -> Option<Expected> {
        match self {
            Self::Expected(expected) => Some(expected),
            Self::LeastShare(_) | Self::DegreesFromGroups => None,
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
    /// There are not enough groups to tell it; what the policy has stands in its place.
    Assumed,
    /// There are not enough groups to tell it, and nothing stands in its place.
    NotTold,
    /// Every group made one bag: what groups differ by is part of what bags differ by.
    SingleBags,
}
