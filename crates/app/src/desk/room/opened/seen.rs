//! Whose bags a group may see: the one rule for what its page shows and for what it hears of.

use super::is_open;
use crate::desk::room::Scene;
use crate::desk::room::bench::own_labels;
use barm_domain::code::BagCode;
use barm_domain::record::{Bag, Face, Home, Lent};
use jiff::Timestamp;
use std::collections::BTreeSet;

/// What a group may see beside its own bags.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::desk::room) struct Eyes {
    home: Home,
    /// Treatments of its own bags, by their labels; nothing for a group without bags, which may
    /// see them all.
    treatments: BTreeSet<String>,
    class_data: bool,
    period_curves: bool,
    day_curves: bool,
    bands: bool,
}

impl Eyes {
    /// Those of a group.
    pub(in crate::desk::room) fn of(scene: &Scene<'_>, period: &str, group: u32) -> Self {
        let own = scene.standing().groups.get(&(period.to_owned(), group));
        let lent = own.and_then(|own| own.stand_in).map(|stand_in| stand_in.lent);
        let class_data = lent == Some(Lent::ClassData);
        let period_curves = is_open(scene, Face::PeriodCurves, period, group);
        let day_curves = is_open(scene, Face::DayCurves, period, group);
        let some = class_data || period_curves || day_curves;
        Self {
            home: Home { period: period.to_owned(), group },
            treatments: if some { own_labels(scene, period, group) } else { BTreeSet::new() },
            class_data,
            period_curves,
            day_curves,
            bands: is_open(scene, Face::Forecast, period, group),
        }
    }

    /// Those of a group if class data were lent to it.
    pub(super) fn for_class_data(scene: &Scene<'_>, period: &str, group: u32) -> Self {
        Self {
            home: Home { period: period.to_owned(), group },
            treatments: own_labels(scene, period, group),
            class_data: true,
            period_curves: false,
            day_curves: false,
            bands: false,
        }
    }

    /// Whether curves of the class are open.
    pub(super) fn curves(&self) -> bool {
        self.period_curves || self.day_curves
    }

    /// Whether they are of all periods.
    pub(super) fn of_the_day(&self) -> bool {
        self.day_curves
    }

    /// Whether what was foretold is shown behind open curves.
    pub(super) fn see_bands(&self) -> bool {
        self.bands && self.curves()
    }

    /// Whether a bag of there is among the curves.
    pub(super) fn see_curve(&self, of: &Home, treatment: &str) -> bool {
        let near = self.period_curves && of.period == self.home.period;
        (near || self.day_curves) && self.likes(treatment)
    }

    /// Whether a bag of there is among the numbers that were lent.
    pub(super) fn see_number(&self, of: &Home, treatment: &str) -> bool {
        let near = of.period == self.home.period && of.group != self.home.group;
        self.class_data && near && self.likes(treatment)
    }

    fn likes(&self, treatment: &str) -> bool {
        self.treatments.is_empty() || self.treatments.contains(treatment)
    }

    /// Whether what is shown of a bag has changed.
    pub(in crate::desk::room) fn notice(
        &self,
        scene: &Scene<'_>,
        code: BagCode,
        before: &Before,
        now: &Before,
    ) -> bool {
        if !(self.class_data || self.curves()) {
            return false;
        }
        let Some(home) = scene.ledger.known().bags.get(&code) else { return false };
        let sees = |of: &Before| {
            let treatment = of.treatment.as_deref();
            treatment
                .is_some_and(|name| self.see_curve(home, name) || self.see_number(home, name))
        };
        sees(before) || sees(now)
    }
}

/// What others may be shown of a bag, as it stood before an entry.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::desk::room) struct Before {
    treatment: Option<String>,
    heights: Vec<(Timestamp, Option<u32>, f64, bool)>,
}

impl Before {
    /// What may be shown of it now.
    pub(in crate::desk::room) fn of(scene: &Scene<'_>, code: BagCode) -> Self {
        let bag = scene.standing().bags.get(&code);
        Self {
            treatment: treatment(scene, code),
            heights: bag.map(heights).unwrap_or_default(),
        }
    }
}

/// The heights of a bag that counts: when, for which planned minute, mm, and whether another says
/// something else. None of a bag that is set aside.
fn heights(bag: &Bag) -> Vec<(Timestamp, Option<u32>, f64, bool)> {
    let counts = bag.set_aside.is_none();
    let all = bag.zero.iter().chain(&bag.readings).filter(|_| counts);
    all.map(|one| (one.measured, one.planned, one.height_mm, one.rival)).collect()
}

/// What is in a bag in truth, by the plan under which it was sealed.
pub(super) fn treatment(scene: &Scene<'_>, code: BagCode) -> Option<String> {
    scene.treatment_of(code).map(str::to_owned)
}
