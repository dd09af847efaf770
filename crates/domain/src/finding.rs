//! Something a check has to say about a plan.

/// How much a finding matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// The plan cannot be run, or cannot answer its question, as it stands.
    Fault,
    /// It can be run, but is likely to disappoint.
    Warning,
    /// Worth knowing.
    Note,
    /// Someone could be hurt: what to do about it.
    Caution,
}

impl Severity {
    /// The one word used in tables and JSON.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fault => "fault",
            Self::Warning => "warning",
            Self::Note => "note",
            Self::Caution => "caution",
        }
    }
}

/// The place of a value in the plan, such as `question[0].treatment[2].food`; counts from 0.
///
/// The text format turns it into a line and a column.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Field(pub String);

/// One fault, warning, note or caution.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// A stable short code, such as `two-variables` or `S05`.
    pub code: &'static str,
    /// What is the matter, in one sentence that a twelve-year-old can follow.
    pub message: String,
    /// What to change or do.
    pub fix: String,
    /// Where in the plan, if it has one place.
    pub at: Option<Field>,
    /// Who says so, for cautions and rules of the trade.
    pub source: Option<&'static str>,
}

impl Finding {
    /// A finding without place or source.
    pub fn new(
        severity: Severity,
        code: &'static str,
        message: impl Into<String>,
        fix: impl Into<String>,
    ) -> Self {
        Self {
            severity,
            code,
            message: message.into(),
            fix: fix.into(),
            at: None,
            source: None,
        }
    }

    /// The finding at a place of the plan.
    #[must_use]
    pub fn at(self, field: impl Into<String>) -> Self {
        Self { at: Some(Field(field.into())), ..self }
    }

    /// The finding with who says so.
    #[must_use]
    pub fn says(self, source: &'static str) -> Self {
        Self { source: Some(source), ..self }
    }
}
