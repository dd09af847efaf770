//! What holds of the texts whoever wrote them.

use super::Catalog;
use super::languages::LANGUAGES;
use super::larder::LARDER;
use fluent_bundle::FluentResource;
use std::collections::BTreeSet;

/// Texts for teachers may be longer and harder.
const TEACHERS: &str = "teacher-";

/// All but names of things, which are no sentences and cannot be said more plainly.
fn student_texts(catalog: &Catalog) -> Vec<(String, String)> {
    let other = |key: &&String| !key.starts_with(TEACHERS) && !key.starts_with(LARDER);
    let keys = catalog.keys().iter().filter(other);
    keys.map(|key| (key.clone(), filled(catalog, key))).collect()
}

/// A text with short values in its open places, as it would stand on a page.
fn filled(catalog: &Catalog, key: &str) -> String {
    let values: Vec<(&str, &str)> =
        catalog.placeholders(key).iter().map(|name| (name.as_str(), "8")).collect();
    catalog.say_with(key, &values)
}

#[test]
fn every_language_is_read_without_a_mistake() {
    for (code, text) in LANGUAGES {
        let read = FluentResource::try_new((*text).to_owned());
        assert!(read.is_ok(), "{code}: {:?}", read.map_err(|(_, mistakes)| mistakes).err());
    }
}

#[test]
fn every_language_has_every_text_once_with_the_same_open_places() {
    let english = Catalog::of("en");
    assert!(english.keys().len() > 100);
    for catalog in Catalog::all() {
        assert_eq!(catalog.keys(), english.keys(), "{}: keys in one order", catalog.code());
        let keys: BTreeSet<&String> = catalog.keys().iter().collect();
        assert_eq!(keys.len(), catalog.keys().len(), "{}: a key twice", catalog.code());
        for key in catalog.keys() {
            assert_eq!(
                catalog.placeholders(key),
                english.placeholders(key),
                "{}: open places of {key}",
                catalog.code()
            );
            let text = filled(catalog, key);
            assert!(!text.trim().is_empty(), "{}: {key} is empty", catalog.code());
            assert!(!text.contains(['{', '}']), "{}: {key} says {text}", catalog.code());
        }
    }
}

#[test]
fn texts_neither_shout_nor_beg() {
    for catalog in Catalog::all() {
        for (key, text) in student_texts(catalog) {
            let place = format!("{} {key}: {text}", catalog.code());
            assert!(!text.contains(['!', '¡']), "{place}");
            let small = text.to_lowercase();
            let begs = small.contains("please") || small.contains("por favor");
            assert!(!begs || key == "guard-please", "{place}");
        }
    }
}

#[test]
fn an_unknown_language_falls_to_english_and_an_unknown_key_to_itself() {
    assert_eq!(Catalog::of("fi").code(), "en");
    assert_eq!(Catalog::of("es-MX").code(), "es");
    assert_eq!(Catalog::of("").code(), "en");
    assert_eq!(Catalog::accepted("fi-FI, es;q=0.9, en;q=0.8").code(), "es");
    assert_eq!(Catalog::accepted("").code(), "en");
    assert_eq!(Catalog::of("es").say("no-such-key"), "no-such-key");
}

#[test]
fn open_places_are_filled_and_a_page_may_fill_them_itself() {
    let english = Catalog::of("en");
    assert_eq!(
        english.say_with("bench-curve-rose", &[("bag", "A"), ("mm", "5"), ("minute", "16")]),
        "Bag A rose 5 mm in 16 minutes."
    );
    assert_eq!(english.pattern("bench-ask"), "How high is the card on bag {bag}?");
    let spanish = Catalog::of("es").pattern("bench-ask");
    assert_eq!(spanish, "¿Qué tan alta está la tarjeta de la bolsa {bag}?");
}

