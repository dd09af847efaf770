//! How a command ends when it cannot do what was asked.

use crate::desk::DeskError;
use std::error::Error;
use std::io::{self, Write};
use std::process::ExitCode;

/// Why a command stopped.
#[derive(Debug)]
pub(crate) enum Failure {
    /// The desk could not do it.
    Desk(DeskError),
    /// The answer could not be shown.
    Show(io::Error),
}

impl From<DeskError> for Failure {
    fn from(error: DeskError) -> Self {
        Self::Desk(error)
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Self::Show(error)
    }
}

impl From<serde_json::Error> for Failure {
    fn from(error: serde_json::Error) -> Self {
        Self::Show(error.into())
    }
}

impl Failure {
    /// Says on the error stream what happened and gives the exit code.
    pub(super) fn tell(self) -> ExitCode {
        let mut err = io::stderr().lock();
        // If even the error stream is gone, the exit code is all that is left to say.
        match self {
            // The reader has gone away (`barm facts | head`): nothing is wrong.
            Self::Show(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
            Self::Show(error) => {
                let _ = writeln!(err, "barm: cannot write the answer: {error}");
                ExitCode::from(2)
            }
            Self::Desk(error) => {
                let _ = writeln!(err, "barm: {error}");
                let mut cause = error.source();
                while let Some(inner) = cause {
                    let _ = writeln!(err, "  because: {inner}");
                    cause = inner.source();
                }
                if let Some(hint) = error.hint() {
                    let _ = writeln!(err, "  try: {hint}");
                }
                ExitCode::from(error.exit_code())
            }
        }
    }
}
