//! How hard a sentence is to read.
//!
//! ```text
//! grade = 0.39 · words / sentences + 11.8 · syllables / words − 15.59
//! ```
//!
//! J. P. Kincaid, R. P. Fishburne, R. L. Rogers and B. S. Chissom, Derivation of new readability
//! formulas for Navy enlisted personnel, Research Branch Report 8-75 (1975).

/// Words of a text: codes, quantities and their units are left out.
pub(crate) fn words(text: &str) -> Vec<String> {
    let units = ["°C", "°F", "%", "mL", "L", "g", "mm", "cm", "in", "sq", "ft", "gal", "m²"];
    let mut words = Vec::new();
    let mut after_number = false;
    for token in text.split_whitespace() {
        let bare = token.trim_matches(|c: char| !c.is_alphanumeric() && c != '°' && c != '%');
        let number = bare.chars().any(|c| c.is_ascii_digit());
        let unit = after_number && units.contains(&bare);
        if !number && !unit && bare.chars().any(char::is_alphabetic) {
            words
                .extend(bare.split('-').filter(|part| !part.is_empty()).map(str::to_lowercase));
        }
        after_number = number || unit;
    }
    words
}

/// Sentences of a text.
pub(crate) fn sentences(text: &str) -> Vec<String> {
    let mut sentences = Vec::new();
    let mut current = String::new();
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        current.push(letter);
        let ends = matches!(letter, '.' | '!' | '?');
        if ends && letters.peek().is_none_or(|next| next.is_whitespace() || *next == '”') {
            sentences.push(std::mem::take(&mut current));
        }
    }
    sentences.push(current);
    sentences.retain(|sentence| !words(sentence).is_empty());
    sentences
}

/// Syllables of a word, by its groups of vowels.
pub(crate) fn syllables(word: &str) -> usize {
    let letters: Vec<char> = word.chars().filter(|c| c.is_alphabetic()).collect();
    let is_vowel = |c: char| "aeiouyéäöü".contains(c);
    let mut count = 0;
    let mut before = false;
    for &letter in &letters {
        let vowel = is_vowel(letter);
        count += usize::from(vowel && !before);
        before = vowel;
    }
    let word: String = letters.iter().collect();
    // A mute e at the end, also before s or d; not after a consonant and l, nor in -ted, -ses.
    let mute = (word.ends_with('e') && !word.ends_with("le") && !word.ends_with("ee"))
        || (word.ends_with("es")
            && !["ses", "xes", "zes", "ches", "shes", "ies", "ees", "les", "ges", "ces"]
                .iter()
                .any(|ending| word.ends_with(ending)))
        || (word.ends_with("ed")
            && !["ted", "ded", "eed", "ied"].iter().any(|ending| word.ends_with(ending)))
        || (word.ends_with("le") && letters.len() > 2 && is_vowel(letters[letters.len() - 3]));
    // Two vowels that are spoken apart.
    let apart = ["ia", "io", "iu", "eo", "ua", "uo"]
        .iter()
        .filter(|pair| word.contains(**pair))
        .count();
    let together =
        ["tion", "sion", "cial", "tial", "gion", "cious", "people", "quar", "qua", "guar"]
            .iter()
            .filter(|pair| word.contains(**pair))
            .count();
    (count + apart.saturating_sub(together)).saturating_sub(usize::from(mute)).max(1)
}

/// Grade of US school in which a text is read with ease.
pub(crate) fn grade(text: &str) -> f64 {
    let words = words(text);
    let sentences = sentences(text).len().max(1) as f64;
    let count = words.len().max(1) as f64;
    let syllables: usize = words.iter().map(|word| syllables(word)).sum();
    0.39 * count / sentences + 11.8 * syllables as f64 / count - 15.59
}

/// Dictionary counts of words that findings use.
#[test]
fn counts_syllables_as_a_dictionary_does() {
    for (word, expected) in [
        ("bag", 1),
        ("yeast", 1),
        ("water", 2),
        ("enzyme", 2),
        ("people", 2),
        ("student", 2),
        ("alcohol", 3),
        ("powder", 2),
        ("thermometer", 4),
        ("allergy", 3),
        ("poison", 2),
        ("breathe", 1),
        ("breathes", 1),
        ("little", 2),
        ("syringe", 2),
        ("mercury", 3),
        ("burned", 1),
        ("wanted", 2),
        ("glasses", 2),
        ("reading", 2),
        ("carbon", 2),
        ("dioxide", 3),
        ("caution", 2),
        ("person", 2),
        ("headache", 2),
        ("material", 4),
        ("class", 1),
        ("classes", 2),
        ("person", 2),
        ("maple", 2),
        ("syrup", 2),
        ("treatment", 2),
        ("question", 2),
        ("replicate", 3),
        ("crowded", 2),
        ("school", 1),
        ("teacher", 2),
    ] {
        assert_eq!(syllables(word), expected, "{word}");
    }
}

/// Known of this formula: a sentence of six words of one syllable comes out at −1.45.
#[test]
fn grade_is_that_of_the_formula() {
    assert!((grade("The cat sat on the mat.") + 1.45).abs() < 1e-9);
    assert_eq!(
        words("Water at 45 °C (113 °F) burns 2.5 g of S03."),
        ["water", "at", "burns", "of"]
    );
}
