//! A class day acted by hand, for tests: entries without a disk, a forecast without a model.

use super::{Kind, Scene};
use crate::desk::Outlook;
use barm_documents::plan_text;
use barm_domain::code::BagCode;
use barm_domain::outlook::{Curve, Entry as Expected, Upper};
use barm_domain::plan::{Plan, PlannedBag};
use barm_domain::record::{Bound, Entry, Key, Known, Ledger, Subject, What, Who};
use jiff::{SignedDuration, Timestamp};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The period that is acted.
pub(crate) const PERIOD: &str = "3";

/// A rise that no bag shows, in the forecast alone: whoever finds it in a page has seen a forecast.
pub(crate) const SECRET_MM: f64 = 77.0;

/// The day.
pub(crate) struct Acted {
    pub(crate) plan: Arc<Plan>,
    pub(crate) plans: BTreeMap<u32, Arc<Plan>>,
    pub(crate) ledger: Ledger,
    pub(crate) outlook: Option<Outlook>,
    pub(crate) kind: Kind,
    keys: u128,
}

/// The first bell: 10:20 in the room.
fn bell() -> Timestamp {
    "2027-03-09T17:20:00Z".parse().expect("a time")
}

/// Seconds after the first bell.
pub(crate) fn at(seconds: f64) -> Timestamp {
    let milliseconds = (seconds * 1000.0).round() as i64;
    bell().checked_add(SignedDuration::from_millis(milliseconds)).expect("a time")
}

/// Minutes after the first bell at which a group takes its zero reading: one after the other, later than
/// the waves of the schedule, as it goes in classes.
fn start_min(group: u32) -> f64 {
    14.0 + 0.5 * (f64::from(group) - 1.0)
}

/// A bag of the period.
pub(crate) fn bag(group: u8, nth: usize) -> BagCode {
    BagCode::all_of(3, group).nth(nth).expect("a code")
}

impl Acted {
    /// The demonstration plan with so many groups of so many bags in the acted period, nothing
    /// happened yet.
    pub(crate) fn new(groups: u32, bags: usize) -> Self {
        let read = plan_text::read(include_bytes!("../../demo/plan.toml"));
        let mut plan = read.plan.expect("the demonstration plan");
        plan.bags.retain(|bag| bag.period != "4");
        let names: Vec<(String, String)> =
            plan.treatments().map(|(q, of)| (q.to_owned(), of.name.clone())).collect();
        let control = names.last().cloned().expect("a control");
        for group in 1..=groups {
            let codes = BagCode::all_of(3, group as u8).take(bags);
            for (nth, code) in codes.enumerate() {
                let own = &names[(group as usize - 1) % (names.len() - 1)];
                let (question, treatment) =
                    if nth == 2 { control.clone() } else { own.clone() };
                plan.bags.push(PlannedBag {
                    code: code.to_string(),
                    period: PERIOD.to_owned(),
                    group,
                    place: nth as u32 + 1,
                    question,
                    treatment,
                    replicate: group * 3 + nth as u32,
                });
            }
        }
        plan.equipment.meters = Some(1);
        let period = &mut plan.periods[2];
        period.name = PERIOD.to_owned();
        period.start = jiff::civil::time(10, 20, 0, 0);
        period.groups = groups.max(1);
        period.length_min = 45.0;
        let plan = Arc::new(plan);
        Self {
            plans: BTreeMap::from([(1, plan.clone())]),
            ledger: Ledger::new(Known::of([plan.as_ref()])),
            outlook: Some(foreseen(&plan)),
            kind: Kind::Invented,
            plan,
            keys: 0,
        }
    }

