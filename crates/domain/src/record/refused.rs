//! Why an entry cannot count where it stands.

use super::Key;

/// An entry that is on record but does not count, and why. Each message is fit to show a student.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Refused {
    /// The plan has no such bag.
    #[error("no bag of this plan has the code {code}")]
    NoSuchBag {
        /// The code.
        code: String,
    },
    /// A correction of something that is not on record.
    #[error("there is no reading to correct")]
    NothingToCorrect {
        /// What it points to.
        of: Key,
    },
    /// Read before the zero reading.
    #[error("this bag has no zero reading yet; the height counts once it has one")]
    NoZeroYet,
    /// Read after the bag was lost.
    #[error("this bag was lost before; a height cannot be read any more")]
    AfterLoss,
    /// Set aside by a rule that the plan does not have.
    #[error("“{rule}” is not a rule that the class agreed on before the day")]
    NoSuchRule {
        /// The rule.
        rule: String,
    },
    /// Taken back although it was not set aside.
    #[error("this bag is not set aside")]
    NotSetAside,
    /// A guess after the first zero reading.
    #[error("the guess was locked before the zero reading")]
    GuessLocked,
    /// It is about a thing that cannot have it, such as the zero reading of a period.
    #[error("this entry does not fit what it is about")]
    WrongSubject,
}
