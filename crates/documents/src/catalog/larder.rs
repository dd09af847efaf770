//! What lies in the cupboard, by its name in a language.
//!
//! A plan knows foods and enzymes by ids and writes them in English; whoever reads a page in
//! another language sees and types the names of that language.

use super::Catalog;
use barm_domain::cupboard::spoken;
use barm_science::enzyme::PRODUCTS;
use barm_science::food;

/// Before the id in every key.
pub(super) const LARDER: &str = "larder-";

/// What names of treatments are made of besides foods and enzyme products.
const WORDS: [&str; 10] = [
    "no-food",
    "no-yeast",
    "no-enzyme",
    "no-salt",
    "water-of",
    "white-flour",
    "glucoamylase",
    "lactase",
    "amylase",
    "invertase",
];

/// The key of an id: `oat_flour` is `larder-oat-flour`.
pub(super) fn key(id: &str) -> String {
    format!("{LARDER}{}", id.replace('_', "-"))
}

impl Catalog {
    /// What a food, an enzyme product or a plain material is called. A food that a plan describes
    /// by its label has no other name than its own.
    #[must_use]
    pub fn cupboard(&self, id: &str) -> String {
        self.known(&key(id)).unwrap_or_else(|| spoken(id).to_owned())
    }

    /// What the solution made of an enzyme product is called.
    #[must_use]
    pub fn solution(&self, product: &str) -> String {
        self.known(&key(&format!("stock-{product}"))).unwrap_or_else(|| self.cupboard(product))
    }

    /// What a bag of that size is called; a size in figures is as it is written.
    #[must_use]
    pub fn bag(&self, written: &str) -> String {
        let small = written.to_lowercase();
        self.known(&key(&format!("bag-{small}"))).unwrap_or_else(|| written.to_owned())
    }

    /// A text with names of this language in the place of those that a plan writes: `honey + 1 g`
    /// in Spanish is `miel + 1 g`. Other words stay.
    #[must_use]
    pub fn own_words(&self, text: &str) -> String {
        let own = |id: &'static str| (spoken(id).to_owned(), self.cupboard(id));
        let stock = PRODUCTS.iter().map(|product| self.stock(product.key));
        replaced(text, ids().map(own).chain(stock).collect())
    }

    /// A text with the names that a plan writes in the place of those of this language. Capital
    /// letters and accents do not matter.
    #[must_use]
    pub fn plan_words(&self, text: &str) -> String {
        let english = Self::of("en");
        let plans = |id: &'static str| (self.cupboard(id), spoken(id).to_owned());
        let word = |word: &&str| {
            let key = format!("{LARDER}word-{word}");
            (self.say(&key), english.say(&key))
        };
        let stock = PRODUCTS.iter().map(|product| {
            let (plans, own) = self.stock(product.key);
            (own, plans)
        });
        replaced(text, ids().map(plans).chain(stock).chain(WORDS.iter().map(word)).collect())
    }

    /// What the solution made of an enzyme product is called in a plan, and in this language.
    fn stock(&self, product: &str) -> (String, String) {
        (Self::of("en").solution(product), self.solution(product))
    }

    /// What a treatment is called: its name in the plan with names of this language in the place of
    /// those of foods, enzymes and what is left out; other words stay. `Maple syrup, no yeast` in
    /// Spanish is `Jarabe de arce, sin levadura`.
    #[must_use]
    pub fn treatment(&self, name: &str) -> String {
        let english = Self::of("en");
        let own = |id: &'static str| (spoken(id).to_owned(), self.cupboard(id));
        let word = |word: &&str| {
            let key = format!("{LARDER}word-{word}");
            (english.say(&key), self.say(&key))
        };
        let pairs = ids().map(own).chain(WORDS.iter().map(word)).collect();
        let called = replaced(name, pairs);
        let capital = name.chars().next().is_some_and(char::is_uppercase);
        let mut letters = called.chars();
        match letters.next() {
            Some(first) if capital => first.to_uppercase().chain(letters).collect(),
            _ => called,
        }
    }

    fn known(&self, key: &str) -> Option<String> {
        let known = self.bundle.has_message(key);
        known.then(|| self.say(key))
    }
}

/// Every food and enzyme product that is built in.
pub(super) fn ids() -> impl Iterator<Item = &'static str> {
    food::all().iter().map(|food| food.id).chain(PRODUCTS.iter().map(|product| product.key))
}

