//! Why there is no round two.

/// Why nothing can be proposed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum NoRoundTwo {
    /// No reading of round one counts.
    #[error(
        "no bag of this plan has a zero reading and a later one, so round one says nothing yet; look whether these are the readings of this plan"
    )]
    NoReadings,
    /// No question compares anything.
    #[error(
        "no question of the plan compares a treatment with another, so there is nothing that more bags could tell; name a reference in a question"
    )]
    NothingCompared,
    /// Whatever was thought of cannot be made.
    #[error(
        "none of the {tried} second rounds that were tried can be made with this plan's groups and bag codes; add a period or groups"
    )]
    NoneFits {
        /// How many were tried.
        tried: usize,
    },
}

/// Why two rounds cannot be put together.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum NotPooled {
    /// A round without readings that count.
    #[error(
        "no bag of the {round} round's plan has a zero reading and a later one; look whether these are the readings of that plan"
    )]
    NoReadings {
        /// Which: `first` or `second`.
        round: &'static str,
    },
    /// A code that stands in both lists.
    #[error(
        "bag {code} stands in the lists of both rounds, so its readings cannot be told apart; were two different plans given, and are the second round's bags labeled anew?"
    )]
    SameCode {
        /// The code.
        code: String,
    },
    /// Nothing that both compare.
    #[error(
        "the two plans have no question in common, by its id; a second round keeps the ids of the questions that it asks again"
    )]
    NothingInCommon,
    /// One name for two recipes.
    #[error(
        "“{name}” is made otherwise in round two than in round one, so their bags cannot be put together; give it back its recipe, or another name"
    )]
    OtherRecipe {
        /// Name of the treatment.
        name: String,
    },
    /// A question whose pairs are others now.
    #[error(
        "in question “{question}”, “{treatment}” stands beside another treatment in round two than in round one, so the two differences are not the same; give it back its reference"
    )]
    OtherReference {
        /// Id of the question.
        question: String,
        /// The treatment.
        treatment: String,
    },
    /// Other limits of what counts.
    #[error(
        "round one counts differences from {first_mm} mm on and round two from {second_mm} mm; write the same readable_difference in both plans"
    )]
    OtherReadable {
        /// In round one (mm).
        first_mm: f64,
        /// In round two (mm).
        second_mm: f64,
    },
}
