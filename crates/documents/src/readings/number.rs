//! Plain numbers as people type them.

use barm_domain::amount::{AmountError, number};

/// Reads an unsigned decimal such as `12`, `12.5` or `12,5`; a sign, a fraction or an exponent
/// does not pass.
///
/// # Errors
/// As [`number`], which also refuses a comma that can be read in two ways.
pub(super) fn decimal(text: &str) -> Result<f64, AmountError> {
    let plain = text.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','));
    number(if plain { text } else { "?" })
}
