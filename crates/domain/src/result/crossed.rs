//! A question that is declared crossed: does the one change do the same at every level of the
//! other?

use super::sample::Sample;
use crate::plan::{Plan, Question, Recipe, Variable};
use barm_science::ruler;
use barm_science::statistics::compare::{BagValue, How};
use barm_science::statistics::factorial::{CrossedValue, Factorial, factorial};
use std::collections::{BTreeMap, BTreeSet};

/// What a crossed question shows beyond its comparisons.
#[derive(Debug, Clone, PartialEq)]
pub struct Crossed {
    /// Levels of the variable that the question is crossed with, such as the foods; their places
    /// are the numbers in the analyses.
    pub first_levels: Vec<String>,
    /// Levels of the question's own variable, such as without and with the enzyme.
    pub second_levels: Vec<String>,
    /// Whether each treatment stands beside a reference of its own; then the first levels are
    /// those references, and the second are without and with the change.
    pub paired: bool,
    /// The analysis with all bags.
    pub with: Factorial,
    /// The analysis without the bags that are set aside.
    pub without: Factorial,
}

/// Which treatment stands in which cell.
struct Cells<'a> {
    of: BTreeMap<&'a str, (usize, usize)>,
    first_levels: Vec<String>,
    second_levels: Vec<String>,
    references: (usize, usize),
    paired: bool,
}

impl Crossed {
    /// The analysis of a question that is declared crossed, if its treatments can be laid out in
    /// cells; nothing for other questions.
    pub(super) fn of(
        plan: &Plan,
        question: &Question,
        pairs: &[(&str, &str)],
        sample: &Sample<'_>,
        level: f64,
    ) -> Option<Self> {
        let other = question.crossed_with?;
        let cells = Cells::of_pairs(pairs)
            .or_else(|| Cells::of_levels(plan, question, (other, question.variable), pairs))?;
        let of_number: BTreeMap<usize, (usize, usize)> = cells
            .of
            .iter()
            .filter_map(|(name, cell)| Some((sample.number(name)?, *cell)))
            .collect();
        let how = How::of_a_class(ruler::usual_difference_sd_mm()).at(level);
        let analysis = |and_set_aside| {
            let values: Vec<CrossedValue> = sample
                .values(and_set_aside)
                .iter()
                .filter_map(|bag| {
                    let &(first, second) = of_number.get(&bag.treatment)?;
                    let BagValue { value, block, group, .. } = *bag;
                    Some(CrossedValue { value, first, second, block, group })
                })
                .collect();
            factorial(&values, cells.references, &how)
        };
        Some(Self {
            with: analysis(true),
            without: analysis(false),
            paired: cells.paired,
            first_levels: cells.first_levels,
            second_levels: cells.second_levels,
        })
    }
}

impl<'a> Cells<'a> {
    /// Each treatment beside a reference of its own: the pair is the level of the other variable,
    /// so that each food may have the enzyme that suits it.
    fn of_pairs(pairs: &[(&'a str, &'a str)]) -> Option<Self> {
        let all: Vec<&str> = pairs.iter().flat_map(|(a, b)| [*a, *b]).collect();
        let different: BTreeSet<&str> = all.iter().copied().collect();
        if pairs.len() < 2 || different.len() < all.len() {
            return None;
        }
        let of = pairs
            .iter()
            .enumerate()
            .flat_map(|(at, (treatment, reference))| {
                [(*reference, (at, 0)), (*treatment, (at, 1))]
            })
            .collect();
        Some(Self {
            of,
            first_levels: pairs.iter().map(|(_, reference)| (*reference).to_owned()).collect(),
            second_levels: vec!["without".to_owned(), "with".to_owned()],
            references: (0, 0),
            paired: true,
        })
    }

    /// Treatments that share a reference: levels as their recipes have them. `None` where two
    /// treatments have the same levels of both variables, or a variable has one level only.
    fn of_levels(
        plan: &'a Plan,
        question: &'a Question,
        (first, second): (Variable, Variable),
        pairs: &[(&'a str, &'a str)],
    ) -> Option<Self> {
        let mut cells = Self {
            of: BTreeMap::new(),
            first_levels: Vec::new(),
            second_levels: Vec::new(),
            references: (0, 0),
            paired: false,
        };
        let mut taken = BTreeSet::new();
        for treatment in plan.answering(question) {
            let name = treatment.name.as_str();
            if pairs.iter().all(|(a, b)| *a != name && *b != name) {
                continue;
            }
            let recipe = plan.recipe(treatment);
            let cell = (
                place(&mut cells.first_levels, level(&recipe, first)),
                place(&mut cells.second_levels, level(&recipe, second)),
            );
            if !taken.insert(cell) {
                return None;
            }
            if question.reference.as_deref() == Some(name) {
                cells.references = cell;
            }
            cells.of.insert(name, cell);
        }
        let crossed = cells.first_levels.len() > 1 && cells.second_levels.len() > 1;
        crossed.then_some(cells)
    }
}

fn place(levels: &mut Vec<String>, level: String) -> usize {
    levels.iter().position(|known| *known == level).unwrap_or_else(|| {
        levels.push(level);
        levels.len() - 1
    })
}

/// The level of a variable in a recipe, as it is written there.
fn level(recipe: &Recipe, variable: Variable) -> String {
    let written = |amount: &Option<crate::amount::Amount>| {
        amount.as_ref().map_or("none", |amount| &amount.written).to_owned()
    };
    let named = |name: &Option<String>| name.as_deref().unwrap_or("none").to_owned();
    match variable {
        Variable::Food => named(&recipe.food),
        Variable::FoodAmount => written(&recipe.food_amount),
        Variable::Enzyme => named(&recipe.enzyme),
        Variable::EnzymeAmount => written(&recipe.enzyme_amount),
        Variable::Yeast => format!("{:?}", recipe.yeast),
        Variable::YeastAmount => recipe.yeast_amount.written.clone(),
        Variable::Water => recipe.water.written.clone(),
        Variable::WaterTemperature => format!("{} °C", recipe.water_celsius),
        Variable::Extra => recipe
            .extras
            .iter()
            .map(|extra| format!("{} {}", extra.amount.written, extra.item))
            .collect::<Vec<_>>()
            .join(", "),
        Variable::Bag => recipe.bag.written.clone(),
        Variable::Card => recipe.card.written.clone(),
        Variable::Lies => format!("{:?}", recipe.lies),
    }
}
