//! One table of the file: fetches its values, notes what is wrong with them, and in the end what
//! nobody asked for.

use super::mistake::Wrong;
use super::notes::Notes;
use barm_domain::nearest::nearest;
use std::ops::RangeInclusive;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Keys that stand above the first header. TOML gives a key to the header above it, which is the
/// commonest slip in a file edited by hand.
const TOP: &[&str] = &[
    "format",
    "title",
    "school",
    "invented",
    "big_question",
    "grade",
    "inquiry",
    "round",
    "readable_difference",
    "spare",
    "circumstances",
];

/// One table of the file.
pub(crate) struct Section<'a> {
    path: String,
    table: &'a DeTable<'a>,
    start: usize,
    known: Vec<&'static str>,
}

/// A value that may come as text or as a bare number.
enum Scalar<'a> {
    Text(&'a str),
    Number(String),
}

impl<'a> Section<'a> {
    pub(crate) fn new(
        path: String,
        table: &'a DeTable<'a>,
        start: usize,
        notes: &mut Notes<'_>,
    ) -> Self {
        if !path.is_empty() {
            notes.stands(&path, start);
        }
        Self { path, table, start, known: Vec::new() }
    }

    /// Path of this table, such as `period[1]`.
    pub(crate) fn path(&self) -> &str {
        &self.path
    }

    /// Path of one of its fields.
    pub(crate) fn field(&self, key: &str) -> String {
        if self.path.is_empty() { key.to_owned() } else { format!("{}.{key}", self.path) }
    }

    pub(crate) fn get(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
    ) -> Option<&'a Spanned<DeValue<'a>>> {
        self.known.push(key);
        let value = self.table.get(key)?;
        notes.stands(&self.field(key), value.span().start);
        Some(value)
    }

    /// Whether a key is written.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    /// Whether no mistake has been noted in this table so far.
    pub(crate) fn all_read(&self, notes: &Notes<'_>) -> bool {
        !notes.has_any_under(&self.path)
    }

    /// Notes that a value is wrong.
    pub(crate) fn wrong(&self, notes: &mut Notes<'_>, key: &str, wrong: Wrong) {
        notes.wrong(self.field(key), wrong);
    }

    /// Notes that a key is missing, unless lines had to be left out.
    pub(crate) fn missing(&self, notes: &mut Notes<'_>, key: &str, example: &str) {
        if notes.broken {
            return;
        }
        let wrong = Wrong::new(format!("{key} is missing"), format!("add {key} = {example}"));
        notes.wrong_at(self.start, Some(&self.field(key)), wrong);
    }

