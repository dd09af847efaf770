//! One field of the form.

use super::Said;

/// How a field is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Input {
    /// A line of text.
    Line,
    /// A short line, such as an amount.
    Short,
    /// One of several: value and word.
    Choice(Vec<(String, String)>),
    /// A day.
    Date,
}

/// One field.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct FormField {
    /// Its place in the plan, such as `base.water`; also its name in the form.
    pub(crate) name: String,
    /// What it is called.
    pub(crate) label: String,
    /// What it says.
    pub(crate) value: String,
    /// How it is written.
    pub(crate) input: Input,
    /// What is said beside it.
    pub(crate) said: Vec<Said>,
}
