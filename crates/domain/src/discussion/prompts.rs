//! Which prompts a class's data call for.

use super::odd::{odd_bags, range};
use super::prompt::Prompt;
use crate::outlook::Treated;
use crate::plan::Plan;
use crate::result::{BagResult, ClassResult, Compared, Measured};
use barm_science::statistics::verdict::Code;

/// Clear differences that are asked about at most, the largest first.
const CLEAR: usize = 2;
/// Odd bags that are asked about at most.
const ODD: usize = 2;

/// What the bags of one period, or of the whole day, call for, in the order in which a lesson takes it: what is
/// seen, what does not fit, what is clear, what is not, what is claimed, what comes next.
///
/// `result` are the bags that are talked about; `day` are all bags that were made, by which one of them is called
/// odd; `forecasts` are those of the plan's treatments, by which a difference is called reversed.
pub fn prompts(
    plan: &Plan,
    result: &ClassResult,
    day: &[BagResult],
    forecasts: &[Treated],
) -> Vec<Prompt> {
    let read = result.bags.iter().filter_map(|bag| Some(bag.summary.as_ref()?.rise_mm.value));
    let read: Vec<f64> = read.collect();
    let mut all = Vec::new();
    let Some(minute) = result.minute.filter(|_| !read.is_empty()) else {
        return vec![Prompt::Next];
    };
    all.push(Prompt::See { bags: read.len(), minute });
    let (_, highest_mm) = range(&read);
    let flat = highest_mm < plan.readable_mm;
    if flat {
        all.push(Prompt::Flat { highest_mm, readable_mm: plan.readable_mm });
    }
    let here = |bag: &str| result.bags.iter().any(|own| own.bag.code == bag);
    let odd = odd_bags(day, plan.readable_mm).into_iter().filter(|odd| here(&odd.bag));
    all.extend(odd.take(ODD).map(Prompt::OddBag));
    let compared: Vec<&Compared> =
        result.questions.iter().flat_map(|answer| &answer.comparisons).collect();
    all.extend(clear(&compared));
    all.extend(compared.iter().filter_map(|one| reversed(one, minute, forecasts)).take(1));
    all.extend(overlapping(&compared));
    all.extend(spread(result));
    let aside = result
        .bags
        .iter()
        .filter_map(|bag| Some((bag.bag.code.clone(), bag.set_aside.clone()?)));
    let aside: Vec<_> = aside.collect();
    if !aside.is_empty() {
        all.push(Prompt::SetAside { bags: aside });
    }
    all.extend(control(result));
    if !flat {
        all.push(Prompt::Claim);
    }
    all.push(Prompt::Next);
    all
}

/// The difference that counts (mm): without bags that are set aside.
fn found(compared: &Compared) -> Option<Measured> {
    let one = compared.without.difference?;
    Some(Measured { value: one.difference, low: one.low, high: one.high })
}

fn clear(compared: &[&Compared]) -> Vec<Prompt> {
    let is_clear = |one: &&&Compared| one.without.verdict.code == Code::Clear;
    let mut clear: Vec<(&Compared, Measured)> =
        compared.iter().filter(is_clear).filter_map(|one| Some((*one, found(one)?))).collect();
    clear.sort_by(|a, b| b.1.value.abs().total_cmp(&a.1.value.abs()));
    let told = clear.into_iter().take(CLEAR).map(|(one, difference_mm)| Prompt::Clear {
        treatment: one.treatment.clone(),
        reference: one.reference.clone(),
        difference_mm,
    });
    told.collect()
}

/// A difference that cannot be told: of several the one with most bags, since it asks most.
fn overlapping(compared: &[&Compared]) -> Option<Prompt> {
    let open = compared.iter().filter(|one| one.without.verdict.code == Code::Unclear);
    let open = open.filter_map(|one| Some((one, found(one)?)));
    let (one, difference_mm) =
        open.max_by_key(|(one, _)| one.without.n + one.without.n_reference)?;
    Some(Prompt::Overlapping {
        treatment: one.treatment.clone(),
        reference: one.reference.clone(),
        difference_mm,
        bags: (one.without.n, one.without.n_reference),
    })
}

/// A clear difference whose forecast pointed the other way.
fn reversed(compared: &Compared, minute: f64, forecasts: &[Treated]) -> Option<Prompt> {
    if compared.without.verdict.code != Code::Clear {
        return None;
    }
    let found_mm = found(compared)?;
    let median = |name: &str| {
        let one = forecasts.iter().find(|one| one.treatment == name)?;
        let last = one.forecast.rise_mm().last_minute();
        let at = (minute.round().max(0.0) as u32).min(last);
        one.forecast.rise_mm().band().median.get(at as usize).copied()
    };
    let foretold_mm = median(&compared.treatment)? - median(&compared.reference)?;
    (foretold_mm * found_mm.value < 0.0).then(|| Prompt::Reversed {
        treatment: compared.treatment.clone(),
        reference: compared.reference.clone(),
        foretold_mm,
        found_mm,
    })
}

/// The treatment whose bags differ most, where one has two at least.
fn spread(result: &ClassResult) -> Option<Prompt> {
    let mut kinds: Vec<(&str, Vec<f64>)> = Vec::new();
    for bag in &result.bags {
        let Some(summary) = bag.summary.as_ref().filter(|_| bag.set_aside.is_none()) else {
            continue;
        };
        let (name, rise) = (bag.bag.treatment.as_str(), summary.rise_mm.value);
        match kinds.iter_mut().find(|(known, _)| *known == name) {
            Some((_, rises)) => rises.push(rise),
            None => kinds.push((name, vec![rise])),
        }
    }
    let ranges = kinds.iter().filter(|(_, rises)| rises.len() > 1);
    let ranges = ranges.map(|(name, rises)| (name, range(rises), rises.len()));
    let width = |(low, high): (f64, f64)| high - low;
    let (name, between_mm, bags) = ranges.max_by(|a, b| width(a.1).total_cmp(&width(b.1)))?;
    (width(between_mm) > 0.0).then(|| Prompt::Spread {
        treatment: (*name).to_owned(),
        between_mm,
        bags,
    })
}

/// What most comparisons stand beside, if a bag of it was read.
fn control(result: &ClassResult) -> Option<Prompt> {
    let means = result.questions.iter().flat_map(|answer| {
        let ladder = answer.ladder_without.as_ref().unwrap_or(&answer.ladder);
        answer.comparisons.iter().filter_map(|one| {
            let dots = ladder.dots.iter().find(|dots| dots.treatment == one.reference)?;
            Some((one.reference.as_str(), dots.rises.as_ref()?.mean))
        })
    });
    let means: Vec<(&str, f64)> = means.collect();
    let times = |name: &str| means.iter().filter(|(known, _)| *known == name).count();
    let (reference, mean_mm) =
        means.iter().rev().max_by_key(|(name, _)| times(name)).copied()?;
    Some(Prompt::Control { reference: reference.to_owned(), mean_mm })
}
