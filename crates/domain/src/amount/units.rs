//! A flat table of the units in which people write amounts.
//!
//! Customary units follow from 1 in = 2.54 cm, 1 US gallon = 231 cubic inches and
//! 1 lb = 453.592 37 g, all exact: NIST Special Publication 811 (2008), appendix B, and NIST
//! Handbook 44, appendix C. Labelling spoons (5, 15, 30, 240 mL): 21 CFR 101.9(b)(5)(viii).

use super::dimension::Dimension;
use super::number::Number;

/// One unit; `(number · 10^tens − shift) · factor / over` is the value in the base unit of its
/// dimension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Unit {
    /// What it measures.
    pub(super) dimension: Dimension,
    /// Power of ten, kept apart because moving the point is exact.
    pub(super) tens: i32,
    /// What else the number is multiplied by.
    pub(super) factor: f64,
    /// What is taken off first; only temperatures have it.
    pub(super) shift: f64,
    /// What the result is divided by: 1/60 and 1/1.8 have no exact binary form.
    pub(super) over: f64,
    /// Names in lowercase without periods, the usual one first.
    pub(super) names: &'static [&'static str],
}

/// US customary gallon in mL: 231 in³.
const GALLON: f64 = 3785.411784;
/// The customary teaspoon (mL): 1/768 US gallon, NIST SP 811 (2008), appendix B.8.
pub const TEASPOON_ML: f64 = GALLON / 768.0;
/// Conventional millimeter of mercury in Pa: NIST SP 811 (2008), appendix B.8.
const MM_MERCURY: f64 = 133.322387415;

const fn ten(dimension: Dimension, tens: i32, names: &'static [&'static str]) -> Unit {
    Unit { dimension, tens, factor: 1.0, shift: 0.0, over: 1.0, names }
}

const fn times(dimension: Dimension, factor: f64, names: &'static [&'static str]) -> Unit {
    Unit { dimension, tens: 0, factor, shift: 0.0, over: 1.0, names }
}

impl Unit {
    /// The number in the base unit of the dimension.
    pub(super) fn value(&self, number: &Number) -> f64 {
        (number.times_ten_to(self.tens) - self.shift) * self.factor / self.over
    }
}

use Dimension::{
    Drops, Duration, Length, Mass, Money, Pieces, Pressure, Share, Spoon, Temperature, Volume,
};

