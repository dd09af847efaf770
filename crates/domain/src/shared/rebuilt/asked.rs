//! Which treatments answer which question, and their bags.

use crate::plan::{
    CONTROLS, Control, Difference, PlannedBag, Question, Recipe, Treatment, Variable,
};
use crate::shared::{Rows, TreatmentCode, TreatmentRow};
use std::collections::{BTreeMap, BTreeSet};

/// Treatments that a plan can say.
pub(super) struct Treated<'a> {
    pub(super) rows: &'a Rows,
    pub(super) recipes: &'a BTreeMap<TreatmentCode, Recipe>,
    pub(super) names: &'a BTreeMap<TreatmentCode, String>,
    pub(super) base: &'a Recipe,
}

/// What holds a question together: its number, or the treatment with which others are compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Key {
    Number(u16),
    Beside(TreatmentCode),
}

impl Treated<'_> {
    fn kept(&self) -> impl Iterator<Item = &TreatmentRow> {
        self.rows.treatments.iter().filter(|row| self.names.contains_key(&row.code))
    }

    /// The treatment it is compared with, if a plan can say that one.
    fn beside(&self, row: &TreatmentRow) -> Option<&TreatmentRow> {
        let beside = row.beside?;
        self.kept().find(|row| row.code == beside)
    }

    fn key(&self, row: &TreatmentRow) -> Key {
        let beside = || self.beside(row).map_or(row.code, |beside| beside.code);
        row.question.map_or_else(|| Key::Beside(beside()), Key::Number)
    }

    fn name(&self, row: &TreatmentRow) -> String {
        self.names.get(&row.code).cloned().unwrap_or_default()
    }

    fn bags_of(&self, row: &TreatmentRow) -> u32 {
        let own = self.rows.bags.iter().filter(|bag| bag.treatment == row.code).count();
        u32::try_from(own).unwrap_or(999).clamp(1, 999)
    }

    /// The questions, in the order of their treatments.
    pub(super) fn questions(&self) -> Vec<Question> {
        let own: Vec<&TreatmentRow> = self.kept().filter(|row| !row.control).collect();
        let mut keys: Vec<Key> = Vec::new();
        for key in own.iter().map(|row| self.key(row)) {
            if !keys.contains(&key) {
                keys.push(key);
            }
        }
        let of = |(at, key): (usize, &Key)| {
            let rows: Vec<&TreatmentRow> =
                own.iter().copied().filter(|row| self.key(row) == *key).collect();
            self.question(at + 1, &rows)
        };
        keys.iter().enumerate().map(of).collect()
    }

    fn question(&self, number: usize, rows: &[&TreatmentRow]) -> Question {
        let references: BTreeSet<TreatmentCode> =
            rows.iter().filter_map(|row| self.beside(row)).map(|row| row.code).collect();
        // One reference for all, but for itself: then the question names it.
        let one = (references.len() == 1).then(|| references.first()).flatten().copied();
        let one = one.filter(|code| {
            rows.iter().all(|row| row.code == *code || self.beside(row).is_some())
        });
        let most = rows.iter().map(|row| self.bags_of(row)).max().unwrap_or(1);
        let treatment = |row: &&TreatmentRow| Treatment {
            name: self.name(row),
            beside: match one {
                Some(_) => None,
                None => self.beside(row).map(|row| self.name(row)),
            },
            replicates: Some(self.bags_of(row)).filter(|bags| *bags != most),
            difference: self.difference(row),
        };
        let asks = match one.and_then(|code| self.names.get(&code)) {
            Some(name) => format!("What rises otherwise than {name}?"),
            None => "What rises otherwise than what it is compared with?".to_owned(),
        };
        Question {
            id: format!("q{number}"),
            asks,
            variable: self.variable(rows),
            crossed_with: None,
            reference: one.and_then(|code| self.names.get(&code).cloned()),
            treatments: rows.iter().map(treatment).collect(),
            uses: Vec::new(),
            replicates: most,
        }
    }

    /// What a question changes first, by its recipes.
    fn variable(&self, rows: &[&TreatmentRow]) -> Variable {
        let changed = rows.iter().find_map(|row| {
            let beside = self.beside(row)?;
            let (one, other) = (self.recipes.get(&row.code)?, self.recipes.get(&beside.code)?);
            changed(one, other)
        });
        changed.unwrap_or(Variable::Food)
    }

    fn difference(&self, row: &TreatmentRow) -> Difference {
        self.recipes
            .get(&row.code)
            .map(|recipe| difference(recipe, self.base))
            .unwrap_or_default()
    }

    /// The shared controls, as many a period as one period had at most.
    pub(super) fn controls(&self) -> Vec<Control> {
        let control = |row: &TreatmentRow| {
            let mut counts: BTreeMap<u8, u32> = BTreeMap::new();
            for bag in self.rows.bags.iter().filter(|bag| bag.treatment == row.code) {
                *counts.entry(bag.code.period()).or_default() += 1;
            }
            let treatment = Treatment {
                name: self.name(row),
                beside: None,
                replicates: None,
                difference: self.difference(row),
            };
            let most = counts.into_values().max().unwrap_or(1);
            Control { treatment, per_period: most.clamp(1, 99) }
        };
        self.kept().filter(|row| row.control).map(control).collect()
    }

    /// The bags of treatments that a plan can say.
    pub(super) fn bags(&self, questions: &[Question]) -> Vec<PlannedBag> {
        let mut places: BTreeMap<(u8, u8), u32> = BTreeMap::new();
        let bags = self.rows.bags.iter().filter_map(|bag| {
            let treatment = self.names.get(&bag.treatment)?;
            let asked = questions
                .iter()
                .find(|question| question.treatments.iter().any(|one| one.name == *treatment));
            let place = places.entry((bag.code.period(), bag.code.group())).or_default();
            *place += 1;
            Some(PlannedBag {
                code: bag.code.to_string(),
                period: bag.code.period().to_string(),
                group: u32::from(bag.code.group()),
                place: *place,
                question: asked.map_or_else(|| CONTROLS.to_owned(), |one| one.id.clone()),
                treatment: treatment.clone(),
                replicate: bag.replicate,
            })
        });
        bags.collect()
    }
}

