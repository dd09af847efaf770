//! How much years differ, beyond what chance alone would leave.

use super::profile;
use super::scaled::Scaled;
use super::weighed::Weighed;
use crate::statistics::distribution::{fisher, gamma};
use crate::statistics::sum::total;

/// How much years differ; of two years or more.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heterogeneity {
    /// Cochran's Q, the weighed squares about the common mean (1).
    pub q: f64,
    /// What Q would be on the average if years did not differ: one less than there are years.
    pub df: f64,
    /// Chance of so large a Q if years did not differ (1); by Welch's F where degrees of freedom of
    /// the standard errors are known, else by chi-square.
    pub p: f64,
    /// τ², variance of true differences between years (unit of the differences, squared).
    pub tau2: f64,
    /// Low end of its 95 % interval by the Q profile (the same unit).
    pub tau2_low: f64,
    /// High end of it; as low as 0 where years are more alike than chance would have them.
    pub tau2_high: f64,
    /// I² = 1 − df/Q, at least 0: share of the variance seen that is between years (1).
    pub i2: f64,
    /// H² = Q/df: how many times the variance that chance alone would leave was seen (1).
    pub h2: f64,
}

impl Heterogeneity {
    /// # Source
    /// Cochran (1954), *Biometrics* 10, 101–129; Higgins & Thompson (2002), *Stat. Med.* 21,
    /// 1539–1558; Welch (1951), *Biometrika* 38, 330–336 (all from memory).
    pub(super) fn of(scaled: &Scaled, tau2: f64) -> Self {
        let common = Weighed::at(scaled, 0.0);
        let df = scaled.count() - 1.0;
        let (low, high) = profile::interval(scaled);
        let square = scaled.unit * scaled.unit;
        Self {
            q: common.q,
            df,
            p: chance(scaled, &common),
            tau2: tau2 * square,
            tau2_low: low * square,
            tau2_high: high * square,
            i2: if common.q > df { 1.0 - df / common.q } else { 0.0 },
            h2: common.q / df,
        }
    }

    /// Standard deviation of true differences between years (unit of the differences).
    pub fn tau(&self) -> f64 {
        libm::sqrt(self.tau2)
    }
}

fn chance(scaled: &Scaled, common: &Weighed) -> f64 {
    let (k, df) = (scaled.count(), scaled.count() - 1.0);
    let doubt = total(common.rest().iter().zip(&scaled.doubt).map(|(r, doubt)| r * r * doubt));
    // Doubt so small that F is chi-square to all digits.
    if doubt < 1e-9 {
        return gamma::incomplete(0.5 * df, 0.5 * common.q).1;
    }
    let shrunk = 1.0 + 2.0 * (k - 2.0) / (k * k - 1.0) * doubt;
    fisher::upper(common.q / df / shrunk, df, (k * k - 1.0) / (3.0 * doubt))
}
