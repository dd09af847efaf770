//! Treatments whose bags differ more or less than those of others.
//!
//! One spread for all treatments is the best guess where few bags tell of each, and wrong where one
//! kind of bag is touchy. Here the variances within groups are themselves chance, around a common
//! one, and each is drawn towards that as far as its own bags leave it open:
//!
//! ```text
//! v_t = (d₀ s² + Q_t)/(d₀ + d_t)        s² = Σ w_t Q_t/d_t / Σ w_t, w_t = d₀ d_t/(d₀ + d_t)
//! Q_t = Σ e² of the bags of t           d_t = Σ σ² P of the bags of t
//! ```
//!
//! e are what the model leaves over (groups predicted), d_t how many of the degrees of freedom are
//! treatment t's, and d₀ how many bags' worth is known beforehand. An estimate's variance
//! V = Σ a_t v_t + groups is then Σ c_t Q_t + groups, and its degrees of freedom are
//!
//! ```text
//! 1/df = Σ c_t c_u C_tu v_t v_u / V²                  what chance does to the Q
//!      + Σ_u (v_u (Σ_t c_t C_tu − a_u))² / (d₀ V²)    what is left of v_u, as it is drawn away
//!      + what groups add with one spread for all
//! ```
//!
//! where C_tu, the sum of (σ² P)² over pairs of bags, says how much of u is in the mean of Q_t.
//!
//! # Source
//! Smyth (2004), *Stat. Appl. Genet. Mol. Biol.* 3, 3, for variances drawn towards a common one;
//! Satterthwaite (1946), *Biometrics Bull.* 2, 110–114, for degrees of freedom of sums of variances (from
//! memory). The weights of s² and the second line are our own; without anything known
//! beforehand, two treatments are Welch's.

use super::fit::Mixed;
use super::records::Records;
use super::rows::{Row, rows};
use super::square::Square;

/// How treatments may differ in spread.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum TreatmentSpreads {
    /// All have the same.
    #[default]
    Alike,
    /// Each has its own around a common one, known beforehand as well as so many degrees of freedom
    /// would tell (1, above 0). With d of them, the standard deviations of two treatments differ
    /// typically by a factor of exp(1/√d).
    Apart(f64),
}

/// What the bags of one treatment add to the variance of an estimate.
#[derive(Debug, Clone)]
struct Own {
    /// Covariance of the coefficients that is due to these bags, for a variance of 1.
    covariance: Square,
    /// Their variance over the common one within groups (1).
    ratio: f64,
    /// d₀ + d_t (1).
    df: f64,
}

/// The variances of all treatments.
#[derive(Debug, Clone)]
pub(super) struct Apart {
    of: Vec<Own>,
    /// d₀ (1).
    known: f64,
    /// C (1).
    common: Square,
}

impl Mixed {
    /// The same model, in which treatments may differ in spread; `records` are those it was fitted to
    /// and `reading_doubt` (unit of the values) the least that any bags differ by. A model whose
    /// rows are not of one treatment each stays as it is.
    #[must_use]
    pub fn with_spreads(
        mut self,
        records: &Records,
        spreads: TreatmentSpreads,
        reading_doubt: f64,
    ) -> Self {
        let least = (reading_doubt.max(0.0) / self.unit).min(libm::sqrt(self.variance));
        self.apart = match spreads {
            TreatmentSpreads::Apart(known) if known > 0.0 && records.of_one_treatment() => {
                Apart::of(&self, records, known, least * least)
            }
            TreatmentSpreads::Alike | TreatmentSpreads::Apart(_) => None,
        };
        if let Some(apart) = &self.apart {
            self.covariance = apart.beyond_alike(&self.covariance);
        }
        self
    }
}