/// What a recipe changes against the base.
fn difference(recipe: &Recipe, base: &Recipe) -> Difference {
    let yeast_amount = recipe.yeast.is_some() && recipe.yeast_amount != base.yeast_amount;
    Difference {
        bag: (recipe.bag != base.bag).then(|| recipe.bag.clone()),
        card: (recipe.card != base.card).then(|| recipe.card.clone()),
        water: (recipe.water != base.water).then(|| recipe.water.clone()),
        water_celsius: recipe
            .water_celsius
            .total_cmp(&base.water_celsius)
            .is_ne()
            .then_some(recipe.water_celsius),
        yeast: (recipe.yeast != base.yeast).then_some(recipe.yeast),
        yeast_amount: yeast_amount.then(|| recipe.yeast_amount.clone()),
        food: recipe.food.clone().map(Some),
        food_amount: recipe.food_amount.clone(),
        enzyme: recipe.enzyme.clone().map(Some),
        enzyme_amount: recipe.enzyme_amount.clone(),
        extras: (!recipe.extras.is_empty()).then(|| recipe.extras.clone()),
        lies: (recipe.lies != base.lies).then_some(recipe.lies),
    }
}

/// The first thing in which two recipes differ, in the order in which variables are offered.
fn changed(one: &Recipe, other: &Recipe) -> Option<Variable> {
    let differs = |variable: &Variable| match variable {
        Variable::Food => one.food != other.food,
        Variable::FoodAmount => one.food_amount != other.food_amount,
        Variable::Enzyme => one.enzyme != other.enzyme,
        Variable::EnzymeAmount => one.enzyme_amount != other.enzyme_amount,
        Variable::Yeast => one.yeast != other.yeast,
        Variable::YeastAmount => one.yeast_amount != other.yeast_amount,
        Variable::Water => one.water != other.water,
        Variable::WaterTemperature => one.water_celsius.total_cmp(&other.water_celsius).is_ne(),
        Variable::Extra => one.extras != other.extras,
        Variable::Bag => one.bag != other.bag,
        Variable::Card => one.card != other.card,
        Variable::Lies => one.lies != other.lies,
    };
    Variable::ALL.into_iter().find(differs)
}
