//! The fitted model.

use super::information::Information;
use super::policy::{GroupVariance, Policy};
use super::records::Records;
use super::reml::most_likely;
use super::solved::Solved;
use super::spreads::Apart;
use super::square::Square;
use super::sums::Sums;
use super::triangle::Independent;
use super::weighed::Weighed;
use super::{Method, MixedError};

/// A fitted model: fixed columns and blocks, groups as chance.
#[derive(Debug, Clone)]
pub struct Mixed {
    pub(super) solved: Solved,
    pub(super) independent: Independent,
    /// Coefficients of the first fit, from which the solved ones count.
    first: Vec<f64>,
    pub(super) unit: f64,
    /// Variance within groups (in `unit`, squared).
    pub(super) variance: f64,
    pub(super) method: Method,
    /// Covariance of the coefficients over the variance within groups.
    pub(super) covariance: Square,
    /// The variances of treatments, where they may differ.
    pub(super) apart: Option<Apart>,
    /// How well the variances are known; `None` where their ratio is taken as known.
    pub(super) information: Option<Information>,
    variances: Variances,
    /// Mean of what the values are over their fit, for adjusted means; `criterion` beside it.
    determinants: f64,
}

/// How much bags differ, and what that rests on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Variances {
    /// Standard deviation of bags of one group, alike in treatment and block (unit of the values).
    pub bag: f64,
    /// Standard deviation of groups in one block (unit of the values).
    pub group: f64,
    /// Where the latter comes from.
    pub source: GroupVariance,
    /// Whether bags differed less than the reading doubt, which then stands in their place.
    pub from_reading_doubt: bool,
    /// Degrees of freedom of differences between bags of one group.
    pub df_within: usize,
    /// Degrees of freedom of differences between groups, beyond treatments and blocks.
    pub df_between: usize,
}

impl Mixed {
    /// Fits by restricted maximum likelihood; `reading_doubt` (unit of the values; 0 where they
    /// are exact) is the least that bags of one group can truly differ by.
    ///
    /// # Errors
    /// [`MixedError`] where nothing is left to judge chance by, or bags alike do not differ.
    pub fn fit(
        records: &Records,
        reading_doubt: f64,
        policy: Policy,
        method: Method,
    ) -> Result<Self, MixedError> {
        let all = Sums::of(records, &records.values);
        let own = own_squares(&all);
        let independent =
            Independent::of(&Weighed::at(&all, 0.0).a.corner(records.columns), &own);
        let kept = &independent.kept;
        let sums = all.only(kept);
        let blocks = if records.absorbed { records.blocks.len() } else { 0 };
        let df = sums.rows.saturating_sub(kept.len() + blocks);
        if df == 0 {
            return Err(MixedError::NoRest);
        }
        let first = Solved::at(&sums, 0.0, df as f64).ok_or(MixedError::NoRest)?.coefficients;
        // Again, on what the first fit leaves over: its rounding is then gone.
        let mut coefficients = vec![0.0; records.columns];
        for (&at, b) in kept.iter().zip(&first) {
            coefficients[at] = *b;
        }
        let left: Vec<f64> = records
            .values
            .iter()
            .enumerate()
            .map(|(row, value)| value - records.fitted(row, &coefficients))
            .collect();
        let sums = Sums::of(records, &left).only(kept);
        let own: Vec<f64> = kept.iter().map(|&at| own[at]).collect();
        let within = Independent::of(&sums.within.corner(kept.len()), &own).kept.len();
        let df_within = sums.rows.saturating_sub(records.groups.len() + within);
        let df_between = df - df_within.min(df);
        /// Largest reading doubt (unit of the values), as large as a value may be.
        const LARGEST_DOUBT: f64 = 1e99;
        let usable = reading_doubt.is_finite() && reading_doubt > 0.0;
        let doubt = if usable { reading_doubt.min(LARGEST_DOUBT) } else { 0.0 };
        let settled = Settled::of(
            &sums,
            (df_within, df_between),
            doubt / records.unit,
            records.rounding,
            policy,
        )?;
        let Settled { solved, variance, source, from_reading_doubt } = settled;
        let known = policy.expected().map(|known| known.information(solved.gamma));
        let told = match source {
            GroupVariance::NotTold | GroupVariance::SingleBags => false,
            GroupVariance::Assumed => known.is_some(),
            GroupVariance::Estimated | GroupVariance::Zero | GroupVariance::Kept => true,
        };
        let known = known.unwrap_or_default();
        let expected = || told.then(|| Information::expected(&solved, known)).flatten();
        let top = source == GroupVariance::Estimated && !from_reading_doubt;
        let information = match method {
            Method::Satterthwaite if top => {
                Information::observed(&solved, variance, known).or_else(expected)
            }
            Method::Satterthwaite | Method::KenwardRoger => expected(),
        };
        let covariance = match (method, information) {
            (Method::KenwardRoger, Some(known)) => {
                // Σ_ij W_ij Λ_ij, all Λ being multiples of that of the groups.
                let gamma = solved.gamma;
                let times =
                    known.between - 2.0 * gamma * known.both + gamma * gamma * known.within;
                solved.covariance.plus(2.0 * times, &solved.turning)
            }
            _ => solved.covariance.clone(),
        };
        let sd = |variance: f64| records.unit * libm::sqrt(variance);
        let variances = Variances {
            bag: sd(variance),
            group: sd(solved.gamma * variance),
            source,
            from_reading_doubt,
            df_within,
            df_between,
        };
        let determinants = solved.ln_determinants;
        Ok(Self {
            solved,
            independent,
            first,
            unit: records.unit,
            variance,
            method,
            covariance,
            apart: None,
            information,
            variances,
            determinants,
        })
    }

