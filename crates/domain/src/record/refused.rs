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
    /// A correction of something that is not on record for this bag.
    #[error("there is no reading to correct")]
    NothingToCorrect {
        /// What it points to.
        of: Key,
    },
    /// Read while the bag has no zero reading.
    #[error("this bag has no zero reading yet; the height counts once it has one")]
    NoZeroYet,
    /// Read at an earlier time than the zero reading.
    #[error("this height was read before the zero reading, so no rise can be told from it")]
    BeforeZero,
    /// Read, made or sealed after the bag was lost.
    #[error("this bag was lost before; nothing can be read from it any more")]
    AfterLoss,
    /// Sealed a second time.
    #[error("this bag was sealed before; the first time counts")]
    AlreadySealed,
    /// Vented a second time.
    #[error("this bag was vented before; the first time counts")]
    AlreadyVented,
    /// Another height was chosen for the same planned minute.
    #[error("the teacher chose another height for this minute")]
    NotChosen {
        /// The entry that chose.
        by: Key,
    },
    /// Numbers that stand in for a group's own.
    #[error("these numbers stand in for a group's own and never count")]
    StandIn,
    /// Lent numbers taken back from a group that has none.
    #[error("this group works with its own numbers")]
    OwnNumbers,
    /// Something that is not a number.
    #[error("this is not a number; write it again")]
    NotANumber,
    /// Set aside by a rule that the plan does not have.
    #[error("“{rule}” is not a rule that the class agreed on before the day")]
    NoSuchRule {
        /// The rule.
        rule: String,
    },
    /// Set right to a treatment that the plan does not have.
    #[error("“{treatment}” is no treatment of this plan")]
    NoSuchTreatment {
        /// The treatment.
        treatment: String,
    },
    /// Taken back although it was neither set aside nor lost.
    #[error("this bag is not set aside")]
    NotSetAside,
    /// An odd thing taken back that does not stand, or that somebody else tapped.
    #[error("there is no such tap to take back")]
    NotTapped,
    /// A guess after the first zero reading.
    #[error("the guess was locked before the zero reading")]
    GuessLocked,
    /// A start taken back that never was.
    #[error("this period has not begun")]
    NotBegun,
    /// Begun while it runs.
    #[error("the clock of this period runs already")]
    BegunAlready,
    /// Stopped while all clocks stand.
    #[error("the clocks stand still already")]
    StandsAlready,
    /// Let go on while the clocks run.
    #[error("the clocks run already")]
    RunsAlready,
    /// It is about a thing that cannot have it, such as the zero reading of a period.
    #[error("this entry does not fit what it is about")]
    WrongSubject,
}
