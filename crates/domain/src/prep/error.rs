//! Why a day cannot be prepared.

use crate::bench::BenchError;

/// Why a day cannot be prepared.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PrepError {
    /// A bag stands in a period that the plan does not have.
    #[error("bag {code} is listed for period “{period}”, which the plan does not have")]
    NoPeriod {
        /// Code of the bag.
        code: String,
        /// The period as written.
        period: String,
    },
    /// A bag is of a treatment that the plan does not have.
    #[error("bag {code} is listed as “{treatment}”, which is no treatment of the plan")]
    NoTreatment {
        /// Code of the bag.
        code: String,
        /// The treatment as written.
        treatment: String,
    },
    /// A period is on a day that the plan does not have.
    #[error("period {period} is on “{day}”, which is no day of the plan")]
    NoDay {
        /// Name of the period.
        period: String,
        /// The day as written.
        day: String,
    },
    /// Part of a recipe cannot be weighed or measured out.
    #[error("{treatment}: {source}")]
    Bench {
        /// The treatment.
        treatment: String,
        /// What is wrong with it.
        source: BenchError,
    },
    /// The spare is no share.
    #[error("a spare of {share} times the need makes no sense")]
    Spare {
        /// The share as given (1).
        share: f64,
    },
    /// Hot water that is not hotter than the cold, or water that is none.
    #[error(
        "hot water of {hot_celsius} °C and cold water of {cold_celsius} °C cannot be mixed"
    )]
    Water {
        /// Hot water as given (°C).
        hot_celsius: f64,
        /// Cold water as given (°C).
        cold_celsius: f64,
    },
}

impl PrepError {
    /// What to do about it.
    pub fn fix(&self) -> String {
        match self {
            Self::NoPeriod { .. } => {
                "write one of the plan's periods there, or take the bag off the list".into()
            }
            Self::NoTreatment { .. } => {
                "write one of the plan's treatments or controls there, or take the bag off the \
                 list"
                    .into()
            }
            Self::NoDay { .. } => "write one of the plan's days there".into(),
            Self::Bench { source, .. } => source.fix.clone(),
            Self::Spare { .. } => "write a share such as spare = \"10 %\"".into(),
            Self::Water { .. } => {
                "read both taps with a thermometer; the hot one must be the hotter, and both \
                 between 0 and 100 °C"
                    .into()
            }
        }
    }
}
