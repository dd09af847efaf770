//! One question for a class to talk about, with the numbers that it rests on.

use super::odd::Odd;
use crate::result::Measured;

/// A question to talk about.
#[derive(Debug, Clone, PartialEq)]
pub enum Prompt {
    /// What is there to see?
    See {
        /// Bags that gave a rise to compare.
        bags: usize,
        /// Minute at which they are compared.
        minute: f64,
    },
    /// Nothing rose enough to be read: what might have gone wrong, and what does that tell?
    Flat {
        /// The highest rise (mm).
        highest_mm: f64,
        /// The smallest rise that can be read (mm).
        readable_mm: f64,
    },
    /// One bag stands apart from the others that were made alike.
    OddBag(Odd),
    /// A difference that chance hardly makes: what made it?
    Clear {
        /// The treatment.
        treatment: String,
        /// What it stands beside.
        reference: String,
        /// Treatment less reference (mm).
        difference_mm: Measured,
    },
    /// A difference that bags cannot tell: what would it take?
    Overlapping {
        /// The treatment.
        treatment: String,
        /// What it stands beside.
        reference: String,
        /// Treatment less reference (mm).
        difference_mm: Measured,
        /// Bags of each.
        bags: (usize, usize),
    },
    /// Bags say clearly what the forecast did not expect: which of the two is to be doubted?
    Reversed {
        /// The treatment.
        treatment: String,
        /// What it stands beside.
        reference: String,
        /// Treatment less reference, as it was foretold (mm).
        foretold_mm: f64,
        /// Treatment less reference, as it was found (mm).
        found_mm: Measured,
    },
    /// Bags of one kind differ among themselves: from where does that come?
    Spread {
        /// The treatment whose bags differ most.
        treatment: String,
        /// Its lowest and its highest rise (mm).
        between_mm: (f64, f64),
        /// Its bags.
        bags: usize,
    },
    /// Bags were set aside by a rule: is that fair?
    SetAside {
        /// Each with the rule.
        bags: Vec<(String, String)>,
    },
    /// What does the bag tell in which least was changed?
    Control {
        /// The reference.
        reference: String,
        /// Its mean rise (mm).
        mean_mm: f64,
    },
    /// What can be claimed?
    Claim,
    /// What would be changed next?
    Next,
}

impl Prompt {
    /// By which it is known again, however the numbers have moved: `clear/Honey`.
    pub fn key(&self) -> String {
        match self {
            Self::See { .. } => "see".to_owned(),
            Self::Flat { .. } => "flat".to_owned(),
            Self::OddBag(odd) => format!("odd/{}", odd.bag),
            Self::Clear { treatment, .. } => format!("clear/{treatment}"),
            Self::Overlapping { treatment, .. } => format!("overlapping/{treatment}"),
            Self::Reversed { treatment, .. } => format!("reversed/{treatment}"),
            Self::Spread { .. } => "spread".to_owned(),
            Self::SetAside { .. } => "set-aside".to_owned(),
            Self::Control { .. } => "control".to_owned(),
            Self::Claim => "claim".to_owned(),
            Self::Next => "next".to_owned(),
        }
    }
}
