//! The sentences that people read.

use crate::class::{Class, answer, bag, compared};
use barm_domain::words::Voice;

const PERIODS: [&str; 4] = ["1", "2", "3", "4"];

/// Five foods with everything that can be said of them.
fn class() -> Class {
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
    class
}

#[test]
fn verdicts_are_said_with_their_doubt() {
    let result = class().result();
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
    let behind = |name| voice.bags_behind(compared(&result, name));
    assert_eq!(behind("Banana"), "This rests on 1 bag of banana and 4 bags of no food.");
    assert!(behind("NaCl and starch").ends_with(" 1 more bag gives no rise to compare."));
    assert_eq!(voice.common_minute(&result), "All bags are compared at minute 24.");
}

#[test]
fn foods_are_also_told_from_each_other() {
    let result = class().result();
    let answer = &result.questions[0];
    let ladder = answer.ladder_without.as_ref().unwrap_or(&answer.ladder);
    let said = Voice::english(7).neighbors(&ladder.neighbors(), 3.0);
    // Means without the bag that is set aside, by hand: milk 1.0, oats 2.9, banana 9.0 of one bag
    // alone, syrup 15.0. Shifts of the periods add up to nothing.
    assert_eq!(
        said,
        [
            "Beside each other, though nobody asked before the day:",
            "Oat flour and nonfat dry milk cannot be told apart: 1.9 mm between the means.",
            "Banana and oat flour cannot be told apart: 6.1 mm between the means.",
            "Maple syrup and banana cannot be told apart: 6.0 mm between the means.",
        ]
    );
    let mut two = Class::foods(&PERIODS, &["Honey", "Oat flour"]);
    for (at, period) in PERIODS.into_iter().enumerate() {
        let shift = [0.5, -0.5, 0.25, -0.25][at];
        two.grow("No food", period, 1.0 + shift);
        two.grow("Honey", period, 12.0 + shift);
        two.grow("Oat flour", period, 4.0 + shift);
    }
    let result = two.result();
    let ladder = &result.questions[0].ladder;
    let said = Voice::english(7).neighbors(&ladder.neighbors(), 3.0);
    assert_eq!(said[1], "Honey rose more than oat flour: 8.0 mm between the means.");
}

#[test]
fn grade_six_hears_whole_millimeters_and_no_interval() {
    let result = class().result();
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
    let class = class();
    let result = class.result();
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
            said.extend(voice.overlap(gap));
            said.extend(voice.gap(gap, class.plan.readable_mm));
            said.extend(voice.slope(gap));
        }
        said.push(voice.common_minute(&result));
        for bag in &result.bags {
            said.extend(voice.set_aside(bag, &class.plan));
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
        assert!(!text.contains("NaN") && !text.contains(" -"), "{text}");
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

#[test]
fn the_ladder_is_said_in_the_words_of_its_grade() {
    let result = class().result();
    let ladder = &answer(&result, "food").ladder;
    let voice = Voice::english(8);
    let dots = |name: &str| {
        let dots = ladder.dots.iter().find(|dots| dots.treatment == name).unwrap();
        voice.dots(dots)
    };
    let gap = |name: &str| ladder.gaps.iter().find(|gap| gap.treatment == name).unwrap();
    assert_eq!(
        dots("Oat flour").unwrap(),
        "Oat flour: 4 bags, mean 2.9 mm, MAD 0.3 mm (average distance from the mean)."
    );
    assert_eq!(dots("Banana").unwrap(), "Banana: 1 bag, which rose 9.0 mm.");
    assert_eq!(dots("NaCl and starch"), None);
    assert_eq!(voice.overlap(gap("NaCl and starch")), None);
    assert_eq!(
        voice.overlap(gap("Oat flour")).unwrap(),
        "The dots of oat flour and no food do not overlap."
    );
    // 1.7 mm over a MAD that cannot be less than the reading doubt of 0.71 mm; four foods have bags.
    assert_eq!(
        voice.gap(gap("Oat flour"), 3.0).unwrap(),
        "The gap of 1.7 mm is 2.4 MADs. With this many bags and 4 gaps it takes 2.9 to stand out. \
         Bags differ less than a ruler shows, so 0.7 mm counts as their MAD."
    );
    assert_eq!(
        voice.slope(gap("Banana")).unwrap(),
        "Banana rose 0.32 mm per minute faster than no food at its fastest."
    );
}

/// Mashed banana that stands steadily 1 mm above no food, and never rises by the 3 mm that can be
/// read: that it is no chance and that it is too small are both said, at once.
#[test]
fn a_steady_difference_too_small_to_read_is_no_contradiction() {
    let mut class = Class::foods(&PERIODS, &["Banana"]);
    for (at, period) in PERIODS.into_iter().enumerate() {
        let shift = [0.05, -0.05, 0.1, -0.1][at];
        for _ in 0..2 {
            class.grow("No food", period, 0.5 + shift);
            class.grow("Banana", period, 2.5 - shift);
        }
    }
    let result = class.result();
    let voice = Voice::english(7);
    let banana = compared(&result, "Banana");
    assert_eq!(voice.verdict(banana.with.verdict.code), "no readable rise");
    assert!(banana.with.difference.unwrap().low > 0.0);
    assert_eq!(
        voice.why(banana),
        "No bag rose by 3 mm: the difference may be real, but it is too small to read."
    );
    let ladder = &answer(&result, "food").ladder;
    let gap = ladder.gaps[0].gap.unwrap();
    assert!(gap.stands_out());
    assert_eq!(
        voice.gap_in_brief(&gap, 3.0),
        "more than chance, but under 3 mm: too small to read"
    );
    let said = voice.gap(&ladder.gaps[0], 3.0).unwrap();
    assert!(
        said.contains(" With this many bags 1.2 is enough to stand out. But 3 mm is "),
        "{said}"
    );
    assert_eq!(voice.gap_in_brief(&gap, 1.0), "larger than chance makes");
}

/// Where one group made all bags of a treatment, no number of MADs tells it from that group's way of working.
#[test]
fn one_groups_bags_only_lean_on_the_ladder_too() {
    let mut class = Class::foods(&["1"], &["Maple syrup"]);
    for rise in [14.0, 13.0, 15.0] {
        let bag = class.add_by("Maple syrup", "1", 1);
        class.read(&bag, &[(0.0, 0.0), (24.0, rise)]);
        class.grow("No food", "1", 1.0);
    }
    let result = class.result();
    let ladder = &answer(&result, "food").ladder;
    let gap = ladder.gaps[0].gap.unwrap();
    assert!(gap.in_mads.unwrap() > 10.0 && !gap.stands_out());
    let voice = Voice::english(7);
    assert_eq!(voice.gap_in_brief(&gap, 3.0), "one group's bags: a leaning at most");
    let said = voice.gap(&ladder.gaps[0], 3.0).unwrap();
    let reason = "these are one group's bags: it may be that group's way of working.";
    assert!(said.contains(reason), "{said}");
}

#[test]
fn bags_set_aside_are_named_with_their_rule() {
    let class = class();
    let result = class.result();
    let said: Vec<String> = result
        .bags
        .iter()
        .filter_map(|bag| Voice::english(8).set_aside(bag, &class.plan))
        .collect();
    assert_eq!(said.len(), 1);
    assert!(
        said[0].ends_with("is set aside by the rule \u{201c}leak\u{201d}: It leaked."),
        "{said:?}"
    );
}
