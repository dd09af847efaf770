//! Standards in the words of a state, and a state's own beside them.

use super::{Product, STANDARDS, Standard};
use std::collections::{BTreeMap, BTreeSet};

/// The most characters of a standard's words (own rule: three lines of a page).
pub const MOST_CHARACTERS: usize = 300;

/// The most standards of the teacher's own.
pub const MOST_OWN: usize = 40;

/// The most characters of a code.
const MOST_OF_A_CODE: usize = 30;

/// A standard of the teacher's own, such as one of the state's.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnStandard {
    /// Its code.
    pub code: String,
    /// Its words.
    pub words: String,
    /// Products of which any one shows it.
    pub products: Vec<Product>,
}

/// How a teacher words standards, which are left out, and which are the teacher's own.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Worded {
    /// Words in place of the gist, by code.
    pub words: BTreeMap<String, String>,
    /// Codes that are not shown.
    pub left_out: BTreeSet<String>,
    /// The teacher's own, in their order.
    pub own: Vec<OwnStandard>,
}

/// What is wrong with it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WordedFault {
    /// Words that are too long.
    #[error("{code}: its words may have {MOST_CHARACTERS} characters; these have {characters}")]
    TooLong {
        /// The standard.
        code: String,
        /// How long they are.
        characters: usize,
    },
    /// A standard of one's own without words or code, or with a code that is too long.
    #[error(
        "a standard of your own needs a code of 1 to {MOST_OF_A_CODE} characters, and words"
    )]
    Blank,
    /// A code that stands there already.
    #[error("{code} stands there already")]
    Twice {
        /// The code.
        code: String,
    },
    /// No product shows it.
    #[error("{code}: choose which product shows it; without one it would never get a tick")]
    NoProduct {
        /// The standard.
        code: String,
    },
    /// More than there is room for.
    #[error("{MOST_OWN} standards of your own is the most; these are {own}")]
    TooMany {
        /// How many there are.
        own: usize,
    },
}

impl Worded {
    /// What a standard says here: the teacher's words, or the gist.
    pub fn of<'w>(&'w self, standard: &'w Standard) -> &'w str {
        self.words.get(standard.code).map_or(standard.gist, String::as_str)
    }

    /// All that is wrong with it.
    pub fn faults(&self) -> Vec<WordedFault> {
        let mut faults = Vec::new();
        let mut words = |code: &str, words: &str| {
            let characters = words.chars().count();
            if characters > MOST_CHARACTERS {
                faults.push(WordedFault::TooLong { code: code.to_owned(), characters });
            }
        };
        for (code, said) in &self.words {
            words(code, said);
        }
        for own in &self.own {
            words(&own.code, &own.words);
        }
        let mut codes: BTreeSet<&str> =
            STANDARDS.iter().map(|standard| standard.code).collect();
        for own in &self.own {
            let code = own.code.trim();
            if code.is_empty()
                || code.chars().count() > MOST_OF_A_CODE
                || own.words.trim().is_empty()
            {
                faults.push(WordedFault::Blank);
            } else if !codes.insert(code) {
                faults.push(WordedFault::Twice { code: code.to_owned() });
            }
            if own.products.is_empty() {
                faults.push(WordedFault::NoProduct { code: own.code.clone() });
            }
        }
        let own = self.own.len();
        if own > MOST_OWN {
            faults.push(WordedFault::TooMany { own });
        }
        faults
    }
}

#[cfg(test)]
mod tests {
    use super::{OwnStandard, Product, STANDARDS, Worded, WordedFault};

    fn own(code: &str, words: &str, products: &[Product]) -> OwnStandard {
        OwnStandard { code: code.into(), words: words.into(), products: products.to_vec() }
    }

    #[test]
    fn the_teacher_s_words_stand_in_place_of_the_gist() {
        let mut worded = Worded::default();
        let first = &STANDARDS[0];
        assert_eq!(worded.of(first), first.gist);
        worded.words.insert(first.code.into(), "As our state says it".into());
        assert_eq!(worded.of(first), "As our state says it");
        assert_eq!(worded.of(&STANDARDS[1]), STANDARDS[1].gist);
        assert!(worded.faults().is_empty());
    }

    #[test]
    fn a_standard_of_one_s_own_needs_code_words_and_product() {
        let ok = own("NY 7.3", "yeast", &[Product::Readings]);
        let faults = |all: Vec<OwnStandard>| Worded { own: all, ..Worded::default() }.faults();
        assert!(faults(vec![ok.clone()]).is_empty());
        assert_eq!(faults(vec![own("", "yeast", &[Product::Readings])]), [WordedFault::Blank]);
        assert_eq!(faults(vec![own("X", " ", &[Product::Readings])]), [WordedFault::Blank]);
        let twice = WordedFault::Twice { code: "NY 7.3".into() };
        assert_eq!(faults(vec![ok.clone(), ok]), [twice]);
        let known = own("MS-LS1-7", "again", &[Product::Readings]);
        assert_eq!(faults(vec![known]), [WordedFault::Twice { code: "MS-LS1-7".into() }]);
        let bare = own("X", "yeast", &[]);
        assert_eq!(faults(vec![bare]), [WordedFault::NoProduct { code: "X".into() }]);
        let long = own("X", &"x".repeat(301), &[Product::Review]);
        assert!(matches!(
            faults(vec![long])[..],
            [WordedFault::TooLong { characters: 301, .. }]
        ));
        let many =
            (0..41).map(|at| own(&format!("X{at}"), "yeast", &[Product::Review])).collect();
        assert_eq!(faults(many), [WordedFault::TooMany { own: 41 }]);
    }
}
