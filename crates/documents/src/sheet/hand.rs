//! Sheets that students hold: their words come from the catalog, their icons are ours.

use super::print::values;
use crate::catalog::Catalog;
use crate::page::{ICONS, Paper, PdfError, press};
use serde::Serialize;
use serde_json::{Value, json};

/// How a sheet for students is set.
#[derive(Clone, Copy)]
pub struct Face {
    /// Its words.
    pub words: &'static Catalog,
    /// Its paper.
    pub paper: Paper,
    /// Whether it is set in large print: 18 pt in place of 12 pt.
    pub large: bool,
}

/// Sets a sheet; `starts` are the beginnings of the keys of the words that its template uses.
pub(super) fn set(
    sheet: &'static str,
    template: &str,
    of: &impl Serialize,
    face: Face,
    starts: &[&str],
) -> Result<Vec<u8>, PdfError> {
    let mut values = values(sheet, of, &Value::Null)?;
    if let Some(fields) = values.as_object_mut() {
        let english = Catalog::of("en");
        let mut used: Vec<&String> = english.keys().iter().collect();
        used.retain(|key| {
            key.starts_with("hand-") || starts.iter().any(|start| key.starts_with(start))
        });
        let words = used.into_iter().map(|key| (key.clone(), face.words.pattern(key).into()));
        fields.insert("words".to_owned(), Value::Object(words.collect()));
        let icons = ICONS.iter().map(|(name, svg)| ((*name).to_owned(), json!(svg.trim())));
        fields.insert("icons".to_owned(), Value::Object(icons.collect()));
        fields.insert("large".to_owned(), face.large.into());
    }
    press(sheet, template, values, face.paper)
}