    /// The same at one moment.
    pub(crate) fn scene<T>(&self, look: impl FnOnce(&Scene<'_>) -> T) -> T {
        let (version, newest) = self.plans.last_key_value().expect("a version");
        let bound = Bound::of(&self.plans, newest, &self.ledger);
        look(&Scene {
            investigation: 1,
            kind: self.kind,
            plan: &bound.plan,
            bound: &bound,
            newest,
            version: *version,
            plans: &self.plans,
            ledger: &self.ledger,
            outlook: self.outlook.as_ref(),
            older: &[],
        })
    }

    /// Something happened, so many seconds after the bell.
    pub(crate) fn enter(
        &mut self,
        seconds: f64,
        subject: Subject,
        what: What,
        who: Who,
    ) -> Key {
        self.keys += 1;
        let key = Key::new(at(seconds).as_millisecond() as u64, self.keys);
        let entry =
            Entry { key, subject, what, measured: at(seconds), arrived: at(seconds), who };
        assert!(self.ledger.add(entry));
        key
    }

    /// About the period, by the teacher.
    pub(crate) fn period(&mut self, seconds: f64, what: What) -> Key {
        self.enter(seconds, Subject::Period(PERIOD.to_owned()), what, Who::Teacher)
    }

    /// About a bag, by its group.
    pub(crate) fn bag(&mut self, seconds: f64, code: BagCode, what: What) -> Key {
        let group = u32::from(code.group());
        let who = Who::Group { period: PERIOD.into(), group };
        self.enter(seconds, Subject::Bag(code), what, who)
    }

    /// The bell, every zero reading, and all readings up to `minute` after the bell; each bag
    /// rises by `share` of what is expected of it. Bags for which `leaves_out` says so stay out.
    pub(crate) fn runs_to(
        &mut self,
        minute: f64,
        share: f64,
        leaves_out: impl Fn(BagCode, u32) -> bool,
    ) {
        self.period(0.0, What::Began);
        let bags: Vec<(BagCode, String, u32)> = self
            .plan
            .bags
            .iter()
            .filter(|bag| bag.period == PERIOD)
            .map(|bag| (bag.code.parse().expect("a code"), bag.treatment.clone(), bag.group))
            .collect();
        for (nth, (code, treatment, group)) in bags.into_iter().enumerate() {
            let expected = self.expected(&treatment);
            let zero = start_min(group);
            for planned in (0..=24_u32).step_by(4) {
                let late_s = 12.0 + 5.0 * (nth % 3) as f64;
                let when = 60.0 * (zero + f64::from(planned)) + late_s;
                if when > 60.0 * minute || leaves_out(code, planned) {
                    continue;
                }
                let rise = (share * expected[planned as usize]).round();
                let height_mm = 3.0 + (nth % 3) as f64 + rise;
                let what = if planned == 0 {
                    What::Zero { height_mm }
                } else {
                    What::Reading { planned: Some(planned), height_mm }
                };
                self.bag(when, code, what);
            }
        }
    }

    fn expected(&self, treatment: &str) -> Vec<f64> {
        let entries = self.outlook.as_ref().map(|outlook| outlook.entries.as_slice());
        let entry = entries.unwrap_or_default().iter().find(|one| one.treatment == treatment);
        entry.map_or_else(|| vec![0.0; 60], |entry| entry.rise_mm.median.clone())
    }
}

/// A forecast that rises evenly, by more for treatments that come first.
fn foreseen(plan: &Plan) -> Outlook {
    let entries = plan.treatments().enumerate().map(|(nth, (question, treatment))| {
        let last = (18.0 - 1.9 * nth as f64).max(1.0);
        let line = |share: f64| -> Vec<f64> {
            (0..=40).map(|minute| share * last * f64::from(minute) / 24.0).collect()
        };
        Expected {
            question: question.to_owned(),
            treatment: treatment.name.clone(),
            reference: false,
            control: plan.is_control(&treatment.name),
            beside: None,
            rise_mm: Curve { median: line(1.0), low: line(0.7), high: line(1.35) },
            gas_ml: Curve { median: line(SECRET_MM), low: line(1.0), high: line(1.0) },
            ethanol_g: Curve { median: line(1.0), low: line(1.0), high: line(1.0) },
            celsius: vec![38.0; 41],
            peak_fill: 0.5,
            vent_by_min: None,
            readable_at_min: Some(12),
            chance_readable: Some(0.9),
            upper: Upper { ethanol_percent_last: 0.5, hottest_celsius: 40.0 },
            beyond: Vec::new(),
        }
    });
    Outlook { entries: entries.collect(), treated: Vec::new(), failed: Vec::new() }
}
