//! What parts share while they are made: each costly thing is worked out once, by whoever asks first.

use super::super::check::findings;
use super::super::paper::Beside;
use super::super::room::Kind;
use super::super::room::prepare::prepared;
use super::super::{Analysis, DeskError, Outlook, Progress, outlook};
use super::Wish;
use barm_domain::check;
use barm_domain::finding::Finding;
use barm_domain::outlook::{Look, OutlookError};
use barm_domain::plan::{Period, Plan, PlannedBag};
use barm_domain::prep::{Prep, PrepError};
use jiff::Timestamp;
use std::sync::OnceLock;

/// A plan that is being printed.
pub(crate) struct Job<'a> {
    /// The plan.
    pub(crate) plan: &'a Plan,
    /// How it is to be printed.
    pub(crate) wish: &'a Wish,
    /// What the class found, once there are readings.
    pub(crate) analysis: Option<&'a Analysis>,
    /// Whether there are readings, where what the class found is not worked out yet.
    pub(crate) readings: bool,
    /// What a report says besides what the readings say.
    pub(crate) beside: Beside,
    /// Whether it happens in a class, or is made up; every page says so.
    pub(crate) kind: Kind,
    /// When it is printed.
    pub(crate) made: Timestamp,
    /// The plan by which things are bought and mixed.
    newest: &'a Plan,
    progress: &'a dyn Progress,
    prep: OnceLock<Result<Prep, PrepError>>,
    outlook: OnceLock<Result<Outlook, OutlookError>>,
    found: OnceLock<Vec<Finding>>,
}

impl<'a> Job<'a> {
    /// A plan with what a class found, if it did yet.
    pub(crate) fn new(
        plan: &'a Plan,
        wish: &'a Wish,
        analysis: Option<&'a Analysis>,
        progress: &'a dyn Progress,
    ) -> Self {
        let (prep, outlook, found) = (OnceLock::new(), OnceLock::new(), OnceLock::new());
        let (readings, kind, made) = (analysis.is_some(), Kind::Real, Timestamp::UNIX_EPOCH);
        let beside = Beside::default();
        Self {
            plan,
            wish,
            analysis,
            readings,
            beside,
            kind,
            made,
            newest: plan,
            progress,
            prep,
            outlook,
            found,
        }
    }

    /// The same where it is known whether there are readings, and no more.
    pub(crate) const fn with_readings(mut self, readings: bool) -> Self {
        self.readings = readings;
        self
    }

    /// The same, printed at that time.
    pub(crate) const fn printed_at(mut self, now: Timestamp) -> Self {
        self.made = now;
        self
    }

    /// The same where bags of the plan may be sealed under older versions than this, by which
    /// things are bought and mixed.
    pub(crate) const fn bought_by(mut self, newest: &'a Plan) -> Self {
        self.newest = newest;
        self
    }

    /// The same, with what a report says besides.
    pub(crate) fn with_beside(mut self, beside: Beside) -> Self {
        self.beside = beside;
        self
    }

    /// The same of an investigation on a shelf.
    pub(crate) const fn of_kind(mut self, kind: Kind) -> Self {
        self.kind = kind;
        self
    }

    /// Whether the wish fits the plan.
    ///
    /// # Errors
    /// [`DeskError`] for a period that the plan has not, or a cell that the sheet of labels has not.
    pub(super) fn can_be_done(&self) -> Result<(), DeskError> {
        if let Some(name) = &self.wish.period
            && self.plan.period(name).is_none()
        {
            return Err(DeskError::NoPeriod { name: name.clone() });
        }
        let (cell, cells) = (self.wish.start_cell, self.wish.label_sheet().cells());
        if !(1..=cells).contains(&cell) {
            return Err(DeskError::NoCell { cell, cells });
        }
        Ok(())
    }

    /// The periods to print for, in the order of the plan.
    pub(crate) fn periods(&self) -> impl Iterator<Item = &'a Period> {
        let only = self.wish.period.as_deref();
        self.plan.periods.iter().filter(move |one| only.is_none_or(|name| name == one.name))
    }

    /// The bags to print for, in the order of the bag list.
    pub(crate) fn bags(&self) -> impl Iterator<Item = &'a PlannedBag> {
        let only = self.wish.period.as_deref();
        self.plan.bags.iter().filter(move |bag| only.is_none_or(|name| name == bag.period))
    }

    /// What to buy, mix and lay out.
    pub(crate) fn prep(&self) -> Result<&Prep, DeskError> {
        let prep = self.prep.get_or_init(|| prepared(self.newest, self.plan));
        prep.as_ref().map_err(|error| error.clone().into())
    }

    /// What every treatment is expected to do.
    pub(crate) fn outlook(&self) -> Result<&Outlook, DeskError> {
        if let Some(analysis) = self.analysis {
            return Ok(&analysis.outlook);
        }
        let made =
            self.outlook.get_or_init(|| outlook(self.plan, Look::default(), self.progress));
        made.as_ref().map_err(|error| error.clone().into())
    }

    /// Everything that a check finds, gravest first.
    pub(crate) fn found(&self) -> &[Finding] {
        self.found.get_or_init(|| match self.outlook() {
            Ok(outlook) => findings(self.plan, outlook, Look::default(), self.progress),
            // A plan without a day or without time: the check says so by itself.
            Err(_) => check::check(self.plan, &[]),
        })
    }

    pub(super) fn step(&self, done: usize, of: usize) {
        self.progress.step("setting pages", done, of);
    }
}
