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

mod reason;

use super::additive::{Additive, Row, multiplier};
use super::linear::{Estimated, FitError};
use std::collections::BTreeSet;

pub use super::additive::Spread;
pub use reason::NotComparable;

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

/// Compares each treatment with its reference; the 95 % intervals hold for all of them together.
///
/// `reading_doubt` is the standard deviation of one bag's value that comes from reading alone
/// (unit of the values; 0 where the values are exact): bags cannot truly differ less than that, so
/// a smaller estimated spread is raised to it.
///
/// All bags handed in count towards the spread and the differences between blocks, also those of
/// treatments that are in no comparison.
pub fn compare(bags: &[BagValue], reference: &Reference, reading_doubt: f64) -> Comparison {
    let rows: Vec<Row> = bags
        .iter()
        .map(|bag| Row { value: bag.value, block: bag.block, treatment: bag.treatment })
        .collect();
    let model = Additive::fit(&rows);
    let told: Vec<(Sides, Result<Estimated, NotComparable>)> = asked(bags, reference)
        .into_iter()
        .map(|pair| {
            let sides = Sides::of(bags, pair);
            (sides, told(&sides, &model))
        })
        .collect();
    let spread = model.as_ref().ok().and_then(|model| model.spread(reading_doubt));
    let comparable: Vec<&Estimated> = told.iter().flat_map(|(_, told)| told).collect();
    let multiplier = spread.and_then(|spread| multiplier(&comparable, spread.df));
    let no_spread = |sides: &Sides| match &model {
        Ok(model) if model.df() > 0 => NotComparable::NoSpread,
        _ => NotComparable::TooFewBags { n: sides.n, n_reference: sides.n_reference },
    };
    let contrasts = told
        .iter()
        .map(|(sides, told)| {
            let outcome = match (told, spread, multiplier) {
                (Ok(told), Some(spread), Some(times)) => Ok(Estimate::new(told, spread, times)),
                (Ok(_), ..) => Err(no_spread(sides)),
                (Err(why), ..) => Err(why.clone()),
            };
            contrast(bags, sides, outcome)
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

/// The two sides of a comparison and their bags.
#[derive(Debug, Clone, Copy)]
struct Sides {
    treatment: usize,
    reference: usize,
    n: usize,
    n_reference: usize,
}

impl Sides {
    fn of(bags: &[BagValue], (treatment, reference): (usize, usize)) -> Self {
        let count = |which| bags.iter().filter(|bag| bag.treatment == which).count();
        Self { treatment, reference, n: count(treatment), n_reference: count(reference) }
    }
}

/// What the model tells of one pair, before the spread is looked at.
fn told(sides: &Sides, model: &Result<Additive, FitError>) -> Result<Estimated, NotComparable> {
    let &Sides { treatment, reference, n, n_reference } = sides;
    if treatment == reference {
        return Err(NotComparable::Itself);
    }
    if n == 0 || n_reference == 0 {
        return Err(NotComparable::NoBags { n, n_reference });
    }
    match model {
        Ok(model) => model
            .contrast(&[(treatment, 1.0), (reference, -1.0)])
            .ok_or(NotComparable::NoSharedBlock),
        Err(why) => Err(NotComparable::from_fit(why, n, n_reference)),
    }
}

impl Estimate {
    pub(super) fn new(told: &Estimated, spread: Spread, multiplier: f64) -> Self {
        let se = spread.sd * libm::sqrt(told.variance());
        let (difference, half) = (told.value, multiplier * se);
        Self { difference, low: difference - half, high: difference + half, se, df: spread.df }
    }
}

fn contrast(
    bags: &[BagValue],
    sides: &Sides,
    outcome: Result<Estimate, NotComparable>,
) -> Contrast {
    let &Sides { treatment, reference, n, n_reference } = sides;
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
        n,
        n_reference,
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
