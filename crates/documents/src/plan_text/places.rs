//! Where in the file a field stands.

use barm_domain::finding::Field;
use std::collections::BTreeMap;

/// A place in a text: line and column, both from 1, the column in characters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

/// Where each field of a plan stands in its file.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Places {
    places: BTreeMap<String, Place>,
}

impl Places {
    pub(crate) fn put(&mut self, field: String, place: Place) {
        self.places.entry(field).or_insert(place);
    }

    /// Where a field stands; for a field that is not written, where the table stands that would
    /// hold it. `None` if not even that is written.
    pub fn of(&self, field: &Field) -> Option<Place> {
        let mut path = field.0.as_str();
        loop {
            if let Some(place) = self.places.get(path) {
                return Some(*place);
            }
            path = path.rfind(['.', '[']).map(|end| &path[..end])?;
        }
    }
}

/// How many bytes lie between two counted characters.
const STRIDE: usize = 256;

/// Turns byte offsets into lines and columns.
///
/// Characters are counted once, at every stride, so that a file of one long line is no slower.
pub(crate) struct Lines<'t> {
    text: &'t str,
    starts: Vec<usize>,
    counted: Vec<usize>,
}

impl<'t> Lines<'t> {
    pub(crate) fn of(text: &'t str) -> Self {
        let ends = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n');
        let starts = std::iter::once(0).chain(ends.map(|(at, _)| at + 1)).collect();
        let mut counted = vec![0];
        for block in text.as_bytes().chunks(STRIDE) {
            let before = counted.last().copied().unwrap_or_default();
            counted.push(before + block.iter().filter(|byte| starts_character(**byte)).count());
        }
        Self { text, starts, counted }
    }

    /// The place of a byte.
    pub(crate) fn place(&self, offset: usize) -> Place {
        let offset = offset.min(self.text.len());
        let line = self.starts.partition_point(|start| *start <= offset);
        let start = self.starts.get(line.saturating_sub(1)).copied().unwrap_or_default();
        let column = self.characters(offset) - self.characters(start) + 1;
        Place { line, column }
    }

    /// Number of the characters that start before a byte.
    fn characters(&self, offset: usize) -> usize {
        let block = offset / STRIDE;
        let rest = &self.text.as_bytes()[block * STRIDE..offset];
        self.counted[block] + rest.iter().filter(|byte| starts_character(**byte)).count()
    }

    /// Bytes of the line on which a byte stands, without its end.
    pub(crate) fn line_at(&self, offset: usize) -> std::ops::Range<usize> {
        let line = self.starts.partition_point(|start| *start <= offset.min(self.text.len()));
        let start = self.starts.get(line.saturating_sub(1)).copied().unwrap_or_default();
        let end = self.starts.get(line).map_or(self.text.len(), |next| next - 1);
        start..end
    }
}

const fn starts_character(byte: u8) -> bool {
    byte & 0b1100_0000 != 0b1000_0000
}
