//! Words that are shown of a person or a class.

use super::id::is_unseen;
use std::fmt;

/// Most characters that are shown of a name.
const MOST: usize = 120;

/// Words to show on one line: no line ends, nothing that cannot be seen, not too long.
///
/// `Debug` does not give them away, so that no name gets into a log.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Shown(String);

impl Shown {
    /// The words of a text, with single blanks between them.
    pub fn of(text: &str) -> Self {
        let seen = text.chars().map(|c| if c.is_whitespace() { ' ' } else { c });
        let seen: String = seen.filter(|c| !is_unseen(*c)).collect();
        let words: Vec<&str> = seen.split_whitespace().collect();
        let short: String = words.join(" ").chars().take(MOST).collect();
        Self(short.trim_end().to_owned())
    }

    /// The words.
    pub fn words(&self) -> &str {
        &self.0
    }

    /// Whether nothing is left to show.
    pub const fn is_blank(&self) -> bool {
        self.0.is_empty()
    }
}

impl fmt::Debug for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Shown({} characters)", self.0.chars().count())
    }
}

#[cfg(test)]
mod tests {
    use super::Shown;

    #[test]
    fn words_stand_on_one_line() {
        assert_eq!(Shown::of("  Ann\n\tInvented\u{202e} \u{0}").words(), "Ann Invented");
        assert!(Shown::of(" \r\n ").is_blank());
        assert_eq!(Shown::of(&"ab ".repeat(100)).words().chars().count(), 119);
        assert_eq!(Shown::of("Zoë Ñandú").words(), "Zoë Ñandú");
    }
}
