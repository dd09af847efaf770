//! Rules by which bags were set aside.

/// A rule agreed before the day, by what it looks at; its wording is the class's own and not shared.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Rule {
    /// The bag was seen or heard to leak.
    Leak,
    /// It got a wrong amount of something.
    Amount,
    /// Its zero reading is missing.
    NoZero,
    /// Its card was pressed, lifted or moved.
    Moved,
    /// Another rule of the class.
    Other,
}

impl Rule {
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::Leak, Self::Amount, Self::NoZero, Self::Moved, Self::Other];

    /// Its word; the same as in plans that start from a ready one.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Leak => "leak",
            Self::Amount => "amount",
            Self::NoZero => "no-zero",
            Self::Moved => "moved",
            Self::Other => "other",
        }
    }

    /// What it looks at, in one sentence.
    pub const fn says(self) -> &'static str {
        match self {
            Self::Leak => "the bag was seen or heard to leak",
            Self::Amount => "the bag got a wrong amount of something",
            Self::NoZero => "the zero reading is missing",
            Self::Moved => "the card was pressed, lifted or moved after the zero reading",
            Self::Other => "another rule that the class agreed on before the day",
        }
    }

    /// The rule of a plan with that id; one that is not known is [`Rule::Other`].
    pub fn of(id: &str) -> Self {
        Self::ALL.into_iter().find(|rule| rule.word() == id).unwrap_or(Self::Other)
    }
}
