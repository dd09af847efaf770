//! Treatments of one question compared with their reference, all at once: the one door through
//! which the program asks for differences.
//!
//! # What is assumed
//! The bag is the unit: one value a bag, whatever number of readings it rests on. Values are
//!
//! ```text
//! value = block + treatment + group + rest        group, rest normal, independent
//! ```
//!
//! Block is the class period. A group is the students who share a bench in one block: what its bags
//! have in common is chance, and a difference between treatments of two groups is in part one
//! between those groups. The model behind is [`mixed`](super::mixed); the words that follow from an
//! answer are those of [`verdict`](super::verdict).

mod contrast;
mod effect;
mod reason;
mod sides;

use super::mixed::{
    Expected, Family, JointTest, Method, Mixed, MixedError, Place, Policy, Records, Together,
    Told, TreatmentSpreads, Variances,
};
use contrast::contrast;
use effect::Level;
use sides::Side;
use std::collections::{BTreeMap, BTreeSet};

pub use contrast::{Contrast, Estimate, Tie};
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

/// What is compared with what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Compared {
    /// Every other treatment that has a bag, in rising order, with this one.
    Reference(usize),
    /// These pairs of a treatment and its own reference, in this order.
    Pairs(Vec<(usize, usize)>),
    /// Every treatment that has a bag with every one of a smaller number.
    AllPairs,
}

/// Share of questions in which an interval may fail to hold where nothing else is asked (1).
pub const LEVEL: f64 = 0.05;

/// The part of the level at which a class's difference is called clear (1). Readings are whole millimeters
/// of unlike curves, slips happen and are mended, groups differ less or more than expected: invented
/// classes are told something false up to a fifth more often than their intervals say (docs/trust.md).
pub const USED: f64 = 0.8;

/// How an answer is found. The default is the textbook's: values exact, all spreads alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct How {
    /// Standard deviation of one bag's value that comes from reading alone (unit of the values; 0
    /// where they are exact): bags of one group cannot truly differ less than that.
    pub reading_doubt: f64,
    /// What is done where the variance between groups comes out as zero or cannot be told.
    pub policy: Policy,
    /// How standard errors and degrees of freedom are found.
    pub method: Method,
    /// How treatments may differ in spread.
    pub spreads: TreatmentSpreads,
    /// Share of questions in which one of the intervals does not hold (1), strictly between 0 and 1: 0.05,
    /// unless a question is looked at twice ([`second_look`](super::second_look)).
    pub level: f64,
    /// The part of that level at which a difference is called clear (1), above 0 and at most 1: what is
    /// left of it is kept for what no model of a class has in it.
    pub used: f64,
    /// Decides the points at which uneven designs are integrated.
    pub seed: u64,
}

impl Default for How {
    fn default() -> Self {
        Self {
            reading_doubt: 0.0,
            policy: Policy::DegreesFromGroups,
            method: Method::KenwardRoger,
            spreads: TreatmentSpreads::Alike,
            level: LEVEL,
            used: 1.0,
            seed: 2009,
        }
    }
}

impl How {
    /// The level of an interval, and that of a difference that is called clear (1).
    pub(in crate::statistics) fn levels(&self) -> [f64; 2] {
        [self.level, self.level * self.used]
    }

    /// The same at another level (1).
    #[must_use]
    pub const fn at(self, level: f64) -> Self {
        Self { level, ..self }
    }

    /// The textbook's way for values with this reading doubt (standard deviation, unit of the values).
    pub fn read_with(reading_doubt: f64) -> Self {
        Self { reading_doubt, ..Self::default() }
    }

    /// The way in which a class is judged, for values with this reading doubt: groups are expected to
    /// differ by about 0.7 of what their bags differ by, known as well as three pairs would tell it,
    /// and treatments to differ in spread, typically by a factor of 2 (exp(1/√2)). A fifth of the level
    /// is kept back.
    ///
    /// Judgement, without a source: the numbers are those with which invented classes, whose groups differ
    /// between not at all and as much as bags, and whose treatments spread alike or some twice as much,
    /// are told something false most nearly as often as is said (docs/trust.md).
    pub fn of_a_class(reading_doubt: f64) -> Self {
        Self {
            reading_doubt,
            policy: Policy::Expected(Expected { ratio: 0.5, df: 3.0 }),
            spreads: TreatmentSpreads::Apart(2.0),
            used: USED,
            ..Self::default()
        }
    }
}

/// Answer to a question: every comparison, holding together.
#[derive(Debug, Clone)]
pub struct Comparison {
    /// One entry for each comparison asked for.
    pub contrasts: Vec<Contrast>,
    /// How much bags and groups differ, where it could be estimated.
    pub variances: Option<Variances>,
    /// Test that none of the comparisons that could be made shows a difference.
    pub joint: Option<JointTest>,
    /// How the intervals hold together, where any could be made.
    pub together: Option<Together>,
    /// Bound on the error of chances near 95 % (1): 0 but where they are sampled.
    pub chance_error: f64,
    /// What holds them together.
    family: Option<Family>,
}

