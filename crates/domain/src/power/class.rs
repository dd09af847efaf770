//! One simulated class, from its bags to its verdicts.

use super::{Trial, Variant};
use crate::outlook::OutlookError;
use crate::plan::PlannedBag;
use crate::reading::{Reading, SetAside};
use crate::record::Odd;
use crate::rehearsal::{Does, Rates, Script, Truth, script_of, seed_of};
use crate::result::{ClassResult, analyze};
use barm_science::statistics::verdict::{Code, Reason};
use std::collections::BTreeMap;

/// What one class found: for each question, for each of its comparisons.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// With nothing going wrong; only for the plan's own bags.
    pub(super) plain: Option<Vec<Vec<Seen>>>,
    /// With the slips of real classes, none of them mended, and bags set aside by the plan's rule for
    /// leaks where a group saw one.
    pub(super) slips: Vec<Vec<Seen>>,
    /// The minute at which bags were compared.
    pub(super) minute: Option<f64>,
}

/// One verdict.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Seen {
    /// Whether it is clear.
    pub(super) clear: bool,
    /// Why bags like these can never make it clear.
    pub(super) never: Option<String>,
}

impl Variant {
    /// One class of a trial: bag by bag of [`Self::bags`] as `courses` has them on that day, read,
    /// typed and judged as the real day is.
    ///
    /// # Errors
    /// [`OutlookError`] where the courses of a bag are missing.
    pub fn class(
        &self,
        courses: &[Vec<Truth>],
        class: usize,
        trial: &Trial,
    ) -> Result<Outcome, OutlookError> {
        let read = |rates: &Rates| self.judged(courses, class, trial.seed, rates);
        let plain = self.each.is_none().then(|| read(&Rates::NONE)).transpose()?;
        let slips = read(&trial.rates)?;
        Ok(Outcome {
            plain: plain.map(|found| seen(&found)),
            minute: slips.minute,
            slips: seen(&slips),
        })
    }

    fn judged(
        &self,
        courses: &[Vec<Truth>],
        class: usize,
        seed: u64,
        rates: &Rates,
    ) -> Result<ClassResult, OutlookError> {
        let plan = &self.plan;
        let own: BTreeMap<&str, &Truth> = plan
            .bags
            .iter()
            .zip(courses)
            .filter_map(|(bag, days)| Some((bag.code.as_str(), days.get(class)?)))
            .collect();
        let follow = |bag: &PlannedBag| {
            own.get(bag.code.as_str()).map(|truth| (*truth).clone()).ok_or(OutlookError::NoDay)
        };
        let seed = seed_of(seed, &format!("power/class {class}"));
        let rule = plan.set_aside_rules.iter().find(|rule| rule.id == Odd::Leak.word());
        let (mut readings, mut set_aside) = (Vec::new(), Vec::new());
        for period in &plan.periods {
            let script = script_of(plan, period, seed, rates, &follow)?;
            take(&script, &mut readings);
            if let Some(rule) = rule {
                set_aside.extend(leaks(&script, &rule.id));
            }
        }
        Ok(analyze(plan, &[], &readings, &set_aside))
    }
}

/// What a script types, as readings that count: minutes after each bag's own zero.
fn take(script: &Script, readings: &mut Vec<Reading>) {
    let steps = script.devices.iter().flat_map(|device| &device.steps);
    let mut zeros = BTreeMap::new();
    for step in steps {
        let Some(bag) = step.bag else { continue };
        let (minute, height_mm) = match step.does {
            Does::Zero(mm) => {
                zeros.insert(bag, step.at_s);
                (0.0, mm)
            }
            Does::Reading(_, mm) => {
                let Some(zero) = zeros.get(&bag) else { continue };
                (f64::from(step.at_s.saturating_sub(*zero)) / 60.0, mm)
            }
            _ => continue,
        };
        let bag = bag.to_string();
        readings.push(Reading { bag, minute, height_mm, line: 0, event: None });
    }
}

/// Bags whose leak a group saw and told.
fn leaks(script: &Script, rule: &str) -> Vec<SetAside> {
    let steps = script.devices.iter().flat_map(|device| &device.steps);
    let told = steps.filter(|step| step.does == Does::Odd(Odd::Leak));
    told.filter_map(|step| {
        Some(SetAside { bag: step.bag?.to_string(), rule: rule.to_owned(), line: 0 })
    })
    .collect()
}

fn seen(result: &ClassResult) -> Vec<Vec<Seen>> {
    let verdicts = |answer: &crate::result::Answer| {
        answer
            .comparisons
            .iter()
            .map(|compared| {
                // Where bags are set aside by a rule, the verdict is told without them.
                let verdict = &compared.without.verdict;
                let never = matches!(
                    verdict.reason,
                    Reason::OneBag { .. }
                        | Reason::OneGroup { .. }
                        | Reason::GroupsAssumed
                        | Reason::NotComparable(_)
                );
                Seen {
                    clear: verdict.code == Code::Clear,
                    never: never.then(|| verdict.reason.to_string()),
                }
            })
            .collect()
    };
    result.questions.iter().map(verdicts).collect()
}
