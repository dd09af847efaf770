//! What one class found by itself, at one minute.

use super::Class;
use crate::result::{self, ClassResult};
use barm_science::statistics::meta::Study;

/// What a class found at one minute; all that its comparison with others needs of its readings.
#[derive(Debug, Clone, PartialEq)]
pub struct AtMinute {
    /// The minute after the zero reading.
    pub minute: f64,
    /// Every comparison of the class, in the order of its plan.
    pub compared: Vec<Compared>,
}

/// A comparison of a class.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// Id of the question.
    pub question: String,
    /// The treatment.
    pub treatment: String,
    /// What it is compared with.
    pub reference: String,
    /// Bags of the treatment and of what it is compared with.
    pub bags: (usize, usize),
    /// The difference in rise (mm), its standard error (mm) and degrees of freedom, if it could be told.
    pub difference: Option<(f64, f64, f64)>,
}

impl Compared {
    /// The same as a study among others.
    pub(super) fn study(&self) -> Option<Study> {
        self.difference
            .map(|(difference, se, df)| Study::estimated(difference, se, df.max(1.0)))
    }
}

impl AtMinute {
    fn of(result: &ClassResult, minute: f64) -> Self {
        let of = |answer: &result::Answer| {
            let compared = answer.comparisons.iter().map(|one| Compared {
                question: answer.question.clone(),
                treatment: one.treatment.clone(),
                reference: one.reference.clone(),
                bags: (one.with.n, one.with.n_reference),
                difference: one.with.difference.map(|one| (one.difference, one.se, one.df)),
            });
            compared.collect::<Vec<_>>()
        };
        Self { minute, compared: result.questions.iter().flat_map(of).collect() }
    }
}

impl Class {
    /// What it found at the latest minute that its own bags share; nothing where nothing was read. All bags count, also
    /// those that were set aside, as in its own verdict.
    pub fn latest(&self) -> Option<AtMinute> {
        let own = &self.investigation;
        let result = result::analyze(&own.plan, &[], &own.readings, &own.set_aside);
        result.minute.map(|minute| AtMinute::of(&result, minute))
    }

    /// What it found at that minute after the zero reading.
    pub fn at(&self, minute: f64) -> AtMinute {
        let own = &self.investigation;
        let result = result::analyze_at(&own.plan, &own.readings, &own.set_aside, minute);
        AtMinute::of(&result, minute)
    }
}
