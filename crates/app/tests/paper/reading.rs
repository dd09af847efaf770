//! How hard what students hold is to read: whole sentences of the printed text, codes and quantities
//! left out.

use crate::hands::PARTS;
use crate::pages::texts;
use crate::prints::{Class, PRINTS, plan_of};
use crate::program::{run, skip};
use crate::tools::name;
use std::fs;
use std::path::Path;

/// No level of inquiry is told to those who work at it.
const LEVELS: [&str; 9] = [
    "confirmation",
    "structured",
    "guided",
    "inquiry",
    "confirmación",
    "estructurad",
    "guiad",
    "indagación",
    "nivel",
];

/// Words of a text. What holds a figure is a code or a quantity and is left out, with the unit behind
/// it.
fn words(text: &str) -> Vec<String> {
    const UNITS: [&str; 11] =
        ["mm", "g", "mL", "°C", "°F", "min", "tsp", "tbsp", "cdta", "cda", "%"];
    let mut words = Vec::new();
    let mut counted = false;
    for word in text.split_whitespace() {
        let bare = word.trim_matches(|c: char| !c.is_alphanumeric() && c != '°' && c != '%');
        let number = bare.chars().any(|c| c.is_ascii_digit());
        let unit = counted && UNITS.contains(&bare);
        if !number && !unit && bare.chars().any(char::is_alphabetic) {
            words.push(bare.to_lowercase());
        }
        counted = number || unit;
    }
    words
}

/// Whole sentences: they begin with a capital letter and end with a point or a question mark.
pub(crate) fn sentences(text: &str) -> Vec<Vec<String>> {
    let mut whole = Vec::new();
    // A blank line parts what does not belong together; within it lines are broken anywhere.
    for block in text.split("\n\n") {
        let line = block.split_whitespace().collect::<Vec<_>>().join(" ");
        let mut rest = line.as_str();
        while let Some(end) = rest.find(['.', '?', ':']) {
            let (sentence, after) = rest.split_at(end + 1);
            let first = sentence.chars().find(|c| c.is_alphabetic());
            let ends = after.is_empty() || after.starts_with(' ');
            if ends && !sentence.ends_with(':') && first.is_some_and(char::is_uppercase) {
                whole.push(words(sentence));
            }
            rest = after;
        }
    }
    whole.retain(|sentence| sentence.len() > 1);
    whole
}

/// Syllables of an English word: groups of vowels, without the silent e of `-e` and `-ed`.
fn english_syllables(word: &str) -> usize {
    let vowel = |c: char| "aeiouy".contains(c);
    let before = std::iter::once(' ').chain(word.chars());
    let groups = word.chars().zip(before).filter(|(c, b)| vowel(*c) && !vowel(*b)).count();
    let kept = ["le", "ee", "ted", "ded"].iter().any(|end| word.ends_with(end));
    let silent = !kept && (word.ends_with('e') || word.ends_with("ed"));
    (groups - usize::from(silent && groups > 1)).max(1)
}

/// Syllables of a Spanish word: groups of vowels, in which two strong ones, or a weak one with an
/// accent, are two; u is silent in que, qui, gue, gui.
fn spanish_syllables(word: &str) -> usize {
    let weak = |c: char| "iuüy".contains(c);
    let strong = |c: char| "aeoáéíóú".contains(c);
    let letters: Vec<char> = word.chars().collect();
    let (mut count, mut before) = (0, ' ');
    for (at, &letter) in letters.iter().enumerate() {
        let next = letters.get(at + 1).copied().unwrap_or(' ');
        if letter == 'u' && "qg".contains(before) && "eiéí".contains(next) {
            continue;
        }
        let opens = strong(letter) && !weak(before);
        let alone = weak(letter) && !strong(before) && !weak(before);
        count += usize::from(opens || alone);
        before = letter;
    }
    count.max(1)
}

/// Sentences, words and syllables of sentences.
fn counted(sentences: &[Vec<String>], syllables: fn(&str) -> usize) -> (f64, f64, f64) {
    let words: Vec<&String> = sentences.iter().flatten().collect();
    let spoken: usize = words.iter().map(|word| syllables(word)).sum();
    (sentences.len() as f64, words.len() as f64, spoken as f64)
}

/// US school grade in which a text is read with ease.
///
/// J. P. Kincaid, R. P. Fishburne, R. L. Rogers and B. S. Chissom, Derivation of new readability
/// formulas for Navy enlisted personnel, Research Branch Report 8-75 (1975); formula from memory.
pub(crate) fn grade(text: &[Vec<String>]) -> f64 {
    let (sentences, words, syllables) = counted(text, english_syllables);
    0.39 * words / sentences + 11.8 * syllables / words - 15.59
}

/// Ease of reading of a Spanish text, from 0 to 100.
///
/// J. Fernández Huerta, Medidas sencillas de lecturabilidad, Consigna 214 (1959), with syllables a
/// word and words a sentence; formula from memory.
pub(crate) fn ease(text: &[Vec<String>]) -> f64 {
    let (sentences, words, syllables) = counted(text, spanish_syllables);
    206.84 - 60.0 * syllables / words - 1.02 * words / sentences
}

