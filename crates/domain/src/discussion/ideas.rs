//! Ideas that students often bring along, and what today's bags say of each.
//!
//! Which ideas are common is common practice, no source. That an idea is listed does not mean that anybody here has it.

use super::odd::odd_bags;
use crate::plan::{Plan, Recipe};
use crate::result::{ClassResult, Compared};
use barm_science::statistics::verdict::{Code, Direction};

/// An idea.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Idea {
    /// The food gives off the gas; yeast only helps.
    FoodMakesGas,
    /// Twice the food makes twice the gas.
    TwiceTheFood,
    /// The warmer, the better.
    WarmerIsBetter,
    /// An enzyme speeds up whatever it is put to.
    EnzymeAlwaysHelps,
    /// If bags cannot tell a difference, there is none.
    UnclearMeansEqual,
    /// A bag that does not fit was made wrong.
    OddMeansWrong,
    /// One try of each is enough.
    OneBagIsEnough,
}

/// What bags say of an idea.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Speaks {
    /// They fit it: as far as they go.
    For,
    /// They speak against it.
    Against,
    /// They leave it open.
    Open,
}

/// An idea with what bags of this day say of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Spoken {
    /// The idea.
    pub idea: Idea,
    /// What they say.
    pub speaks: Speaks,
    /// The treatments it is read from: the one, and what it stands beside, or the least and the most of a row.
    pub read_from: (String, String),
    /// What each of the two rose by (mm), or the ends of what is left open.
    pub mm: (f64, f64),
}

/// The ideas of which today's bags say something, in a fixed order. An idea that a plan does not touch is left out.
pub fn ideas(plan: &Plan, result: &ClassResult) -> Vec<Spoken> {
    let means = means(result);
    let compared: Vec<&Compared> =
        result.questions.iter().flat_map(|answer| &answer.comparisons).collect();
    let found = [
        food_makes_gas(plan, &means),
        twice_the_food(plan, &means),
        warmer(plan, &means),
        enzyme(plan, &compared, &means),
        unclear(&compared),
        odd(plan, result),
        one_bag(result),
    ];
    found.into_iter().flatten().collect()
}

/// Mean rise by treatment (mm), bags that are set aside left out.
fn means(result: &ClassResult) -> Vec<(String, f64)> {
    let mut sums: Vec<(String, f64, u32)> = Vec::new();
    for bag in result.bags.iter().filter(|bag| bag.set_aside.is_none()) {
        let Some(summary) = &bag.summary else { continue };
        let rise = summary.rise_mm.value;
        match sums.iter_mut().find(|(name, ..)| *name == bag.bag.treatment) {
            Some((_, sum, count)) => (*sum, *count) = (*sum + rise, *count + 1),
            None => sums.push((bag.bag.treatment.clone(), rise, 1)),
        }
    }
    sums.into_iter().map(|(name, sum, count)| (name, sum / f64::from(count))).collect()
}

/// Every treatment that was read, with what is in it and its mean rise (mm).
fn made<'a>(plan: &'a Plan, means: &'a [(String, f64)]) -> Vec<(&'a str, Recipe, f64)> {
    let of = |(name, mm): &'a (String, f64)| {
        Some((name.as_str(), plan.recipe(plan.treatment(name)?), *mm))
    };
    means.iter().filter_map(of).collect()
}

/// A bag with food and without yeast, beside the best of those with both.
fn food_makes_gas(plan: &Plan, means: &[(String, f64)]) -> Option<Spoken> {
    let made = made(plan, means);
    let without = made.iter().find(|(_, is, _)| is.yeast.is_none() && is.food.is_some())?;
    let with = made.iter().filter(|(_, is, _)| is.yeast.is_some() && is.food == without.1.food);
    let with = with.max_by(|a, b| a.2.total_cmp(&b.2))?;
    let speaks = if without.2 < plan.readable_mm && with.2 >= plan.readable_mm {
        Speaks::Against
    } else {
        Speaks::Open
    };
    Some(spoken(Idea::FoodMakesGas, speaks, (without.0, with.0), (without.2, with.2)))
}

/// Two bags that differ in nothing but how much of one food there is: the least and the most.
fn twice_the_food(plan: &Plan, means: &[(String, f64)]) -> Option<Spoken> {
    let amount =
        |is: &Recipe| is.food_amount.as_ref().map(|amount| (amount.kind, amount.value));
    let but_for = |is: &Recipe| Recipe { food_amount: None, ..is.clone() };
    let (least, most) = ends(plan, means, |a, b| {
        let same = a.food.is_some() && but_for(a) == but_for(b);
        let ((kind, less), (other, more)) = (amount(a)?, amount(b)?);
        (same && kind == other && less > 0.0).then_some(more / less)
    })?;
    let (ratio, rises) = (most.2, least.1.max(plan.readable_mm));
    // Between half as much again and in full proportion, bags of a class cannot tell.
    let grown = most.1 / rises;
    let speaks = if grown < 1.0 + 0.5 * (ratio - 1.0) { Speaks::Against } else { Speaks::Open };
    Some(spoken(Idea::TwiceTheFood, speaks, (&least.0, &most.0), (least.1, most.1)))
}

