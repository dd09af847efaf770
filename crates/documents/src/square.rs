//! Square codes that cameras read (QR codes, ISO/IEC 18004), error correction level M.

use fast_qr::ECL;
use fast_qr::qr::{QRBuilder, QRCode};

/// Light modules that the standard asks for on every side (ISO/IEC 18004:2015, 9.1).
pub const QUIET: usize = 4;

/// A square code of one text.
pub struct Square(QRCode);

impl Square {
    /// The smallest code that holds the text; none if it is too long for any.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        QRBuilder::new(text).ecl(ECL::M).build().ok().map(Self)
    }

    /// Modules from edge to edge, without the quiet ones: 21 for version 1, four more for each
    /// version after it.
    #[must_use]
    pub const fn modules(&self) -> usize {
        self.0.size
    }

    /// Modules from edge to edge with the quiet ones around.
    #[must_use]
    pub const fn side(&self) -> usize {
        self.0.size + 2 * QUIET
    }

    /// The dark modules as one SVG path, a module a unit, with the quiet zone left free on all
    /// sides. Neighbors in a row are one stretch, and all is one shape, so that no hairlines of
    /// paper show between them.
    #[must_use]
    pub fn path(&self) -> String {
        let mut path = String::new();
        for row in 0..self.0.size {
            let mut column = 0;
            while column < self.0.size {
                let dark = |at: &usize| self.0[row][*at].value();
                let run = (column..self.0.size).take_while(dark).count();
                if run > 0 {
                    let (x, y) = (column + QUIET, row + QUIET);
                    path.push_str(&format!("M{x} {y}h{run}v1h-{run}z"));
                }
                column += run.max(1);
            }
        }
        path
    }

    /// The code as half blocks for a terminal.
    #[must_use]
    pub fn half_blocks(&self) -> String {
        self.0.to_str()
    }

    /// The code as a picture for paper, quiet zone and all, in full black on the paper's white.
    #[cfg(feature = "pdf")]
    pub(crate) fn picture(&self) -> String {
        let (side, path) = (self.side(), self.path());
        format!(
            r##"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" width="{side}" height="{side}"><path d="{path}" fill="#000000"/></svg>"##
        )
    }
}

#[cfg(test)]
mod tests {
    use super::Square;

    /// Modules, bytes and letters of the alphanumeric set that level M holds in versions 1 to 6
    /// (ISO/IEC 18004, table 7).
    const HOLDS: [(usize, usize, usize); 6] =
        [(21, 14, 20), (25, 26, 38), (29, 42, 61), (33, 62, 90), (37, 84, 122), (41, 106, 154)];

    #[test]
    fn a_code_is_the_smallest_that_holds_its_text() {
        let modules = |text: &str| Square::of(text).map(|square| square.modules());
        assert_eq!(modules("P3-04A-5"), Some(21));
        for (at, (side, bytes, letters)) in HOLDS.into_iter().enumerate() {
            assert_eq!(modules(&"a".repeat(bytes)), Some(side), "{bytes} bytes");
            assert_eq!(modules(&"A".repeat(letters)), Some(side), "{letters} letters");
            if let Some((larger, ..)) = HOLDS.get(at + 1) {
                assert_eq!(modules(&"a".repeat(bytes + 1)), Some(*larger));
                assert_eq!(modules(&"A".repeat(letters + 1)), Some(*larger));
            }
        }
        assert_eq!(modules(&"a".repeat(10_000)), None);
    }

    /// The finder pattern stands in three corners: a dark row of seven (ISO/IEC 18004, 6.3.3).
    #[test]
    fn the_path_begins_behind_the_quiet_zone() {
        let path = Square::of("P3-04A-5").expect("a code").path();
        assert!(path.starts_with("M4 4h7v1h-7z"), "{path}");
        assert!(path.contains("M18 4h7v1h-7z") && path.contains("M4 18h7v1h-7z"), "{path}");
    }
}
