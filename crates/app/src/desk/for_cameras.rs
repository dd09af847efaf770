//! A square code that a camera reads, for a terminal.

use barm_documents::square::Square;

/// An address as a square code of half blocks; none if it is too long for one.
pub(crate) fn code_for_cameras(address: &str) -> Option<String> {
    Square::of(address).map(|code| code.half_blocks())
}