/// Words of a text; a number counts as one.
fn words(text: &str) -> Vec<String> {
    let parts = text.split(|c: char| !(c.is_alphanumeric() || c == '\''));
    parts.filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

/// Sentences of a text: each ends with a point, a question mark or a colon, or with the text.
fn sentences(text: &str) -> Vec<Vec<String>> {
    let parts = text.split(". ").flat_map(|part| part.split(['?', ':']));
    parts.map(words).filter(|words| !words.is_empty()).collect()
}

/// Syllables of an English word by the usual count of groups of vowels, the silent e not counted.
fn english_syllables(word: &str) -> usize {
    let vowel = |c: char| "aeiouy".contains(c);
    let groups = word
        .chars()
        .zip(std::iter::once(' ').chain(word.chars()))
        .filter(|(c, before)| vowel(*c) && !vowel(*before))
        .count();
    let silent = (word.ends_with('e') && !word.ends_with("le")) || word.ends_with("ed");
    (groups - usize::from(silent && groups > 1)).max(1)
}

/// Syllables of a Spanish word: groups of vowels, in which two strong vowels, or a weak one with
/// an accent, are two.
fn spanish_syllables(word: &str) -> usize {
    let weak = |c: char| "iuüy".contains(c);
    let strong = |c: char| "aeoáéíóú".contains(c);
    let letters: Vec<char> = word.chars().collect();
    let mut count = 0;
    let mut before = ' ';
    for (at, letter) in letters.iter().enumerate() {
        let mute = *letter == 'u'
            && matches!(before, 'q' | 'g')
            && letters.get(at + 1).is_some_and(|next| "eiéí".contains(*next));
        if mute {
            continue;
        }
        let new = (strong(*letter) && !weak(before))
            || (weak(*letter) && !strong(before) && !weak(before));
        count += usize::from(new);
        before = *letter;
    }
    count.max(1)
}

/// Words, sentences and syllables of all student texts of a language.
fn counted(catalog: &Catalog, syllables: fn(&str) -> usize) -> (f64, f64, f64) {
    let texts = student_texts(catalog);
    let sentences: Vec<Vec<String>> =
        texts.iter().flat_map(|(_, text)| sentences(text)).collect();
    let words: Vec<&String> = sentences.iter().flatten().collect();
    let all: usize = words.iter().map(|word| syllables(word)).sum();
    (words.len() as f64, sentences.len() as f64, all as f64)
}

#[test]
fn a_sentence_has_fifteen_words_at_most() {
    for catalog in Catalog::all() {
        for (key, text) in student_texts(catalog) {
            for sentence in sentences(&text) {
                let count = sentence.len();
                assert!(count <= 15, "{} {key} has {count} words: {text}", catalog.code());
            }
        }
    }
}

/// Grade 6 at most by Kincaid, Fishburne, Rogers and Chissom 1975 (formula from memory).
#[test]
fn english_is_plain() {
    let (words, sentences, syllables) = counted(Catalog::of("en"), english_syllables);
    let grade = 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
    assert!(grade <= 6.0, "grade {grade:.1}");
}

/// Ease 75 at least by Fernández Huerta 1959 (formula from memory, with words a sentence).
#[test]
fn spanish_is_plain() {
    let (words, sentences, syllables) = counted(Catalog::of("es"), spanish_syllables);
    let ease = 206.84 - 60.0 * syllables / words - 1.02 * words / sentences;
    assert!(ease >= 75.0, "ease {ease:.1}");
}

#[test]
fn syllables_are_counted_as_one_says_them() {
    for (word, count) in [("ruler", 2), ("late", 1), ("table", 2), ("read", 1), ("bag", 1)] {
        assert_eq!(english_syllables(word), count, "{word}");
    }
    for (word, count) in [
        ("bolsa", 2),
        ("maestro", 3),
        ("guardado", 3),
        ("período", 4),
        ("lean", 2),
        ("aquí", 2),
        ("tiene", 2),
    ] {
        assert_eq!(spanish_syllables(word), count, "{word}");
    }
}