#[test]
fn the_formulas_give_what_one_works_out_by_hand() {
    let english = sentences("The cat sat on the mat.");
    // Six words of one syllable: 0.39 · 6 + 11.8 − 15.59.
    assert!((grade(&english) + 1.45).abs() < 1e-9);
    // Two sentences, five words, nine syllables: 206.84 − 60 · 9/5 − 1.02 · 5/2.
    let spanish = sentences("Abran la bolsa. Lean todo.");
    assert!((ease(&spanish) - 96.29).abs() < 1e-9, "{}", ease(&spanish));
    for (word, count) in
        [("yeast", 1), ("teacher", 2), ("needed", 2), ("little", 2), ("closed", 1)]
    {
        assert_eq!(english_syllables(word), count, "{word}");
    }
    for (word, count) in
        [("guarden", 2), ("período", 4), ("aquí", 2), ("levadura", 4), ("lean", 2)]
    {
        assert_eq!(spanish_syllables(word), count, "{word}");
    }
}

#[test]
fn codes_and_quantities_are_no_words() {
    let whole =
        sentences("Bag P1-02A-8 gets 40 mL of water.\n\nYour plan\n\nRead it: now. Stop.");
    assert_eq!(whole, [vec!["bag", "gets", "of", "water"]]);
}

/// A text without some sentences, wherever its lines are broken.
pub(crate) fn without(text: &str, sentences: &[String]) -> String {
    let blocks = text.split("\n\n");
    let lines = blocks.map(|one| one.split_whitespace().collect::<Vec<_>>().join(" "));
    let mut text = lines.collect::<Vec<_>>().join("\n\n");
    for sentence in sentences {
        text = text.replace(sentence.as_str(), "");
    }
    text
}

/// Whether sentences are plain: grade 6 at most, 75 of ease at least, none of more than 15 words.
fn is_plain(read: &[Vec<String>], language: &str, place: &str) {
    let longest = read.iter().max_by_key(|one| one.len()).expect("a sentence");
    assert!(longest.len() <= 15, "{place}: {longest:?}");
    match language {
        "en" => assert!(grade(read) <= 6.0, "{place}: grade {:.1}", grade(read)),
        _ => assert!(ease(read) >= 75.0, "{place}: ease {:.1}", ease(read)),
    }
}

/// The sentences of a part of a print, each once, without the teacher's own words, which are not ours
/// to weigh; none without poppler.
fn sentences_of(pdf: &Path, own: &[String]) -> Option<Vec<Vec<String>>> {
    let text = texts(pdf)?.join("\n\n");
    let mut read = sentences(&without(&text, own));
    read.sort();
    read.dedup();
    Some(read)
}

/// The teacher's own words in a plan: its title and its questions.
fn own_words(plan: &Path) -> Vec<String> {
    let written = fs::read_to_string(plan).expect("the plan");
    let written: toml::Table = written.parse().expect("a plan is TOML");
    let asks = |value: &toml::Value| value.as_str().unwrap_or_default().to_owned();
    let mut own = vec![asks(&written["big_question"]), asks(&written["title"])];
    let questions = written.get("question").and_then(toml::Value::as_array);
    own.extend(questions.into_iter().flatten().map(|one| asks(&one["asks"])));
    own
}

/// The parts of one print: each by itself, and those with few sentences together. Gives what small
/// letters stand on them.
fn all_is_plain(folder: &Path, own: &[String], language: &str, place: &str) -> Option<String> {
    let mut few = Vec::new();
    let mut all = String::new();
    for part in PARTS {
        let pdf = folder.join(format!("{part}.pdf"));
        all.push_str(&texts(&pdf)?.join("\n\n").to_lowercase());
        let read = sentences_of(&pdf, own)?;
        if read.len() < 4 {
            few.extend(read);
        } else {
            is_plain(&read, language, &format!("{part} {place}"));
        }
    }
    if !few.is_empty() {
        is_plain(&few, language, &format!("sheets of few words, {place}"));
    }
    Some(all)
}

/// Everything that students hold, at every level, for one group.
#[test]
fn what_students_hold_is_plain_at_every_level_and_names_none() {
    let plan = plan_of(Class::One);
    let own = own_words(&plan);
    let home = tempfile::tempdir().expect("a folder");
    let what = PARTS.join(",");
    for language in ["en", "es"] {
        for level in ["confirmation", "structured", "guided", "open"] {
            let place = format!("{language}-{level}");
            let out = home.path().join(&place);
            let mut arguments =
                vec!["print", name(&plan), "--what", &what, "--out", name(&out)];
            arguments.extend(["--language", language, "--level", level]);
            run(home.path(), &arguments).ended(0);
            let Some(all) = all_is_plain(&out, &own, language, &place) else {
                return skip("what_students_hold_is_plain", "poppler is not installed");
            };
            let told = LEVELS.iter().find(|word| all.contains(**word));
            assert_eq!(told, None, "{place}");
        }
    }
}

/// The same of the groups of the demo, each at its own level, with its own foods and cautions.
#[test]
fn what_the_groups_of_the_demo_hold_is_plain() {
    let own = own_words(&plan_of(Class::Demo));
    for print in PRINTS.iter().filter(|print| print.class == Class::Demo) {
        let place = format!("the demo in {}", print.language);
        if all_is_plain(&print.folder, &own, print.language, &place).is_none() {
            return skip("what_the_groups_of_the_demo_hold", "poppler is not installed");
        }
    }
}
