//! The sentences that people read.

use crate::class::{Class, answer, bag, compared};
use barm_domain::result::ClassResult;
use barm_domain::words::Voice;

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

/// Five foods with everything that can be said of them.
fn result() -> ClassResult {
    let foods = ["Maple syrup", "Oat flour", "Banana", "Nonfat dry milk", "NaCl and starch"];
    let mut class = Class::foods(&PERIODS, &foods);
    for (at, period) in PERIODS.into_iter().enumerate() {
        let shift = [0.8, -0.4, 0.3, -0.7][at];
        class.grow("No food", period, 1.2 + shift);
        class.grow("Maple syrup", period, 15.0 - shift);
        class.grow("Oat flour", period, 2.9 - 0.5 * shift);
        class.grow("Nonfat dry milk", period, 1.0 - shift);
    }
    class.grow("Banana", "1", 9.0);
    let leaky = class.grow("Maple syrup", "2", -9.0);
    class.put_aside(&leaky, "leak");
    let no_zero = class.add("NaCl and starch", "1");
    class.read(&no_zero, &[(4.0, 1.0)]);
    class.result()
}

#[test]
fn verdicts_are_said_with_their_doubt() {
    let result = result();
    let voice = Voice::english(8);
    let say = |name| voice.comparison(compared(&result, name));
    let without = voice.without_set_aside(compared(&result, "Maple syrup")).unwrap();
    assert!(
        without.starts_with(
            "Without the bags set aside: maple syrup rose 13.8 mm more than no food (between 1"
        ),
        "{without}"
    );
    assert_eq!(say("NaCl and starch"), "NaCl and starch and no food cannot be compared.");
    assert_eq!(
        voice.why(compared(&result, "NaCl and starch")),
        "The one bag of NaCl and starch gives no rise to compare."
    );
    assert_eq!(
        say("Nonfat dry milk"),
        "Neither nonfat dry milk nor no food rose enough to read."
    );
    assert_eq!(
        voice.why(compared(&result, "Nonfat dry milk")),
        "No bag rose by 3 mm; the highest reached 2.0 mm."
    );
    let behind = voice.bags_behind(compared(&result, "Banana"));
    assert_eq!(behind, "This rests on 1 bag of banana and 4 bags of no food.");
}

#[test]
fn grade_six_hears_whole_millimeters_and_no_interval() {
    let result = result();
    let maple = compared(&result, "Maple syrup");
    assert_eq!(
        Voice::english(6).without_set_aside(maple).unwrap(),
        "Without the bags set aside: maple syrup rose about 14 mm more than no food."
    );
}

#[test]
fn a_fall_below_the_reference_is_said_as_less() {
    let mut class = Class::foods(&PERIODS, &["Salt"]);
    for (at, period) in PERIODS.into_iter().enumerate() {
        let shift = [0.8, -0.4, 0.3, -0.7][at];
        class.grow("No food", period, 9.0 + shift);
        class.grow("Salt", period, 1.0 - shift);
    }
    let said = Voice::english(8).comparison(compared(&class.result(), "Salt"));
    assert!(said.starts_with("Salt rose 8.0 mm less than no food (between "), "{said}");
    let numbers: Vec<f64> = said
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|part| part.trim_end_matches('.').parse().ok())
        .collect();
    assert!(numbers[1] > 0.0 && numbers[1] < 8.0 && numbers[2] > 8.0, "{said}");
}

/// No sentence has more than 20 words (names of up to three words each), at any grade.
#[test]
fn sentences_are_short() {
    let result = result();
    let mut said = Vec::new();
    for voice in [6, 7, 8].map(Voice::english) {
        for compared in &answer(&result, "food").comparisons {
            said.push(voice.comparison(compared));
            said.extend(voice.without_set_aside(compared));
            said.extend([voice.why(compared), voice.why_without(compared)]);
            said.push(voice.bags_behind(compared));
        }
        let ladder = &answer(&result, "food").ladder;
        said.extend(ladder.dots.iter().filter_map(|dots| voice.dots(dots)));
        for gap in &ladder.gaps {
            said.push(voice.overlap(gap));
            said.extend(voice.gap(gap));
            said.extend(voice.slope(gap));
        }
        for bag in &result.bags {
            said.extend(bag.hints.iter().map(|hint| voice.hint(hint)));
        }
    }
    assert!(said.len() > 100);
    for text in &said {
        for sentence in text.split_inclusive(['?', '!']).flat_map(|part| part.split(". ")) {
            let words = sentence.split_whitespace().count();
            assert!(words <= 20, "{words} words: {sentence}");
        }
        assert!(text.ends_with(['.', '?']), "{text}");
        assert!(text.starts_with(char::is_uppercase), "{text}");
        assert!(!text.contains("NaN") && !text.contains("-0"), "{text}");
    }
}

#[test]
fn hints_ask_and_do_not_accuse() {
    let mut class = Class::foods(&["1"], &["Maple syrup"]);
    let fell = class.add("Maple syrup", "1");
    class.read(&fell, &[(0.0, 0.0), (4.0, 9.0), (8.0, 4.5), (24.0, 5.0)]);
    let result = class.result();
    let hint = Voice::english(8).hint(&bag(&result, &fell).hints[0]);
    assert_eq!(hint, "It fell by 4.5 mm between minutes 4 and 8: did it leak?");
}
