//! How likely the plan's bags will show what it asks, several bags and classes at a time.

use super::{DeskError, Progress};
use barm_domain::outlook::OutlookError;
use barm_domain::plan::{Plan, Treatment};
use barm_domain::power::{
    self, Expected, MOST_EACH, QuestionPower, Trial, Tried, Variant, expected, variants,
};
use rayon::prelude::*;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Possible days by which bags and groups are taken to differ.
const DAYS: usize = 256;

/// What may be expected of a plan's bags.
#[derive(Debug)]
pub(crate) struct Power {
    /// Question by question.
    pub(crate) questions: Vec<QuestionPower>,
    /// Treatments that cannot be followed; their bags are left out.
    pub(crate) failed: Vec<OutlookError>,
    /// How much was tried.
    pub(crate) trial: Trial,
}

/// Says how likely each question of the plan gets a clear verdict. The answer does not depend on how
/// much runs at a time.
pub(crate) fn power(
    plan: &Plan,
    trial: Trial,
    progress: &dyn Progress,
) -> Result<Power, DeskError> {
    let treatments: Vec<&Treatment> =
        plan.treatments().map(|(_, treatment)| treatment).collect();
    let made: Vec<Result<Expected, OutlookError>> = treatments
        .par_iter()
        .map(|treatment| expected(plan, treatment, DAYS, trial.seed))
        .collect();
    let (mut worked, mut failed) = (Vec::new(), Vec::new());
    for one in made {
        match one {
            Ok(one) => worked.push(one),
            Err(error) if error.treatment().is_none() => return Err(error.into()),
            Err(error) => failed.push(error),
        }
    }
    let left_out: Vec<&str> = failed.iter().filter_map(OutlookError::treatment).collect();
    let variants = variants(plan, MOST_EACH, &left_out)?;
    let steps = Steps {
        done: AtomicUsize::new(0),
        of: variants.iter().map(|variant| variant.classes(&trial)).sum(),
        progress,
    };
    let tried: Vec<Tried> = variants
        .into_iter()
        .map(|variant| tried(variant, &trial, &steps))
        .collect::<Result<_, _>>()?;
    Ok(Power { questions: power::gather(plan, &worked, &tried), failed, trial })
}

/// How far all classes have come.
struct Steps<'a> {
    done: AtomicUsize,
    of: usize,
    progress: &'a dyn Progress,
}

fn tried(variant: Variant, trial: &Trial, steps: &Steps<'_>) -> Result<Tried, OutlookError> {
    let classes = variant.classes(trial);
    let courses = (0..variant.bags())
        .into_par_iter()
        .map(|bag| variant.follow(bag, classes, trial.seed))
        .collect::<Result<Vec<_>, _>>()?;
    let class = |class| {
        let outcome = variant.class(&courses, class, trial);
        let done = steps.done.fetch_add(1, Ordering::Relaxed) + 1;
        steps.progress.step("trying classes", done, steps.of);
        outcome
    };
    let outcomes = (0..classes).into_par_iter().map(class).collect::<Result<_, _>>()?;
    Ok(Tried { variant, outcomes })
}
