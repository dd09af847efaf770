//! What an uncertain number is called, and what it is a number of.

use super::Row;
use crate::bag::StandardBag;
use crate::model::state::ENZYME_ORDER;
use crate::setup::{Composition, EnzymeKind, YeastKind};
use core::fmt;

/// The name of an uncertain number: the same wherever one is drawn, fitted or kept.
///
/// Written as `wake`, `vigor of instant yeast`, `activity of neutral lactase`, `capacity of snack
/// bags`; [`Key::read`] reads that back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Key {
    /// The quantity, such as `vigor`.
    pub name: &'static str,
    /// What it is a quantity of.
    pub of: Of,
}

/// What a quantity belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Of {
    /// All bags.
    All,
    /// One kind of yeast.
    Yeast(YeastKind),
    /// One kind of enzyme.
    Enzyme(EnzymeKind),
    /// Bags of about one size.
    Bags(StandardBag),
    /// A food or a carrier, by what it is made of ([`made_of`]).
    Food(u64),
    /// Water out of one jug, by the bits of its temperature (°C).
    Water(u64),
}

/// Carbohydrate of a food over its table value.
pub const CONTENT: &str = "content";
/// Activity of an enzyme over what its label says.
pub const ACTIVITY: &str = "activity";

impl Key {
    /// A quantity of something.
    pub const fn new(name: &'static str, of: Of) -> Self {
        Self { name, of }
    }

    /// How much carbohydrate a food holds.
    pub fn content(food: &Composition) -> Self {
        Self::new(CONTENT, Of::Food(made_of(food)))
    }

    /// How active an enzyme is.
    pub const fn activity(kind: EnzymeKind) -> Self {
        Self::new(ACTIVITY, Of::Enzyme(kind))
    }

    /// Reads a key of a number that a whole day shares: one of a row of the table, a content or an
    /// activity; nothing for what there is not (any more).
    pub fn read(text: &str, rows: &[Row]) -> Option<Self> {
        let (name, of) = match text.split_once(" of ") {
            Some((name, of)) => (name, Of::read(of)?),
            None => (text, Of::All),
        };
        let of_row = |row: &Row| row.name == name && row.is_of(of);
        let name = match (name, of) {
            (CONTENT, Of::Food(_)) => CONTENT,
            (ACTIVITY, Of::Enzyme(_)) => ACTIVITY,
            _ => rows.iter().find(|row| of_row(row))?.name,
        };
        Some(Self { name, of })
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.of {
            Of::All => write!(f, "{}", self.name),
            of => write!(f, "{} of {of}", self.name),
        }
    }
}

impl Of {
    /// What sets its stream of chance apart from others of the same name.
    pub const fn number(self) -> u64 {
        match self {
            Self::All => 0,
            Self::Yeast(kind) => kind as u64,
            Self::Enzyme(kind) => kind as u64,
            Self::Bags(size) => size as u64,
            Self::Food(number) | Self::Water(number) => number,
        }
    }

    fn read(text: &str) -> Option<Self> {
        if let Some(number) = text.strip_prefix("food ") {
            return u64::from_str_radix(number, 16).ok().map(Self::Food);
        }
        let yeasts = YeastKind::ALL.map(Self::Yeast);
        let enzymes = ENZYME_ORDER.map(Self::Enzyme);
        let bags = StandardBag::ALL.map(Self::Bags);
        yeasts.into_iter().chain(enzymes).chain(bags).find(|of| of.to_string() == text)
    }
}

impl fmt::Display for Of {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::All => write!(f, "all bags"),
            Self::Yeast(kind) => write!(f, "{} yeast", words(&format!("{kind:?}"))),
            Self::Enzyme(kind) => write!(f, "{}", words(&format!("{kind:?}"))),
            Self::Bags(size) => write!(f, "{} bags", size.name()),
            Self::Food(number) => write!(f, "food {number:016x}"),
            Self::Water(bits) => write!(f, "water of {} °C", f64::from_bits(*bits)),
        }
    }
}

/// `ActiveDry` as `active dry`.
fn words(name: &str) -> String {
    let mut text = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !text.is_empty() {
            text.push(' ');
        }
        text.extend(letter.to_lowercase());
    }
    text
}

/// Makes one number of many bytes.
///
/// # Source
/// FNV-1a, 64 bits: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, IETF draft "The FNV
/// non-cryptographic hash algorithm", from memory.
pub(crate) fn fingerprint(bytes: impl IntoIterator<Item = u8>) -> u64 {
    bytes.into_iter().fold(0xCBF2_9CE4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01B3)
    })
}

/// One number of what a food is made of: the same food has the same number in every bag.
pub fn made_of(part: &Composition) -> u64 {
    fingerprint(
        [
            part.water,
            part.raw_starch,
            part.cooked_starch,
            part.dextrin,
            part.maltose,
            part.sucrose,
            part.lactose,
            part.galactose,
            part.glucose,
            part.fructose,
            part.salt,
            part.acids.sum(),
            part.bicarbonate,
        ]
        .into_iter()
        // Parts that few foods have: where they are missing they leave the stream as it is.
        .chain([part.maltotriose, part.galactosides].into_iter().filter(|part| *part > 0.0))
        .flat_map(f64::to_le_bytes),
    )
}