/// Every unit that is known.
pub(super) const UNITS: &[Unit] = &[
    ten(Mass, 0, &["g", "gram", "grams", "gm", "gms"]),
    ten(Mass, -3, &["mg", "milligram", "milligrams"]),
    ten(Mass, 3, &["kg", "kilogram", "kilograms", "kilo", "kilos"]),
    times(Mass, 28.349523125, &["oz", "ounce", "ounces"]),
    times(Mass, 453.59237, &["lb", "lbs", "pound", "pounds"]),
    ten(
        Volume,
        0,
        &["ml", "milliliter", "milliliters", "millilitre", "millilitres", "cc", "cm3", "cm³"],
    ),
    ten(Volume, 3, &["l", "liter", "liters", "litre", "litres"]),
    ten(Volume, 2, &["dl", "deciliter", "deciliters"]),
    ten(Volume, 1, &["cl", "centiliter", "centiliters"]),
    ten(Volume, -3, &["µl", "μl", "ul", "microliter", "microliters"]),
    times(
        Volume,
        GALLON / 128.0,
        &["fl oz", "floz", "fluid ounce", "fluid ounces", "fl ounce", "fl ounces"],
    ),
    times(Volume, GALLON / 8.0, &["pint", "pints", "pt", "pts"]),
    times(Volume, GALLON / 4.0, &["quart", "quarts", "qt", "qts"]),
    times(Volume, GALLON, &["gallon", "gallons", "gal"]),
    times(
        Volume,
        30.0,
        &["label fl oz", "labeling fl oz", "labelling fl oz", "30 ml fl oz", "fl oz (30 ml)"],
    ),
    times(
        Spoon,
        GALLON / 768.0,
        &["tsp", "tsps", "teaspoon", "teaspoons", "customary tsp", "us tsp"],
    ),
    times(
        Spoon,
        GALLON / 256.0,
        &[
            "tbsp",
            "tbsps",
            "tbs",
            "tbl",
            "tablespoon",
            "tablespoons",
            "customary tbsp",
            "us tbsp",
        ],
    ),
    times(Spoon, GALLON / 16.0, &["cup", "cups", "customary cup", "us cup"]),
    times(
        Spoon,
        5.0,
        &[
            "label tsp",
            "labeling tsp",
            "labelling tsp",
            "metric tsp",
            "5 ml tsp",
            "5-ml tsp",
            "5ml tsp",
            "tsp (5 ml)",
            "tsp (5ml)",
            "label teaspoon",
            "label teaspoons",
            "labeling teaspoon",
            "labeling teaspoons",
            "labelling teaspoon",
            "labelling teaspoons",
            "metric teaspoon",
            "metric teaspoons",
            "teaspoon (5 ml)",
            "teaspoons (5 ml)",
            "5 ml teaspoon",
            "5 ml teaspoons",
        ],
    ),
    times(
        Spoon,
        15.0,
        &[
            "label tbsp",
            "labeling tbsp",
            "labelling tbsp",
            "metric tbsp",
            "15 ml tbsp",
            "15-ml tbsp",
            "15ml tbsp",
            "tbsp (15 ml)",
            "tbsp (15ml)",
            "label tablespoon",
            "label tablespoons",
            "metric tablespoon",
            "metric tablespoons",
            "tablespoon (15 ml)",
            "tablespoons (15 ml)",
        ],
    ),
    times(
        Spoon,
        240.0,
        &[
            "label cup",
            "label cups",
            "labeling cup",
            "labelling cup",
            "240 ml cup",
            "240-ml cup",
            "cup (240 ml)",
            "cups (240 ml)",
        ],
    ),
    ten(Drops, 0, &["drops", "drop", "gtt"]),
    ten(
        Pieces,
        0,
        &[
            "pieces", "piece", "pcs", "pc", "packets", "packet", "sachets", "sachet",
            "tablets", "tablet", "pills", "pill", "capsules", "capsule", "cakes", "cake",
            "bags", "bag", "cards", "card", "sheets", "sheet", "labels", "label", "packs",
            "pack", "count", "ct",
        ],
    ),
    ten(
        Temperature,
        0,
        &[
            "°c",
            "c",
            "℃",
            "ºc",
            "deg c",
            "degc",
            "degree c",
            "degrees c",
            "celsius",
            "degree celsius",
            "degrees celsius",
            "° celsius",
        ],
    ),
    Unit {
        dimension: Temperature,
        tens: 0,
        factor: 1.0,
        shift: 32.0,
        over: 1.8,
        names: &[
            "°f",
            "f",
            "℉",
            "ºf",
            "deg f",
            "degf",
            "degree f",
            "degrees f",
            "fahrenheit",
            "degree fahrenheit",
            "degrees fahrenheit",
            "° fahrenheit",
        ],
    },
    ten(Length, 0, &["mm", "millimeter", "millimeters", "millimetre", "millimetres"]),
    ten(Length, 1, &["cm", "centimeter", "centimeters", "centimetre", "centimetres"]),
    ten(Length, 3, &["m", "meter", "meters", "metre", "metres"]),
    ten(Length, 6, &["km", "kilometer", "kilometers", "kilometre", "kilometres"]),
    times(Length, 25.4, &["in", "inch", "inches", "\"", "″", "”", "''"]),
    times(Length, 304.8, &["ft", "foot", "feet", "'", "′", "’"]),
    times(Length, 1_609_344.0, &["mi", "mile", "miles"]),
    ten(Duration, 0, &["min", "mins", "minute", "minutes"]),
    times(Duration, 60.0, &["h", "hr", "hrs", "hour", "hours"]),
    Unit { over: 60.0, ..ten(Duration, 0, &["s", "sec", "secs", "second", "seconds"]) },
    ten(Pressure, 0, &["pa", "pascal", "pascals"]),
    ten(
        Pressure,
        2,
        &["hpa", "hectopascal", "hectopascals", "mbar", "mb", "millibar", "millibars"],
    ),
    ten(Pressure, 3, &["kpa", "kilopascal", "kilopascals"]),
    ten(Pressure, 5, &["bar", "bars"]),
    times(Pressure, 101_325.0, &["atm", "atmosphere", "atmospheres"]),
    times(Pressure, MM_MERCURY, &["mmhg", "mm hg"]),
    times(Pressure, 101_325.0 / 760.0, &["torr"]),
    times(
        Pressure,
        25.4 * MM_MERCURY,
        &["inhg", "in hg", "inches of mercury", "inches hg", "\"hg"],
    ),
    times(Pressure, 6_894.757_293_168_361, &["psi"]),
    ten(Share, -2, &["%", "percent", "per cent"]),
    ten(Money, 0, &["dollars", "dollar", "usd"]),
];

/// The unit whose name stands at the start of `text`, and what follows it.
///
/// The longest name wins, so that `min` is not read as `m`. Periods and runs of spaces do not
/// count; `level` in front of a spoon is taken as said.
pub(super) fn unit_at(text: &str) -> Option<(&'static Unit, &str)> {
    let text = text.trim_start();
    let text = strip_word(text, "level").unwrap_or(text);
    let mut best: Option<(&'static Unit, &str)> = None;
    for unit in UNITS {
        for name in unit.names {
            if let Some(rest) = strip_name(text, name)
                && best.is_none_or(|(_, shorter)| rest.len() < shorter.len())
            {
                best = Some((unit, rest));
            }
        }
    }
    best
}

fn strip_word<'a>(text: &'a str, word: &str) -> Option<&'a str> {
    let rest = text.get(word.len()..)?;
    (text.get(..word.len())?.eq_ignore_ascii_case(word) && rest.starts_with(' '))
        .then(|| rest.trim_start())
}

/// Takes `name` off the start of `text`, if the word ends there too.
fn strip_name<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    let mut rest = text;
    for wanted in name.chars() {
        if wanted == ' ' {
            let after = rest.trim_start_matches([' ', '\u{a0}', '.']);
            if after.len() == rest.len() {
                return None;
            }
            rest = after;
            continue;
        }
        let c = rest.chars().next()?;
        if !c.to_lowercase().eq(wanted.to_lowercase()) {
            return None;
        }
        rest = &rest[c.len_utf8()..];
    }
    let ends_in_letter = name.ends_with(|c: char| c.is_alphanumeric());
    if ends_in_letter && rest.starts_with(|c: char| c.is_alphabetic()) {
        return None;
    }
    Some(rest.strip_prefix('.').unwrap_or(rest))
}
