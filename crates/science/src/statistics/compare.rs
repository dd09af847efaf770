//! Treatments of one question compared with their reference, all at once: the one door through
//! which the program asks for differences.
//!
//! # What is assumed
//! The bag is the unit: one value a bag, whatever number of readings it rests on. Values are
//!
//! ```text
//! value = block + treatment + rest        rest normal, independent, of one size in all treatments
//! ```
//!
//! Block is the class period. Who made a bag (`group`) is not in this model: bags that one group
//! made are taken to be as different as bags of two groups. Where each group makes its treatment
//! and its own reference bag, leaving the group out makes intervals too wide, which is safe. Where
//! one group makes several bags of the same treatment, intervals come out too narrow; the worst
//! case, all bags of one side from one group, is marked by [`Contrast::tied_to_one_group`], and
//! [`verdict`](super::verdict) then never says "clear".

use super::distribution::student;
use super::linear::{self, Estimated, Fit};
use std::collections::{BTreeMap, BTreeSet};

/// One value of one bag.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BagValue {
    /// The bag's one number, such as its rise at the last common reading (mm).
    pub value: f64,
    /// Which treatment, by any number.
    pub treatment: usize,
    /// Which block (class period), by any number.
    pub block: usize,
    /// Which group made it, by a number that no other group of the day has.
    pub group: usize,
}

/// What the treatments are compared with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reference {
    /// Every other treatment that has a bag, in rising order, against this one.
    Treatment(usize),
    /// These pairs of a treatment and its own reference, in this order.
    Pairs(Vec<(usize, usize)>),
}

/// Answer to a question: every comparison, holding together.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// One entry for each comparison asked for.
    pub contrasts: Vec<Contrast>,
    /// Spread of bags alike in treatment and period, where it could be estimated.
    pub spread: Option<Spread>,
    /// Half width of an interval in standard errors (1), the same for all comparisons, where any
    /// could be made.
    pub multiplier: Option<f64>,
}

/// How much bags of the same treatment and period differ by chance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Standard deviation (unit of the values).
    pub sd: f64,
    /// Degrees of freedom behind it.
    pub df: usize,
    /// Whether the bags differed less than the reading doubt, which then stands in their place.
    pub from_reading_doubt: bool,
}

/// One treatment compared with its reference.
#[derive(Debug, Clone, PartialEq)]
pub struct Contrast {
    /// The treatment.
    pub treatment: usize,
    /// What it is compared with.
    pub reference: usize,
    /// Bags of the treatment.
    pub n: usize,
    /// Bags of the reference.
    pub n_reference: usize,
    /// Largest value of a bag on either side (unit of the values), if there is a bag.
    pub highest: Option<f64>,
    /// Blocks in which both have a bag.
    pub shared_blocks: usize,
    /// The group that made all bags of one side but not all bags of the other.
    pub tied_to_one_group: Option<Tie>,
    /// The difference, or why there is none.
    pub outcome: Result<Estimate, NotComparable>,
}

/// A side of a comparison that cannot be told from the group that made it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tie {
    /// The group.
    pub group: usize,
    /// The treatment all of whose bags it made.
    pub treatment: usize,
}

/// A difference with its doubt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// Treatment minus reference, adjusted for blocks (unit of the values).
    pub difference: f64,
    /// Low end of the 95 % interval that holds for all comparisons of the question at once.
    pub low: f64,
    /// High end of that interval.
    pub high: f64,
    /// Standard error of the difference (unit of the values).
    pub se: f64,
    /// Degrees of freedom of the standard error.
    pub df: usize,
}

/// Why a treatment cannot be compared with its reference.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum NotComparable {
    /// A treatment was to be compared with itself.
    #[error("a treatment cannot be compared with itself; name another reference")]
    Itself,
    /// No bag on one side.
    #[error(
        "there are {n} bags of the treatment and {n_reference} of its reference; each needs at least one"
    )]
    NoBags {
        /// Bags of the treatment.
        n: usize,
        /// Bags of the reference.
        n_reference: usize,
    },
    /// No period, nor a chain of periods, has both.
    #[error(
        "they were never in the same period, nor linked through other treatments, so the difference cannot be told from that between periods"
    )]
    NoSharedBlock,
    /// Every bag is the only one of its kind.
    #[error(
        "no bag has a second one like it ({n} of the treatment, {n_reference} of its reference), so chance cannot be judged; make at least two of each"
    )]
    TooFewBags {
        /// Bags of the treatment.
        n: usize,
        /// Bags of the reference.
        n_reference: usize,
    },
    /// Bags alike gave exactly the same value and no reading doubt was given.
    #[error(
        "bags of the same treatment all read exactly the same, so chance cannot be judged; check that nobody copied, or give the reading doubt"
    )]
    NoSpread,
    /// A value is not a number or absurdly large.
    #[error(
        "a bag's value is {value}, which is not a usable number; correct it or set the bag aside"
    )]
    Unusable {
        /// Which of the bags handed in, from 0.
        bag: usize,
        /// The value.
        value: f64,
    },
}