    /// How much bags and groups differ.
    pub fn variances(&self) -> Variances {
        self.variances
    }

    /// Residual degrees of freedom: values less what columns and blocks take up.
    pub fn df(&self) -> usize {
        self.variances.df_within + self.variances.df_between
    }

    /// Minus twice the restricted log-likelihood (1), as R's `lme4` counts it.
    pub fn criterion(&self) -> f64 {
        let df = self.solved.df;
        let rest = self.solved.rest / self.variance;
        // The unit multiplies every value: its determinant is counted too.
        let scale =
            libm::log(2.0 * std::f64::consts::PI * self.variance) + 2.0 * libm::log(self.unit);
        df * scale + rest + self.determinants
    }

    /// A coefficient of the kept columns, as it stands (in `unit`).
    pub(super) fn coefficient(&self, kept: usize) -> f64 {
        self.first[kept] + self.solved.coefficients[kept]
    }
}

/// Sum of the squares of each column.
fn own_squares(sums: &Sums) -> Vec<f64> {
    let mut own: Vec<f64> =
        (0..sums.width - 1).map(|column| sums.within.at(column, column)).collect();
    for (group, size) in sums.sizes.iter().enumerate() {
        for (own, mean) in own.iter_mut().zip(sums.mean(group)) {
            *own += size * mean * mean;
        }
    }
    own
}

/// The variances that the rest of the work goes by.
struct Settled {
    solved: Solved,
    variance: f64,
    source: GroupVariance,
    from_reading_doubt: bool,
}

impl Settled {
    fn of(
        sums: &Sums,
        (df_within, df_between): (usize, usize),
        doubt: f64,
        rounding: f64,
        policy: Policy,
    ) -> Result<Self, MixedError> {
        /// A ratio beyond which bags of one group do not differ at all (1).
        const ENDLESS: f64 = 1e11;
        /// The largest ratio that is gone on with (1): a reading doubt that is next to nothing beside what groups
        /// differ by is taken as more, so that no square of their ratio is beyond all numbers.
        const LARGEST: f64 = 1e30;
        let df = (df_within + df_between) as f64;
        let least = policy.least_ratio();
        let at = |gamma: f64| Solved::at(sums, gamma, df).ok_or(MixedError::NoRest);
        let single = sums.sizes.iter().all(|&size| size < 1.5);
        let plain = at(0.0)?;
        let alike = libm::sqrt(plain.variance()) <= rounding;
        let (mut solved, mut source) = if single {
            (plain, GroupVariance::SingleBags)
        } else if let Some(expected) = policy.expected().filter(|_| !alike) {
            let found = most_likely(sums, df, Some(expected)).ok_or(MixedError::NoRest)?;
            let seen = df_between > 0;
            (found, if seen { GroupVariance::Estimated } else { GroupVariance::Assumed })
        } else if df_within == 0 || df_between == 0 {
            let source =
                if least > 0.0 { GroupVariance::Assumed } else { GroupVariance::NotTold };
            (at(least)?, source)
        } else if alike {
            (plain, GroupVariance::Zero)
        } else {
            let found = most_likely(sums, df, None).ok_or(MixedError::NoRest)?;
            let positive = found.gamma > 0.0;
            (found, if positive { GroupVariance::Estimated } else { GroupVariance::Zero })
        };
        if !single && solved.gamma < least {
            solved = at(least)?;
            source = GroupVariance::Kept;
        }
        let mut variance = solved.variance();
        let endless = solved.gamma >= ENDLESS;
        let nothing = alike || endless || libm::sqrt(variance) <= rounding;
        let from_reading_doubt = nothing || libm::sqrt(variance) < doubt;
        if from_reading_doubt {
            if doubt <= 0.0 {
                return Err(MixedError::NoSpread);
            }
            let between = solved.gamma * if alike { 0.0 } else { variance };
            variance = (doubt * doubt).max(between / LARGEST);
            let ratio = if single { 0.0 } else { (between / variance).max(least) };
            solved = at(ratio)?;
        }
        Ok(Self { solved, variance, source, from_reading_doubt })
    }
}
