//! The summary over years, and what next year may bring.

use super::between::Between;
use super::error::MetaError;
use super::heterogeneity::Heterogeneity;
use super::scaled::Scaled;
use super::study::Study;
use super::tail;
use super::weighed::Weighed;

/// A mean over years with its 95 % interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// The mean (unit of the differences).
    pub estimate: f64,
    /// Its standard error (the same unit).
    pub se: f64,
    /// Degrees of freedom of that; infinite where it is as good as known.
    pub df: f64,
    /// Two-sided chance of a mean so far from 0 if there were no difference (1).
    pub p: f64,
    /// Low end of the interval (unit of the differences).
    pub low: f64,
    /// High end of the interval (the same unit).
    pub high: f64,
}

impl Summary {
    fn new(estimate: f64, se: f64, df: f64) -> Self {
        let half = se * tail::factor(df);
        let p = tail::two_sided(estimate / se, df);
        Self { estimate, se, df, p, low: estimate - half, high: estimate + half }
    }
}

/// Differences of several years, put together.
#[derive(Debug, Clone, PartialEq)]
pub struct Pooled {
    /// The mean over years that truly differ, as a year drawn at random has it: the summary to tell.
    pub mean: Summary,
    /// The mean if all years had one true difference; narrower, and wrong where they do not.
    pub common: Summary,
    /// What each year counts in [`Self::mean`] (1, all together 1), in the order given.
    pub shares: Vec<f64>,
    /// How much years differ; nothing where there is one year only.
    pub between: Option<Heterogeneity>,
}

/// Puts differences of several years together.
///
/// ```text
/// se² = max(1, q) / W      q = Σ w_i (y_i − μ̂)² / (k − 1)      μ̂ ± t(k−1) se
/// ```
///
/// # The guard
/// Without the 1, years that happen to be alike would make an interval narrower than their own
/// standard errors allow. With it, the interval is never narrower than the plain one, μ̂ ± z/√W (with
/// Student's t in the place of z where degrees of freedom of the standard errors were given; where that
/// one is wider it is told). It errs on the wide side: with two years t(1) is 12.7, and two years alone
/// hardly ever make a summary that leaves 0 out.
///
/// One year is its own summary, by its own degrees of freedom.
///
/// # Source
/// Hartung & Knapp (2001), *Stat. Med.* 20, 3875–3889; Sidik & Jonkman (2002), *Stat. Med.* 21,
/// 3153–3159; the guard Knapp & Hartung (2003), *Stat. Med.* 22, 2693–2710, as in Röver, Knapp & Friede
/// (2015), *BMC Med. Res. Methodol.* 15, 99; degrees of freedom of a sum of variances by Satterthwaite
/// (1946), *Biometrics Bull.* 2, 110–114 (all from memory).
/// # Errors
/// [`MetaError`] for no year at all and for numbers that cannot be used.
pub fn pool(studies: &[Study], between: Between) -> Result<Pooled, MetaError> {
    let scaled = Scaled::of(studies)?;
    let common = Weighed::at(&scaled, 0.0);
    let plain = |weighed: &Weighed| {
        let estimate = scaled.origin + scaled.unit * weighed.mean;
        Summary::new(estimate, scaled.unit / libm::sqrt(weighed.sum), weighed.df(&scaled))
    };
    let told = plain(&common);
    if studies.len() < 2 {
        return Ok(Pooled { mean: told, common: told, shares: vec![1.0], between: None });
    }
    let tau2 = between.variance(&scaled);
    let weighed = Weighed::at(&scaled, tau2);
    let own = plain(&weighed);
    let df = scaled.count() - 1.0;
    let guarded = libm::sqrt((weighed.q / df).max(1.0));
    let mean = Summary::new(own.estimate, own.se * guarded, df);
    Ok(Pooled {
        mean: if own.high - own.low > mean.high - mean.low { own } else { mean },
        common: told,
        shares: weighed.weights.iter().map(|w| w / weighed.sum).collect(),
        between: Some(Heterogeneity::of(&scaled, tau2)),
    })
}

impl Pooled {
    /// Ends of the 95 % interval for what a class of next year will measure, its own standard error
    /// being `se`; with 0, for the true difference of next year. Nothing with fewer than three years
    /// and for a standard error that is none.
    ///
    /// ```text
    /// μ̂ ± t(k−2) √(τ² + se(μ̂)² + se²)
    /// ```
    ///
    /// # Source
    /// Higgins, Thompson & Spiegelhalter (2009), *J. R. Stat. Soc. A* 172, 137–159, with the standard
    /// error of Hartung and Knapp as in Partlett & Riley (2017), *Stat. Med.* 36, 301–317 (both from
    /// memory). Some programs take k − 1 degrees of freedom, which is narrower.
    pub fn next_year(&self, se: f64) -> Option<(f64, f64)> {
        const LARGEST: f64 = 1e100;
        let between = self.between.filter(|between| between.df > 1.5)?;
        if !(0.0..=LARGEST).contains(&se) {
            return None;
        }
        let spread = libm::sqrt(between.tau2 + self.mean.se * self.mean.se + se * se);
        let half = tail::factor(between.df - 1.0) * spread;
        Some((self.mean.estimate - half, self.mean.estimate + half))
    }
}