/// Every name that stands in a text as whole words with the other of its pair in its place; of
/// two names that begin at one place the longer.
fn replaced(text: &str, mut pairs: Vec<(String, String)>) -> String {
    pairs.retain(|(from, to)| from != to);
    pairs.sort_by_key(|(from, _)| std::cmp::Reverse(from.chars().count()));
    let pairs: Vec<(Vec<char>, String)> =
        pairs.into_iter().map(|(from, to)| (from.chars().map(folded).collect(), to)).collect();
    let letters: Vec<char> = text.chars().collect();
    let plain: Vec<char> = letters.iter().copied().map(folded).collect();
    let (mut new, mut at) = (String::new(), 0);
    while at < letters.len() {
        let starts = at == 0 || !letters[at - 1].is_alphanumeric();
        let here = pairs.iter().find(|(from, _)| {
            let ends =
                letters.get(at + from.len()).is_none_or(|after| !after.is_alphanumeric());
            starts && ends && plain[at..].starts_with(from)
        });
        match here {
            Some((from, to)) => {
                new.push_str(to);
                at += from.len();
            }
            None => {
                new.push(letters[at]);
                at += 1;
            }
        }
    }
    new
}

/// A letter without capital and accent; one letter stays one letter.
fn folded(letter: char) -> char {
    match letter.to_lowercase().next().unwrap_or(letter) {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' | 'ü' => 'u',
        'ñ' => 'n',
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::{Catalog, ids, key};
    use barm_domain::cupboard::{PLAIN_MATERIALS, spoken};
    use barm_domain::prep::Item;
    use barm_science::enzyme::PRODUCTS;
    use std::collections::BTreeSet;

    #[test]
    fn everything_in_the_cupboard_has_one_name_in_every_language() {
        for catalog in Catalog::all() {
            let mut names = BTreeSet::new();
            for id in ids().chain(PLAIN_MATERIALS) {
                let place = format!("{}: {id}", catalog.code());
                assert!(catalog.keys().contains(&key(id)), "{place} has no name");
                assert!(names.insert(catalog.cupboard(id)), "{place} is called like another");
            }
            for product in PRODUCTS {
                let own = key(&format!("stock-{}", product.key));
                assert!(catalog.keys().contains(&own), "{}: {own}", catalog.code());
            }
        }
    }

    #[test]
    fn english_names_are_those_of_plans_and_lists() {
        let english = Catalog::of("en");
        for id in ids().chain(PLAIN_MATERIALS) {
            assert_eq!(english.cupboard(id), spoken(id));
        }
        for product in PRODUCTS {
            assert_eq!(english.solution(product.key), Item::Solution(product.key).name());
        }
    }

    #[test]
    fn spanish_differs_where_the_thing_has_a_spanish_name() {
        let (english, spanish) = (Catalog::of("en"), Catalog::of("es"));
        for id in ids() {
            assert_ne!(spanish.cupboard(id), english.cupboard(id), "{id}");
        }
        assert_eq!(spanish.cupboard("Oat rings of our own"), "Oat rings of our own");
        assert_eq!(spanish.bag("Snack"), "chica");
        assert_eq!(spanish.bag("165 x 83 mm"), "165 x 83 mm");
    }

    #[test]
    fn a_treatment_is_called_by_the_words_of_a_language() {
        let (english, spanish) = (Catalog::of("en"), Catalog::of("es"));
        for (plan, own) in [
            ("No food", "Sin alimento"),
            ("Maple syrup, no yeast", "Jarabe de arce, sin levadura"),
            ("Oat flour + glucoamylase", "Harina de avena + glucoamilasa"),
            ("Water of 30 °C", "Agua de 30 °C"),
            ("white sugar, 0.3 g", "azúcar blanca, 0.3 g"),
            ("Team Otter's secret", "Team Otter's secret"),
            ("", ""),
        ] {
            assert_eq!(spanish.treatment(plan), own);
            assert_eq!(english.treatment(plan), plan);
            // A group may write the name as it reads it.
            let back = spanish.plan_words(own).to_lowercase();
            assert_eq!(back, plan.to_lowercase());
        }
        for word in super::WORDS {
            let key = format!("{}word-{word}", super::LARDER);
            assert_ne!(spanish.say(&key), english.say(&key), "{word}");
        }
    }

    #[test]
    fn what_is_typed_in_a_language_comes_to_the_plan_and_back() {
        let spanish = Catalog::of("es");
        for (typed, plan) in [
            ("miel", "honey"),
            ("Azúcar Blanca + 0.5 g", "white sugar + 0.5 g"),
            ("azucar blanca; miel", "white sugar; honey"),
            ("solución de glucoamilasa", "glucoamylase solution"),
            ("harina de maíz fina, integral", "corn flour, whole-grain"),
            ("honey", "honey"),
            ("mieles", "mieles"),
            ("45 °C", "45 °C"),
            ("", ""),
        ] {
            assert_eq!(spanish.plan_words(typed), plan, "{typed}");
        }
        for id in ids() {
            let own = spanish.own_words(&format!("{} + 1 g", spoken(id)));
            assert_eq!(own, format!("{} + 1 g", spanish.cupboard(id)));
            assert_eq!(spanish.plan_words(&own), format!("{} + 1 g", spoken(id)));
        }
        assert_eq!(Catalog::of("en").plan_words("Honey + miel"), "Honey + miel");
    }
}
