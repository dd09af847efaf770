//! What people read, in every language of the program: here what students, families and aides
//! read, in [`Wording`] what the teacher reads.
//!
//! One Fluent file a language lies in this folder. A text is asked for by its key; a key that a
//! language lacks is taken from English, and one that English lacks is shown as it is, so that a
//! page always stands. Numbers come in as text: whoever asks decides how a number is written.

mod languages;
mod larder;
mod units;
mod wording;

pub use wording::{Filling, Wording};

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use languages::LANGUAGES;
use std::collections::BTreeMap;
use std::sync::LazyLock;
use unic_langid::LanguageIdentifier;

/// The texts of one language.
pub struct Catalog {
    code: &'static str,
    bundle: FluentBundle<FluentResource>,
    keys: Vec<String>,
    placeholders: BTreeMap<String, Vec<String>>,
}

static CATALOGS: LazyLock<Vec<Catalog>> =
    LazyLock::new(|| LANGUAGES.iter().map(|(code, text)| Catalog::read(code, text)).collect());

impl Catalog {
    /// The texts of the language with that code, such as `es` or `es-MX`; English for a language
    /// that we do not have.
    #[must_use]
    pub fn of(language: &str) -> &'static Self {
        let first = language.split(['-', '_']).next().unwrap_or_default();
        let same = |catalog: &&Self| catalog.code.eq_ignore_ascii_case(first);
        CATALOGS.iter().find(same).unwrap_or(&CATALOGS[0])
    }

    /// The texts of the first language that somebody asks for and we have; what a browser sends,
    /// such as `es-MX,es;q=0.9,en;q=0.8`, in the order in which it is written.
    #[must_use]
    pub fn accepted(asked: &str) -> &'static Self {
        Self::first_of(&CATALOGS, asked)
    }

    /// The first language that is asked for and among these; the first of these if there is none.
    fn first_of<'a>(all: &'a [Self], asked: &str) -> &'a Self {
        let codes = asked.split(',').map(|part| part.split(';').next().unwrap_or_default());
        let known = codes.map(str::trim).find_map(|code| {
            let first = code.split('-').next().unwrap_or_default();
            all.iter().find(|catalog| catalog.code.eq_ignore_ascii_case(first))
        });
        known.unwrap_or(&all[0])
    }

    /// All of them, English first.
    pub fn all() -> impl Iterator<Item = &'static Self> {
        CATALOGS.iter()
    }

    /// Code of the language, such as `en`.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        self.code
    }

    /// The text of a key.
    #[must_use]
    pub fn say(&self, key: &str) -> String {
        self.say_with(key, &[])
    }

    /// The text of a key with these values in the places of these names.
    #[must_use]
    pub fn say_with(&self, key: &str, values: &[(&str, &str)]) -> String {
        let values: Vec<(&str, FluentValue<'_>)> =
            values.iter().map(|(name, value)| (*name, FluentValue::from(*value))).collect();
        let own = self.written(key, &values);
        own.or_else(|| CATALOGS[0].written(key, &values)).unwrap_or_else(|| key.to_owned())
    }

    /// Every key of this language, in the order of its file.
    #[must_use]
    pub fn keys(&self) -> &[String] {
        &self.keys
    }

    /// Names of the places that a text leaves open, sorted.
    #[must_use]
    pub fn placeholders(&self, key: &str) -> &[String] {
        self.placeholders.get(key).map_or(&[], Vec::as_slice)
    }

    /// The text of a key with its open places as `{name}`, for a page that fills them by itself.
    #[must_use]
    pub fn pattern(&self, key: &str) -> String {
        let open: Vec<(&str, String)> = self
            .placeholders(key)
            .iter()
            .map(|name| (name.as_str(), format!("{{{name}}}")))
            .collect();
        let values: Vec<(&str, &str)> =
            open.iter().map(|(name, place)| (*name, place.as_str())).collect();
        self.say_with(key, &values)
    }

    fn written(&self, key: &str, values: &[(&str, FluentValue<'_>)]) -> Option<String> {
        let pattern = self.bundle.get_message(key)?.value()?;
        let mut args = FluentArgs::with_capacity(values.len());
        for (name, value) in values {
            args.set(*name, value.clone());
        }
        let mut mistakes = Vec::new();
        Some(self.bundle.format_pattern(pattern, Some(&args), &mut mistakes).into_owned())
    }

    /// Reads a file of texts; what is no message in it is left out, which the tests notice.
    fn read(code: &'static str, text: &str) -> Self {
        let language: LanguageIdentifier = code.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        // Texts stand in elements with a language of their own; marks of direction would only be
        // read aloud.
        bundle.set_use_isolating(false);
        let resource = match FluentResource::try_new(text.to_owned()) {
            Ok(resource) | Err((resource, _)) => resource,
        };
        bundle.add_resource_overriding(resource);
        let placeholders = languages::placeholders(text);
        let keys = languages::keys(text);
        Self { code, bundle, keys, placeholders }
    }
}

#[cfg(test)]
mod tests;
