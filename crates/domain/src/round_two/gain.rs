//! What a second round is expected to bring, comparison by comparison.

use super::before::Before;
use super::belief::{Beliefs, band, draws};
use super::idea::{Idea, Pair};
use crate::plan::{Plan, PlannedBag, Round};
use crate::result::ClassResult;
use barm_science::ruler;
use barm_science::statistics::compare::{Estimate, LEVEL, USED};
use barm_science::statistics::expected_gain::{Added, Candidate, Gain, Seen, Verdicts, gain};
use barm_science::statistics::power::{Beside, Limits, OneDifference};
use barm_science::statistics::second_look::{
    FIRST_OF_TWO, Sides, TOTAL, TwoLooks, share_of_bags,
};
use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

pub use barm_science::statistics::expected_gain::By;

/// What is expected of one comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// What is compared.
    pub pair: Pair,
    /// Further bags of the treatment, and of what it stands beside.
    pub bags: (usize, usize),
    /// How much more it truly rises than its reference by what is believed now (mm): 10th percentile,
    /// median and 90th percentile.
    pub apart_mm: (f64, f64, f64),
    /// Half width of the interval now (mm): as round one told it, or, of a pair that round one did not
    /// compare, 1.96 standard deviations of what is believed.
    pub half_now_mm: f64,
    /// Half width that is expected with round two (mm), on the same terms.
    pub half_then_mm: f64,
    /// Chance of a clear verdict (1).
    pub clear: f64,
    /// Whether that verdict is of both rounds together; else of round two by itself.
    pub pooled: bool,
}

/// What gains rest on.
pub(super) struct Grounds<'a> {
    pub(super) plan: &'a Plan,
    pub(super) result: &'a ClassResult,
    pub(super) beliefs: &'a Beliefs,
    /// Levels that were worked out already.
    pub(super) levels: Mutex<Levels>,
}

/// Nominal levels of the pooled look by bags and degrees of freedom (round one's bags, round two's, degrees of
/// freedom in hundredths), comparisons.
type Levels = BTreeMap<([u64; 4], u64, usize), f64>;

impl Grounds<'_> {
    /// What an idea brings with the bags of its plan; nothing where a treatment could not be followed or the
    /// numbers allow no answer.
    pub(super) fn told(&self, idea: &Idea, made: &Plan) -> Option<Vec<Told>> {
        idea.pairs.iter().map(|pair| self.one(idea, pair, &made.bags)).collect()
    }

    fn one(&self, idea: &Idea, pair: &Pair, bags: &[PlannedBag]) -> Option<Told> {
        let apart = self.beliefs.apart(&pair.treatment, &pair.reference)?;
        let count = |name: &str| bags.iter().filter(|bag| bag.treatment == name).count();
        let added = (count(&pair.treatment), count(&pair.reference));
        let before = Before::of(self.result, pair);
        let sd = before
            .and_then(|before| before.bag_sd_mm())
            .or_else(|| self.beliefs.bag_sd_mm(&pair.treatment, &pair.reference))?
            .max(ruler::usual_difference_sd_mm());
        let seen = before.and_then(|before| Some((before.estimate()?, before.comparisons)));
        let sides = Sides { bags: added.0 as f64, bags_reference: added.1 as f64 };
        let fresh = [LEVEL, LEVEL * USED].map(|level| share_of(level, comparisons(idea, pair)));
        let alone = alone(&apart, sides, sd, (fresh, self.plan.readable_mm))?;
        let (half_now_mm, half_then_mm, clear, pooled) = match seen {
            Some((estimate, comparisons)) => {
                let looked_twice = self.plan.round == Round::First;
                let first = if looked_twice { FIRST_OF_TWO } else { LEVEL };
                let left = if looked_twice {
                    self.left(estimate, sides, sd, comparisons)
                } else {
                    0.0
                };
                let levels = (share_of(first, comparisons), share_of(left * USED, comparisons));
                let readable = self.plan.readable_mm;
                let gain = together(estimate, &apart, (sides, sd), levels, readable)?;
                let clear = if looked_twice { gain.clear } else { alone.clear };
                (gain.half_now, gain.half_then, clear, looked_twice)
            }
            None => (1.96 * sd_of(&apart), alone.half, alone.clear, false),
        };
        let told = Told {
            pair: pair.clone(),
            bags: added,
            apart_mm: band(&apart)?,
            half_now_mm,
            half_then_mm,
            clear,
            pooled,
        };
        [half_now_mm, half_then_mm, clear].iter().all(|n| n.is_finite()).then_some(told)
    }

    /// What round one left of the chance that both looks have.
    fn left(&self, estimate: &Estimate, added: Sides, sd: f64, comparisons: usize) -> f64 {
        let (first, _) = worth(estimate, sd);
        let bits = [first.bags, first.bags_reference, added.bags, added.bags_reference];
        // Degrees of freedom change little within a hundredth.
        let df = (100.0 * estimate.df.min(1e6)).round();
        let key = (bits.map(f64::to_bits), df as u64, comparisons);
        let known = || self.levels.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(level) = known().get(&key) {
            return *level;
        }
        // Whoever else works it out meanwhile finds the same.
        let inside = (added.bags + added.bags_reference - 1.0).max(1.0);
        let level =
            pooled_level(first, added, (estimate.df, estimate.df + inside), comparisons);
        known().insert(key, level);
        level
    }
}

