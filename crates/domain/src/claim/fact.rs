//! Facts about a claim.

use super::length::{Length, lengths};
use super::made::{Claim, Says};
use crate::plan::Plan;
use crate::result::{BagResult, ClassResult, Compared, Measured};
use barm_science::statistics::verdict::{Code, Direction};

/// Whether data agree with a claim.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Agrees {
    /// They say the same.
    Yes,
    /// They say the opposite.
    No,
    /// They leave it open.
    Open,
}

/// Where a number of the text stands in the data.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// A rise of a bag of the group.
    Rise {
        /// The bag.
        bag: String,
        /// Minute of the reading.
        minute: f64,
    },
    /// A height of a bag of the group, its zero among it.
    Height {
        /// The bag.
        bag: String,
        /// Minute of the reading.
        minute: f64,
    },
    /// The class's mean rise of a treatment.
    Mean {
        /// The treatment.
        treatment: String,
    },
    /// The class's difference that the claim is about.
    Difference,
    /// Nowhere that was looked at.
    Nowhere,
}

/// One fact about a claim.
#[derive(Debug, Clone, PartialEq)]
pub enum Fact {
    /// What the class's bags say of the claim's direction.
    Class {
        /// Whether they agree.
        agrees: Agrees,
        /// Their verdict.
        verdict: Code,
        /// Their difference (mm), if there is one.
        difference_mm: Option<Measured>,
    },
    /// What the group's own bags say of it.
    Own {
        /// Whether they agree.
        agrees: Agrees,
        /// Mean rise of the treatment's bags less that of what it stands beside (mm).
        difference_mm: f64,
        /// Own bags of each.
        bags: (usize, usize),
    },
    /// The group has no bag of one side: it can only speak of the class's data.
    OwnOneSided {
        /// Own bags of the treatment, and of what it stands beside.
        bags: (usize, usize),
    },
    /// The size that is claimed, beside the class's interval (mm).
    Size {
        /// As claimed.
        claimed_mm: f64,
        /// What the class's bags leave open.
        class_mm: Measured,
        /// Whether the one lies in the other.
        within: bool,
    },
    /// A number with a unit in the evidence, and where it stands in the data.
    Number {
        /// As written.
        length: Length,
        /// Where.
        found: Found,
    },
    /// A bag of the group that is set aside by a rule: worth a word in the evidence.
    SetAside {
        /// The bag.
        bag: String,
        /// The rule.
        rule: String,
    },
}

/// Everything that the data say of a claim of the group of that number in a period: what the class's bags say, then
/// the group's own, the size, the numbers of its evidence in their order, each once, and its bags that are set aside.
pub fn facts(
    plan: &Plan,
    result: &ClassResult,
    claim: &Claim,
    (period, group): (&str, u32),
) -> Vec<Fact> {
    let own: Vec<&BagResult> = result
        .bags
        .iter()
        .filter(|bag| bag.bag.period == period && bag.bag.group == group)
        .collect();
    let answer = result.questions.iter().find(|answer| answer.question == claim.question);
    let of_claim = |one: &&Compared| one.treatment == claim.treatment;
    let compared = answer.and_then(|answer| answer.comparisons.iter().find(of_claim));
    let mut facts = Vec::new();
    if let Some(compared) = compared {
        let class_mm = interval(compared);
        facts.push(Fact::Class {
            agrees: class_agrees(claim.says, compared),
            verdict: compared.without.verdict.code,
            difference_mm: class_mm,
        });
        facts.push(of_own_bags(plan, claim.says, compared, &own));
        if let (Some(claimed), Some(class_mm)) = (claim.by_mm, class_mm) {
            let signed = if claim.says == Says::Less { -claimed } else { claimed };
            let within = (class_mm.low..=class_mm.high).contains(&signed);
            facts.push(Fact::Size { claimed_mm: claimed, class_mm, within });
        }
    }
    let dots = answer.map(|answer| answer.ladder_without.as_ref().unwrap_or(&answer.ladder));
    let means: Vec<(&str, f64)> = dots
        .iter()
        .flat_map(|ladder| &ladder.dots)
        .filter_map(|dots| Some((dots.treatment.as_str(), dots.rises.as_ref()?.mean)))
        .collect();
    let difference = compared.and_then(interval).map(|class| class.value);
    for length in lengths(&claim.evidence) {
        let found = found(&length, &own, &means, difference);
        let number = Fact::Number { length, found };
        if !facts.contains(&number) {
            facts.push(number);
        }
    }
    let aside = own.iter().filter_map(|bag| {
        Some(Fact::SetAside { bag: bag.bag.code.clone(), rule: bag.set_aside.clone()? })
    });
    facts.extend(aside);
    facts
}

