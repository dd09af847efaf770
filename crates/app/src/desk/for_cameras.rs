//! A square code that a camera reads, for a terminal.

use fast_qr::ECL;
use fast_qr::qr::QRBuilder;

/// An address as a square code of half blocks; none if it is too long for one.
pub(crate) fn code_for_cameras(address: &str) -> Option<String> {
    let code = QRBuilder::new(address).ecl(ECL::M).build().ok()?;
    Some(code.to_str())
}