/// Compares each treatment with its reference; the 95 % intervals hold for all of them together.
///
/// `reading_doubt` is the standard deviation of one bag's value that comes from reading alone
/// (unit of the values; 0 where the values are exact): bags cannot truly differ less than that, so
/// a smaller estimated spread is raised to it.
///
/// All bags handed in count towards the spread and the differences between blocks, also those of
/// treatments that are in no comparison.
pub fn compare(bags: &[BagValue], reference: &Reference, reading_doubt: f64) -> Comparison {
    let pairs = asked(bags, reference);
    let model = Model::of(bags);
    let told: Vec<Result<Estimated, NotComparable>> =
        pairs.iter().map(|&pair| told(bags, model.as_ref(), pair)).collect();
    let spread = model.as_ref().ok().and_then(|model| model.spread(bags, reading_doubt));
    let comparable: Vec<&Estimated> = told.iter().flatten().collect();
    let multiplier = spread.and_then(|spread| multiplier(&comparable, spread.df));
    let contrasts = pairs
        .iter()
        .zip(&told)
        .map(|(&pair, told)| {
            let outcome = match (told, spread, multiplier) {
                (Ok(told), Some(spread), Some(multiplier)) => {
                    Ok(estimate(told, spread, multiplier))
                }
                (Ok(_), ..) => Err(no_spread(bags, model.as_ref(), pair)),
                (Err(why), ..) => Err(why.clone()),
            };
            contrast(bags, pair, outcome)
        })
        .collect();
    Comparison { contrasts, spread, multiplier }
}

fn asked(bags: &[BagValue], reference: &Reference) -> Vec<(usize, usize)> {
    match reference {
        Reference::Pairs(pairs) => pairs.clone(),
        Reference::Treatment(reference) => {
            let present: BTreeSet<usize> = bags.iter().map(|bag| bag.treatment).collect();
            present.into_iter().filter(|t| t != reference).map(|t| (t, *reference)).collect()
        }
    }
}

/// The additive model of blocks and treatments, fitted.
struct Model {
    fit: Fit,
    /// Column of each treatment.
    column: BTreeMap<usize, usize>,
    columns: usize,
}

impl Model {
    fn of(bags: &[BagValue]) -> Result<Self, NotComparable> {
        let beyond = |v: f64| v.is_nan() || v.abs() > linear::LARGEST;
        if let Some((bag, found)) = bags.iter().enumerate().find(|(_, b)| beyond(b.value)) {
            return Err(NotComparable::Unusable { bag, value: found.value });
        }
        let blocks: BTreeSet<usize> = bags.iter().map(|bag| bag.block).collect();
        let treatments: BTreeSet<usize> = bags.iter().map(|bag| bag.treatment).collect();
        let marks = |is: &dyn Fn(&BagValue) -> bool| -> Vec<f64> {
            bags.iter().map(|bag| f64::from(u8::from(is(bag)))).collect()
        };
        let mut columns: Vec<Vec<f64>> =
            blocks.iter().map(|&block| marks(&|bag| bag.block == block)).collect();
        let column =
            treatments.iter().enumerate().map(|(i, &t)| (t, columns.len() + i)).collect();
        columns.extend(treatments.iter().map(|&t| marks(&|bag| bag.treatment == t)));
        // Without the common level no digits are lost to it.
        let level = bags.first().map_or(0.0, |bag| bag.value);
        let values: Vec<f64> = bags.iter().map(|bag| bag.value - level).collect();
        match linear::fit(&columns, &values) {
            Ok(fit) => Ok(Self { fit, column, columns: columns.len() }),
            Err(_) => Err(NotComparable::NoBags { n: 0, n_reference: 0 }),
        }
    }

