//! Long words that may break where a syllable ends, so that a narrow screen does not break them
//! anywhere.

/// A word of fewer letters stays whole.
const LONG: usize = 10;
/// So many letters stay together on either side of a break.
const KEPT: usize = 4;

const fn is_vowel(letter: char) -> bool {
    matches!(letter.to_ascii_lowercase(), 'a' | 'e' | 'i' | 'o' | 'u' | 'y')
}

/// A text with soft hyphens in its long words: before a single consonant between two vowels, as
/// English and Spanish part most of theirs. `bench-words.js` does the same.
pub(super) fn soft(text: &str) -> String {
    let words = text.split(' ').map(|word| {
        let letters: Vec<char> = word.chars().collect();
        if letters.len() < LONG {
            return word.to_owned();
        }
        let mut parted = String::new();
        for (at, letter) in letters.iter().enumerate() {
            let far = at >= KEPT && at + KEPT <= letters.len();
            if far && letter.is_alphabetic() && !is_vowel(*letter) {
                let next = letters.get(at + 1).is_some_and(|next| is_vowel(*next));
                if next && is_vowel(letters[at - 1]) {
                    parted.push('\u{ad}');
                }
            }
            parted.push(*letter);
        }
        parted
    });
    words.collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::soft;

    #[test]
    fn long_words_part_at_a_syllable_and_short_ones_never() {
        // Divisions as in Merriam-Webster's Collegiate Dictionary, from memory.
        for (word, parted) in [
            ("Oat flour + glucoamylase", "Oat flour + glucoa·my·lase"),
            ("Invertase", "Invertase"),
            ("Maple syrup, no yeast", "Maple syrup, no yeast"),
            ("concentrated", "concentrated"),
        ] {
            assert_eq!(soft(word).replace('\u{ad}', "·"), parted);
        }
    }
}
