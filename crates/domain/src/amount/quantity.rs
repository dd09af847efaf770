//! Reading one quantity: a number and a unit, or several that belong together.

use super::dimension::{Dimension, Wanted};
use super::error::AmountError;
use super::number::{Number, scan, starts_number};
use super::units::{UNITS, Unit, unit_at};
use crate::nearest::nearest;

/// A value with what it measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quantity {
    /// What it measures.
    pub dimension: Dimension,
    /// The value in the unit that `dimension` names.
    pub value: f64,
}

/// Longer texts are refused unread.
const LONGEST: usize = 80;
/// Nothing in a classroom is larger than this in any of the base units.
const LARGEST: f64 = 1e9;

/// Words that stand for no fixed amount, with what to write instead.
const UNCLEAR: &[(&str, &str)] = &[
    ("t", "tsp or tbsp"),
    ("tb", "tbsp"),
    ("°", "°C or °F"),
    ("º", "°C or °F"),
    ("deg", "°C or °F"),
    ("degree", "°C or °F"),
    ("degrees", "°C or °F"),
    ("k", "the temperature in °C or °F"),
    ("heaping", "a level measure, such as 1 1/2 tsp"),
    ("heaped", "a level measure, such as 1 1/2 tsp"),
    ("rounded", "a level measure, such as 1 1/4 tsp"),
    ("scant", "a level measure, such as 3/4 tsp"),
    ("pinch", "a level measure, such as 1/8 tsp"),
    ("pinches", "a level measure, such as 1/8 tsp"),
    ("dash", "a level measure, such as 1/8 tsp, or drops"),
    ("spoon", "tsp or tbsp"),
    ("spoons", "tsp or tbsp"),
    ("spoonful", "tsp or tbsp"),
    ("scoop", "the scoop's content, such as 1 tsp"),
    ("handful", "the mass in g"),
    (":", "min and s, such as 3 min 30 s"),
];

impl Quantity {
    /// Reads a quantity such as `1 1/2 tsp`, `40 °C`, `3 min 30 s` or `1 tbsp + 1 tsp`.
    ///
    /// `wanted` only serves the messages: any dimension is taken, below zero too.
    ///
    /// # Errors
    /// [`AmountError`] says what is wrong and what to write instead.
    pub fn parse(text: &str, wanted: Wanted) -> Result<Self, AmountError> {
        let text = text.trim();
        if text.is_empty() {
            return Err(AmountError::Empty { wanted });
        }
        if text.len() > LONGEST {
            return Err(AmountError::TooLong { wanted });
        }
        if unit_at(text).is_some_and(|(_, rest)| rest.trim().is_empty()) {
            return Err(AmountError::NoNumber { text: text.into(), wanted });
        }
        let Some((number, after)) = scan(text)? else {
            return Err(AmountError::NoNumber { text: text.into(), wanted });
        };
        let Some((unit, mut rest)) = unit_at(after) else {
            return Err(no_unit(text, after, wanted));
        };
        let dimension = unit.dimension;
        let mut value = unit.value(&number);
        let mut last = unit;
        while let Some(next) = next_part(rest) {
            let Some((number, after)) = scan(next)? else { break };
            let Some((unit, after)) = unit_at(after) else {
                return Err(no_unit(text, after, wanted));
            };
            if unit.dimension != dimension {
                return Err(AmountError::Trailing { rest: next.trim().into() });
            }
            if one(unit) >= one(last) || value < 0.0 || dimension == Dimension::Temperature {
                return Err(AmountError::Order { text: text.into() });
            }
            value += unit.value(&number);
            last = unit;
            rest = after;
        }
        let rest = rest.trim();
        if is_range(rest) {
            return Err(AmountError::Range { text: text.into() });
        }
        if !rest.is_empty() {
            return Err(AmountError::Trailing { rest: rest.into() });
        }
        if value.is_nan() || value.abs() > LARGEST {
            return Err(AmountError::TooLarge { text: text.into() });
        }
        Ok(Self { dimension, value })
    }

