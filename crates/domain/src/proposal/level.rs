//! Reads one level of a proposal.
//!
//! A level names values of the thing that is changed, and may name others after a `+`, as in
//! `honey + 45 °C`; that this is no fair test is for the checks to say.

use super::opened::{self, Opened};
use crate::amount::{self, Amount, AmountKind};
use crate::cupboard::{Cupboard, spoken};
use crate::nearest::plain;
use crate::plan::{BagChoice, CardChoice, Difference, Extra, Lies, Plan, Variable, YeastKind};

/// Why a level cannot be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Unclear {
    /// Something that is not in the cupboard.
    NotOpen(String),
    /// It says nothing that goes into a bag.
    Meaning,
}

/// Names of a bag without something.
const NONE: [&str; 5] = ["none", "no", "nothing", "without", "0"];

/// Reads what a level changes against the base recipe; `keeps` is what every level has.
pub(super) fn read(
    plan: &Plan,
    open: &Opened,
    variable: Variable,
    keeps: &str,
    level: &str,
) -> Result<Difference, Unclear> {
    let mut difference = Difference::default();
    for part in parts(keeps) {
        any(plan, open, &mut difference, part)?;
    }
    for part in parts(level) {
        if !one(plan, open, &mut difference, variable, part)? {
            any(plan, open, &mut difference, part)?;
        }
    }
    if parts(level).next().is_none() {
        return Err(Unclear::Meaning);
    }
    Ok(difference)
}

fn parts(text: &str) -> impl Iterator<Item = &str> {
    text.split('+').map(str::trim).filter(|part| !part.is_empty())
}

/// What a level is called on a label.
pub(super) fn name(variable: Variable, level: &str) -> String {
    let level = level.trim();
    let none = NONE.contains(&plain(level).as_str());
    let name = if none { format!("no {}", variable.words()) } else { level.to_owned() };
    let mut letters = name.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Reads a part as a value of anything.
fn any(
    plan: &Plan,
    open: &Opened,
    difference: &mut Difference,
    part: &str,
) -> Result<(), Unclear> {
    use Variable::{
        Bag, Card, Enzyme, Extra, Food, FoodAmount, Lies, Water, WaterTemperature, Yeast,
    };
    for variable in
        [WaterTemperature, Food, Enzyme, Yeast, Lies, Bag, Card, Extra, FoodAmount, Water]
    {
        if one(plan, open, difference, variable, part)? {
            return Ok(());
        }
    }
    Err(Unclear::Meaning)
}

/// Reads a part as a value of one thing; gives whether it is one.
fn one(
    plan: &Plan,
    open: &Opened,
    difference: &mut Difference,
    variable: Variable,
    part: &str,
) -> Result<bool, Unclear> {
    let word = plain(part);
    let none =
        NONE.contains(&word.as_str()) || word == plain(&format!("no {}", variable.words()));
    let not_open = |id: &str| Unclear::NotOpen(spoken(id).to_owned());
    match variable {
        Variable::Food if none => difference.food = Some(None),
        Variable::Food => match opened::food(plan, open, part) {
            Some(Ok(id)) => difference.food = Some(Some(id)),
            Some(Err(())) => return Err(Unclear::NotOpen(part.to_owned())),
            None => return Ok(false),
        },
        Variable::FoodAmount if none => difference.food = Some(None),
        Variable::Enzyme if none => difference.enzyme = Some(None),
        Variable::Enzyme => match Cupboard::enzyme(part) {
            Ok(key) if open.has(&key) => {
                difference.enzyme_amount = opened::enzyme_given(plan, &key);
                difference.enzyme = Some(Some(key));
            }
            Ok(key) => return Err(not_open(&key)),
            Err(_) => return Ok(false),
        },
        Variable::EnzymeAmount if none => difference.enzyme = Some(None),
        Variable::Yeast if none => difference.yeast = Some(None),
        Variable::Yeast => match yeast(&word) {
            Some(kind) => difference.yeast = Some(Some(kind)),
            None => return Ok(false),
        },
        Variable::YeastAmount if none => difference.yeast = Some(None),
        Variable::FoodAmount
        | Variable::EnzymeAmount
        | Variable::YeastAmount
        | Variable::Water => {
            let Ok(amount) = Amount::parse(part) else { return Ok(false) };
            let volume = !matches!(amount.kind, AmountKind::Mass);
            match variable {
                Variable::FoodAmount => difference.food_amount = Some(amount),
                Variable::EnzymeAmount => difference.enzyme_amount = Some(amount),
                Variable::YeastAmount => difference.yeast_amount = Some(amount),
                _ if volume => difference.water = Some(amount),
                _ => return Ok(false),
            }
        }
        Variable::WaterTemperature => match amount::celsius(part) {
            Ok(celsius) => difference.water_celsius = Some(celsius),
            Err(_) => return Ok(false),
        },
        Variable::Extra if none => difference.extras = Some(Vec::new()),
        Variable::Extra => match extra(plan, part) {
            Some(extra) if open.has(&extra.item) => difference.extras = Some(vec![extra]),
            Some(extra) => return Err(not_open(&extra.item)),
            None => return Ok(false),
        },
        Variable::Bag => match BagChoice::parse(part) {
            Ok(bag) => difference.bag = Some(bag),
            Err(_) => return Ok(false),
        },
        Variable::Card => match CardChoice::parse(part) {
            Ok(card) => difference.card = Some(card),
            Err(_) => return Ok(false),
        },
        Variable::Lies => match Lies::parse(part) {
            Ok(lies) => difference.lies = Some(lies),
            Err(_) => return Ok(false),
        },
    }
    Ok(true)
}

fn yeast(word: &str) -> Option<YeastKind> {
    [
        ("instant", YeastKind::Instant),
        ("active dry", YeastKind::ActiveDry),
        ("compressed", YeastKind::Compressed),
        ("fresh", YeastKind::Compressed),
    ]
    .into_iter()
    .find(|(name, _)| plain(name) == word || plain(&format!("{name} yeast")) == word)
    .map(|(_, kind)| kind)
}

/// Something with its amount, in either order: `salt 1 g`, `1/4 tsp salt`.
fn extra(plan: &Plan, part: &str) -> Option<Extra> {
    let words: Vec<&str> = part.split_whitespace().collect();
    (1..words.len()).find_map(|cut| {
        let (first, last) = (words[..cut].join(" "), words[cut..].join(" "));
        [(&first, &last), (&last, &first)].into_iter().find_map(|(item, amount)| {
            let amount = Amount::parse(amount).ok()?;
            let item = Cupboard::with(&plan.label_foods).food(item).ok()?;
            Some(Extra { item, amount })
        })
    })
}
