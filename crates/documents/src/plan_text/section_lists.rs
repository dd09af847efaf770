//! Tables and lists within a table of the file.

use super::mistake::Wrong;
use super::notes::Notes;
use super::section::{Section, kind};
use toml::de::DeValue;

impl<'a> Section<'a> {
    /// A list of texts; each is noted under its own place.
    pub(crate) fn texts(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
    ) -> Option<Vec<String>> {
        let value = self.get(notes, key)?;
        let fix = || format!("write {key} = [\"…\", \"…\"]");
        let DeValue::Array(array) = value.get_ref() else {
            let what = format!("{key} is {}, and a list is wanted here", kind(value.get_ref()));
            self.wrong(notes, key, Wrong::new(what, fix()));
            return None;
        };
        let mut texts = Vec::new();
        for (index, item) in array.iter().enumerate() {
            let field = format!("{}[{index}]", self.field(key));
            notes.stands(&field, item.span().start);
            match item.get_ref() {
                DeValue::String(text) if !text.trim().is_empty() => {
                    texts.push(text.trim().to_owned());
                }
                DeValue::String(_) => {
                    notes.wrong(
                        field,
                        Wrong::new("this text is empty", "write it or take it out"),
                    );
                }
                other => {
                    let what = format!("this is {}, and a text is wanted here", kind(other));
                    notes.wrong(field, Wrong::new(what, fix()));
                }
            }
        }
        Some(texts)
    }

    /// A list of numbers.
    pub(crate) fn numbers(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
    ) -> Option<Vec<f64>> {
        let value = self.get(notes, key)?;
        let number = |item: &DeValue<'_>| match item {
            DeValue::Float(number) => number.as_str().parse().ok(),
            DeValue::Integer(number) => number.as_str().parse().ok(),
            _ => None,
        };
        let all: Option<Vec<f64>> = match value.get_ref() {
            DeValue::Array(array) => array.iter().map(|item| number(item.get_ref())).collect(),
            _ => None,
        };
        if all.is_none() {
            let what = format!("{key} is not a list of numbers");
            self.wrong(notes, key, Wrong::new(what, format!("write {key} = [0.1, 0.2]")));
        }
        all
    }

    /// A table within this one.
    pub(crate) fn table(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
    ) -> Option<Section<'a>> {
        let value = self.get(notes, key)?;
        if let DeValue::Table(table) = value.get_ref() {
            return Some(Section::new(self.field(key), table, value.span().start, notes));
        }
        let what = format!("{key} is {}, and a table is wanted here", kind(value.get_ref()));
        self.wrong(notes, key, Wrong::new(what, format!("write [{key}] on a line of its own")));
        None
    }

    /// The tables of a list; `path` is what they are called in [`barm_domain::finding::Field`].
    pub(crate) fn tables(
        &mut self,
        notes: &mut Notes<'_>,
        key: &'static str,
        path: &str,
    ) -> Vec<Section<'a>> {
        let Some(value) = self.get(notes, key) else { return Vec::new() };
        let fix = || format!("write [[{key}]], with two brackets, above each of them");
        let DeValue::Array(array) = value.get_ref() else {
            let what = format!(
                "{key} is {}, and a list of tables is wanted here",
                kind(value.get_ref())
            );
            self.wrong(notes, key, Wrong::new(what, fix()));
            return Vec::new();
        };
        let mut sections = Vec::new();
        for (index, item) in array.iter().enumerate() {
            let path = format!("{path}[{index}]");
            let start = item.span().start;
            match item.get_ref() {
                DeValue::Table(table) => sections.push(Section::new(path, table, start, notes)),
                other => {
                    let what = format!("this is {}, and a table is wanted here", kind(other));
                    notes.wrong_at(start, Some(&path), Wrong::new(what, fix()));
                }
            }
        }
        sections
    }
}
