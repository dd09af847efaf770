//! What can go into a bag: built-in foods, foods described by a label, enzyme products.
//!
//! This is the one door through which names are looked up, so that loosely written names
//! (`Oat Flour`, `nonfat dry milk`) mean the same everywhere.

use crate::nearest::{nearest, plain};
use crate::plan::LabelFood;
use barm_science::enzyme::PRODUCTS;
use barm_science::food;

/// Materials that are neither food nor enzyme.
pub const PLAIN_MATERIALS: [&str; 6] = ["yeast", "bags", "cards", "labels", "cups", "spoons"];

/// Stock solutions, with the key of the powder or tablet they are made from: `2 mL` is taken from
/// the solution, `0.1 g` straight from the jar.
const SOLUTIONS: &[(&str, &str)] = &[
    ("lactase solution", "lactase-tablet"),
    ("glucoamylase solution", "glucoamylase-powder"),
    ("amylase solution", "amylase-powder"),
    ("bacterial amylase solution", "bacterial-amylase"),
    ("diastatic malt solution", "diastatic-malt"),
    ("malt infusion", "diastatic-malt"),
    ("alpha-galactosidase solution", "alpha-galactosidase-tablet"),
];

/// Foods and enzymes that a plan can name.
#[derive(Debug, Clone, Copy)]
pub struct Cupboard<'a> {
    label_foods: &'a [LabelFood],
}

/// A name that is not in the cupboard, or that fits several things there.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotInCupboard {
    /// No such thing.
    #[error("there is no {what} called “{written}”")]
    Unknown {
        /// Food, enzyme or material.
        what: &'static str,
        /// As written.
        written: String,
        /// What was probably meant.
        meant: Option<String>,
    },
    /// More than one thing fits.
    #[error("“{written}” fits more than one {what}")]
    Unclear {
        /// Food or enzyme.
        what: &'static str,
        /// As written.
        written: String,
        /// Names that fit.
        fitting: Vec<String>,
    },
}

impl NotInCupboard {
    /// What to write instead.
    pub fn fix(&self) -> String {
        match self {
            Self::Unknown { meant: Some(meant), .. } => format!("did you mean {meant}?"),
            Self::Unknown { what: "food", meant: None, .. } => {
                "write a built-in food, or describe yours from its label under [[label_food]]"
                    .into()
            }
            Self::Unknown { what: "enzyme", meant: None, .. } => {
                let names: Vec<&str> = PRODUCTS.iter().map(|product| product.name).collect();
                format!("write one of: {}", names.join(", "))
            }
            Self::Unknown { meant: None, .. } => {
                format!("write a food, an enzyme or one of: {}", PLAIN_MATERIALS.join(", "))
            }
            Self::Unclear { fitting, .. } => format!("write one of: {}", fitting.join("; ")),
        }
    }
}

/// One thing with its id and everything it is called.
struct Thing<'a> {
    id: &'a str,
    names: Vec<&'a str>,
}

impl<'a> Cupboard<'a> {
    /// The built-in things and these foods described by labels.
    pub const fn with(label_foods: &'a [LabelFood]) -> Self {
        Self { label_foods }
    }