/// The nominal level of a pooled look, all comparisons of a question together, after a first look at
/// [`FIRST_OF_TWO`] (1); 0 where no such look can be planned.
pub(super) fn pooled_level(
    first: Sides,
    second: Sides,
    (df_first, df_pooled): (f64, f64),
    comparisons: usize,
) -> f64 {
    let looks = share_of_bags(first, second)
        .and_then(|share| TwoLooks::new(share, TOTAL))
        .and_then(|looks| {
            let first = df_first.max(1.0);
            looks.by_student(first, df_pooled.max(first + 1.0))
        })
        .and_then(|looks| looks.over(comparisons.max(1)));
    looks.map_or(0.0, |looks| looks.left_after(FIRST_OF_TWO))
}

/// What one of several comparisons gets of a level that all have together (1; Šidák 1967).
fn share_of(level: f64, comparisons: usize) -> f64 {
    -libm::expm1(libm::log1p(-level) / comparisons.max(1) as f64)
}

/// Comparisons of an idea in the question of a pair.
fn comparisons(idea: &Idea, pair: &Pair) -> usize {
    idea.pairs.iter().filter(|one| one.question == pair.question).count()
}

/// Bags of round one, counted as what they were worth beside bags that differ by `sd`, with the spread that
/// makes their standard error (mm).
fn worth(estimate: &Estimate, sd: f64) -> (Sides, f64) {
    let information = (sd / estimate.se) * (sd / estimate.se);
    let each = (2.0 * information).clamp(1.0, 1e6);
    (Sides::even(each), estimate.se * libm::sqrt(0.5 * each))
}

/// Both rounds together.
fn together(
    estimate: &Estimate,
    apart: &[f64],
    (added, sd): (Sides, f64),
    (first, pooled): (f64, f64),
    readable: f64,
) -> Option<Gain> {
    let (bags, spread) = worth(estimate, sd);
    let candidate = Candidate {
        seen: Seen {
            difference: estimate.difference,
            sd: spread,
            df: estimate.df.min(1e6),
            bags,
        },
        belief: draws(apart),
        added: Added { bags: added, sd, per_group: 1.0, group_share: 0.0, dollars: 0.0 },
        verdicts: Verdicts { first, pooled, readable: readable.max(0.0) },
    };
    gain(&candidate).ok()
}

/// What round two by itself will tell.
struct Alone {
    half: f64,
    clear: f64,
}

/// At the levels of its interval and of what is called clear (1).
fn alone(
    apart: &[f64],
    bags: Sides,
    sd: f64,
    ([level, of_clear], readable): ([f64; 2], f64),
) -> Option<Alone> {
    let layout = Beside {
        compared: 1,
        bags: bags.bags,
        bags_reference: bags.bags_reference,
        periods: 1,
    };
    let [shown, test] =
        [level, of_clear].map(|level| OneDifference::beside(layout, level).ok());
    let (shown, test) = (shown?, test?);
    let limits =
        Limits { readable: readable.max(0.0), reading_doubt: ruler::usual_difference_sd_mm() };
    let clear = |difference: &f64| Some(test.odds(*difference, sd, limits).ok()?.either());
    let all: f64 = apart.iter().map(clear).sum::<Option<f64>>()?;
    Some(Alone { half: shown.critical * shown.se * sd, clear: all / apart.len().max(1) as f64 })
}

fn sd_of(values: &[f64]) -> f64 {
    let count = values.len().max(1) as f64;
    let mean = values.iter().sum::<f64>() / count;
    libm::sqrt(values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / count)
}

/// All comparisons of a second round as one: verdicts that are expected to be clear, and mean half widths.
pub(super) fn in_all(told: &[Told], bags: usize, dollars: f64) -> Gain {
    let count = told.len().max(1) as f64;
    let mean = |of: fn(&Told) -> f64| told.iter().map(of).sum::<f64>() / count;
    Gain {
        half_now: mean(|one| one.half_now_mm),
        half_then: mean(|one| one.half_then_mm),
        clear: told.iter().map(|one| one.clear).sum(),
        bags: bags as f64,
        dollars,
    }
}
