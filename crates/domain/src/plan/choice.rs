//! Bags, cards and places to lie, as people name them.

use super::recipe::{BagChoice, CardChoice, Lies};
use crate::amount::{AmountError, celsius, size};
use crate::nearest::{nearest, plain};
use barm_science::bag::StandardBag;
use barm_science::setup::{Bag, Card};

/// Weight of an index card (g/mm²): 190 g/m², from memory; the card heights assume the same.
const CARD_GRAMS_PER_MM2: f64 = 190e-6;

/// Why a bag, a card or a place to lie is not known.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ChoiceError {
    /// Not a bag that groceries sell, and not a size.
    #[error("“{written}” is neither a known bag nor a size")]
    Bag {
        /// What is written.
        written: String,
        /// The bag that was probably meant.
        meant: Option<&'static str>,
    },
    /// A length that no bag or card in a classroom has.
    #[error("“{written}” is no size that a {what} can have")]
    Size {
        /// What is written.
        written: String,
        /// Bag or card.
        what: &'static str,
    },
    /// Not a place to lie.
    #[error("“{written}” is not a way for a bag to lie")]
    Lies {
        /// What is written.
        written: String,
        /// The place that was probably meant.
        meant: Option<&'static str>,
    },
    /// The size or temperature itself cannot be read.
    #[error("{}", .0.what())]
    Amount(AmountError),
}

impl ChoiceError {
    /// What to write instead.
    pub fn fix(&self) -> String {
        match self {
            Self::Bag { meant: Some(meant), .. } | Self::Lies { meant: Some(meant), .. } => {
                format!("did you mean {meant}?")
            }
            Self::Bag { meant: None, .. } => {
                "write snack, sandwich, quart or gallon, or the measured size inside, such as \
                 165 x 83 mm"
                    .into()
            }
            Self::Size { what: "bag", .. } => {
                "measure the bag inside and up to the zip, such as 165 x 83 mm; each side from 40 to 600 mm"
                    .into()
            }
            Self::Size { .. } => {
                "write the size of the card, such as 3 x 5 in; each side from 20 to 600 mm".into()
            },
            Self::Lies { meant: None, .. } => "write bench, towel or warm tray 40 °C".into(),
            Self::Amount(error) => error.fix(),
        }
    }
}

impl BagChoice {
    /// Reads a bag: `snack`, `sandwich`, `quart`, `gallon`, `quart freezer`, or its width by its
    /// height up to the zip, such as `165 x 83 mm`.
    ///
    /// # Errors
    /// [`ChoiceError`] if it is neither.
    pub fn parse(written: &str) -> Result<Self, ChoiceError> {
        let written = written.trim();
        let bag = match named_bag(written) {
            Some(bag) => bag,
            None if written.contains(|c: char| c.is_ascii_digit()) => {
                let size = size(written).map_err(ChoiceError::Amount)?;
                let fits = |mm: f64| (40.0..=600.0).contains(&mm);
                if !fits(size.first_mm) || !fits(size.second_mm) {
                    return Err(ChoiceError::Size { written: written.into(), what: "bag" });
                }
                let film_um = StandardBag::Snack.bag().film_um;
                Bag { width_mm: size.first_mm, height_mm: size.second_mm, film_um }
            }
            None => {
                let names = StandardBag::ALL.map(StandardBag::name);
                let meant = nearest(written, names);
                return Err(ChoiceError::Bag { written: written.into(), meant });
            }
        };
        Ok(Self { written: written.into(), bag })
    }
}

fn named_bag(written: &str) -> Option<Bag> {
    let words: Vec<String> = written.split_whitespace().map(plain).collect();
    let freezer = words.iter().any(|word| word == "freezer");
    let name: Vec<&str> = words
        .iter()
        .map(String::as_str)
        .filter(|w| !["freezer", "zip", "bag"].contains(w))
        .collect();
    let bag = StandardBag::named(&name.join(" "))?;
    Some(if freezer { bag.freezer_bag() } else { bag.bag() })
}

impl CardChoice {
    /// Reads a card by its size, such as `3 x 5 in` or `76 x 127 mm`; the longer side comes first
    /// in [`Card`], whichever is written first.
    ///
    /// # Errors
    /// [`ChoiceError`] if it is not a size that a card can have.
    pub fn parse(written: &str) -> Result<Self, ChoiceError> {
        let written = written.trim();
        let size = size(written).map_err(ChoiceError::Amount)?;
        let long = size.first_mm.max(size.second_mm);
        let short = size.first_mm.min(size.second_mm);
        if short < 20.0 || long > 600.0 {
            return Err(ChoiceError::Size { written: written.into(), what: "card" });
        }
        let grams = CARD_GRAMS_PER_MM2 * long * short;
        Ok(Self {
            written: written.into(),
            card: Card { length_mm: long, width_mm: short, grams },
        })
    }
}

impl Lies {
    /// Reads how a bag lies: `bench`, `towel` or `warm tray 40 °C`.
    ///
    /// # Errors
    /// [`ChoiceError`] if it is none of them.
    pub fn parse(written: &str) -> Result<Self, ChoiceError> {
        let written = written.trim();
        let lower = written.to_lowercase();
        let tray = ["warm tray", "warm_tray", "warmtray", "tray"]
            .iter()
            .find_map(|name| lower.strip_prefix(name));
        if let Some(rest) = tray {
            let rest = rest.trim_start().trim_start_matches("of ").trim_start_matches("at ");
            return celsius(rest).map(Self::WarmTray).map_err(ChoiceError::Amount);
        }
        match plain(written).as_str() {
            "bench" => Ok(Self::Bench),
            "towel" | "towels" => Ok(Self::Towel),
            _ => {
                let meant = nearest(written, ["bench", "towel", "warm tray 40 °C"]);
                Err(ChoiceError::Lies { written: written.into(), meant })
            }
        }
    }
}