    fn difference(&self, (treatment, reference): (usize, usize)) -> Option<Estimated> {
        let mut weights = vec![0.0; self.columns];
        weights[*self.column.get(&treatment)?] = 1.0;
        weights[*self.column.get(&reference)?] = -1.0;
        self.fit.estimate(&weights)
    }

    fn spread(&self, bags: &[BagValue], reading_doubt: f64) -> Option<Spread> {
        // Below this the residuals are rounding of the arithmetic, not bags that differ.
        const NOTHING: f64 = 1e-12;
        let df = self.fit.df();
        if df == 0 {
            return None;
        }
        let size = bags.iter().fold(0.0_f64, |most, bag| most.max(bag.value.abs()));
        let doubt = if reading_doubt.is_finite() { reading_doubt.max(0.0) } else { 0.0 };
        #[expect(clippy::cast_precision_loss, reason = "fewer than 2^52 bags")]
        let sd = libm::sqrt(self.fit.residual_ss() / df as f64);
        let sd = if sd <= NOTHING * size { 0.0 } else { sd };
        let from_reading_doubt = sd < doubt;
        let sd = sd.max(doubt);
        (sd > 0.0).then_some(Spread { sd, df, from_reading_doubt })
    }
}

/// What the model tells of one pair, before the spread is looked at.
fn told(
    bags: &[BagValue],
    model: Result<&Model, &NotComparable>,
    pair: (usize, usize),
) -> Result<Estimated, NotComparable> {
    let (n, n_reference) = (count(bags, pair.0), count(bags, pair.1));
    if pair.0 == pair.1 {
        return Err(NotComparable::Itself);
    }
    if n == 0 || n_reference == 0 {
        return Err(NotComparable::NoBags { n, n_reference });
    }
    let model = model.map_err(NotComparable::clone)?;
    model.difference(pair).ok_or(NotComparable::NoSharedBlock)
}

fn no_spread(
    bags: &[BagValue],
    model: Result<&Model, &NotComparable>,
    pair: (usize, usize),
) -> NotComparable {
    match model {
        Ok(model) if model.fit.df() > 0 => NotComparable::NoSpread,
        _ => NotComparable::TooFewBags {
            n: count(bags, pair.0),
            n_reference: count(bags, pair.1),
        },
    }
}

/// Half width in standard errors with which all intervals hold together in 95 of 100 questions.
fn multiplier(comparable: &[&Estimated], df: usize) -> Option<f64> {
    #[expect(clippy::cast_precision_loss, reason = "fewer than 2^52 bags")]
    let (k, df) = (comparable.len() as f64, df as f64);
    (k > 0.0).then(|| student::upper_quantile(0.025 / k, df))
}

fn estimate(told: &Estimated, spread: Spread, multiplier: f64) -> Estimate {
    let se = spread.sd * libm::sqrt(told.variance());
    let half = multiplier * se;
    Estimate {
        difference: told.value,
        low: told.value - half,
        high: told.value + half,
        se,
        df: spread.df,
    }
}

fn contrast(
    bags: &[BagValue],
    (treatment, reference): (usize, usize),
    outcome: Result<Estimate, NotComparable>,
) -> Contrast {
    let on = |which: usize| bags.iter().filter(move |bag| bag.treatment == which);
    let blocks = |which| -> BTreeSet<usize> { on(which).map(|bag| bag.block).collect() };
    let highest = on(treatment)
        .chain(on(reference))
        .map(|bag| bag.value)
        .filter(|value| value.is_finite())
        .max_by(f64::total_cmp);
    Contrast {
        treatment,
        reference,
        n: count(bags, treatment),
        n_reference: count(bags, reference),
        highest,
        shared_blocks: blocks(treatment).intersection(&blocks(reference)).count(),
        tied_to_one_group: tie(bags, treatment, reference)
            .or_else(|| tie(bags, reference, treatment)),
        outcome,
    }
}

/// Whether one group made every bag of `side` but not every bag of `other`.
fn tie(bags: &[BagValue], side: usize, other: usize) -> Option<Tie> {
    let makers = |which: usize| -> BTreeSet<usize> {
        bags.iter().filter(|bag| bag.treatment == which).map(|bag| bag.group).collect()
    };
    let (ours, theirs) = (makers(side), makers(other));
    let &group = ours.first()?;
    let tied = ours.len() == 1 && !theirs.is_empty() && theirs != ours;
    tied.then_some(Tie { group, treatment: side })
}

fn count(bags: &[BagValue], treatment: usize) -> usize {
    bags.iter().filter(|bag| bag.treatment == treatment).count()
}
