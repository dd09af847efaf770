//! The plan of a kind of class, made once for all of its classes.

use super::bench::benches;
use super::cell::Cell;
use super::world::{INTERVAL_MIN, LAST_MIN};
use crate::code::BagCode;
use crate::plan::{Control, Difference, Place, Plan, PlannedBag, Round, Treatment};
use crate::record::Known;
use crate::result::full_height_mm;
use crate::starter::{self, Answers, StarterError};
use jiff::civil::{date, time};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The plan of a kind of class.
#[derive(Debug, Clone)]
pub struct Lesson {
    pub(super) cell: Cell,
    pub(super) plan: Plan,
    pub(super) known: Known,
    pub(super) bags: Vec<Made>,
    /// Places in `bags`, period by period, group by group.
    pub(super) groups: Vec<Vec<usize>>,
    /// The second round, where there is one: the same bags once more, on another day.
    pub(super) again: Option<Box<Self>>,
}

/// A bag of the plan.
#[derive(Debug, Clone)]
pub(super) struct Made {
    pub(super) code: BagCode,
    pub(super) treatment: usize,
    /// Period, from 0.
    pub(super) period: usize,
    /// Place of its group among all groups.
    pub(super) group: usize,
    pub(super) full_mm: f64,
    /// Name of its period, shared by what is written there.
    pub(super) in_period: Arc<str>,
}

/// Minutes for mixing, and for clearing.
const MIXING_MIN: f64 = 14.0;
const CLEARING_MIN: f64 = 6.0;

impl Lesson {
    /// The plan of a kind of class: one question, its treatments beside one reference.
    ///
    /// # Errors
    /// [`StarterError`] where no day has room for it: none of [`super::CELLS`] is such.
    pub fn of(cell: &Cell) -> Result<Self, StarterError> {
        if !cell.twice {
            return Self::of_round(cell, Round::Only);
        }
        let again = Some(Box::new(Self::of_round(cell, Round::Second)?));
        Ok(Self { again, ..Self::of_round(cell, Round::First)? })
    }

    /// The plan of one of its rounds; codes of a second one are none of the first.
    fn of_round(cell: &Cell, round: Round) -> Result<Self, StarterError> {
        let benches = benches(cell);
        let mut plan = starter::frame(&answers(cell))?;
        plan.round = round;
        plan.timing.interval_min = f64::from(INTERVAL_MIN);
        plan.timing.mixing_min = MIXING_MIN;
        plan.timing.clearing_min = CLEARING_MIN;
        let treatment = |number: usize| Treatment {
            name: name(number),
            beside: None,
            replicates: None,
            difference: Difference::default(),
        };
        plan.controls = vec![Control { treatment: treatment(0), per_period: 1 }];
        plan.questions.truncate(1);
        for question in &mut plan.questions {
            question.reference = Some(name(0));
            question.treatments = (1..cell.treatments).map(treatment).collect();
        }
        let mut of_period: BTreeMap<usize, u8> = BTreeMap::new();
        let mut made_of: BTreeMap<usize, u32> = BTreeMap::new();
        let (mut bags, mut groups) = (Vec::new(), Vec::new());
        for (group, bench) in benches.iter().enumerate() {
            let number = of_period.entry(bench.period).or_default();
            *number = number.saturating_add(1);
            let before = if round == Round::Second { cell.periods } else { 0 };
            let period = u8::try_from(before + bench.period + 1).unwrap_or(u8::MAX);
            let Some(of) = plan.periods.get(bench.period) else { continue };
            let in_period: Arc<str> = of.name.as_str().into();
            let codes = BagCode::all_of(period, *number);
            let mut own = Vec::new();
            for (place, (code, &treatment)) in (1..).zip(codes.zip(&bench.treatments)) {
                let replicate = made_of.entry(treatment).or_default();
                *replicate += 1;
                let planned = PlannedBag {
                    code: code.to_string(),
                    period: in_period.to_string(),
                    group: u32::from(*number),
                    place,
                    question: question_of(treatment, &plan),
                    treatment: name(treatment),
                    replicate: *replicate,
                };
                let full_mm = full_height_mm(&plan, &planned);
                plan.bags.push(planned);
                own.push(bags.len());
                bags.push(Made {
                    code,
                    treatment,
                    period: bench.period,
                    group,
                    full_mm,
                    in_period: in_period.clone(),
                });
            }
            groups.push(own);
        }
        let known = Known::of([&plan]);
        Ok(Self { cell: *cell, plan, known, bags, groups, again: None })
    }

    /// The kind of class.
    pub const fn cell(&self) -> &Cell {
        &self.cell
    }
}

/// Name of a treatment in the plan; 0 is the reference.
pub(super) fn name(treatment: usize) -> String {
    if treatment == 0 { "Reference".to_owned() } else { format!("Treatment {treatment}") }
}

fn question_of(treatment: usize, plan: &Plan) -> String {
    let asked = plan.questions.first().filter(|_| treatment > 0);
    asked.map_or(crate::plan::CONTROLS, |question| &question.id).to_owned()
}

/// Periods long enough for the last reading, and no more; groups and students do not count here.
fn answers(cell: &Cell) -> Answers {
    Answers {
        title: cell.name.to_owned(),
        date: date(2027, 3, 9),
        zone: "America/Chicago".to_owned(),
        place: Place::Altitude(200.0),
        first_start: time(8, 0, 0, 0),
        length_min: MIXING_MIN + f64::from(LAST_MIN) + CLEARING_MIN + 1.0,
        periods: u32::try_from(cell.periods).unwrap_or(u32::MAX),
        groups: 12,
        students: 36,
    }
}
