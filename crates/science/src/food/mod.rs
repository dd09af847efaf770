//! Foods: a table of what the breakfast cupboard holds, and foods described by their label.

pub mod label;
mod row;
mod table;

pub use row::{DAMAGED_FLOUR, DAMAGED_STARCH, FACTS, Food, FoodStatus, STEAMED};

/// What a food comes as, which decides how it is measured and mixed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum FoodKind {
    /// Powder or crystals: level spoon or balance.
    Powder,
    /// Flakes: a spoon holds little of them.
    Flakes,
    /// Thick syrup: sticks to the spoon, better weighed or thinned.
    Syrup,
    /// Thin liquid: syringe or cylinder.
    Liquid,
    /// Mash or sauce: better weighed.
    Mash,
    /// Pieces: chopped or grated, better weighed.
    Pieces,
    /// Single-serve packets of about a gram.
    Packet,
    /// Yeast itself, here for its spoon.
    Yeast,
}

/// The nine major food allergens of US law (FALCPA 2004, FASTER Act 2021).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Allergen {
    /// Milk.
    Milk,
    /// Egg.
    Egg,
    /// Fish.
    Fish,
    /// Crustacean shellfish.
    Shellfish,
    /// Tree nuts.
    TreeNuts,
    /// Peanut.
    Peanut,
    /// Wheat.
    Wheat,
    /// Soy.
    Soy,
    /// Sesame.
    Sesame,
}

impl Allergen {
    /// All nine.
    pub const ALL: [Self; 9] = [
        Self::Milk,
        Self::Egg,
        Self::Fish,
        Self::Shellfish,
        Self::TreeNuts,
        Self::Peanut,
        Self::Wheat,
        Self::Soy,
        Self::Sesame,
    ];

    /// The word on a label.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Milk => "milk",
            Self::Egg => "egg",
            Self::Fish => "fish",
            Self::Shellfish => "shellfish",
            Self::TreeNuts => "tree nuts",
            Self::Peanut => "peanut",
            Self::Wheat => "wheat",
            Self::Soy => "soy",
            Self::Sesame => "sesame",
        }
    }

    /// The allergen of that name, read as loosely as a food's name.
    pub fn named(name: &str) -> Option<Self> {
        let wanted = plain(name);
        Self::ALL.into_iter().find(|allergen| plain(allergen.name()) == wanted)
    }
}

/// Every food of the table, kind by kind.
pub const fn all() -> &'static [Food] {
    table::ROWS
}

/// The food of that id.
pub fn by_id(id: &str) -> Option<&'static Food> {
    all().iter().find(|food| food.id == id)
}

/// The food of that id or name, read loosely: case, hyphens, plural and the order of the words
/// do not matter.
pub fn find(name: &str) -> Option<&'static Food> {
    let wanted = plain(name);
    by_id(name).or_else(|| all().iter().find(|food| food.names().any(|n| plain(n) == wanted)))
}

/// The words of a name in the singular, sorted.
fn plain(name: &str) -> Vec<String> {
    let lower = name.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    let mut words: Vec<String> = words.map(singular).collect();
    words.sort_unstable();
    words
}

fn singular(word: &str) -> String {
    if let Some(stem) = word.strip_suffix("ies").filter(|stem| stem.len() > 2) {
        return format!("{stem}y");
    }
    for ending in ["oes", "shes", "ches", "xes"] {
        if word.ends_with(ending) {
            return word[..word.len() - 2].to_owned();
        }
    }
    let plural = word.len() > 3 && word.ends_with('s') && !word.ends_with("ss");
    word[..word.len() - usize::from(plural)].to_owned()
}

/// The numbers of all foods as facts.
pub fn facts() -> Vec<crate::fact::Fact> {
    all().iter().flat_map(Food::facts).collect()
}
