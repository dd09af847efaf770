//! Something a check has to say about a plan.

use std::fmt;

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
/// The text format turns it into a line and a column. It is shown as people count:
///
/// ```
/// # use barm_domain::finding::Field;
/// let field = Field("question[0].treatment[2].food".into());
/// assert_eq!(field.to_string(), "question 1, treatment 3, food");
/// assert_eq!(Field("base.water".into()).to_string(), "base.water");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Field(pub String);

impl fmt::Display for Field {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut between = "";
        for part in self.0.split('.') {
            f.write_str(between)?;
            let counted = part.strip_suffix(']').and_then(|part| part.rsplit_once('['));
            let place = counted.and_then(|(name, index)| {
                Some((name, index.parse::<usize>().ok()?.checked_add(1)?))
            });
            if let Some((name, place)) = place {
                write!(f, "{name} {place}")?;
                between = ", ";
            } else {
                f.write_str(part)?;
                between = ".";
            }
        }
        Ok(())
    }
}

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
