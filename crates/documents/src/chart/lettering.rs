//! How much room a text takes, without a font at hand.

/// Advance widths of U+0020 to U+007E in thousandths of the type size: Barm Sans regular.
#[rustfmt::skip]
const REGULAR: [u16; 95] = [
    200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497, 497,
    497, 497, 497, 497, 249, 249, 497, 497, 497, 425, 847, 544, 588, 571, 615, 527, 494, 617, 652, 263, 480, 579,
    486, 727, 647, 664, 566, 664, 569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303, 497, 500, 542, 504,
    553, 456, 555, 496, 292, 504, 544, 246, 247, 495, 255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719,
    446, 467, 425, 303, 241, 303, 497,
];

/// The same for Barm Sans semibold.
#[rustfmt::skip]
const SEMIBOLD: [u16; 95] = [
    200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344, 513, 513, 513, 513, 513, 513,
    513, 513, 513, 513, 275, 275, 513, 513, 513, 444, 875, 558, 597, 576, 625, 538, 510, 628, 663, 282, 494, 597,
    502, 745, 657, 674, 582, 674, 592, 545, 546, 655, 536, 800, 541, 501, 540, 324, 344, 324, 513, 500, 549, 516,
    563, 462, 564, 507, 317, 520, 558, 262, 263, 522, 271, 843, 560, 549, 564, 564, 373, 431, 361, 556, 495, 748,
    481, 495, 443, 324, 255, 324, 513,
];

/// Letters outside the tables: Latin letters with marks are at most this wide on average.
const OTHER_LATIN: f64 = 0.62;
/// Anything else, such as a picture or a letter of another script.
const OTHER: f64 = 1.1;

/// The weight of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Weight {
    Regular,
    Semibold,
}

/// The width of `text` in the unit of `size`, without kerning, which only makes it shorter.
pub(super) fn width(text: &str, size: f64, weight: Weight) -> f64 {
    let table = if weight == Weight::Semibold { &SEMIBOLD } else { &REGULAR };
    let ems: f64 = text
        .chars()
        .map(|letter| match u32::from(letter) {
            code @ 0x20..=0x7E => f64::from(table[code as usize - 0x20]) / 1000.0,
            // The figures of this face are as wide as its signs of arithmetic.
            0x2212 | 0xD7 | 0xB1 => f64::from(table[usize::from(b'0' - b' ')]) / 1000.0,
            0xA0..=0x24F | 0x1E00..=0x1EFF | 0x2013 | 0x2019 => OTHER_LATIN,
            _ => OTHER,
        })
        .sum();
    ems * size
}

/// `text` cut so that it fits into `room`, with an ellipsis where something is missing.
pub(super) fn clipped(text: &str, room: f64, size: f64, weight: Weight) -> String {
    if width(text, size, weight) <= room {
        return text.to_owned();
    }
    let mut kept = text.to_owned();
    while kept.pop().is_some() {
        let candidate = format!("{}…", kept.trim_end());
        if width(&candidate, size, weight) <= room {
            return candidate;
        }
    }
    "…".to_owned()
}

/// `name` on one line or, where it is too long, two: broken before a plus sign if there is one.
pub(super) fn two_lines(name: &str, room: f64, size: f64, weight: Weight) -> Vec<String> {
    if width(name, size, weight) <= room {
        return vec![name.to_owned()];
    }
    let fits = |at: &usize| width(&name[..*at], size, weight) <= room;
    let before_plus = name.find(" + ").filter(fits);
    let at_space = name.rmatch_indices(' ').map(|(at, _)| at).find(fits);
    match before_plus.or(at_space) {
        Some(at) if at > 0 => {
            vec![name[..at].to_owned(), clipped(name[at..].trim_start(), room, size, weight)]
        }
        _ => vec![clipped(name, room, size, weight)],
    }
}

/// A number with `digits` decimals, a true minus sign, and no minus on zero.
pub(super) fn figure(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    // No reading is that large; if one is, it must still fit its column.
    let text = if value.abs() < 1e7 {
        format!("{:.digits$}", value.abs())
    } else {
        format!("{:.0e}", value.abs())
    };
    if value < 0.0 && text.contains(|c: char| c.is_ascii_digit() && c != '0') {
        format!("−{text}")
    } else {
        text
    }
}

/// A difference: as [`figure`], with a plus sign where it is above zero.
pub(super) fn signed(value: f64, digits: usize) -> String {
    let text = figure(value, digits);
    let zero = !text.contains(|c: char| c.is_ascii_digit() && c != '0');
    if value > 0.0 && !zero { format!("+{text}") } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The tables against the advance widths in the `hmtx` table of the very fonts (ISO/IEC 14496-22).
    #[test]
    fn widths_are_those_of_the_fonts() {
        let faces: [(&[u8], &[u16; 95]); 2] = [
            (include_bytes!("../../fonts/BarmSans-Regular.ttf"), &REGULAR),
            (include_bytes!("../../fonts/BarmSans-Semibold.ttf"), &SEMIBOLD),
        ];
        for (bytes, table) in faces {
            let face = ttf_parser::Face::parse(bytes, 0).unwrap();
            let advance =
                |letter: char| face.glyph_index(letter).and_then(|g| face.glyph_hor_advance(g));
            assert_eq!(face.units_per_em(), 1000);
            for (place, width) in table.iter().enumerate() {
                let letter = char::from(b' ' + place as u8);
                assert_eq!(advance(letter), Some(*width), "{letter:?}");
            }
            for letter in ['−', '×', '±'] {
                assert_eq!(advance(letter), advance('0'), "{letter:?}");
            }
            let marked: Vec<f64> = "áéíóúñüçãõÁÉÑőűłżğşăîâėųõøåæœ"
                .chars()
                .filter_map(|letter| advance(letter).map(f64::from))
                .collect();
            let mean = marked.iter().sum::<f64>() / marked.len() as f64;
            assert!(mean / 1000.0 <= OTHER_LATIN, "{mean}");
            let widest = face.glyph_index('…').and_then(|g| face.glyph_hor_advance(g));
            assert!(widest.is_some_and(|wide| f64::from(wide) / 1000.0 <= OTHER));
        }
    }

    #[test]
    fn figures_carry_true_signs() {
        assert_eq!(figure(-0.04, 1), "0.0");
        assert_eq!(figure(-3.25, 1), "−3.2");
        assert_eq!(signed(13.84, 1), "+13.8");
        assert_eq!(signed(0.04, 1), "0.0");
        assert_eq!(signed(f64::NAN, 1), "–");
    }

    #[test]
    fn long_names_break_before_the_plus() {
        let lines = two_lines("Potato flakes + glucoamylase", 90.0, 9.5, Weight::Semibold);
        assert_eq!(lines, ["Potato flakes", "+ glucoamylase"]);
    }

    proptest! {
        #[test]
        fn no_line_is_wider_than_its_room(name in any::<String>(), room in 20.0..300.0) {
            for line in two_lines(&name, room, 9.5, Weight::Semibold) {
                prop_assert!(width(&line, 9.5, Weight::Semibold) <= room, "{line:?}");
            }
        }
    }
}