    /// The label food of that exact name.
    pub fn label_food(&self, name: &str) -> Option<&'a LabelFood> {
        self.label_foods.iter().find(|food| food.name == name)
    }

    /// The id of a built-in food, or the name of a label food, however loosely it is written.
    ///
    /// # Errors
    /// [`NotInCupboard`] if nothing or more than one thing fits.
    pub fn food(&self, written: &str) -> Result<String, NotInCupboard> {
        let wanted = plain(written);
        if let Some(food) = self.label_foods.iter().find(|food| plain(&food.name) == wanted) {
            return Ok(food.name.clone());
        }
        if let Some(food) = food::find(written) {
            return Ok(food.id.to_owned());
        }
        let built_in = food::all().iter().map(|food| Thing {
            id: food.id,
            names: std::iter::once(food.name).chain(food.aliases.iter().copied()).collect(),
        });
        let label = self
            .label_foods
            .iter()
            .map(|food| Thing { id: &food.name, names: vec![&food.name] });
        find("food", written, &label.chain(built_in).collect::<Vec<_>>())
    }

    /// Whether a built-in food is called so.
    pub fn is_built_in(name: &str) -> bool {
        food::find(name).is_some()
    }

    /// The key of an enzyme product, however loosely it is written. A solution that is made from
    /// a powder, such as `glucoamylase solution`, is known by the key of the powder.
    ///
    /// # Errors
    /// [`NotInCupboard`] if nothing or more than one thing fits.
    pub fn enzyme(written: &str) -> Result<String, NotInCupboard> {
        let things: Vec<Thing<'_>> = PRODUCTS
            .iter()
            .map(|product| {
                let solutions = SOLUTIONS.iter().filter(|(_, key)| *key == product.key);
                let mut names = vec![product.name];
                names.extend(solutions.map(|(name, _)| *name));
                Thing { id: product.key, names }
            })
            .collect();
        find("enzyme", written, &things)
    }

    /// The item of a pack: one of [`PLAIN_MATERIALS`], a food or an enzyme product.
    ///
    /// # Errors
    /// [`NotInCupboard`] if nothing or more than one thing fits.
    pub fn material(&self, written: &str) -> Result<String, NotInCupboard> {
        let wanted = plain(written);
        if let Some(item) = PLAIN_MATERIALS.iter().find(|item| plain(item) == wanted) {
            return Ok((*item).to_owned());
        }
        if let Ok(item) = self.food(written).or_else(|_| Self::enzyme(written)) {
            return Ok(item);
        }
        let meant =
            [self.food(written), Self::enzyme(written)].into_iter().find_map(
                |found| match found {
                    Err(NotInCupboard::Unknown { meant, .. }) => meant,
                    _ => None,
                },
            );
        let meant = nearest(written, PLAIN_MATERIALS).map(str::to_owned).or(meant);
        Err(NotInCupboard::Unknown { what: "material", written: written.into(), meant })
    }
}

/// What an id is called in a plan and on paper: `maple_syrup` is `maple syrup`. Names of label
/// foods and plain materials are their own.
pub fn spoken(id: &str) -> &str {
    let food = food::by_id(id).map(|food| food.name);
    let enzyme = || barm_science::enzyme::products::product(id).map(|product| product.name);
    food.or_else(enzyme).unwrap_or(id)
}

fn find(
    what: &'static str,
    written: &str,
    things: &[Thing<'_>],
) -> Result<String, NotInCupboard> {
    let wanted = plain(written);
    let called = |thing: &&Thing<'_>| {
        plain(thing.id) == wanted || thing.names.iter().any(|name| plain(name) == wanted)
    };
    if let Some(thing) = things.iter().find(called) {
        return Ok(thing.id.to_owned());
    }
    let asked = words(written);
    let fitting: Vec<&Thing<'_>> = things
        .iter()
        .filter(|thing| {
            let known: Vec<String> = thing.names.iter().flat_map(|name| words(name)).collect();
            !asked.is_empty() && asked.iter().all(|word| known.contains(word))
        })
        .collect();
    match fitting.as_slice() {
        [thing] => Ok(thing.id.to_owned()),
        [] => {
            let names = things.iter().flat_map(|thing| thing.names.iter().copied());
            let meant = nearest(written, names).map(str::to_owned);
            Err(NotInCupboard::Unknown { what, written: written.into(), meant })
        }
        several => {
            let fitting =
                several.iter().take(6).map(|thing| spoken(thing.id).to_owned()).collect();
            Err(NotInCupboard::Unclear { what, written: written.into(), fitting })
        }
    }
}

/// Lowercase words without a plural s.
fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(|word| {
            let word = word.to_lowercase();
            match word.strip_suffix('s') {
                Some(single) if single.len() > 2 && !single.ends_with('s') => single.to_owned(),
                _ => word,
            }
        })
        .collect()
}