impl Comparison {
    /// Chance, where there is no difference at all, that any comparison of the question comes out as far from 0 as
    /// this one (1). Worked out when it is asked for: in uneven designs it is sampled.
    pub fn p(&self, estimate: &Estimate) -> f64 {
        let t = estimate.difference / estimate.se;
        self.family.as_ref().map_or(estimate.p_alone, |family| family.beyond(t, estimate.df))
    }
}

/// Compares treatments of bags; intervals hold for all of them together, 95 times in 100 unless another level is asked for.
///
/// A group is a group within its block. All bags handed in count, also those of treatments that are
/// in no comparison.
pub fn compare(bags: &[BagValue], compared: &Compared, how: &How) -> Comparison {
    let Question { number, places, sides, asked, model, told } =
        Question::of(bags, compared, how);
    let made: Vec<&Told> = told.iter().flatten().collect();
    let pairs_of = match compared {
        Compared::AllPairs if made.len() == asked.len() => u16::try_from(number.len()).ok(),
        _ => None,
    };
    let family = match &model {
        Ok(model) if !made.is_empty() => {
            Some(Family::new(model, &made, pairs_of, (how.levels(), how.seed)))
        }
        _ => None,
    };
    let level = Level::of(&places, number.len());
    let nothing = Side::default();
    let contrasts = asked
        .iter()
        .zip(&told)
        .map(|(&(treatment, reference), told)| {
            let side = |of: usize| number.get(&of).map_or(&nothing, |&at| &sides[at]);
            let at = number.get(&reference);
            let mean = at.zip(model.as_ref().ok()).and_then(|(&at, m)| level.adjusted(m, at));
            let outcome = Estimate::of(told, &model, family.as_ref(), mean);
            contrast((treatment, side(treatment)), (reference, side(reference)), outcome)
        })
        .collect();
    Comparison {
        contrasts,
        variances: model.as_ref().ok().map(Mixed::variances),
        joint: model.as_ref().ok().and_then(|model| model.jointly(&made)),
        together: family.as_ref().map(Family::together),
        chance_error: family.as_ref().map_or(0.0, |family| family.error),
        family,
    }
}

/// A question's bags with their model, and what it tells of each pair by itself.
pub(in crate::statistics) struct Question {
    /// The place of each treatment that has a bag among those of the model.
    number: BTreeMap<usize, usize>,
    places: Vec<Place>,
    sides: Vec<Side>,
    asked: Vec<(usize, usize)>,
    pub(in crate::statistics) model: Result<Mixed, MixedError>,
    pub(in crate::statistics) told: Vec<Result<Told, NotComparable>>,
}

impl Question {
    pub(in crate::statistics) fn of(bags: &[BagValue], compared: &Compared, how: &How) -> Self {
        let present: BTreeSet<usize> = bags.iter().map(|bag| bag.treatment).collect();
        let number: BTreeMap<usize, usize> = present.iter().copied().zip(0..).collect();
        let places: Vec<Place> = bags
            .iter()
            .map(|bag| Place {
                value: bag.value,
                treatment: number[&bag.treatment],
                block: bag.block,
                group: bag.group,
            })
            .collect();
        let sides = Side::all(&places, number.len());
        let model = Records::of_treatments(&places, number.len())
            .map_err(MixedError::from)
            .and_then(|records| Mixed::of(&records, how));
        let asked = asked(&present, compared);
        let told = asked
            .iter()
            .map(|&(treatment, reference)| {
                let pair = (number.get(&treatment).copied(), number.get(&reference).copied());
                told(&model, &sides, treatment == reference, pair)
            })
            .collect();
        Self { number, places, sides, asked, model, told }
    }
}

fn asked(present: &BTreeSet<usize>, compared: &Compared) -> Vec<(usize, usize)> {
    match compared {
        Compared::Pairs(pairs) => pairs.clone(),
        Compared::Reference(reference) => {
            present.iter().filter(|t| *t != reference).map(|&t| (t, *reference)).collect()
        }
        Compared::AllPairs => {
            present.iter().flat_map(|&t| present.range(..t).map(move |&r| (t, r))).collect()
        }
    }
}

/// What the model tells of one pair.
fn told(
    model: &Result<Mixed, MixedError>,
    sides: &[Side],
    itself: bool,
    pair: (Option<usize>, Option<usize>),
) -> Result<Told, NotComparable> {
    if itself {
        return Err(NotComparable::Itself);
    }
    let bags = |at: Option<usize>| at.map_or(0, |at| sides[at].bags);
    let (n, n_reference) = (bags(pair.0), bags(pair.1));
    let (Some(treatment), Some(reference)) = pair else {
        return Err(NotComparable::NoBags { n, n_reference });
    };
    let mut weights = vec![0.0; sides.len()];
    weights[treatment] = 1.0;
    weights[reference] = -1.0;
    NotComparable::unless_told(model, &weights, (n, n_reference))
}

impl Mixed {
    /// The model of some values, in the way asked for.
    ///
    /// # Errors
    /// Those of [`Mixed::fit`].
    pub(in crate::statistics) fn of(records: &Records, how: &How) -> Result<Self, MixedError> {
        let model = Self::fit(records, how.reading_doubt, how.policy, how.method)?;
        Ok(model.with_spreads(records, how.spreads, how.reading_doubt))
    }
}
