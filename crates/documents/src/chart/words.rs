//! The few words that charts draw beside the names they are given, in every language of the program.

use crate::catalog::Catalog;
use std::sync::LazyLock;

/// The words that charts write beside the names they are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Words {
    /// The unit of time.
    pub minutes: &'static str,
    /// The unit of rise.
    pub millimeters: &'static str,
    /// At the last reading.
    pub last_reading: &'static str,
    /// At the end of the period.
    pub bell: &'static str,
    /// Between the ends of a range.
    pub to: &'static str,
    /// Before a mean absolute deviation.
    pub mad: &'static str,
    /// Before the name of the reference, at the zero line of differences.
    pub same_as: &'static str,
    /// Before the measured gap of two means.
    pub gap: &'static str,
    /// The plural of the mean absolute deviation.
    pub mads: &'static str,
    /// In place of rows when there are none.
    pub nothing: &'static str,
    /// Behind the number of kinds of bag that are told together.
    pub kinds: &'static str,
    /// Before a range that was foretold.
    pub foretold: &'static str,
}

/// Keys of the texts, in the order of the fields.
const KEYS: [&str; 12] = [
    "chart-minutes",
    "chart-millimeters",
    "chart-last-reading",
    "chart-bell",
    "chart-to",
    "chart-mad",
    "chart-same-as",
    "chart-gap",
    "chart-mads",
    "chart-nothing",
    "chart-kinds",
    "chart-foretold",
];

/// The texts of every language, so that each is read once and charts can share it.
static SAID: LazyLock<Vec<(&str, [String; 12])>> = LazyLock::new(|| {
    Catalog::all().map(|catalog| (catalog.code(), KEYS.map(|key| catalog.say(key)))).collect()
});

impl Words {
    /// The words in English, which teachers' sheets have.
    pub const ENGLISH: Self = Self::in_order([
        "min",
        "mm",
        "last reading",
        "bell",
        "to",
        "MAD",
        "same as",
        "gap",
        "MADs",
        "no readings",
        "kinds",
        "foretold",
    ]);

    /// The words in the language of a catalog.
    #[must_use]
    pub fn of(catalog: &Catalog) -> Self {
        let said = SAID.iter().find(|(code, _)| *code == catalog.code());
        said.map_or(Self::ENGLISH, |(_, texts)| {
            Self::in_order(texts.each_ref().map(String::as_str))
        })
    }

    /// Texts in the order of [`KEYS`].
    const fn in_order(texts: [&'static str; KEYS.len()]) -> Self {
        let [
            minutes,
            millimeters,
            last_reading,
            bell,
            to,
            mad,
            same_as,
            gap,
            mads,
            nothing,
            kinds,
            foretold,
        ] = texts;
        Self {
            minutes,
            millimeters,
            last_reading,
            bell,
            to,
            mad,
            same_as,
            gap,
            mads,
            nothing,
            kinds,
            foretold,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn charts_speak_every_language_and_teachers_english_is_that_of_the_catalog() {
        assert_eq!(Words::of(Catalog::of("en")), Words::ENGLISH);
        let spanish = Words::of(Catalog::of("es"));
        assert_eq!((spanish.bell, spanish.nothing), ("timbre", "sin lecturas"));
        for catalog in Catalog::all() {
            for key in KEYS {
                assert!(
                    catalog.keys().iter().any(|own| own == key),
                    "{}: {key}",
                    catalog.code()
                );
            }
        }
    }
}
