//! The door: a question's treatments compared, with groups as chance.

use super::effect::{self, Level};
use super::family::{Family, Together};
use super::fit::{Mixed, Variances};
use super::joint::JointTest;
use super::policy::{GroupVariance, Policy};
use super::records::{Place, Records};
use super::sides::Side;
use super::told::Told;
use super::{Method, MixedError};
use crate::statistics::compare::{BagValue, NotComparable, Tie};
use crate::statistics::distribution::student;
use std::collections::{BTreeMap, BTreeSet};

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

/// How an answer is found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct How {
    /// Standard deviation of one bag's value that comes from reading alone (unit of the values; 0
    /// where they are exact): bags of one group cannot truly differ less than that.
    pub reading_doubt: f64,
    /// What is done where the variance between groups comes out as zero or cannot be told.
    pub policy: Policy,
    /// How standard errors and degrees of freedom are found.
    pub method: Method,
    /// Decides the points at which uneven designs are integrated.
    pub seed: u64,
}

impl Default for How {
    fn default() -> Self {
        Self {
            reading_doubt: 0.0,
            policy: Policy::DegreesFromGroups,
            method: Method::KenwardRoger,
            seed: 2009,
        }
    }
}

/// Answer to a question: every comparison, holding together.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
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
    /// Groups that made bags of the treatment.
    pub groups: usize,
    /// Groups that made bags of the reference.
    pub groups_reference: usize,
    /// Largest value of a bag on either side (unit of the values), if there is a bag.
    pub highest: Option<f64>,
    /// Blocks in which both have a bag.
    pub shared_blocks: usize,
    /// The group that made all bags of one side and none of the other: what it did cannot be told
    /// from the treatment.
    pub tied_to_one_group: Option<Tie>,
    /// The difference, or why there is none.
    pub outcome: Result<Estimate, NotComparable>,
}

/// A difference with its doubt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// Treatment minus reference, adjusted for blocks and groups (unit of the values).
    pub difference: f64,
    /// Low end of the 95 % interval that holds for all comparisons of the question at once.
    pub low: f64,
    /// High end of that interval.
    pub high: f64,
    /// Standard error of the difference (unit of the values).
    pub se: f64,
    /// Degrees of freedom of the standard error (1, not whole in general).
    pub df: f64,
    /// Chance of such a difference if there were none, for this comparison alone (1).
    pub p_alone: f64,
    /// The same for the largest of all comparisons of the question (1).
    pub p: f64,
    /// Share of the difference's variance that is due to groups (1).
    pub group_share: f64,
    /// Difference over the standard deviation of a bag of any group, corrected for few bags
    /// (Hedges' g, 1), where degrees of freedom suffice.
    pub standardized: Option<f64>,
    /// Treatment over reference, both adjusted, where the reference is above 0 (1).
    pub ratio: Option<f64>,
    /// Smallest true difference whose interval would leave 0 out four times in five (unit of the
    /// values).
    pub smallest_found: f64,
}

/// Compares treatments of bags; 95 % intervals hold for all of them together.
///
/// A group is a group within its block. All bags handed in count, also those of treatments that are
/// in no comparison.
pub fn answer(bags: &[BagValue], compared: &Compared, how: &How) -> Answer {
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
        .and_then(|r| Mixed::fit(&r, how.reading_doubt, how.policy, how.method));
    let asked = asked(&present, compared);
    let told: Vec<Result<Told, NotComparable>> = asked
        .iter()
        .map(|&(treatment, reference)| {
            let pair = (number.get(&treatment).copied(), number.get(&reference).copied());
            told(&model, &sides, treatment == reference, pair)
        })
        .collect();
    let made: Vec<&Told> = told.iter().flatten().collect();
    let pairs_of = match compared {
        Compared::AllPairs if made.len() == asked.len() => u16::try_from(present.len()).ok(),
        _ => None,
    };
    let family = match &model {
        Ok(model) if !made.is_empty() => Some(Family::new(model, &made, pairs_of, how.seed)),
        _ => None,
    };
    let level = Level::of(&places, number.len());
    let nothing = Side::default();
    let contrasts = asked
        .iter()
        .zip(&told)
        .map(|(&(treatment, reference), told)| {
            let side = |of: usize| number.get(&of).map_or(&nothing, |&at| &sides[at]);
            let outcome = match (told, &model, &family) {
                (Ok(told), Ok(model), Some(family)) => {
                    let mean = number.get(&reference).and_then(|&at| level.adjusted(model, at));
                    Ok(Estimate::new(told, model, family, mean))
                }
                (Ok(_), ..) => Err(NotComparable::NoSpread),
                (Err(why), ..) => Err(why.clone()),
            };
            contrast((treatment, side(treatment)), (reference, side(reference)), outcome)
        })
        .collect();
    Answer {
        contrasts,
        variances: model.as_ref().ok().map(Mixed::variances),
        joint: model.as_ref().ok().and_then(|model| model.jointly(&made)),
        together: family.as_ref().map(Family::together),
        chance_error: family.as_ref().map_or(0.0, |family| family.error),
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
    let model = model.as_ref().map_err(|why| match why {
        MixedError::Fit(why) => NotComparable::from_fit(why, n, n_reference),
        MixedError::NoRest => NotComparable::TooFewBags { n, n_reference },
        MixedError::NoSpread => NotComparable::NoSpread,
    })?;
    let mut weights = vec![0.0; sides.len()];
    weights[treatment] = 1.0;
    weights[reference] = -1.0;
    let told = model.told(&weights).ok_or(NotComparable::NoSharedBlock)?;
    let unknown = model.variances().source == GroupVariance::NotTold;
    if unknown && told.hangs_on_groups {
        return Err(NotComparable::GroupsNotTold);
    }
    Ok(told)
}

impl Estimate {
    fn new(told: &Told, model: &Mixed, family: &Family, reference: Option<f64>) -> Self {
        let &Told { value, se, df, group_share, .. } = told;
        let factor = family.factor(df);
        let t = value / se;
        Self {
            difference: value,
            low: value - factor * se,
            high: value + factor * se,
            se,
            df,
            p_alone: student::two_sided(t, df),
            p: family.beyond(t, df),
            group_share,
            standardized: effect::standardized(value, model),
            ratio: reference
                .map(|mean| (mean + value) / mean)
                .filter(|ratio| ratio.is_finite() && reference > Some(0.0)),
            smallest_found: se * effect::smallest_found(factor, df),
        }
    }
}

fn contrast(
    (treatment, ours): (usize, &Side),
    (reference, theirs): (usize, &Side),
    outcome: Result<Estimate, NotComparable>,
) -> Contrast {
    let highest = ours.highest.into_iter().chain(theirs.highest).max_by(f64::total_cmp);
    Contrast {
        treatment,
        reference,
        n: ours.bags,
        n_reference: theirs.bags,
        groups: ours.makers.len(),
        groups_reference: theirs.makers.len(),
        highest,
        shared_blocks: ours.blocks.intersection(&theirs.blocks).count(),
        tied_to_one_group: ours
            .tied(theirs, treatment)
            .or_else(|| theirs.tied(ours, reference)),
        outcome,
    }
}
