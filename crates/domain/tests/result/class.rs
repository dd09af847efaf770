//! Small plans with their readings, made by program.

use barm_domain::code::BagCode;
use barm_domain::outlook::Treated;
use barm_domain::plan::{
    BagChoice, CONTROLS, CardChoice, Control, Difference, Plan, PlannedBag, Question, Recipe,
    SetAsideRule, Treatment,
};
use barm_domain::reading::{Reading, SetAside};
use barm_domain::result::{Answer, BagResult, ClassResult, Compared, analyze};
use barm_domain::testing::{self, base_plan, period, question};
use barm_science::setup::{Bag, Card};

/// Height of every card at its zero reading (mm).
pub(crate) const ZERO_MM: f64 = 5.0;

/// A plan and what was read.
pub(crate) struct Class {
    pub(crate) plan: Plan,
    pub(crate) readings: Vec<Reading>,
    pub(crate) set_aside: Vec<SetAside>,
}

pub(crate) fn treatment(name: &str, beside: Option<&str>) -> Treatment {
    Treatment {
        beside: beside.map(str::to_owned),
        ..testing::treatment(name, Difference::default())
    }
}

impl Class {
    /// Periods of 45 minutes: 14 to mix, 6 to clear, so that the last reading is at minute 24 and
    /// the bell at minute 31.
    pub(crate) fn with_periods(names: &[&str]) -> Self {
        Self { plan: plan(names), readings: Vec::new(), set_aside: Vec::new() }
    }

    /// A question about foods: these treatments beside a shared control.
    pub(crate) fn foods(periods: &[&str], treatments: &[&str]) -> Self {
        let mut class = Self::with_periods(periods);
        class
            .plan
            .controls
            .push(Control { treatment: treatment("No food", None), per_period: 2 });
        class.ask("food", Some("No food"), treatments.iter().map(|t| treatment(t, None)));
        class
    }

    pub(crate) fn ask(
        &mut self,
        id: &str,
        reference: Option<&str>,
        treatments: impl IntoIterator<Item = Treatment>,
    ) {
        self.plan.questions.push(Question {
            reference: reference.map(str::to_owned),
            replicates: 4,
            ..question(id, treatments.into_iter().collect())
        });
    }

    /// Adds a bag made by a group of its own, without readings.
    pub(crate) fn add(&mut self, treatment: &str, period: &str) -> String {
        let group = self.plan.bags.iter().filter(|bag| bag.period == period).count() + 1;
        self.add_by(treatment, period, u32::try_from(group).unwrap())
    }

    /// Adds a bag made by that group, without readings.
    pub(crate) fn add_by(&mut self, treatment: &str, period: &str, group: u32) -> String {
        let question = self.plan.treatments().find(|(_, t)| t.name == treatment);
        let question = question.map_or(CONTROLS, |(question, _)| question).to_owned();
        let number = self.plan.periods.iter().position(|p| p.name == period).unwrap();
        let (period_number, group_number) =
            (u8::try_from(number + 1).unwrap(), u8::try_from(group).unwrap());
        let code = BagCode::all_of(period_number, group_number)
            .map(|code| code.to_string())
            .find(|code| self.plan.bags.iter().all(|bag| bag.code != *code))
            .unwrap();
        let replicate = self.plan.bags.iter().filter(|b| b.treatment == treatment).count() + 1;
        self.plan.bags.push(PlannedBag {
            code: code.clone(),
            period: period.into(),
            group,
            place: 1,
            question,
            treatment: treatment.into(),
            replicate: u32::try_from(replicate).unwrap(),
        });
        code
    }

    /// Reads a bag: minute and rise above [`ZERO_MM`].
    pub(crate) fn read(&mut self, bag: &str, points: &[(f64, f64)]) {
        for &(minute, rise) in points {
            self.readings.push(Reading {
                bag: bag.into(),
                minute,
                height_mm: ZERO_MM + rise,
                line: self.readings.len() as u64 + 2,
                event: None,
            });
        }
    }

    /// Adds a bag that rises evenly to a height at minute 24, read every four minutes.
    pub(crate) fn grow(&mut self, treatment: &str, period: &str, rise: f64) -> String {
        self.grow_until(treatment, period, rise, 24)
    }

    /// Adds a bag that rises evenly to a height at minute 24, read until an earlier minute.
    pub(crate) fn grow_until(
        &mut self,
        treatment: &str,
        period: &str,
        rise: f64,
        last: u32,
    ) -> String {
        let code = self.add(treatment, period);
        let points: Vec<(f64, f64)> = (0..=last)
            .step_by(4)
            .map(|minute| (f64::from(minute), rise * f64::from(minute) / 24.0))
            .collect();
        self.read(&code, &points);
        code
    }

    pub(crate) fn put_aside(&mut self, bag: &str, rule: &str) {
        self.set_aside.push(SetAside { bag: bag.into(), rule: rule.into(), line: 99 });
    }

    pub(crate) fn result(&self) -> ClassResult {
        self.result_with(&[])
    }

    pub(crate) fn result_with(&self, forecasts: &[Treated]) -> ClassResult {
        analyze(&self.plan, forecasts, &self.readings, &self.set_aside)
    }
}

/// The answer to a question.
pub(crate) fn answer<'a>(result: &'a ClassResult, question: &str) -> &'a Answer {
    result.questions.iter().find(|answer| answer.question == question).unwrap()
}

/// The comparison of a treatment in the first question.
pub(crate) fn compared<'a>(result: &'a ClassResult, treatment: &str) -> &'a Compared {
    result.questions[0].comparisons.iter().find(|c| c.treatment == treatment).unwrap()
}

/// A bag by its code.
pub(crate) fn bag<'a>(result: &'a ClassResult, code: &str) -> &'a BagResult {
    result.bags.iter().find(|bag| bag.bag.code == code).unwrap()
}

fn plan(periods: &[&str]) -> Plan {
    let base = base_plan();
    Plan {
        periods: periods.iter().map(|name| period(name)).collect(),
        set_aside_rules: vec![SetAsideRule { id: "leak".into(), says: "It leaked.".into() }],
        base: Recipe {
            bag: BagChoice {
                written: "snack".into(),
                bag: Bag { width_mm: 165.0, height_mm: 83.0, film_um: 42.0 },
            },
            card: CardChoice {
                written: "3 x 5 in".into(),
                card: Card { length_mm: 127.0, width_mm: 76.2, grams: 1.8 },
            },
            ..base.base
        },
        ..base
    }
}
