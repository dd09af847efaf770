//! The chance of finding one difference in an even layout.

use super::error::{PowerError, spread, usable};
use super::is_inner;
use crate::statistics::distribution::multivariate_t::LargestOfSeveral;
use crate::statistics::distribution::noncentral_student;

/// Decides the points of the quadrature that even layouts never need.
const SEED: u64 = 1955;

/// The chances of finding a true difference (1).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Odds {
    /// Found, the way it truly is; up, where there is truly none.
    pub rightly: f64,
    /// Found the wrong way round; down, where there is truly none.
    pub wrongly: f64,
}

impl Odds {
    /// Found either way: with no true difference, the level.
    pub fn either(&self) -> f64 {
        (self.rightly + self.wrongly).min(1.0)
    }
}

/// What is asked of a difference beside the test (unit of the values).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Limits {
    /// The smallest difference that counts; 0 asks for nothing.
    pub readable: f64,
    /// The least that bags alike are taken to differ by (standard deviation), whatever was seen; 0
    /// believes what was seen.
    pub reading_doubt: f64,
}

impl Limits {
    pub(super) fn usable(self) -> Result<Self, PowerError> {
        for (what, value) in [
            ("the smallest difference that counts", self.readable),
            ("the reading doubt", self.reading_doubt),
        ] {
            if usable(what, value)? < 0.0 {
                return Err(PowerError::Unusable { what, value });
            }
        }
        Ok(self)
    }
}

/// Treatments beside one reference, in complete periods.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beside {
    /// Treatments that are compared with the reference; 1 for a two-sample t.
    pub compared: usize,
    /// Bags of each of them; may be a fraction, as [`effective_bags`](super::effective_bags) are.
    pub bags: f64,
    /// Bags of the reference.
    pub bags_reference: f64,
    /// Periods that the bags are spread over evenly.
    pub periods: usize,
}

impl Beside {
    /// As many bags of each as of the reference, in one period.
    pub const fn even(compared: usize, bags: f64) -> Self {
        Self { compared, bags, bags_reference: bags, periods: 1 }
    }

    /// The same bags spread over so many periods.
    #[must_use]
    pub const fn over(self, periods: usize) -> Self {
        Self { periods, ..self }
    }
}

/// A test of one difference, before any value is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneDifference {
    /// Standard error of the difference, in standard deviations of a bag (1).
    pub se: f64,
    /// Degrees of freedom of the spread.
    pub df: f64,
    /// How many standard errors from 0 a difference must lie (1).
    pub critical: f64,
}

impl OneDifference {
    /// The test of a treatment beside its reference, where all comparisons of the layout together
    /// find a difference that is none with chance `level` (1).
    ///
    /// With one treatment and one period this is Student's t of two samples; with as many periods as
    /// bags it is the paired t (of differences whose standard deviation is √2 that of a bag); with
    /// several treatments it is Dunnett's test.
    ///
    /// ```text
    /// se = √(1/n + 1/n₀)      df = k n + n₀ − (k + 1) − (periods − 1)
    /// ```
    ///
    /// # Source
    /// Dunnett (1955), *J. Am. Stat. Assoc.* 50, 1096–1121; Student (1908), *Biometrika* 6, 1–25.
    /// # Errors
    /// [`PowerError`] for a level that is none, and for too few bags.
    pub fn beside(layout: Beside, level: f64) -> Result<Self, PowerError> {
        let Beside { compared, bags, bags_reference, periods } = layout;
        for (what, found, least) in [
            ("treatments beside the reference", compared as f64, 1.0),
            ("periods", periods as f64, 1.0),
            ("bags", bags, 1.0),
            ("bags of the reference", bags_reference, 1.0),
        ] {
            if usable(what, found)? < least {
                return Err(PowerError::TooFew { what, found, least });
            }
        }
        let k = compared as f64;
        let df = k * bags + bags_reference - (k + 1.0) - (periods as f64 - 1.0);
        let together = bags / (bags + bags_reference);
        let correlation = vec![vec![together; compared]; compared];
        Self::with(libm::sqrt(1.0 / bags + 1.0 / bags_reference), df, &correlation, level)
    }

    /// The paired t of so many pairs; the spread is then that of the differences.
    ///
    /// # Errors
    /// [`PowerError`] for a level that is none, and for fewer than two pairs.
    pub fn paired(pairs: f64, level: f64) -> Result<Self, PowerError> {
        let least = 1.0;
        if usable("pairs", pairs)? < least {
            return Err(PowerError::TooFew { what: "pairs", found: pairs, least });
        }
        Self::with(1.0 / libm::sqrt(pairs), pairs - 1.0, &[vec![1.0]], level)
    }

    fn with(
        se: f64,
        df: f64,
        correlation: &[Vec<f64>],
        level: f64,
    ) -> Result<Self, PowerError> {
        if !is_inner(level) {
            return Err(PowerError::NoChance { what: "the level", value: level });
        }
        // Between 0 and 1, a fraction of a bag stands in for a degree of freedom; there is no test.
        if df <= 0.0 {
            return Err(PowerError::NoSpreadSeen);
        }
        let critical = LargestOfSeveral::new(correlation, df, SEED).bound(1.0 - level);
        Ok(Self { se, df, critical })
    }

    /// The chances of finding a true `difference` where bags alike differ by `sd`, both in the unit
    /// of the values.
    ///
    /// # Source
    /// The noncentral t distribution with noncentrality difference/(sd·se).
    /// # Errors
    /// [`PowerError`] for a spread that is none and for numbers that are not finite.
    pub fn odds(&self, difference: f64, sd: f64, limits: Limits) -> Result<Odds, PowerError> {
        let Limits { readable, reading_doubt } = limits.usable()?;
        let se = spread(sd)? * self.se;
        let delta = usable("the difference", difference)?.abs() / se;
        let least = readable.max(self.critical * reading_doubt * self.se) / se;
        let (rightly, wrongly) =
            noncentral_student::beyond(self.critical, least, self.df, delta);
        Ok(Odds { rightly, wrongly })
    }

    /// The smallest true difference that is found rightly with that chance (unit of the values).
    ///
    /// # Accuracy
    /// About 1 part in 10¹⁰.
    /// # Errors
    /// [`PowerError`] as [`Self::odds`], and for a chance that is none.
    pub fn found_with(&self, chance: f64, sd: f64, limits: Limits) -> Result<f64, PowerError> {
        if !is_inner(chance) {
            return Err(PowerError::NoChance { what: "the chance", value: chance });
        }
        let rightly = |difference: f64| Ok(self.odds(difference, sd, limits)?.rightly);
        smallest(sd * self.se, chance, rightly)
    }
}

/// Where a chance that rises with the difference reaches `chance`; `scale` is a likely size of it.
pub(super) fn smallest(
    scale: f64,
    chance: f64,
    rightly: impl Fn(f64) -> Result<f64, PowerError>,
) -> Result<f64, PowerError> {
    let (mut low, mut high) = (0.0, scale);
    if rightly(low)? >= chance {
        return Ok(low);
    }
    while rightly(high)? < chance {
        low = high;
        high = usable("the smallest difference found", 2.0 * high)?;
    }
    while high - low > 1e-11 * high {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if rightly(middle)? < chance {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(high)
}
