//! What one candidate for a second round is expected to bring.

use super::belief::{Belief, Foreseen};
use super::clear::Clear;
use super::error::{GainError, within};
use crate::statistics::distribution::student;
use crate::statistics::power::effective_bags;
use crate::statistics::second_look::Sides;

/// What round one left of a question (unit of the values).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// The difference, treatment less reference.
    pub difference: f64,
    /// Standard deviation of bags alike, as seen.
    pub sd: f64,
    /// Degrees of freedom of that, at least 1.
    pub df: f64,
    /// Bags of both sides, counted as what they are worth.
    pub bags: Sides,
}

/// Bags that round two would add to a question.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Added {
    /// Bags of both sides, as they are counted on the bench.
    pub bags: Sides,
    /// What bags alike are taken to truly differ by (standard deviation, unit of the values).
    pub sd: f64,
    /// Bags of one side that each group makes, at least 1.
    pub per_group: f64,
    /// Groups' share of the variance of bags (1); 0 where every group makes both sides equally, so that
    /// its way of working falls out.
    pub group_share: f64,
    /// What these bags cost (dollars); 0 where that is not asked.
    pub dollars: f64,
}

/// How verdicts are made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Verdicts {
    /// Two-sided level of this comparison at the first look (1).
    pub first: f64,
    /// Two-sided level of this comparison at the pooled look (1), as
    /// [`TwoLooks::left_after`](crate::statistics::second_look::TwoLooks::left_after) leaves it; 0
    /// where no second verdict is allowed.
    pub pooled: f64,
    /// The smallest difference that counts (unit of the values); 0 asks for nothing.
    pub readable: f64,
}

/// A candidate for a second round: one question and its further bags.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// What round one left.
    pub seen: Seen,
    /// What is believed of the true difference.
    pub belief: Belief,
    /// What would be added.
    pub added: Added,
    /// How verdicts are made.
    pub verdicts: Verdicts,
}

/// What a candidate is expected to bring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// Half width of the interval now, at the level of the first look (unit of the values).
    pub half_now: f64,
    /// Half width of the pooled interval, at that same level so that both can be compared: the root of
    /// what its square is expected to be (unit of the values).
    pub half_then: f64,
    /// Chance that the pooled look is clear (1): power, averaged over what is believed.
    pub clear: f64,
    /// How many bags it takes.
    pub bags: f64,
    /// What it costs (dollars).
    pub dollars: f64,
}

impl Gain {
    /// By how much the interval's half width is expected to shrink (unit of the values); below 0 where
    /// round one was sure by luck.
    pub fn shrinks(&self) -> f64 {
        self.half_now - self.half_then
    }

    /// Shrinking for each bag (unit of the values).
    pub fn shrinks_per_bag(&self) -> f64 {
        self.shrinks() / self.bags
    }

    /// Chance of a clear verdict for each bag (1).
    pub fn clear_per_bag(&self) -> f64 {
        self.clear / self.bags
    }

    /// Shrinking for each dollar (unit of the values); nothing where bags cost nothing.
    pub fn shrinks_per_dollar(&self) -> Option<f64> {
        (self.dollars > 0.0).then(|| self.shrinks() / self.dollars)
    }

    /// Chance of a clear verdict for each dollar; nothing where bags cost nothing.
    pub fn clear_per_dollar(&self) -> Option<f64> {
        (self.dollars > 0.0).then(|| self.clear / self.dollars)
    }
}

/// What a candidate is expected to bring.
///
/// # Accuracy
/// The chance about 1 part in 10⁶, by quadrature.
/// # Errors
/// [`GainError`] for numbers that cannot be used.
pub fn gain(candidate: &Candidate) -> Result<Gain, GainError> {
    let Candidate { seen, belief, added, verdicts } = candidate;
    let unit = checked(candidate)?;
    let first = seen.bags.information()?;
    added.bags.information()?;
    let worth = |bags: f64| effective_bags(bags, added.per_group, added.group_share);
    let second = Sides {
        bags: worth(added.bags.bags)?.max(1.0),
        bags_reference: worth(added.bags.bags_reference)?.max(1.0),
    };
    let second = second.information()?;
    let both = first + second;
    let bags = added.bags.bags + added.bags.bags_reference;
    let inside = (bags - 2.0).max(0.0);
    let df = seen.df + inside + 1.0;
    let apart = first * second / both;
    let foreseen = Foreseen::of(belief, seen.difference, unit, 1.0 / second);
    let squares = seen.df * (seen.sd / unit) * (seen.sd / unit);
    let expected = (squares + inside + apart * foreseen.mean_square()) / df;
    let factor = |level: f64, df: f64| student::upper_quantile(0.5 * level, df);
    let clear = if verdicts.pooled > 0.0 {
        let c = factor(verdicts.pooled, df);
        let rule = Clear {
            seen: seen.difference / unit,
            follows: second / both,
            allows: df * both / (c * c),
            squares,
            apart,
            inside,
            readable: verdicts.readable / unit,
        };
        rule.chance(&foreseen)
    } else {
        0.0
    };
    Ok(Gain {
        half_now: factor(verdicts.first, seen.df) * seen.sd / libm::sqrt(first),
        half_then: factor(verdicts.first, df) * unit * libm::sqrt(expected / both),
        clear,
        bags,
        dollars: added.dollars,
    })
}

/// The true spread of bags, in whose units all else is of a usable size.
fn checked(candidate: &Candidate) -> Result<f64, GainError> {
    const SMALLEST: f64 = 1e-100;
    const LARGEST: f64 = 1e100;
    const PROPORTION: f64 = 1e6;
    let Candidate { seen, belief, added, verdicts } = candidate;
    let sd = within("the spread of bags", added.sd, SMALLEST..=LARGEST, "more than 0")?;
    within("the spread that round one saw", seen.sd, 0.0..=LARGEST, "0 or more")?;
    within("the degrees of freedom of round one", seen.df, 1.0..=1e6, "from 1 to a million")?;
    within(
        "the smallest difference that counts",
        verdicts.readable,
        0.0..=LARGEST,
        "0 or more",
    )?;
    within("the cost", added.dollars, 0.0..=LARGEST, "0 or more")?;
    within("the level of the first look", verdicts.first, 1e-12..=0.999, "between 0 and 1")?;
    within(
        "the level of the pooled look",
        verdicts.pooled,
        0.0..=0.999,
        "0 or more and below 1",
    )?;
    let in_proportion = |what, value: f64| {
        if (value / sd).abs() <= PROPORTION {
            Ok(())
        } else if value.is_finite() {
            Err(GainError::TooUnequal { what, value, sd })
        } else {
            Err(GainError::Unusable { what, value, wanted: "a number" })
        }
    };
    in_proportion("the difference of round one", seen.difference)?;
    in_proportion("the spread that round one saw", seen.sd)?;
    in_proportion("the smallest difference that counts", verdicts.readable)?;
    match belief {
        Belief::Normal { mean, sd: own } => {
            in_proportion("the difference believed", *mean)?;
            within("the doubt about the difference", *own, 0.0..=LARGEST, "0 or more")?;
            in_proportion("the doubt about the difference", *own)?;
        }
        Belief::Draws(draws) if draws.is_empty() => return Err(GainError::NoDraws),
        Belief::Draws(draws) => {
            draws
                .iter()
                .try_for_each(|&draw| in_proportion("a draw of the difference", draw))?;
        }
    }
    Ok(sd)
}