/// Bags that differ in nothing but how warm the water was: the coldest and the warmest.
fn warmer(plan: &Plan, means: &[(String, f64)]) -> Option<Spoken> {
    let but_for = |is: &Recipe| Recipe { water_celsius: 0.0, ..is.clone() };
    let (cold, warm) = ends(plan, means, |a, b| {
        (but_for(a) == but_for(b)).then_some(b.water_celsius - a.water_celsius + 1.0)
    })?;
    let off = warm.1 - cold.1;
    let speaks = if off <= -plan.readable_mm {
        Speaks::Against
    } else if off >= plan.readable_mm {
        Speaks::For
    } else {
        Speaks::Open
    };
    Some(spoken(Idea::WarmerIsBetter, speaks, (&cold.0, &warm.0), (cold.1, warm.1)))
}

/// Two treatments that lie furthest apart by a ratio above 1: name and mean rise of each, and that ratio.
type End = (String, f64, f64);

fn ends(
    plan: &Plan,
    means: &[(String, f64)],
    apart: impl Fn(&Recipe, &Recipe) -> Option<f64>,
) -> Option<(End, End)> {
    let made = made(plan, means);
    let pairs = made.iter().flat_map(|a| made.iter().map(move |b| (a, b)));
    let apart = pairs.filter_map(|(a, b)| Some((a, b, apart(&a.1, &b.1)?)));
    let (a, b, ratio) =
        apart.filter(|(.., ratio)| *ratio > 1.0).max_by(|a, b| a.2.total_cmp(&b.2))?;
    Some(((a.0.to_owned(), a.2, ratio), (b.0.to_owned(), b.2, ratio)))
}

/// A comparison of the same bag with an enzyme and without.
fn enzyme(plan: &Plan, compared: &[&Compared], means: &[(String, f64)]) -> Option<Spoken> {
    let is = |name: &str| plan.treatment(name).map(|one| plan.recipe(one));
    let but_for = |is: &Recipe| Recipe { enzyme: None, enzyme_amount: None, ..is.clone() };
    let alike = compared.iter().filter(|one| {
        let (Some(with), Some(without)) = (is(&one.treatment), is(&one.reference)) else {
            return false;
        };
        with.enzyme.is_some() && without.enzyme.is_none() && but_for(&with) == but_for(&without)
    });
    // Of several the one that speaks against, if there is one: it is what there is to talk about.
    let told = alike.filter_map(|one| {
        let verdict = &one.without.verdict;
        let speaks = match (verdict.code, verdict.direction) {
            (Code::Clear, Some(Direction::More)) => Speaks::For,
            (Code::Clear, Some(Direction::Less)) => Speaks::Against,
            // Where neither rose it may be too early, or there was nothing to cut.
            _ => Speaks::Open,
        };
        let mean =
            |name: &str| means.iter().find(|(known, _)| known == name).map(|(_, mm)| *mm);
        let mm = (mean(&one.treatment)?, mean(&one.reference)?);
        let from = (one.treatment.as_str(), one.reference.as_str());
        Some(spoken(Idea::EnzymeAlwaysHelps, speaks, from, mm))
    });
    let rank = |speaks: Speaks| match speaks {
        Speaks::Against => 2,
        Speaks::For => 1,
        Speaks::Open => 0,
    };
    told.max_by_key(|one| rank(one.speaks))
}

/// A comparison that cannot be told: how large a difference it leaves open.
fn unclear(compared: &[&Compared]) -> Option<Spoken> {
    let open = compared.iter().filter(|one| one.without.verdict.code == Code::Unclear);
    let open = open.filter_map(|one| Some((one, one.without.difference?)));
    let width = |low: f64, high: f64| high - low;
    let (one, left) =
        open.max_by(|a, b| width(a.1.low, a.1.high).total_cmp(&width(b.1.low, b.1.high)))?;
    let from = (one.treatment.as_str(), one.reference.as_str());
    Some(spoken(Idea::UnclearMeansEqual, Speaks::Against, from, (left.low, left.high)))
}

/// A bag that does not fit, and whether anybody saw a reason.
fn odd(plan: &Plan, result: &ClassResult) -> Option<Spoken> {
    let odd = odd_bags(&result.bags, plan.readable_mm).into_iter().next()?;
    let aside =
        result.bags.iter().any(|bag| bag.bag.code == odd.bag && bag.set_aside.is_some());
    let speaks = if aside { Speaks::For } else { Speaks::Open };
    let near = if odd.rise_mm > odd.others_mm.1 { odd.others_mm.1 } else { odd.others_mm.0 };
    Some(spoken(Idea::OddMeansWrong, speaks, (&odd.bag, &odd.treatment), (odd.rise_mm, near)))
}

/// Bags of one kind that lie as far apart as kinds do.
fn one_bag(result: &ClassResult) -> Option<Spoken> {
    let kinds = result.questions.iter().flat_map(|answer| &answer.ladder.dots);
    let ranges = kinds.filter(|dots| dots.bags.len() > 1).filter_map(|dots| {
        let rises = dots.rises.as_ref()?;
        Some((dots.treatment.as_str(), rises.low, rises.high))
    });
    let (name, low, high) = ranges.max_by(|a, b| (a.2 - a.1).total_cmp(&(b.2 - b.1)))?;
    Some(spoken(Idea::OneBagIsEnough, Speaks::Against, (name, name), (low, high)))
}

fn spoken(idea: Idea, speaks: Speaks, (a, b): (&str, &str), mm: (f64, f64)) -> Spoken {
    Spoken { idea, speaks, read_from: (a.to_owned(), b.to_owned()), mm }
}
