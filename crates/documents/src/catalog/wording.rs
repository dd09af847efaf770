//! What the teacher reads, in every language that there is a file for.
//!
//! The files lie in `teacher`, a folder a language, one file a page. Another language is one more
//! file; what it lacks is taken from English. A text is asked for by its key and its open places
//! are filled by name; a count comes in as a number, so that the language can choose the plural.

use super::Catalog;
use fluent_bundle::FluentValue;
use std::sync::LazyLock;

/// Every language and its files, as they were found when the program was built.
static FILES: &[(&str, &[&str])] = include!(concat!(env!("OUT_DIR"), "/teacher.rs"));

/// Every language, English first.
static WORDINGS: LazyLock<Vec<Catalog>> = LazyLock::new(|| Wording::read(FILES));

/// The teacher's words in one language; costs nothing to hand on.
#[derive(Clone, Copy)]
pub struct Wording(&'static Catalog);

impl std::fmt::Debug for Wording {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Wording({})", self.code())
    }
}

/// What fills an open place of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Filling {
    /// A number of things, by which a language may choose its words.
    Count(i64),
    /// Words, or a number that is written already.
    Text(String),
}

impl Wording {
    /// English, which is always there.
    #[must_use]
    pub fn english() -> Self {
        Self(&WORDINGS[0])
    }

    /// The first language that somebody asks for and there is a file for; what a browser sends,
    /// such as `es-MX,es;q=0.9,en;q=0.8`, in the order in which it is written. Otherwise English.
    #[must_use]
    pub fn accepted(asked: &str) -> Self {
        Self(Catalog::first_of(&WORDINGS, asked))
    }

    /// All of them, English first.
    pub fn all() -> impl Iterator<Item = Self> {
        WORDINGS.iter().map(Self)
    }

    /// Code of the language, such as `en`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        self.0.code
    }

    /// Every key of this language, in the order of its files.
    #[must_use]
    pub fn keys(self) -> &'static [String] {
        &self.0.keys
    }

    /// Names of the places that a text leaves open, sorted.
    #[must_use]
    pub fn placeholders(self, key: &str) -> &'static [String] {
        self.0.placeholders(key)
    }

    /// The text of a key.
    #[must_use]
    pub fn say(self, key: &str) -> String {
        self.fill(key, &[])
    }

    /// The text of a key with these values in the places of these names.
    #[must_use]
    pub fn fill(self, key: &str, values: &[(&str, Filling)]) -> String {
        let values: Vec<(&str, FluentValue<'_>)> =
            values.iter().map(|(name, filling)| (*name, filling.value())).collect();
        let own = self.0.written(key, &values);
        own.or_else(|| WORDINGS[0].written(key, &values)).unwrap_or_else(|| key.to_owned())
    }

    /// Languages with their files, English put first.
    fn read(files: &[(&'static str, &[&'static str])]) -> Vec<Catalog> {
        let mut all: Vec<Catalog> =
            files.iter().map(|(code, texts)| Catalog::read(code, &texts.join("\n"))).collect();
        all.sort_by_key(|catalog| (catalog.code != "en", catalog.code));
        all
    }
}

impl Filling {
    fn value(&self) -> FluentValue<'_> {
        match self {
            Self::Count(count) => FluentValue::from(*count),
            Self::Text(text) => FluentValue::from(text.as_str()),
        }
    }
}

impl From<u32> for Filling {
    fn from(count: u32) -> Self {
        Self::Count(count.into())
    }
}

impl From<usize> for Filling {
    fn from(count: usize) -> Self {
        Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}

impl From<&str> for Filling {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<&String> for Filling {
    fn from(text: &String) -> Self {
        Self::Text(text.clone())
    }
}

impl From<String> for Filling {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

#[cfg(test)]
#[path = "wording_tests.rs"]
mod tests;