    /// Reads a quantity of one dimension, 0 or more.
    pub(super) fn parse_as(
        text: &str,
        dimension: Dimension,
        wanted: Wanted,
    ) -> Result<f64, AmountError> {
        let value = Self::parse_signed(text, dimension, wanted)?;
        if value < 0.0 {
            return Err(AmountError::Negative { text: text.trim().into() });
        }
        Ok(value)
    }

    /// Reads a quantity of one dimension, below zero too.
    pub(super) fn parse_signed(
        text: &str,
        dimension: Dimension,
        wanted: Wanted,
    ) -> Result<f64, AmountError> {
        let quantity = Self::parse(text, wanted)?;
        if quantity.dimension == dimension {
            return Ok(quantity.value);
        }
        let is = quantity.dimension.name();
        Err(AmountError::WrongKind { text: text.trim().into(), is, wanted })
    }
}

/// Reads a number without a unit, such as `12`, `2,5`, `-1.5` or `1 3/8`.
///
/// # Errors
/// [`AmountError`] if there is no number, or anything after it.
pub fn number(text: &str) -> Result<f64, AmountError> {
    let wanted = Wanted::NUMBER;
    let text = text.trim();
    if text.is_empty() {
        return Err(AmountError::Empty { wanted });
    }
    if text.len() > LONGEST {
        return Err(AmountError::TooLong { wanted });
    }
    let Some((number, rest)) = scan(text)? else {
        return Err(AmountError::NoNumber { text: text.into(), wanted });
    };
    let rest = rest.trim();
    if is_range(rest) {
        return Err(AmountError::Range { text: text.into() });
    }
    if !rest.is_empty() {
        return Err(AmountError::Trailing { rest: rest.into() });
    }
    sized(&number, text)
}

fn sized(number: &Number, text: &str) -> Result<f64, AmountError> {
    let value = number.times_ten_to(0);
    if value.is_nan() || value.abs() > LARGEST {
        return Err(AmountError::TooLarge { text: text.into() });
    }
    Ok(value)
}

/// What one of this unit comes to.
fn one(unit: &Unit) -> f64 {
    10.0_f64.powi(unit.tens) * unit.factor / unit.over
}

/// The next part of a quantity of several parts, without the word or sign that joins it on.
fn next_part(rest: &str) -> Option<&str> {
    let rest = rest.trim_start();
    let joined = rest
        .strip_prefix("and ")
        .or_else(|| rest.strip_prefix('+'))
        .or_else(|| rest.strip_prefix(','))
        .unwrap_or(rest)
        .trim_start();
    starts_number(joined).then_some(joined)
}

/// Whether what follows a first number makes it a range: `2-3 g`, `2 to 3 g`.
fn is_range(rest: &str) -> bool {
    ["-", "–", "—", "…", "..", "to ", "or "]
        .iter()
        .any(|mark| rest.strip_prefix(mark).is_some_and(|r| starts_number(r.trim_start())))
}

/// Says why no known unit stands at the start of `after`.
fn no_unit(text: &str, after: &str, wanted: Wanted) -> AmountError {
    let after = after.trim_start();
    if after.is_empty() {
        return AmountError::NoUnit { text: text.into(), wanted };
    }
    if is_range(after) {
        return AmountError::Range { text: text.into() };
    }
    if starts_number(after) || after.starts_with(['.', ',', '/']) {
        return AmountError::Gap { text: text.into() };
    }
    let end = after.find(|c: char| c.is_ascii_digit()).unwrap_or(after.len());
    let words = after[..end].trim();
    let first = words.split_whitespace().next().unwrap_or(words);
    let lower = first.trim_end_matches('.').to_lowercase();
    if let Some((_, instead)) = UNCLEAR.iter().find(|(word, _)| *word == lower) {
        return AmountError::UnclearUnit { unit: first.into(), instead };
    }
    // Units of one letter are nearest to everything; only longer names are worth asking.
    let fitting = UNITS.iter().filter(|unit| wanted.dimensions.contains(&unit.dimension));
    let names = fitting.flat_map(|unit| unit.names).copied().filter(|n| n.chars().count() > 1);
    let meant = nearest(words, names.clone()).or_else(|| nearest(first, names));
    AmountError::UnknownUnit { unit: first.into(), meant, wanted }
}
