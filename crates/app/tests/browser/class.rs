//! What a whole class has written by some minute, out of the invented readings.

use crate::school::plan;
use barm_domain::code::BagCode;
use barm_domain::plan::Plan;
use barm_domain::record::{Audience, Entry, Face, Key, Lent, Subject, What, Who};
use barm_domain::schedule::schedule;
use jiff::{SignedDuration, Timestamp};
use std::path::Path;

/// The invented plan with the invented readings of it.
pub(crate) struct Class {
    plan: Plan,
    heights: Vec<(BagCode, u32, f64)>,
    keys: u64,
}

/// What becomes of a height: code of the bag, minute, height (mm); nothing if it was not read.
type Fate<'a> = &'a dyn Fn(BagCode, u32, f64) -> Option<f64>;

impl Class {
    pub(crate) fn new() -> Self {
        let plan = plan();
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/demo/readings.csv");
        let file = std::fs::read(file).expect("the invented readings");
        let read = barm_documents::readings::read(&file, &plan);
        let heights = read.readings.iter().map(|one| {
            (one.bag.parse().expect("a code"), one.minute.round() as u32, one.height_mm)
        });
        Self { heights: heights.collect(), plan, keys: 0 }
    }

    /// A period whose bell rang `began_min` ago, with everything up to now that has a fate; each
    /// bag is read twenty seconds after its planned minute.
    pub(crate) fn period(
        &mut self,
        name: &str,
        began_min: i64,
        ended: bool,
        fate: Fate<'_>,
    ) -> Vec<Entry> {
        let now = Timestamp::now();
        let bell = now - SignedDuration::from_mins(began_min);
        let whole = Subject::Period(name.to_owned());
        let mut entries = vec![self.entry(whole.clone(), What::Began, bell, Who::Teacher)];
        let planned = self.plan.period(name).expect("a period");
        let schedule = schedule(&self.plan, planned, None);
        for (code, minute, height_mm) in self.heights.clone() {
            let of = self.plan.bags.iter().find(|bag| bag.code == code.to_string());
            let (period, group) = of.map(|bag| (bag.period.clone(), bag.group)).expect("a bag");
            let Some(height_mm) = fate(code, minute, height_mm) else { continue };
            let zero = bell + minutes(schedule.start_of(group).expect("a start"));
            let at =
                zero + minutes(f64::from(minute) + if minute == 0 { 0.0 } else { 1.0 / 3.0 });
            if period != name || at > now {
                continue;
            }
            let who = match group {
                0 => Who::Teacher,
                group => Who::Group { period: period.into(), group },
            };
            let bag = Subject::Bag(code);
            if minute == 0 {
                let before = zero - minutes(3.0);
                entries.push(self.entry(
                    bag.clone(),
                    What::Sealed { plan: 1 },
                    before,
                    who.clone(),
                ));
                entries.push(self.entry(bag, What::Zero { height_mm }, at, who));
            } else {
                let what = What::Reading { planned: Some(minute), height_mm };
                entries.push(self.entry(bag, what, at, who));
            }
        }
        if ended {
            entries.push(self.entry(whole, What::Ended, bell + minutes(45.0), Who::Teacher));
        }
        entries.sort_by_key(|entry| entry.measured);
        entries
    }

    /// What the teacher gave and opened a minute ago: group 3 has class data, group 4 a simulated
    /// run, and group 8 sees curves, what was foretold of them, and
    /// results.
    pub(crate) fn lent(&mut self, period: &str) -> Vec<Entry> {
        let at = Timestamp::now() - minutes(1.0);
        let group = |group| Subject::Group { period: period.to_owned(), group };
        let open = |face| {
            let to = Audience::Group { period: period.to_owned(), group: 8 };
            (Subject::Investigation, What::Opened { face, to })
        };
        let all = [
            (group(3), What::StandIn(Lent::ClassData)),
            (group(4), What::StandIn(Lent::Simulated { seed: 11, plan: 1 })),
            open(Face::PeriodCurves),
            open(Face::Forecast),
            open(Face::Results),
        ];
        all.map(|(subject, what)| self.entry(subject, what, at, Who::Teacher)).to_vec()
    }

    fn entry(&mut self, subject: Subject, what: What, at: Timestamp, who: Who) -> Entry {
        self.keys += 1;
        let key =
            Key::new(u64::try_from(at.as_millisecond()).expect("after 1970"), self.keys.into());
        Entry { key, subject, what, measured: at, arrived: at, who }
    }
}

fn minutes(minutes: f64) -> SignedDuration {
    SignedDuration::from_secs_f64(60.0 * minutes)
}
