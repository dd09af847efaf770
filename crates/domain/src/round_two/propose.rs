//! Second rounds, the most telling first.

use super::belief::{Beliefs, Foreseen, worth};
use super::deal::{faults, plan_of};
use super::gain::{By, Grounds, Told, in_all};
use super::idea::{Idea, Reason};
use super::ideas::ideas;
use super::limits::held_back;
use super::refused::NoRoundTwo;
use super::shared::Shared;
use crate::check::too_full_by;
use crate::outlook::{Look, OutlookError, forecast};
use crate::plan::{Plan, Round, Treatment};
use crate::prep::Worth;
use crate::result::ClassResult;
use barm_science::prior::Learned;
use barm_science::side_by_side::each;
use barm_science::statistics::expected_gain::{Gain, rank};
use std::sync::{Mutex, PoisonError};

/// The most second rounds that are weighed against each other.
pub const MOST: usize = 200;

/// Round one.
#[derive(Debug, Clone, Copy)]
pub struct RoundOne<'a> {
    /// Its plan.
    pub plan: &'a Plan,
    /// What its class found.
    pub result: &'a ClassResult,
    /// What its readings taught of the model's numbers
    /// ([`day_taught`](crate::result::taught::day_taught)); nothing goes by the pilot, or by what is usual.
    pub learned: &'a Learned,
}

/// A second round that could be made.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// Why.
    pub reason: Reason,
    /// Bags of each treatment.
    pub each: u32,
    /// What is expected of every comparison.
    pub told: Vec<Told>,
    /// All of them as one: verdicts that are expected to be clear, mean half widths (mm), all bags that
    /// are made, shared controls among them, and dollars.
    pub gain: Gain,
    /// What its bags use up, at the prices that are known.
    pub worth: Worth,
    /// What its treatments are expected to do.
    pub foreseen: Vec<Foreseen>,
    /// What it shares with round one.
    pub shared: Shared,
    /// The plan that makes it.
    pub plan: Plan,
}

/// Second rounds by what they are expected to bring.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposals {
    /// The most telling first.
    pub ranked: Vec<Proposal>,
    /// By what.
    pub by: By,
    /// Which round the first plan's is: says whether both may be judged together.
    pub round: Round,
    /// How many were thought of; some could not be made or followed.
    pub tried: usize,
    /// Treatments that cannot be followed.
    pub failed: Vec<OutlookError>,
}

/// Proposes second rounds for a class, the most telling first; `progress` hears how many of all steps are
/// done.
///
/// # Errors
/// [`NoRoundTwo`] says why there is nothing to propose.
pub fn propose(
    one: &RoundOne<'_>,
    by: By,
    progress: &(dyn Fn(usize, usize) + Sync),
) -> Result<Proposals, NoRoundTwo> {
    let minute = one.result.minute.ok_or(NoRoundTwo::NoReadings)?;
    if one.result.questions.iter().all(|answer| answer.comparisons.is_empty()) {
        return Err(NoRoundTwo::NothingCompared);
    }
    let mut knowing = one.plan.clone();
    knowing.known = knowing.known.after_class(one.learned);
    let mut all = ideas(one.plan, one.result, &held_back(&knowing));
    all.truncate(MOST);
    let treatments = treatments(one.plan, &all);
    let steps = treatments.len() + all.len();
    // They are heard one after the other, however many work at it.
    let done = Mutex::new(0);
    let step = || {
        let mut done = done.lock().unwrap_or_else(PoisonError::into_inner);
        *done += 1;
        progress(*done, steps);
    };
    let followed = each(treatments.len(), |at| {
        let treatment = treatments[at];
        let followed = Beliefs::followed(&knowing, treatment, minute);
        let old = one.plan.treatment(&treatment.name).is_some();
        let holds = old || holds(one.plan, treatment);
        step();
        (followed, holds)
    });
    let (mut beliefs, mut failed) = (Beliefs::none(), Vec::new());
    for (one, holds) in followed {
        match one {
            Ok(one) if holds => beliefs.add(one),
            Ok(_) => {}
            Err(error) => failed.push(error),
        }
    }
    let grounds = Grounds {
        plan: one.plan,
        result: one.result,
        beliefs: &beliefs,
        levels: Mutex::default(),
    };
    let had = faults(one.plan);
    let found = each(all.len(), |at| {
        let found = proposal(&all[at], &grounds, &had);
        step();
        found
    });
    let found: Vec<Proposal> = found.into_iter().flatten().collect();
    if found.is_empty() {
        return Err(NoRoundTwo::NoneFits { tried: all.len() });
    }
    let gains: Vec<Gain> = found.iter().map(|one| one.gain).collect();
    let mut found: Vec<Option<Proposal>> = found.into_iter().map(Some).collect();
    let ranked = rank(&gains, by).into_iter().filter_map(|at| found[at].take()).collect();
    Ok(Proposals { ranked, by, round: one.plan.round, tried: all.len(), failed })
}

/// Whether a bag of a new treatment holds until its last reading, as the page of its plan will foresee it: a plan with
/// that fault is none to propose.
fn holds(plan: &Plan, treatment: &Treatment) -> bool {
    let Ok(ahead) = forecast(plan, treatment, Look::default()) else { return false };
    let ahead = ahead.forecast;
    too_full_by(ahead.last_minute(), ahead.peak_fill(), ahead.vent_by_min()).is_none()
}

/// Every treatment that some idea makes, once.
fn treatments<'a>(plan: &'a Plan, ideas: &'a [Idea]) -> Vec<&'a Treatment> {
    let mut all: Vec<&Treatment> = Vec::new();
    for idea in ideas {
        let names = idea.pairs.iter().flat_map(|pair| [&pair.treatment, &pair.reference]);
        let fresh = idea.fresh.as_ref().map(|(treatment, _)| treatment);
        for treatment in names.filter_map(|name| plan.treatment(name)).chain(fresh) {
            if all.iter().all(|known| known.name != treatment.name) {
                all.push(treatment);
            }
        }
    }
    all
}

fn proposal(
    idea: &Idea,
    grounds: &Grounds<'_>,
    had: &[(&'static str, String)],
) -> Option<Proposal> {
    let followed = |name: &String| grounds.beliefs.has(name);
    if !idea.pairs.iter().all(|pair| followed(&pair.treatment) && followed(&pair.reference)) {
        return None;
    }
    let plan = plan_of(grounds.plan, idea, had).ok()?;
    let told = grounds.told(idea, &plan)?;
    let worth = worth(&plan)?;
    let mut names: Vec<&String> = Vec::new();
    for name in idea.pairs.iter().flat_map(|pair| [&pair.treatment, &pair.reference]) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let foreseen =
        names.iter().filter_map(|name| grounds.beliefs.foreseen(name)).cloned().collect();
    Some(Proposal {
        reason: idea.reason.clone(),
        each: idea.each,
        gain: in_all(&told, plan.bags.len(), worth.dollars),
        told,
        worth,
        foreseen,
        shared: Shared::of(grounds.plan, &plan),
        plan,
    })
}
