//! Everything that is bought, made or laid out.

use super::measure::Unit;
use crate::cupboard::spoken;
use barm_science::enzyme::products::{Measure as By, product};
use barm_science::setup::YeastKind;

/// One thing that is bought, made or laid out, in the order of the lists.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Item {
    /// Yeast of that kind (g).
    Yeast(YeastKind),
    /// A food, or something else that goes in, such as salt: id or name of a label food (g).
    Food(String),
    /// An enzyme product as bought, by its key: powder (g), liquid and drops (mL), or tablets.
    Enzyme(&'static str),
    /// A stock solution made of the enzyme product of that key (mL).
    Solution(&'static str),
    /// Water poured into bags (mL).
    Water,
    /// Zip bags, as written in the plan, in small letters (pieces).
    Bag(String),
    /// Cards, as written in the plan, in small letters (pieces).
    Card(String),
    /// Labels, two for each bag: one on it, one on its card (pieces).
    Label,
    /// Cups: on every tray one for each thing that is handed out and for each kind of water
    /// (pieces).
    Cup,
    /// Spoons: on every tray one for each thing that is measured by the spoon (pieces).
    Spoon,
}

impl Item {
    /// What it is counted in.
    pub fn unit(&self) -> Unit {
        match self {
            Self::Yeast(_) | Self::Food(_) => Unit::Gram,
            Self::Solution(_) | Self::Water => Unit::Milliliter,
            Self::Enzyme(key) => match product(key).map(|product| product.measure) {
                Some(By::Gram) | None => Unit::Gram,
                Some(By::Milliliter | By::Drop) => Unit::Milliliter,
                Some(By::Tablet) => Unit::Piece,
            },
            Self::Bag(_) | Self::Card(_) | Self::Label | Self::Cup | Self::Spoon => Unit::Piece,
        }
    }

    /// What it is called on a list, such as `instant yeast`, `maple syrup` or `snack bags`.
    pub fn name(&self) -> String {
        match self {
            Self::Yeast(YeastKind::ActiveDry) => "active dry yeast".into(),
            Self::Yeast(YeastKind::Instant) => "instant yeast".into(),
            Self::Yeast(YeastKind::Compressed) => "compressed yeast".into(),
            Self::Food(id) => spoken(id).to_owned(),
            Self::Enzyme(key) => spoken(key).to_owned(),
            Self::Solution(key) => solution_name(key),
            Self::Water => "water".into(),
            Self::Bag(written) => format!("{written} bags"),
            Self::Card(written) => format!("{written} cards"),
            Self::Label => "labels".into(),
            Self::Cup => "cups".into(),
            Self::Spoon => "spoons".into(),
        }
    }

    /// The item of the plan's materials under which packs of it stand; nothing for what is made
    /// or comes from the tap.
    pub fn material(&self) -> Option<&str> {
        Some(match self {
            Self::Yeast(_) => "yeast",
            Self::Food(id) => id,
            Self::Enzyme(key) => key,
            Self::Bag(_) => "bags",
            Self::Card(_) => "cards",
            Self::Label => "labels",
            Self::Cup => "cups",
            Self::Spoon => "spoons",
            Self::Solution(_) | Self::Water => return None,
        })
    }
}

fn solution_name(key: &str) -> String {
    use crate::bench::ShelfEnzyme;
    product(key).map_or_else(
        || format!("{key} solution"),
        |product| ShelfEnzyme { product, is_stock: true }.name(),
    )
}
