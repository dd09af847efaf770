//! Reads all text before it is set, so that any text can be set.

use serde_json::Value;

use super::fonts::covers;

/// What stands for letters that our faces do not have.
const STAND_IN: &str = "[?]";
/// Words longer than this may be broken anywhere after every [`BREAK_AFTER`] letters.
const LONG_WORD: usize = 22;
const BREAK_AFTER: usize = 10;
const ZERO_WIDTH_SPACE: char = '\u{200B}';

/// Makes every text in `values` printable and returns whether any letter had to be replaced.
///
/// Pictures are left unbroken: their texts were measured when they were drawn.
pub(super) fn read(values: &mut Value) -> bool {
    match values {
        Value::String(text) => {
            let picture = text.starts_with("<svg ");
            let (printable, replaced) = printable(text);
            *text = if picture { printable } else { breakable(&bound(&printable)) };
            replaced
        }
        Value::Array(list) => list.iter_mut().fold(false, |any, one| read(one) | any),
        Value::Object(fields) => fields.values_mut().fold(false, |any, one| read(one) | any),
        Value::Null | Value::Bool(_) | Value::Number(_) => false,
    }
}

/// Letters that have no shape: joiners, direction marks, variation selectors, tags.
fn shapeless(letter: char) -> bool {
    matches!(u32::from(letter),
        0xAD | 0x34F | 0x61C | 0x115F..=0x1160 | 0x17B4..=0x17B5 | 0x180B..=0x180F
        | 0x200B..=0x200F | 0x202A..=0x202E | 0x2060..=0x206F | 0x3164 | 0xFE00..=0xFE0F
        | 0xFEFF | 0xFFA0 | 0x1F3FB..=0x1F3FF | 0xE0000..=0xE0FFF)
}

/// Whether a page shows this letter as it is, or rightly shows nothing; otherwise it shows `[?]`.
pub fn prints(letter: char) -> bool {
    shapeless(letter) || letter.is_control() || letter.is_whitespace() || covers(letter)
}

fn printable(text: &str) -> (String, bool) {
    let mut out = String::with_capacity(text.len());
    let mut replaced = false;
    let mut in_gap = false;
    for letter in text.chars().filter(|letter| !shapeless(*letter)) {
        if letter.is_control() || letter.is_whitespace() && !covers(letter) {
            out.push(' ');
            in_gap = false;
        } else if covers(letter) {
            out.push(letter);
            in_gap = false;
        } else {
            // One stand-in for a run: a word in another script is one thing that is missing.
            if !in_gap {
                out.push_str(STAND_IN);
            }
            in_gap = true;
            replaced = true;
        }
    }
    (out, replaced)
}

/// Units that stay on the line of their number.
const UNITS: [&str; 18] = [
    "%", "°C", "°F", "mm", "cm", "in", "mL", "L", "g", "kg", "mg", "s", "min", "h", "tsp",
    "tbsp", "cup", "cups",
];

/// Whether a word is the part of a mixed number behind its whole, such as `1/2`.
fn fraction(word: &str) -> bool {
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    word.split_once('/').is_some_and(|(above, below)| digits(above) && digits(below))
}

/// Binds a number to its unit, and a whole to its fraction, with a space that does not break.
fn bound(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let mut rest = text;
    while let Some(at) = rest.find(' ') {
        let (before, after) = (&rest[..at], &rest[at + 1..]);
        let numeric = before.chars().next_back().is_some_and(char::is_numeric);
        let word = after.split([' ', ',', '.', ';', ':', ')', '(']).next().unwrap_or_default();
        out.push_str(before);
        out.push(if numeric && (UNITS.contains(&word) || fraction(word)) {
            '\u{A0}'
        } else {
            ' '
        });
        rest = after;
    }
    out + rest
}

/// Lets a word that fits no column be broken.
fn breakable(text: &str) -> String {
    let broken = |word: &str| {
        let mut out = String::with_capacity(word.len() + 16);
        for (place, letter) in word.chars().enumerate() {
            if place > 0 && place % BREAK_AFTER == 0 {
                out.push(ZERO_WIDTH_SPACE);
            }
            out.push(letter);
        }
        out
    };
    let words = text.split(' ').map(|word| {
        if word.chars().count() > LONG_WORD { broken(word) } else { word.to_owned() }
    });
    words.collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use serde_json::json;

    #[test]
    fn letters_we_lack_are_replaced_and_counted_once_a_run() {
        assert_eq!(printable("Otters 🦦"), ("Otters [?]".to_owned(), true));
        assert_eq!(printable("שלום 3"), ("[?] 3".to_owned(), true));
        assert_eq!(printable("👩\u{200D}🔬"), ("[?]".to_owned(), true));
        assert_eq!(printable("½ tsp × 3, Ñandú"), ("½ tsp × 3, Ñandú".to_owned(), false));
        assert_eq!(printable("a\u{202E}b\tc\u{0}"), ("ab c ".to_owned(), false));
    }

    #[test]
    fn a_number_keeps_its_unit() {
        assert_eq!(
            bound("Stir 2 g in 60 mL (¼ cup) at 40 °C."),
            "Stir 2\u{A0}g in 60\u{A0}mL (¼\u{A0}cup) at 40\u{A0}°C."
        );
        assert_eq!(bound("4 inches in 2 rows"), "4 inches in 2 rows");
        assert_eq!(
            bound("(1 1/2 cups + 1 1/4 tsp)"),
            "(1\u{A0}1/2\u{A0}cups + 1\u{A0}1/4\u{A0}tsp)"
        );
        assert_eq!(bound("on 3/9 or 3 / 9"), "on 3/9 or 3 / 9");
    }

    #[test]
    fn only_words_that_fit_no_column_may_break() {
        assert_eq!(breakable("glucoamylase solution"), "glucoamylase solution");
        assert_eq!(
            breakable(&"#".repeat(25)),
            ["##########"; 2].join("\u{200B}") + "\u{200B}#####"
        );
    }

    #[test]
    fn every_text_in_the_tree_is_read() {
        let mut values = json!({"a": ["x🦦", {"b": "🦦"}], "n": 3});
        assert!(read(&mut values));
        assert_eq!(values, json!({"a": ["x[?]", {"b": "[?]"}], "n": 3}));
    }

    proptest! {
        #[test]
        fn a_text_is_replaced_in_part_if_a_letter_of_it_does_not_print(text in any::<String>()) {
            prop_assert_eq!(printable(&text).1, !text.chars().all(prints));
        }

        #[test]
        fn what_is_left_is_covered_by_every_face(text in any::<String>()) {
            let (printable, _) = printable(&text);
            prop_assert!(printable.chars().all(covers), "{printable:?}");
        }
    }
}
