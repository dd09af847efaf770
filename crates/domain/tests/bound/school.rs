//! A lesson whose plan is edited while bags are sealed and read.

use barm_domain::bag_list;
use barm_domain::code::BagCode;
use barm_domain::plan::{Plan, PlannedBag, Recipe};
use barm_domain::ready::{Ready, plan};
use barm_domain::record::{Bound, Entry, Key, Known, Ledger, Subject, What, Who};
use barm_domain::testing::answers;
use jiff::{SignedDuration, Timestamp};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Which food feeds yeast best: two periods of four groups.
pub(crate) fn lesson(which: Ready) -> Plan {
    let cupboard = ["sugar_white", "honey", "wheat_flour_white", "potato_flakes"];
    let answers = answers(2, 4, &cupboard);
    plan(which, &answers).unwrap()
}

/// An investigation in memory.
pub(crate) struct School {
    pub(crate) versions: BTreeMap<u32, Arc<Plan>>,
    pub(crate) ledger: Ledger,
    /// What each bag was when it was sealed: its place on the list, and its recipe.
    pub(crate) was: BTreeMap<BagCode, (PlannedBag, Recipe)>,
    minute: i64,
    keys: u128,
}

impl School {
    pub(crate) fn of(plan: Plan) -> Self {
        let ledger = Ledger::new(Known::default());
        let (versions, was) = Default::default();
        let mut school = Self { versions, ledger, was, minute: 0, keys: 0 };
        school.save(plan);
        school
    }

    pub(crate) fn newest(&self) -> &Arc<Plan> {
        self.versions.values().last().expect("a version")
    }

    pub(crate) fn version(&self) -> u32 {
        *self.versions.keys().last().expect("a version")
    }

    /// Saves a plan as the page does, its list in step, and notes it.
    pub(crate) fn save(&mut self, plan: Plan) {
        let list = bag_list::write(&plan).expect("a list");
        self.save_as_it_is(Plan { bags: list.bags, retired_codes: list.retired, ..plan });
    }

    pub(crate) fn save_as_it_is(&mut self, plan: Plan) {
        let version = self.versions.keys().last().map_or(1, |last| last + 1);
        self.ledger.learn(Known::of([&plan]));
        self.versions.insert(version, Arc::new(plan));
        self.enter(Subject::Investigation, What::PlanSaved { version });
        let newest = self.newest().clone();
        self.ledger.bind(&self.versions, &newest);
    }

    pub(crate) fn enter(&mut self, subject: Subject, what: What) {
        self.minute += 4;
        self.keys += 1;
        let bell: Timestamp = "2027-03-09T14:10:00Z".parse().expect("a time");
        let at = bell + SignedDuration::from_mins(self.minute);
        let (key, who) = (Key(self.keys), Who::Teacher);
        let entry = Entry { key, subject, what, measured: at, arrived: at, who };
        assert!(self.ledger.add(entry));
    }

    /// Seals a bag of the newest plan, and reads it twice.
    pub(crate) fn seal(&mut self, code: &str) -> BagCode {
        let version = self.version();
        let code = self.read(code, Some(version));
        assert!(self.ledger.standing().bags[&code].sealed.is_some());
        code
    }

    /// Reads a bag, sealed or not.
    pub(crate) fn read(&mut self, written: &str, sealed: Option<u32>) -> BagCode {
        let code: BagCode = written.parse().expect("a code");
        let plan = self.newest();
        let bag = plan.bags.iter().find(|bag| bag.code == written).expect("listed").clone();
        let recipe = plan.recipe(plan.treatment(&bag.treatment).expect("a treatment"));
        self.was.entry(code).or_insert((bag, recipe));
        let seal = sealed.map(|plan| What::Sealed { plan });
        let read = [
            What::Zero { height_mm: 8.0 },
            What::Reading { planned: Some(4), height_mm: 11.0 },
        ];
        for what in seal.into_iter().chain(read) {
            self.enter(Subject::Bag(code), what);
        }
        code
    }

    /// Codes of a group.
    pub(crate) fn group(&self, period: &str, group: u32) -> Vec<String> {
        let own = self.newest().bags.iter();
        let own = own.filter(|bag| bag.period == period && bag.group == group);
        own.map(|bag| bag.code.clone()).collect()
    }

    pub(crate) fn bound(&self) -> Bound {
        Bound::of(&self.versions, self.newest(), &self.ledger)
    }

    /// Every bag that was sealed is what it was, on the list and in the record.
    pub(crate) fn holds(&self) -> Result<Bound, String> {
        let bound = self.bound();
        let plan = &bound.plan;
        for (code, (was, recipe)) in &self.was {
            let written = code.to_string();
            let mut listed = plan.bags.iter().filter(|bag| bag.code == written);
            let bag = listed.next().ok_or(format!("{written} is gone"))?;
            if listed.next().is_some() {
                return Err(format!("{written} is there twice"));
            }
            if (&bag.period, bag.group) != (&was.period, was.group) {
                return Err(format!("{written} moved"));
            }
            let made = plan.treatment(&bag.treatment).map(|own| plan.recipe(own));
            if made.as_ref() != Some(recipe) {
                return Err(format!("{written} was {recipe:?} and is {made:?}"));
            }
            let own = |name: &String| {
                name == &was.treatment || name.starts_with(&format!("{} (plan ", was.treatment))
            };
            if !own(&bag.treatment) {
                return Err(format!(
                    "{written} was {} and is {}",
                    was.treatment, bag.treatment
                ));
            }
            let period = plan.period(&bag.period).ok_or("its period is gone")?;
            if bag.group > period.groups || plan.day(&period.day).is_none() {
                return Err(format!("{written} has no group or day"));
            }
            let answered = plan.questions.iter().find(|own| own.id == bag.question);
            let answers = answered.is_some_and(|own| {
                plan.answering(own).iter().any(|answer| answer.name == bag.treatment)
            });
            if !answers && !plan.is_control(&bag.treatment) {
                return Err(format!("{written} answers nothing"));
            }
            let home = self.ledger.known().bags.get(code).ok_or("it has no home")?;
            if (&home.period, home.group) != (&bag.period, bag.group) {
                return Err(format!("{written} is at home elsewhere"));
            }
        }
        let mut names: Vec<&str> =
            plan.treatments().map(|(_, own)| own.name.as_str()).collect();
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        if names.len() != count {
            return Err("two treatments have one name".into());
        }
        // Bags that are not sealed are what the newest plan says.
        let newest = self.newest();
        for bag in newest.bags.iter() {
            let code: BagCode = bag.code.parse().expect("a code");
            if self.was.contains_key(&code) {
                continue;
            }
            let now = plan.bags.iter().find(|own| own.code == bag.code);
            if now != Some(bag) {
                return Err(format!("{} is not what the newest plan says", bag.code));
            }
            let made = |plan: &Plan| plan.treatment(&bag.treatment).map(|own| plan.recipe(own));
            if made(plan) != made(newest) {
                return Err(format!("{} is made otherwise", bag.code));
            }
        }
        Ok(bound)
    }
}