impl Apart {
    /// For variances of which so many degrees of freedom are `known` beforehand, none of them under
    /// `least` (values squared). `None` where nothing can be told.
    fn of(model: &Mixed, records: &Records, known: f64, least: f64) -> Option<Self> {
        let (kept, phi) = (&model.independent.kept, &model.solved.covariance);
        let mut coefficients = vec![0.0; records.columns];
        for (at, &column) in kept.iter().enumerate() {
            coefficients[column] = model.coefficient(at);
        }
        let rows = rows(records, kept, model.solved.gamma, &coefficients);
        let mut squares = vec![0.0; records.columns];
        let mut df = vec![0.0; records.columns];
        let mut products = vec![Square::zero(kept.len()); records.columns];
        for row in &rows {
            squares[row.treatment] += row.left * row.left;
            df[row.treatment] += row.hat(row, true, phi);
            products[row.treatment].add_outer_below(1.0, &row.design);
        }
        let (mut sum, mut weight) = (0.0, 0.0);
        for (squares, df) in squares.iter().zip(&mut df) {
            *df = df.max(0.0);
            sum += squares / (known + *df);
            weight += *df / (known + *df);
        }
        let common = sum / weight;
        let of = products
            .into_iter()
            .enumerate()
            .map(|(at, mut products)| {
                products.mirror();
                let df = known + df[at];
                let whole = ((known * common + squares[at]) / df).max(least);
                let covariance = phi.times(&products).times(phi);
                Own { covariance, ratio: whole / model.variance, df }
            })
            .collect();
        let common_part = in_common(&rows, &df, phi);
        common.is_finite().then_some(Self { of, known, common: common_part })
    }

    /// Covariance of the coefficients over the common variance, less that for one common spread.
    pub(super) fn beyond_alike(&self, plain: &Square) -> Square {
        let add = |sum: Square, own: &Own| sum.plus(own.ratio - 1.0, &own.covariance);
        self.of.iter().fold(plain.clone(), add)
    }

    /// Degrees of freedom of a combination with this variance over the common one; with one spread for
    /// all the variance is `alike`, with `df`.
    pub(super) fn degrees(&self, weights: &[f64], whole: f64, alike: f64, df: f64) -> f64 {
        let parts: Vec<f64> =
            self.of.iter().map(|own| own.covariance.between(weights, weights)).collect();
        let known = self.known;
        let left = |own: &Own| (own.df - known) / own.df;
        let drawn: f64 =
            self.of.iter().zip(&parts).map(|(own, part)| part * known / own.df).sum();
        let told: f64 = self.of.iter().map(left).sum();
        let c: Vec<f64> = self
            .of
            .iter()
            .zip(&parts)
            .map(|(own, part)| (part + drawn / told) / own.df)
            .collect();
        // Over the whole, so that no square of an absurd value is formed.
        let over: Vec<f64> = self.of.iter().map(|own| own.ratio / whole).collect();
        let (mut chance, mut away) = (0.0, 0.0);
        for (u, part) in parts.iter().enumerate() {
            let mut mean = 0.0;
            for (t, c_t) in c.iter().enumerate() {
                mean += c_t * self.common.at(t, u);
                chance += c_t * c[u] * self.common.at(t, u) * over[t] * over[u];
            }
            away += (over[u] * (mean - part)) * (over[u] * (mean - part));
        }
        let within: f64 = parts.iter().sum();
        let all: f64 = self.of.iter().map(|own| own.df - known).sum();
        let pairs: f64 = (0..self.of.len())
            .flat_map(|t| (0..self.of.len()).map(move |u| self.common.at(t, u)))
            .sum();
        let pooled = (within / alike) * (within / alike) * pairs / (all * all);
        let groups = (1.0 / df - pooled).max(0.0);
        1.0 / (chance + away / known + groups)
    }
}

/// The sums of (σ² P)² over pairs of rows of two treatments. With very many rows what two treatments
/// have in common is too little to count, and each has its own degrees of freedom.
fn in_common(rows: &[Row], df: &[f64], phi: &Square) -> Square {
    /// Rows beyond which pairs are not gone through.
    const MANY: usize = 1000;
    let mut sums = Square::zero(df.len());
    if rows.len() > MANY {
        for (at, df) in df.iter().enumerate() {
            sums.add(at, at, *df);
        }
        return sums;
    }
    for (i, a) in rows.iter().enumerate() {
        for (j, b) in rows.iter().enumerate() {
            let hat = a.hat(b, i == j, phi);
            sums.add(a.treatment, b.treatment, hat * hat);
        }
    }
    sums
}
