//! A mistake in a plan file: where, what is wrong, and what to do.

use barm_domain::amount::AmountError;
use barm_domain::cupboard::NotInCupboard;
use barm_domain::finding::Field;
use barm_domain::plan::ChoiceError;
use std::fmt;

/// One mistake in a plan file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mistake {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// The field, which is shown as `period 2, start`; `None` where the file cannot be read at all.
    pub field: Option<Field>,
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub fix: String,
}

impl fmt::Display for Mistake {
    /// `12:9: base.water: “40” has no unit; write it like 1/4 tsp, 2.5 g or 60 mL`
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: ", self.line, self.column)?;
        if let Some(field) = &self.field {
            write!(f, "{field}: ")?;
        }
        write!(f, "{}; {}", self.what, self.fix)
    }
}

/// What is wrong with a value and what to do, before it is known where the value stands.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Wrong {
    pub(crate) what: String,
    pub(crate) fix: String,
}

impl Wrong {
    pub(crate) fn new(what: impl Into<String>, fix: impl Into<String>) -> Self {
        Self { what: what.into(), fix: fix.into() }
    }
}

impl Wrong {
    /// Takes apart a sentence that says what is wrong and, after a semicolon, what to do.
    pub(crate) fn split(message: &str) -> Self {
        match message.split_once("; ") {
            Some((what, fix)) => Self::new(what, fix),
            None => Self::new(message, "look at it again"),
        }
    }
}

impl From<AmountError> for Wrong {
    fn from(error: AmountError) -> Self {
        Self::new(error.what(), error.fix())
    }
}

impl From<ChoiceError> for Wrong {
    fn from(error: ChoiceError) -> Self {
        Self::new(error.to_string(), error.fix())
    }
}

impl From<NotInCupboard> for Wrong {
    fn from(error: NotInCupboard) -> Self {
        Self::new(error.to_string(), error.fix())
    }
}