    fn scalar(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        example: &str,
    ) -> Option<Scalar<'a>> {
        let value = self.get(notes, key)?;
        match value.get_ref() {
            DeValue::String(text) => Some(Scalar::Text(text)),
            DeValue::Integer(number) => Some(Scalar::Number(number.to_string())),
            DeValue::Float(number) => Some(Scalar::Number(number.to_string())),
            DeValue::Datetime(when) => Some(Scalar::Number(when.to_string())),
            other => {
                let what = format!("{key} is {}, and a text is wanted here", kind(other));
                self.wrong(notes, key, Wrong::new(what, format!("write {key} = {example}")));
                None
            }
        }
    }

    /// A value that `parse` understands; bare numbers and dates are given to it as their text.
    pub(crate) fn read<T>(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        example: &str,
        parse: impl FnOnce(&str) -> Result<T, Wrong>,
    ) -> Option<T> {
        let scalar = self.scalar(notes, key, example)?;
        let text = match &scalar {
            Scalar::Text(text) => text.trim(),
            Scalar::Number(text) => text.as_str(),
        };
        let read = if text.is_empty() {
            Err(Wrong::new(format!("{key} is empty"), format!("write {key} = {example}")))
        } else {
            parse(text)
        };
        read.map_err(|wrong| self.wrong(notes, key, wrong)).ok()
    }

    /// A value that must be there.
    pub(crate) fn need<T>(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        example: &str,
        parse: impl FnOnce(&str) -> Result<T, Wrong>,
    ) -> Option<T> {
        if !self.has(key) {
            self.known.push(key);
            self.missing(notes, key, example);
            return None;
        }
        self.read(notes, key, example, parse)
    }

    /// A name; a bare number, such as the name of a period, is taken as its text.
    pub(crate) fn name(&mut self, notes: &mut Notes<'_>, key: &'static str) -> Option<String> {
        self.read(notes, key, "\"…\"", |text| Ok(text.to_owned()))
    }

    /// A name that must be there; empty if it is not.
    pub(crate) fn need_name(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        example: &str,
    ) -> String {
        self.need(notes, key, example, |text| Ok(text.to_owned())).unwrap_or_default()
    }

    /// A text.
    pub(crate) fn text(&mut self, notes: &mut Notes<'_>, key: &'static str) -> Option<String> {
        let written = self.table.get(key).map(Spanned::get_ref);
        if let Some(other) = written.filter(|value| !value.is_str()) {
            self.get(notes, key);
            let what = format!("{key} is {}, and a text is wanted here", kind(other));
            self.wrong(notes, key, Wrong::new(what, format!("write {key} = \"…\"")));
            return None;
        }
        self.name(notes, key)
    }

    /// A text that must be there; empty if it is not.
    pub(crate) fn need_text(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        example: &str,
    ) -> String {
        if !self.has(key) {
            self.known.push(key);
            self.missing(notes, key, example);
        }
        self.text(notes, key).unwrap_or_default()
    }

    /// A whole number within a range.
    pub(crate) fn count(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        range: RangeInclusive<u32>,
    ) -> Option<u32> {
        let value = self.get(notes, key)?;
        let (low, high) = (range.start(), range.end());
        let fix = format!("write a whole number from {low} to {high}");
        let DeValue::Integer(number) = value.get_ref() else {
            let what = format!(
                "{key} is {}, and a whole number is wanted here",
                kind(value.get_ref())
            );
            let fix = match value.get_ref() {
                DeValue::String(text) if text.trim().parse::<u32>().is_ok() => {
                    format!("leave out the quotes: {key} = {}", text.trim())
                }
                _ => fix,
            };
            self.wrong(notes, key, Wrong::new(what, fix));
            return None;
        };
        let count = i64::from_str_radix(number.as_str(), number.radix())
            .ok()
            .and_then(|number| u32::try_from(number).ok())
            .filter(|count| range.contains(count));
        if count.is_none() {
            self.wrong(notes, key, Wrong::new(format!("{number} does not fit {key}"), fix));
        }
        count
    }

    /// A whole number that must be there.
    pub(crate) fn need_count(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        range: RangeInclusive<u32>,
    ) -> u32 {
        let low = *range.start();
        if !self.has(key) {
            self.known.push(key);
            self.missing(notes, key, &low.max(1).to_string());
            return low;
        }
        self.count(notes, key, range).unwrap_or(low)
    }

    /// Yes or no.
    pub(crate) fn flag(&mut self, notes: &mut Notes<'_>, key: &'static str) -> Option<bool> {
        let value = self.get(notes, key)?;
        if let DeValue::Boolean(flag) = value.get_ref() {
            return Some(*flag);
        }
        let what =
            format!("{key} is {}, and true or false is wanted here", kind(value.get_ref()));
        self.wrong(
            notes,
            key,
            Wrong::new(what, format!("write {key} = true or {key} = false, without quotes")),
        );
        None
    }

    /// Notes every key that nobody asked for.
    pub(crate) fn finish(self, notes: &mut Notes<'_>) {
        for (key, _) in self.table {
            let name = key.get_ref().as_ref();
            if self.known.contains(&name) {
                continue;
            }
            let what = format!("“{}” is not a key known here", short(name));
            let fix = if let Some(meant) = nearest(name, self.known.iter().copied()) {
                format!("did you mean {meant}?")
            } else if TOP.contains(&name) {
                format!("move {name} above the first line that starts with [")
            } else {
                format!("take it out, or put # in front; known are {}", self.known.join(", "))
            };
            notes.wrong_at(
                key.span().start,
                Some(&self.field(short(name))),
                Wrong::new(what, fix),
            );
        }
    }
}

/// At most the first 60 characters.
pub(crate) fn short(text: &str) -> &str {
    text.char_indices().nth(60).map_or(text, |(end, _)| &text[..end])
}

/// What a value is, in words.
pub(crate) fn kind(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date or time",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
