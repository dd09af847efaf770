//! Ids of the school's own system.

use std::fmt;

/// Most characters of an id (1EdTech OneRoster 1.1, data types of the CSV tables; from memory).
const MOST: usize = 255;

/// Signs with which a spreadsheet begins a formula, plain and wide.
const SIGNS: [char; 8] = ['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

/// An id that another program gave; it is handed back exactly as it came.
///
/// An id cannot be changed without losing whom it means, so none is taken that a spreadsheet could
/// do harm with: one that begins with a sign of a formula may hold letters, digits and `-._/@:~`
/// only, with which no formula calls anything.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(String);

/// Why a text is no id.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum IdError {
    /// Nothing is written.
    #[error("the id is blank")]
    Blank,
    /// It is too long.
    #[error("the id has {length} characters, more than {MOST}")]
    Long {
        /// How many characters it has.
        length: usize,
    },
    /// It holds blanks at its ends, line ends or signs that cannot be seen.
    #[error("the id begins or ends with a blank or holds a sign that cannot be seen")]
    Unseen,
    /// A spreadsheet would compute it.
    #[error("the id looks like a formula, which a spreadsheet would compute")]
    Formula,
}

impl Id {
    /// An id as it is written.
    ///
    /// # Errors
    /// [`IdError`] says why it is none.
    pub fn new(written: &str) -> Result<Self, IdError> {
        let length = written.chars().count();
        if written.trim().is_empty() {
            return Err(IdError::Blank);
        }
        if length > MOST {
            return Err(IdError::Long { length });
        }
        if written.trim() != written || written.chars().any(is_unseen) {
            return Err(IdError::Unseen);
        }
        let harmless = |c: char| c.is_ascii_alphanumeric() || "-._/@:~".contains(c);
        if written.starts_with(SIGNS) && !written.chars().all(harmless) {
            return Err(IdError::Formula);
        }
        Ok(Self(written.to_owned()))
    }

    /// The id as it came.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Signs that cannot be seen, or that turn the direction of writing.
pub(super) fn is_unseen(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FEFF}')
}

#[cfg(test)]
mod tests {
    use super::{Id, IdError};

    #[test]
    fn ids_as_systems_give_them_are_ids() {
        for id in [
            "1",
            "0001234",
            "{1A2B-77}",
            "c0ffee00-1111-4222-8333-444455556666",
            "a b",
            "x=y",
            "-12",
            "@home/7",
            "'quoted",
        ] {
            assert_eq!(Id::new(id).map(|id| id.to_string()), Ok(id.to_owned()));
        }
    }

    #[test]
    fn what_is_no_id_says_why() {
        assert_eq!(Id::new(" "), Err(IdError::Blank));
        assert_eq!(Id::new(&"x".repeat(256)), Err(IdError::Long { length: 256 }));
        for unseen in [" a", "a ", "a\nb", "a\u{202e}b", "a\0"] {
            assert_eq!(Id::new(unseen), Err(IdError::Unseen), "{unseen:?}");
        }
        for formula in ["=1+1", "+A1", "-cmd|' /C calc'!A0", "@SUM(1)", "\u{ff1d}1", "=x"] {
            assert_eq!(Id::new(formula), Err(IdError::Formula), "{formula}");
        }
    }
}
