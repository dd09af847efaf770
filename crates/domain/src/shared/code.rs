//! Codes of treatments in shared data.

use std::fmt;
use std::str::FromStr;

/// Most treatments of an investigation.
const MOST: u16 = 999;

/// The code of a treatment, such as `T01`; the name that the class gave it is not shared.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct TreatmentCode(u16);

/// A text that is no code of a treatment.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("a treatment has a code such as T01, up to T{MOST}")]
pub struct TreatmentCodeError;

impl TreatmentCode {
    /// The code of that number, from 1 to 999.
    pub const fn of(number: u16) -> Option<Self> {
        if 1 <= number && number <= MOST { Some(Self(number)) } else { None }
    }
}

impl fmt::Display for TreatmentCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "T{:02}", self.0)
    }
}

impl FromStr for TreatmentCode {
    type Err = TreatmentCodeError;

    fn from_str(written: &str) -> Result<Self, TreatmentCodeError> {
        let number = written.strip_prefix('T').and_then(|digits| digits.parse().ok());
        let code = number.and_then(Self::of).filter(|code| code.to_string() == written);
        code.ok_or(TreatmentCodeError)
    }
}

#[cfg(test)]
mod tests {
    use super::TreatmentCode;

    #[test]
    fn a_code_is_read_as_it_is_written_and_in_no_other_way() {
        for number in 1..=999 {
            let code = TreatmentCode::of(number).unwrap();
            assert_eq!(code.to_string().parse(), Ok(code));
        }
        assert!(TreatmentCode::of(0).is_none() && TreatmentCode::of(1000).is_none());
        for wrong in ["", "T", "T0", "T00", "T1", "T001", "T1000", "t01", "T+1", "01", "Smith"]
        {
            assert!(wrong.parse::<TreatmentCode>().is_err(), "{wrong}");
        }
    }
}
