//! Why a table of a teacher's gives no answer.

use barm_documents::columns::ColumnsError;
use barm_science::fit::curve::CurveError;
use barm_science::statistics::levels::LevelsError;

/// Why a table gives no answer.
#[derive(Debug, thiserror::Error)]
pub(crate) enum TableError {
    /// It cannot be read.
    #[error(transparent)]
    Columns(#[from] ColumnsError),
    /// One column was asked for as two.
    #[error("column \"{heading}\" was asked for twice; each needs a column of its own")]
    SameColumn {
        /// Its heading.
        heading: String,
    },
    /// No row has all that is asked for.
    #[error("{}", no_rows(*left_out))]
    NoRows {
        /// Rows with a blank cell.
        left_out: usize,
    },
    /// The control is no level.
    #[error("no row is of the level \"{control}\" that was named as control ({meant})")]
    NoControl {
        /// The control that was named.
        control: String,
        /// What was meant, or what there is.
        meant: String,
    },
    /// Levels that hang together in sets.
    #[error("{why}: {sets}")]
    Apart {
        /// The reason.
        why: LevelsError,
        /// The sets, by the levels' names.
        sets: String,
    },
    /// The levels cannot be compared.
    #[error(transparent)]
    Levels(LevelsError),
    /// No curve can be laid.
    #[error(transparent)]
    Curve(#[from] CurveError),
}

fn no_rows(left_out: usize) -> String {
    match left_out {
        0 => "there are headings, but no row under them".to_owned(),
        1 => "the one row has a blank cell in one of these columns".to_owned(),
        _ => format!("all {left_out} rows have a blank cell in one of these columns"),
    }
}

impl TableError {
    /// What to do about it, where the message does not say so itself.
    pub(crate) fn hint(&self) -> Option<String> {
        let hint = match self {
            Self::Columns(ColumnsError::Empty) | Self::NoRows { .. } => {
                "the first line names the columns, every other line is one bag or one point"
            }
            Self::Columns(ColumnsError::NoColumn { .. }) => {
                "write the heading as it stands in the first line of the table"
            }
            Self::Apart { .. } => {
                "compare each set by itself, or make each level in blocks that others are in"
            }
            Self::Levels(LevelsError::Chance(_)) => {
                "one row a bag, and at least two bags of some level (in some block)"
            }
            Self::Levels(LevelsError::AllEqual { .. })
            | Self::Curve(CurveError::AllEqual { .. }) => {
                "look whether this is the right column, or whether numbers were copied"
            }
            Self::Columns(_)
            | Self::SameColumn { .. }
            | Self::NoControl { .. }
            | Self::Levels(_)
            | Self::Curve(_) => return None,
        };
        Some(hint.to_owned())
    }
}
