//! What changed, in units and words that people know.

use super::card;
use super::lots::Teaspoon;
use super::numbers::of;
use super::protocol::Protocol;
use super::readings::Part;
use super::titles::{plain, title};
use barm_science::enzyme::{PRODUCTS, Product};
use barm_science::meter::MeterPosterior;
use barm_science::prior::{Key, Learned, Of, Row, Transform, Whose, standard};

/// One number before and after a pilot.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What it is, in plain words.
    pub title: String,
    /// Its unit.
    pub unit: Unit,
    /// Best guess and the ends of the middle 80 %, before.
    pub before: [f64; 3],
    /// The same after.
    pub after: [f64; 3],
    /// What is left of its doubt (1).
    pub left: f64,
}

/// In what a number is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Times what is usual.
    Times,
    /// Grams.
    Grams,
    /// Millilitres.
    Milliliters,
    /// Kelvin.
    Kelvin,
    /// The meter's own percent.
    Percent,
    /// A number of its own kind.
    Plain,
}

impl Unit {
    /// What stands behind a number.
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Times => "× usual",
            Self::Grams => "g",
            Self::Milliliters => "mL",
            Self::Kelvin => "K",
            Self::Percent => "%",
            Self::Plain => "",
        }
    }
}

/// From a best guess to the end of the middle 80 % of a normal distribution (standard deviations).
const TO_TENTH: f64 = 1.2816;
/// A number that kept more than this of its doubt is not shown (1).
const TELLING: f64 = 0.9;
/// A number that moved by more than this is shown all the same (standard deviations of the prior).
const MOVED: f64 = 0.5;

/// What to compare.
pub(super) struct Sides<'a> {
    pub(super) protocol: &'a Protocol,
    pub(super) parts: &'a [Part],
    pub(super) numbers: (&'a Learned, &'a Learned),
    pub(super) teaspoon: (Teaspoon, Option<Teaspoon>),
    pub(super) meter: (MeterPosterior, MeterPosterior),
}

/// What changed: spoon, card and meter first where they were measured, then numbers of the model, the
/// best known first.
pub(super) fn changes(sides: &Sides<'_>) -> Vec<Change> {
    let mut all = Vec::new();
    let has = |part| sides.parts.contains(&part);
    if let (true, (before, Some(after))) = (has(Part::Spoons), sides.teaspoon) {
        let title = "a level teaspoon of yeast".to_owned();
        let (before, after) = ((before.grams, before.grams_sd), (after.grams, after.grams_sd));
        all.push(normal(title, Unit::Grams, before, after));
    }
    if let Some(syringe) = sides.protocol.syringe.as_ref()
        && (has(Part::Syringe) || has(Part::Bags))
    {
        let rise = card::usual_rise_mm(syringe);
        let gas = |numbers| card::gas_at(syringe, numbers, rise);
        let title = format!("gas under a card that rose {rise:.0} mm");
        let change =
            normal(title, Unit::Milliliters, gas(sides.numbers.0), gas(sides.numbers.1));
        if has(Part::Syringe) || change.left < TELLING {
            all.push(change);
        }
    }
    // Those of the card's curve are shown as gas under it.
    let is_of_card = |name: &str| card::CURVE.contains(&plain(name));
    all.extend(of_model(sides.numbers.0, sides.numbers.1, |name| !is_of_card(name)));
    if has(Part::Meter) {
        let (before, after) = sides.meter;
        let gain = |meter: &MeterPosterior| (meter.log_gain, meter.log_gain_sd);
        let title = "what the meter shows over what it should".to_owned();
        all.push(logged(title, gain(&before), gain(&after)));
        let zero = |meter: &MeterPosterior| (meter.zero, meter.zero_sd);
        let title = "what the meter shows of clean air".to_owned();
        all.push(normal(title, Unit::Percent, zero(&before), zero(&after)));
    }
    all
}

/// What a class's day changed: numbers of the model, the best known first.
pub(crate) fn changes_of_day(before: &Learned, after: &Learned) -> Vec<Change> {
    of_model(before, after, |_| true)
}

/// Numbers of the model that were moved and are to be shown, the best known first.
fn of_model(before: &Learned, after: &Learned, shows: impl Fn(&str) -> bool) -> Vec<Change> {
    let rows = standard();
    let mut all = Vec::new();
    for name in after.names.iter().filter(|name| shows(name)) {
        let (was, is) = (of(before, name), of(after, name));
        let is_telling = is.1 < TELLING * was.1 || (is.0 - was.0).abs() > MOVED;
        if !is_telling || name.starts_with("content ") {
            continue;
        }
        let of_kind = |row: &&Row| match row.whose {
            Whose::Yeast(kind) => name.ends_with(&Of::Yeast(kind).to_string()),
            Whose::All | Whose::Bags => true,
        };
        let row = rows.iter().filter(|row| row.name == plain(name)).find(of_kind);
        let title = title(name);
        let change = match row {
            Some(row) => of_row(title, row, was, is),
            // Activities are not in the table; their width comes with each dose.
            None => {
                let of_name = |one: &&Product| Key::activity(one.kind).to_string() == *name;
                let width = PRODUCTS.iter().find(of_name).map_or(1.0, Product::activity_sd);
                let scaled = |(mean, sd): (f64, f64)| (width * mean, width * sd);
                logged(title, scaled(was), scaled(is))
            }
        };
        all.push(change);
    }
    all.sort_by(|a, b| a.left.total_cmp(&b.left));
    all
}

fn of_row(title: String, row: &Row, was: (f64, f64), is: (f64, f64)) -> Change {
    let width = row.spread.day;
    let scaled = |(mean, sd): (f64, f64)| (width * mean, width * sd);
    match row.transform {
        Transform::Log => logged(title, scaled(was), scaled(is)),
        Transform::Plain | Transform::Between(..) | Transform::Distance => {
            let unit = if row.name == "optimum" { Unit::Kelvin } else { Unit::Plain };
            normal(title, unit, scaled(was), scaled(is))
        }
    }
}

fn ends(mean: f64, sd: f64) -> [f64; 3] {
    [mean, mean - TO_TENTH * sd, mean + TO_TENTH * sd]
}

fn normal(title: String, unit: Unit, was: (f64, f64), is: (f64, f64)) -> Change {
    let left = is.1 / was.1;
    Change { title, unit, before: ends(was.0, was.1), after: ends(is.0, is.1), left }
}

fn logged(title: String, was: (f64, f64), is: (f64, f64)) -> Change {
    let factor = |(mean, sd): (f64, f64)| ends(mean, sd).map(libm::exp);
    Change {
        title,
        unit: Unit::Times,
        before: factor(was),
        after: factor(is),
        left: is.1 / was.1,
    }
}
