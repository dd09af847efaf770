//! Mistakes and places, gathered while a plan is read.

use super::mistake::{Mistake, Wrong};
use super::places::{Lines, Places};
use barm_domain::finding::Field;

/// Nobody reads more; the rest is counted.
const MOST: usize = 500;

/// Longest sentence (characters); only absurd values make a longer one.
const LONGEST: usize = 400;

/// What is gathered while a plan is read.
pub(crate) struct Notes<'t> {
    lines: Lines<'t>,
    mistakes: Vec<Mistake>,
    dropped: usize,
    places: Places,
    /// Whether lines had to be left out because they are not TOML: then nothing can be said
    /// about what is missing.
    pub(crate) broken: bool,
}

impl<'t> Notes<'t> {
    pub(crate) fn on(text: &'t str) -> Self {
        Self {
            lines: Lines::of(text),
            mistakes: Vec::new(),
            dropped: 0,
            places: Places::default(),
            broken: false,
        }
    }

    pub(crate) const fn lines(&self) -> &Lines<'t> {
        &self.lines
    }

    /// Remembers where a field stands.
    pub(crate) fn stands(&mut self, field: &str, offset: usize) {
        let place = self.lines.place(offset);
        self.places.put(field.to_owned(), place);
    }

    /// Notes a mistake at a byte of the text.
    pub(crate) fn wrong_at(&mut self, offset: usize, field: Option<&str>, wrong: Wrong) {
        if self.mistakes.len() >= MOST {
            self.dropped += 1;
            return;
        }
        let place = self.lines.place(offset);
        self.push(
            (place.line, place.column),
            field.map(|field| Field(field.to_owned())),
            wrong,
        );
    }

    fn push(&mut self, (line, column): (usize, usize), field: Option<Field>, wrong: Wrong) {
        let (what, fix) = (clipped(wrong.what), clipped(wrong.fix));
        self.mistakes.push(Mistake { line, column, field, what, fix });
    }

    /// Notes a mistake in a field that has been read.
    pub(crate) fn wrong(&mut self, field: String, wrong: Wrong) {
        if self.mistakes.len() >= MOST {
            self.dropped += 1;
            return;
        }
        let field = Field(field);
        let at = self.places.of(&field).map_or((1, 1), |place| (place.line, place.column));
        self.push(at, Some(field), wrong);
    }

    /// Whether a mistake has been noted in this very field.
    pub(crate) fn has(&self, field: &str) -> bool {
        self.mistakes.iter().any(|mistake| mistake.field.as_ref().is_some_and(|f| f.0 == field))
    }

    /// Whether a mistake has been noted in a field of this table.
    pub(crate) fn has_any_under(&self, path: &str) -> bool {
        let under = |field: &Field| {
            field.0.strip_prefix(path).is_some_and(|rest| rest.starts_with('.'))
        };
        self.mistakes.iter().any(|mistake| mistake.field.as_ref().is_some_and(under))
    }

    /// The mistakes in the order of the text, and the places.
    pub(crate) fn done(mut self) -> (Vec<Mistake>, Places) {
        self.mistakes.sort_by_key(|mistake| (mistake.line, mistake.column));
        if self.dropped > 0 {
            let last = self.mistakes.last().map_or((1, 1), |m| (m.line, m.column));
            self.mistakes.push(Mistake {
                line: last.0,
                column: last.1,
                field: None,
                what: format!("{} more mistakes are not listed", self.dropped),
                fix: "mend these first".into(),
            });
        }
        (self.mistakes, self.places)
    }
}

/// A sentence that quotes a value of any length, cut off where nobody reads on.
fn clipped(sentence: String) -> String {
    match sentence.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &sentence[..end]),
        None => sentence,
    }
}
