//! Amounts as a plan writes them, with the measures of a language's kitchen.

use super::Catalog;

/// Measures that have a name of their own in every language, with the words that stand before spoons
/// that are not level; all others are metric.
const UNITS: [&str; 14] = [
    "tsp", "tbsp", "cup", "cups", "drop", "drops", "tablet", "tablets", "packet", "packets",
    "piece", "pieces", "almost", "over",
];

impl Catalog {
    /// An amount with the measures of this language: `1/4 tsp` in Spanish is `1/4 cdta.`.
    #[must_use]
    pub fn amount(&self, written: &str) -> String {
        let said = written.split(' ').map(|word| {
            let known = UNITS.contains(&word);
            if known { self.say(&format!("unit-{word}")) } else { word.to_owned() }
        });
        said.collect::<Vec<_>>().join(" ")
    }

    /// How much of what, no word twice: `5 lactase drops`, not `5 drops lactase drops`.
    #[must_use]
    pub fn much(&self, written: &str, thing: &str) -> String {
        let amount = self.amount(written);
        match amount.rsplit_once(' ') {
            Some((number, unit)) if thing.split(' ').any(|word| word == unit) => {
                format!("{number} {thing}")
            }
            _ => self.say_with("thing-of", &[("amount", &amount), ("thing", thing)]),
        }
    }

    /// Whether this language, or English in its place, has a text of that key.
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.bundle.has_message(key) || Self::of("en").bundle.has_message(key)
    }
}

#[cfg(test)]
mod tests {
    use super::{Catalog, UNITS};

    #[test]
    fn measures_are_those_of_the_language() {
        let (english, spanish) = (Catalog::of("en"), Catalog::of("es"));
        for unit in UNITS {
            assert_eq!(english.amount(unit), unit);
            assert_ne!(spanish.amount(unit), unit);
        }
        assert_eq!(spanish.amount("2 tbsp + 1 1/2 tsp"), "2 cda. + 1 1/2 cdta.");
        assert_eq!(spanish.amount("almost 1/4 tsp"), "casi 1/4 cdta.");
        assert_eq!(spanish.amount("40 mL"), "40 mL");
    }

    #[test]
    fn no_word_is_said_twice() {
        let (english, spanish) = (Catalog::of("en"), Catalog::of("es"));
        assert_eq!(english.much("5 drops", "lactase drops"), "5 lactase drops");
        assert_eq!(spanish.much("5 drops", "gotas de lactasa"), "5 gotas de lactasa");
        assert_eq!(english.much("2 g", "yeast"), "2 g yeast");
        assert_eq!(spanish.much("2 g", "levadura"), "2 g de levadura");
    }
}
