//! One comparison of a question.

use super::effect;
use super::reason::NotComparable;
use super::sides::Side;
use crate::statistics::distribution::student;
use crate::statistics::mixed::{Family, GroupVariance, Mixed, MixedError, Told};

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
    /// Half width of the interval in standard errors (1).
    pub factor: f64,
    /// What the difference must exceed to be called clear, in standard errors (1); at least `factor`.
    pub clear_beyond: f64,
    /// Share of the difference's variance that is due to groups (1).
    pub group_share: f64,
    /// Whether how much groups differ is assumed, because nothing tells it, and counts here.
    pub assumes_groups: bool,
    /// Difference over the standard deviation of a bag of any group, corrected for few bags
    /// (Hedges' g, 1), where degrees of freedom suffice.
    pub standardized: Option<f64>,
    /// Treatment over reference, both adjusted, where the reference is above 0 (1).
    pub ratio: Option<f64>,
    /// Smallest true difference that would be called clear four times in five (unit of the
    /// values).
    pub smallest_found: f64,
}

impl Estimate {
    /// What a model tells of a difference, with what holds its comparisons together; `reference` is the adjusted mean of
    /// the reference, where there is one.
    pub(in crate::statistics) fn of(
        told: &Result<Told, NotComparable>,
        model: &Result<Mixed, MixedError>,
        family: Option<&Family>,
        reference: Option<f64>,
    ) -> Result<Self, NotComparable> {
        match (told, model, family) {
            (Ok(told), Ok(model), Some(family)) => {
                Ok(Self::new(told, model, family, reference))
            }
            (Ok(_), ..) => Err(NotComparable::NoSpread),
            (Err(why), ..) => Err(why.clone()),
        }
    }

    fn new(told: &Told, model: &Mixed, family: &Family, reference: Option<f64>) -> Self {
        let &Told { value, se, df, group_share, .. } = told;
        let [factor, clear_beyond] = family.factors(df);
        Self {
            difference: value,
            low: value - factor * se,
            high: value + factor * se,
            se,
            df,
            p_alone: student::two_sided(value / se, df),
            factor,
            clear_beyond,
            group_share,
            assumes_groups: told.hangs_on_groups
                && model.variances().source == GroupVariance::Assumed,
            standardized: effect::standardized(value, model),
            ratio: reference
                .map(|mean| (mean + value) / mean)
                .filter(|ratio| ratio.is_finite() && reference > Some(0.0)),
            smallest_found: se * effect::smallest_found(clear_beyond, df),
        }
    }
}

pub(super) fn contrast(
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
