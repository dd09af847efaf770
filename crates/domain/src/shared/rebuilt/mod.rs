//! From shared rows back to an investigation that can be analyzed.

mod asked;
mod frame;
mod recipe;

use super::{Rows, Shared, TreatmentCode, TreatmentRow};
use crate::bench;
use crate::plan::{Plan, Recipe};
use crate::reading::{Reading, SetAside};
use crate::result::meter::MeterReading;
use crate::starter::StarterError;
use barm_science::meter::Sample;
use frame::{frame, interval};
use jiff::civil::Date;
use recipe::recipe;
use std::collections::BTreeMap;

/// What rows of shared data do not say.
#[derive(Debug, Clone, PartialEq)]
pub struct Unsaid {
    /// What to call it.
    pub title: String,
    /// The day to write down, since none is known.
    pub date: Date,
    /// The smallest difference in rise that counted as readable (mm), if that was said.
    pub readable_mm: Option<f64>,
    /// Minutes between readings as planned, if that was said; else they are taken from the readings.
    pub interval_min: Option<f64>,
    /// US grade, if that was said.
    pub grade: Option<u8>,
    /// Whether no class made these bags.
    pub made_up: bool,
}

/// Shared data as a plan and what was read of its day.
#[derive(Debug, Clone, PartialEq)]
pub struct Investigation {
    /// The plan: recipes, bags and comparisons as they were; times of day, students and names of ours.
    pub plan: Plan,
    /// Heights.
    pub readings: Vec<Reading>,
    /// Bags set aside.
    pub set_aside: Vec<SetAside>,
    /// What the breath meter showed.
    pub meter: Vec<MeterReading>,
    /// Treatments that no plan can say, with their bags.
    pub left_out: Vec<LeftOut>,
    /// Which treatment of the plan has which code.
    pub names: BTreeMap<String, TreatmentCode>,
}

/// A treatment that no plan can say.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// Its code.
    pub treatment: TreatmentCode,
    /// Its bags, which are left out with it.
    pub bags: usize,
    /// Why, to be read after its code.
    pub why: String,
}

/// Why shared data make no investigation.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NotRebuilt {
    /// There is nothing that could be analyzed.
    #[error("the data have no bag of a treatment that can be told in a plan")]
    Nothing,
    /// Bags of a period stood in two rooms.
    #[error("bags of period {period} have rooms of different warmth or air pressure")]
    TwoRooms {
        /// The period.
        period: u8,
    },
    /// The frame of a plan cannot be made.
    #[error(transparent)]
    Frame(#[from] StarterError),
}

impl Shared {
    /// A plan and a day's readings that say what these rows say. Treatments are called by their code
    /// and what is in them. Sharing it again gives the same rows, but for treatments that are left out.
    ///
    /// # Errors
    /// [`NotRebuilt`] where nothing can be analyzed.
    pub fn investigation(&self, unsaid: &Unsaid) -> Result<Investigation, NotRebuilt> {
        let rows = self.rows();
        let interval_min = unsaid.interval_min.unwrap_or_else(|| interval(rows));
        let mut plan = frame(rows, unsaid, interval_min)?;
        let mut left_out = Vec::new();
        let mut recipes = BTreeMap::new();
        for row in &rows.treatments {
            let made = recipe(rows, row).and_then(|recipe| {
                let day = plan.days.first().ok_or("there is no bag of it")?;
                let setup = bench::setup(&plan, &recipe, day);
                setup.map(|_| recipe).map_err(|error| error.to_string())
            });
            match made {
                Ok(recipe) => {
                    recipes.insert(row.code, recipe);
                }
                Err(why) => {
                    let bags = rows.bags.iter().filter(|bag| bag.treatment == row.code).count();
                    left_out.push(LeftOut { treatment: row.code, bags, why });
                }
            }
        }
        let usual = usual(rows, &recipes).ok_or(NotRebuilt::Nothing)?;
        let name = |row: &TreatmentRow| format!("{} {}", row.code, rows.says(row, usual));
        let kept = rows.treatments.iter().filter(|row| recipes.contains_key(&row.code));
        let names: BTreeMap<TreatmentCode, String> =
            kept.map(|row| (row.code, name(row))).collect();
        plan.base = base(recipes.get(&usual.code).ok_or(NotRebuilt::Nothing)?);
        let treated =
            asked::Treated { rows, recipes: &recipes, names: &names, base: &plan.base };
        (plan.questions, plan.controls) = (treated.questions(), treated.controls());
        plan.bags = treated.bags(&plan.questions);
        if plan.bags.is_empty() || plan.questions.is_empty() {
            return Err(NotRebuilt::Nothing);
        }
        let has = |bag: &str| plan.bags.iter().any(|own| own.code == bag);
        let readings = rows.readings.iter().map(|row| Reading {
            bag: row.bag.to_string(),
            minute: row.minute,
            height_mm: row.height_mm,
            line: 0,
            event: None,
        });
        let set_aside = rows.set_aside.iter().map(|row| SetAside {
            bag: row.bag.to_string(),
            rule: row.rule.word().into(),
            line: 0,
        });
        let meter = rows.meter.iter().map(|row| MeterReading {
            bag: row.bag.to_string(),
            percent: row.percent,
            turn: row.turn,
            minute: row.minute,
            celsius: row.celsius,
            sample: Sample { gas_ml: row.gas_ml, air_ml: row.air_ml },
            line: 0,
        });
        Ok(Investigation {
            readings: readings.filter(|one| has(&one.bag)).collect(),
            set_aside: set_aside.filter(|one| has(&one.bag)).collect(),
            meter: meter.filter(|one| has(&one.bag)).collect(),
            left_out,
            names: names.into_iter().map(|(code, name)| (name, code)).collect(),
            plan,
        })
    }
}

/// The treatment that a base recipe is made of: the first with yeast.
fn usual<'a>(
    rows: &'a Rows,
    recipes: &BTreeMap<TreatmentCode, Recipe>,
) -> Option<&'a TreatmentRow> {
    let kept = || rows.treatments.iter().filter(|row| recipes.contains_key(&row.code));
    kept().find(|row| row.yeast.is_some()).or_else(|| kept().next())
}

/// A base recipe: that of a treatment without what else goes in.
fn base(recipe: &Recipe) -> Recipe {
    Recipe {
        food: None,
        food_amount: None,
        enzyme: None,
        enzyme_amount: None,
        extras: Vec::new(),
        ..recipe.clone()
    }
}
