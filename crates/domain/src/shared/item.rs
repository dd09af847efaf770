//! What goes into a bag, by the program's own tables.

use barm_science::enzyme::PRODUCTS;
use barm_science::food;

/// A food or an enzyme product of the program's tables, or one that a teacher described from its
/// label, whose name is not shared.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Item(&'static str);

impl Item {
    /// A food that the teacher described from its nutrition label.
    pub const OWN_LABEL: Self = Self("own-label");

    /// The food or enzyme product with exactly that id.
    pub fn of(id: &str) -> Option<Self> {
        let product = || PRODUCTS.iter().find(|product| product.key == id).map(|one| one.key);
        let built_in = food::by_id(id).map(|food| food.id).or_else(product);
        let own = Some(Self::OWN_LABEL.0).filter(|own| *own == id);
        built_in.or(own).map(Self)
    }

    /// Its id.
    pub const fn id(self) -> &'static str {
        self.0
    }

    /// All of them, without repeats.
    pub fn all() -> impl Iterator<Item = Self> {
        let products = PRODUCTS.iter().map(|product| product.key);
        let products = products.filter(|key| food::by_id(key).is_none());
        let foods = food::all().iter().map(|food| food.id);
        foods.chain(products).map(Self).chain([Self::OWN_LABEL])
    }
}

/// As what something goes into a bag.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Part {
    /// What the yeast or the enzyme is to eat.
    Food,
    /// An enzyme product.
    Enzyme,
    /// Something else, such as salt.
    Extra,
}

impl Part {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Food, Self::Enzyme, Self::Extra];

    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Food => "food",
            Self::Enzyme => "enzyme",
            Self::Extra => "extra",
        }
    }
}

/// In what an amount is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Measure {
    /// Grams.
    Gram,
    /// Milliliters.
    Milliliter,
    /// Drops.
    Drop,
    /// Tablets, packets or other pieces.
    Piece,
}

impl Measure {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Gram, Self::Milliliter, Self::Drop, Self::Piece];

    /// Its code in UCUM (The Unified Code for Units of Measure, from memory): `[drp]` is a drop, and
    /// what stands in braces counts and has no unit.
    pub const fn ucum(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Milliliter => "mL",
            Self::Drop => "[drp]",
            Self::Piece => "{piece}",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Item;
    use std::collections::BTreeSet;

    #[test]
    fn every_item_is_found_by_its_id_and_nothing_else_is() {
        let all: Vec<Item> = Item::all().collect();
        assert!(all.len() > 40, "{}", all.len());
        assert_eq!(all.iter().collect::<BTreeSet<_>>().len(), all.len());
        for item in all {
            assert_eq!(Item::of(item.id()), Some(item));
        }
        for none in ["", "Smith", "grandma's jam", "Honey ", "own label"] {
            assert_eq!(Item::of(none), None, "{none}");
        }
    }
}
