//! Reads older formats of the plan file as if they were of today.
//!
//! Format 0 is that of the drafts before the first release. It gave the smallest readable
//! difference as a bare number of millimeters, `readable_mm = 3`; since format 1 it is
//! `readable_difference = "3 mm"`, an amount like all others.

use super::mistake::Wrong;
use super::notes::Notes;
use std::borrow::Cow;
use toml::Spanned;
use toml::de::{DeInteger, DeTable, DeValue};

/// The format that is written.
pub(super) const FORMAT: u32 = 1;

/// Key of format 0, and the key that took its place.
const READABLE_MM: &str = "readable_mm";
/// See [`READABLE_MM`].
pub(super) const READABLE_DIFFERENCE: &str = "readable_difference";

/// Finds the format number of a file.
///
/// # Errors
/// What is wrong, if there is none or if the file is from a newer program; nothing else in it can
/// be judged then.
pub(super) fn format_of(table: &DeTable<'_>, notes: &Notes<'_>) -> Result<u32, (usize, Wrong)> {
    let Some(value) = table.get("format") else {
        let what = if notes.broken {
            "no format number can be found"
        } else {
            "format is missing, so nobody knows how to read this file"
        };
        return Err((
            0,
            Wrong::new(what, format!("write format = {FORMAT} in the first line")),
        ));
    };
    let at = value.span().start;
    let DeValue::Integer(number) = value.get_ref() else {
        let fix = format!("write format = {FORMAT}, without quotes");
        return Err((at, Wrong::new("the format is a whole number", fix)));
    };
    let written = i64::from_str_radix(number.as_str(), number.radix());
    match written.map(u32::try_from) {
        Ok(Ok(format)) if format <= FORMAT => Ok(format),
        Ok(Err(_)) if number.as_str().starts_with('-') => {
            let what = format!("there is no format {number}");
            Err((at, Wrong::new(what, format!("write format = {FORMAT}"))))
        }
        _ => {
            let what = format!(
                "this plan was written by a newer Barm (format {number}); this one reads up to \
                 format {FORMAT} and would lose what it does not know"
            );
            Err((at, Wrong::new(what, "open it with the newer Barm, or update this one")))
        }
    }
}

/// Turns a table of an older format into one of today; every value keeps its place.
pub(super) fn upgrade(table: &mut DeTable<'_>, from: u32) {
    if from == 0
        && let Some(old) = table.remove(READABLE_MM)
    {
        let value = match millimeters(old.get_ref()) {
            Some(text) => Spanned::new(old.span(), DeValue::String(Cow::Owned(text))),
            None => old,
        };
        let key = Spanned::new(value.span(), Cow::Borrowed(READABLE_DIFFERENCE));
        table.entry(key).or_insert(value);
    }
}

/// Turns the text of an older format into one of today, touching nothing else.
pub(super) fn upgrade_text(text: &str) -> Cow<'_, str> {
    let Ok(document) = DeTable::parse(text) else { return Cow::Borrowed(text) };
    let table = document.get_ref();
    let format = table.get_key_value("format").map(|(_, value)| value);
    let Some(number) = format.filter(|value| {
        let zero = |number: &DeInteger<'_>| {
            i64::from_str_radix(number.as_str(), number.radix()) == Ok(0)
        };
        value.get_ref().as_integer().is_some_and(zero)
    }) else {
        return Cow::Borrowed(text);
    };
    let mut changes = vec![(number.span(), FORMAT.to_string())];
    if let Some((key, value)) = table.get_key_value(READABLE_MM)
        && let Some(millimeters) = millimeters(value.get_ref())
    {
        changes.push((key.span(), READABLE_DIFFERENCE.to_owned()));
        changes.push((value.span(), format!("\"{millimeters}\"")));
    }
    changes.sort_by_key(|(span, _)| std::cmp::Reverse(span.start));
    let mut upgraded = text.to_owned();
    for (span, new) in changes {
        upgraded.replace_range(span, &new);
    }
    Cow::Owned(upgraded)
}

fn millimeters(value: &DeValue<'_>) -> Option<String> {
    match value {
        DeValue::Integer(number) => Some(format!("{number} mm")),
        DeValue::Float(number) => Some(format!("{number} mm")),
        _ => None,
    }
}
