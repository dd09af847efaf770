//! The four faces that every page is set in; no other font is ever looked for.

use std::sync::LazyLock;

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// Barm Sans regular and semibold, Barm Serif medium and italic. Their licences lie beside the files.
static FACES: [&[u8]; 4] = [
    include_bytes!("../../fonts/BarmSans-Regular.ttf"),
    include_bytes!("../../fonts/BarmSans-Semibold.ttf"),
    include_bytes!("../../fonts/BarmSerif-Medium.ttf"),
    include_bytes!("../../fonts/BarmSerif-Italic.ttf"),
];

/// The faces as the layout engine reads them.
pub(super) static FONTS: LazyLock<Vec<Font>> =
    LazyLock::new(|| FACES.iter().filter_map(|face| Font::new(Bytes::new(*face), 0)).collect());

/// What the layout engine may choose from.
pub(super) static BOOK: LazyLock<LazyHash<FontBook>> =
    LazyLock::new(|| LazyHash::new(FontBook::from_fonts(FONTS.iter())));

/// Whether all four faces have a sign for `letter`, so that it prints wherever it stands.
pub(super) fn covers(letter: char) -> bool {
    FONTS.iter().all(|font| font.info().coverage.contains(u32::from(letter)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_four_faces_are_read_and_keep_their_names() {
        let names: Vec<_> = FONTS.iter().map(|font| font.info().family.as_str()).collect();
        assert_eq!(names, ["Barm Sans", "Barm Sans", "Barm Serif", "Barm Serif"]);
    }
}
