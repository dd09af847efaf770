//! What a group hands in, as far as the program knows of it.

/// A student product: what a group made, and of which the program has something to show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Product {
    /// A fair test of its own: a proposal that the teacher approved.
    FairTest,
    /// Readings: a rise of at least one of its bags that counts.
    Readings,
    /// A claim with evidence.
    Evidence,
    /// A claim with reasoning.
    Reasoning,
    /// A note on another group's claim.
    Review,
    /// Graphs and summaries that the teacher marked at a level of 1 or more.
    Analysis,
}

impl Product {
    /// All of them, in the order of a lesson.
    pub const ALL: [Self; 6] = [
        Self::FairTest,
        Self::Readings,
        Self::Evidence,
        Self::Reasoning,
        Self::Review,
        Self::Analysis,
    ];

    /// By which it is kept and asked for, whatever it is called.
    pub const fn word(self) -> &'static str {
        match self {
            Self::FairTest => "fair-test",
            Self::Readings => "readings",
            Self::Evidence => "evidence",
            Self::Reasoning => "reasoning",
            Self::Review => "review",
            Self::Analysis => "analysis",
        }
    }

    /// The product of a word.
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|product| product.word() == word)
    }
}

#[cfg(test)]
mod tests {
    use super::Product;

    #[test]
    fn words_lead_back() {
        for product in Product::ALL {
            assert_eq!(Product::of(product.word()), Some(product));
        }
        assert_eq!(Product::of("poster"), None);
    }
}