/// The class's difference with its interval (mm), set-aside bags left out.
fn interval(compared: &Compared) -> Option<Measured> {
    let estimate = compared.without.difference.as_ref()?;
    Some(Measured { value: estimate.difference, low: estimate.low, high: estimate.high })
}

/// A clear verdict settles a direction, and that nothing rose settles that there is nothing to read. A leaning or
/// an open one settles nothing, but is no contradiction of "no readable difference" either.
fn class_agrees(says: Says, compared: &Compared) -> Agrees {
    let verdict = &compared.without.verdict;
    match (verdict.code, verdict.direction, says) {
        (Code::Clear, Some(Direction::More), Says::More)
        | (Code::Clear, Some(Direction::Less), Says::Less)
        | (Code::NoRise, _, Says::NoReadableDifference) => Agrees::Yes,
        (Code::Clear, Some(_), _) | (Code::NoRise, _, _) => Agrees::No,
        _ => Agrees::Open,
    }
}

/// A group's bags are too few for a verdict: only their means are set beside what can be read.
fn of_own_bags(plan: &Plan, says: Says, compared: &Compared, own: &[&BagResult]) -> Fact {
    let rises = |treatment: &str| -> Vec<f64> {
        let of = own.iter().filter(|bag| bag.bag.treatment == treatment);
        of.filter(|bag| bag.set_aside.is_none())
            .filter_map(|bag| Some(bag.summary.as_ref()?.rise_mm.value))
            .collect()
    };
    let (ours, beside) = (rises(&compared.treatment), rises(&compared.reference));
    let bags = (ours.len(), beside.len());
    if ours.is_empty() || beside.is_empty() {
        return Fact::OwnOneSided { bags };
    }
    let mean = |rises: &[f64]| rises.iter().sum::<f64>() / rises.len() as f64;
    let difference_mm = mean(&ours) - mean(&beside);
    let readable = difference_mm.abs() >= plan.readable_mm;
    let agrees = match says {
        Says::NoReadableDifference => !readable,
        Says::More => readable && difference_mm > 0.0,
        Says::Less => readable && difference_mm < 0.0,
    };
    let agrees = if agrees { Agrees::Yes } else { Agrees::No };
    Fact::Own { agrees, difference_mm, bags }
}

fn found(
    length: &Length,
    own: &[&BagResult],
    means: &[(&str, f64)],
    difference: Option<f64>,
) -> Found {
    // A hair wider than rounding: 12.5 may have been rounded either way.
    let same = |mm: f64| (mm.abs() - length.mm).abs() <= length.half_mm + 1e-9;
    // What a group writes is most often how high its bags rose in the end.
    for bag in own {
        if let Some(last) = bag.curve.rises.last().filter(|last| same(last.rise_mm.value)) {
            return Found::Rise { bag: bag.bag.code.clone(), minute: last.minute };
        }
    }
    for bag in own {
        let (Some(zero), Some(last)) = (bag.curve.zero_mm, bag.curve.rises.last()) else {
            continue;
        };
        if same(zero + last.rise_mm.value) {
            return Found::Height { bag: bag.bag.code.clone(), minute: last.minute };
        }
    }
    for bag in own {
        let code = || bag.bag.code.clone();
        if let Some(rise) = bag.curve.rises.iter().find(|rise| same(rise.rise_mm.value)) {
            return Found::Rise { bag: code(), minute: rise.minute };
        }
        let Some(zero) = bag.curve.zero_mm else { continue };
        let heights = bag.curve.rises.iter().map(|rise| (rise.minute, rise.rise_mm.value));
        let mut heights = std::iter::once((0.0, 0.0)).chain(heights);
        if let Some((minute, _)) = heights.find(|(_, rise)| same(zero + rise)) {
            return Found::Height { bag: code(), minute };
        }
    }
    if let Some((treatment, _)) = means.iter().find(|(_, mean)| same(*mean)) {
        return Found::Mean { treatment: (*treatment).to_owned() };
    }
    if difference.is_some_and(same) { Found::Difference } else { Found::Nowhere }
}
