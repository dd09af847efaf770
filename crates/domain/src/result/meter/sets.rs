//! Treatments against what the plan sets beside them.

use super::bag::Pushed;
use crate::plan::Plan;
use barm_science::meter::{Corrected, Outcome, compare_sets};

/// One treatment against its reference, by the meter.
#[derive(Debug, Clone, PartialEq)]
pub struct MeterCompared {
    /// Id of the question.
    pub question: String,
    /// The treatment.
    pub treatment: String,
    /// What it is compared with.
    pub reference: String,
    /// Bags of the treatment.
    pub n: usize,
    /// Bags of the reference.
    pub n_reference: usize,
    /// What the treatment's bags hold against the reference's.
    pub outcome: Outcome,
}

/// An outcome as plain values.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Told {
    /// `ratio`, `only-treatment`, `only-reference`, `partly`, `none`, `at-least`, `at-most` or
    /// `both-at-end`.
    pub outcome: &'static str,
    /// Ethanol in the treatment over ethanol in the reference with its 95 % interval (1): value, low
    /// and high, as far as there are any.
    pub times: [Option<f64>; 3],
    /// The same of what the display showed, without any correction (1).
    pub shown: Option<f64>,
    /// Whether the corrections turn round, or may turn round, the order that the display gave.
    pub order_in_doubt: bool,
}

impl MeterCompared {
    /// What came of it, as plain values.
    pub fn told(&self) -> Told {
        let plain =
            |outcome, times| Told { outcome, times, shown: None, order_in_doubt: false };
        match &self.outcome {
            Outcome::Ratio(found) => Told {
                outcome: "ratio",
                times: [found.ratio.ratio, found.ratio.low, found.ratio.high].map(Some),
                shown: Some(found.shown),
                order_in_doubt: found.order_is_in_doubt(),
            },
            Outcome::OnlyTheFirst => plain("only-treatment", [None; 3]),
            Outcome::OnlyTheOthers => plain("only-reference", [None; 3]),
            Outcome::Partly => plain("partly", [None; 3]),
            Outcome::None => plain("none", [None; 3]),
            Outcome::AtLeast(ratio) => plain("at-least", [None, Some(*ratio), None]),
            Outcome::AtMost(ratio) => plain("at-most", [None, None, Some(*ratio)]),
            Outcome::BothAtTheEnd => plain("both-at-end", [None; 3]),
        }
    }
}

/// Every comparison of the plan for which both sides were held to the meter and not set aside.
pub(super) fn comparisons(plan: &Plan, pushed: &[Pushed]) -> Vec<MeterCompared> {
    let set = |name: &str| -> Vec<&Pushed> {
        let own = pushed.iter().filter(|one| one.bag.bag.treatment == name);
        own.filter(|one| one.bag.set_aside.is_none()).collect()
    };
    let mut found = Vec::new();
    for question in &plan.questions {
        for treatment in plan.answering(question) {
            let Some(reference) = plan.beside(question, treatment) else { continue };
            let (own, others) = (set(&treatment.name), set(reference));
            if own.is_empty() || others.is_empty() {
                continue;
            }
            let corrected = |set: &[&Pushed]| {
                set.iter().map(|one| one.corrected).collect::<Vec<Corrected>>()
            };
            found.push(MeterCompared {
                question: question.id.clone(),
                treatment: treatment.name.clone(),
                reference: reference.to_owned(),
                n: own.len(),
                n_reference: others.len(),
                outcome: compare_sets(
                    &corrected(&own),
                    &corrected(&others),
                    thermal_sd(&own, &others),
                ),
            });
        }
    }
    found
}

/// What the forecasts leave open of the difference in temperature, as a share of the ratio of ethanol (1):
/// they are of one day, so that what they have in common drops out draw by draw. `None` where a thermometer
/// was read, or where forecasts have not the same draws.
fn thermal_sd(own: &[&Pushed], others: &[&Pushed]) -> Option<f64> {
    let mean = |set: &[&Pushed]| -> Option<Vec<f64>> {
        let draws = set.first()?.log_ratios.as_ref()?.len();
        let mut sum = vec![0.0; draws];
        for one in set {
            let log_ratios = one.log_ratios.as_ref().filter(|all| all.len() == draws)?;
            sum.iter_mut()
                .zip(log_ratios)
                .for_each(|(sum, log)| *sum += log / set.len() as f64);
        }
        Some(sum)
    };
    let (own, others) = (mean(own)?, mean(others)?);
    if own.len() != others.len() || own.is_empty() {
        return None;
    }
    let apart: Vec<f64> = own.iter().zip(&others).map(|(own, other)| own - other).collect();
    let middle = apart.iter().sum::<f64>() / apart.len() as f64;
    let square: f64 = apart.iter().map(|one| (one - middle) * (one - middle)).sum();
    Some((square / apart.len() as f64).sqrt())
}
