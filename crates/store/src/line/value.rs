//! What stands in one cell of a row: a whole number, a text, or nothing.

use super::StoreError;
use std::borrow::Cow;

/// A cell. Both engines know these three, so nothing else is ever stored.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Value<'a> {
    Int(i64),
    Text(Cow<'a, str>),
    Null,
}

impl From<i64> for Value<'_> {
    fn from(number: i64) -> Self {
        Self::Int(number)
    }
}

impl From<u32> for Value<'_> {
    fn from(number: u32) -> Self {
        Self::Int(number.into())
    }
}

impl<'a> From<&'a str> for Value<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl<'a> From<&'a String> for Value<'a> {
    fn from(text: &'a String) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Value<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

impl<'a, T: Into<Self>> From<Option<T>> for Value<'a> {
    fn from(maybe: Option<T>) -> Self {
        maybe.map_or(Self::Null, Into::into)
    }
}

/// One row of an answer, read from the left.
#[derive(Debug)]
pub(crate) struct Row {
    cells: std::vec::IntoIter<Value<'static>>,
}

impl Row {
    pub(crate) fn new(cells: Vec<Value<'static>>) -> Self {
        Self { cells: cells.into_iter() }
    }

    /// The cells that are left.
    #[cfg(feature = "postgres")]
    pub(crate) fn rest(self) -> Vec<Value<'static>> {
        self.cells.collect()
    }

    /// The next cell, which holds a number.
    pub(crate) fn int(&mut self) -> Result<i64, StoreError> {
        self.maybe_int()?.ok_or_else(|| odd("nothing where a number should be"))
    }

    /// The next cell, which holds a number or nothing.
    pub(crate) fn maybe_int(&mut self) -> Result<Option<i64>, StoreError> {
        match self.cells.next() {
            Some(Value::Int(number)) => Ok(Some(number)),
            Some(Value::Null) => Ok(None),
            _ => Err(odd("no number where one should be")),
        }
    }

    /// The next cell, which holds a number that fits 32 bits, or nothing.
    pub(crate) fn maybe_u32(&mut self) -> Result<Option<u32>, StoreError> {
        let number = self.maybe_int()?;
        number.map(|n| u32::try_from(n).map_err(|_| odd("a number out of range"))).transpose()
    }

    /// The next cell, which holds a text.
    pub(crate) fn text(&mut self) -> Result<String, StoreError> {
        self.maybe_text()?.ok_or_else(|| odd("nothing where a text should be"))
    }

    /// The next cell, which holds a text or nothing.
    pub(crate) fn maybe_text(&mut self) -> Result<Option<String>, StoreError> {
        match self.cells.next() {
            Some(Value::Text(text)) => Ok(Some(text.into_owned())),
            Some(Value::Null) => Ok(None),
            _ => Err(odd("no text where one should be")),
        }
    }

    /// The next cell, which holds a moment.
    pub(crate) fn moment(&mut self) -> Result<jiff::Timestamp, StoreError> {
        moment(self.int()?)
    }

    /// The next cell, which holds a moment or nothing.
    pub(crate) fn maybe_moment(&mut self) -> Result<Option<jiff::Timestamp>, StoreError> {
        self.maybe_int()?.map(moment).transpose()
    }
}

fn moment(microseconds: i64) -> Result<jiff::Timestamp, StoreError> {
    jiff::Timestamp::from_microsecond(microseconds).map_err(|_| odd("a time out of range"))
}

fn odd(what: &str) -> StoreError {
    StoreError::Damaged { place: "its tables".into(), what: what.into() }
}
