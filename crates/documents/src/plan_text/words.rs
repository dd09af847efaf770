//! Values that are one of a few words, or that must lie between limits.

use super::mistake::Wrong;
use barm_domain::amount::Amount;
use barm_domain::nearest::{nearest, plain};
use barm_domain::plan::{Inquiry, Round, Variable};
use barm_science::food::label::{LabelStarch, NaturalSugar};
use barm_science::setup::YeastKind;
use std::ops::RangeInclusive;

/// The yeasts as plans name them; the first name of a kind is the one that is written.
pub(crate) const YEASTS: &[(&str, Option<YeastKind>)] = &[
    ("instant", Some(YeastKind::Instant)),
    ("active dry", Some(YeastKind::ActiveDry)),
    ("compressed", Some(YeastKind::Compressed)),
    ("none", None),
    ("fresh", Some(YeastKind::Compressed)),
    ("instant dry", Some(YeastKind::Instant)),
];

/// The kinds of starch of a label food.
pub(crate) const STARCHES: &[(&str, LabelStarch)] = &[
    ("raw", LabelStarch::Raw),
    ("cooked", LabelStarch::Cooked),
    ("dextrin", LabelStarch::Dextrin),
    ("maltodextrin", LabelStarch::Dextrin),
];

/// The kinds of sugar of a label food that were not added.
pub(crate) const SUGARS: &[(&str, NaturalSugar)] = &[
    ("unknown", NaturalSugar::Unknown),
    ("sucrose", NaturalSugar::Sucrose),
    ("fruit", NaturalSugar::Fruit),
    ("milk", NaturalSugar::Milk),
    ("malt", NaturalSugar::Malt),
    ("dextrose", NaturalSugar::Dextrose),
];

/// The value of the word that is written.
pub(crate) fn choose<T: Copy>(written: &str, offered: &[(&str, T)]) -> Result<T, Wrong> {
    let wanted = plain(written);
    if let Some((_, value)) = offered.iter().find(|(word, _)| plain(word) == wanted) {
        return Ok(*value);
    }
    let words = || offered.iter().map(|(word, _)| *word);
    let fix = match nearest(written, words()) {
        Some(meant) => format!("did you mean {meant}?"),
        None => format!("write one of: {}", words().collect::<Vec<_>>().join(", ")),
    };
    Err(Wrong::new(
        format!("“{}” is not one of the words known here", super::section::short(written)),
        fix,
    ))
}

pub(crate) fn inquiry(written: &str) -> Result<Inquiry, Wrong> {
    choose(written, &Inquiry::ALL.map(|level| (level.word(), level)))
}

pub(crate) fn round(written: &str) -> Result<Round, Wrong> {
    choose(written, &Round::ALL.map(|round| (round.words(), round)))
}

/// Things that go in besides the food, by which people name their variable.
const ADDED: [&str; 6] = ["salt", "table salt", "vinegar", "baking soda", "soda", "juice"];

pub(crate) fn variable(written: &str) -> Result<Variable, Wrong> {
    if ADDED.iter().any(|added| plain(added) == plain(written)) {
        return Err(Wrong::new(
            format!("“{written}” is something that goes in besides the food"),
            "write variable = \"extra\", and in each treatment extra = \
             [{ item = \"table salt\", amount = \"1/4 tsp\" }]",
        ));
    }
    choose(written, &Variable::ALL.map(|variable| (variable.words(), variable)))
}

/// The word that is written for a value.
pub(crate) fn word_for<T: Copy + PartialEq>(
    value: T,
    offered: &[(&'static str, T)],
) -> &'static str {
    offered.iter().find(|(_, other)| *other == value).map_or("", |(word, _)| *word)
}

/// The value, if it lies between the limits.
pub(crate) fn within(
    value: f64,
    limits: RangeInclusive<f64>,
    unit: &str,
    written: &str,
) -> Result<f64, Wrong> {
    if limits.contains(&value) {
        return Ok(value);
    }
    let (low, high) = (limits.start(), limits.end());
    Err(Wrong::new(
        format!("“{written}” lies outside {low} to {high} {unit}"),
        "check the number and its unit",
    ))
}

/// Takes the place of an amount that could not be read; the plan is not given out then.
pub(crate) fn nothing() -> Amount {
    Amount { written: "0 g".into(), kind: barm_domain::amount::AmountKind::Mass, value: 0.0 }
}
