//! What the teacher's packet says: gaps between bells, what is left, cautions, limits, standards, times.

use crate::packet::{chapter, chapters, page_of, read};
use crate::prints::{Class, HOSTILE, plan_of, print_of};
use crate::program::skip;
use std::fs;

/// Gaps between the bells of the demo's plan: 8:55 to 9:00, 9:45 to 10:40, 11:25 to 1:05, by hand.
#[test]
fn between_the_bells_each_gap_has_its_minutes_and_its_tasks() {
    let Some(said) = chapter("Between the bells and after", "Cautions") else {
        return skip("between_the_bells", "qpdf or poppler is not installed");
    };
    for wanted in [
        "1→2 2→4 4→6",
        "5 min",
        "55 min",
        "100 min",
        "to 8:10",
        "from 1:50",
        "Bags counted",
        "28 28 28 28",
        "Goggles wiped",
        "Make glucoamylase solution",
        "7:40",
        "12:35",
        "Trays swapped",
        "9 9 9 9",
    ] {
        assert!(said.contains(wanted), "{wanted} in {said}");
    }
}

#[test]
fn what_is_left_has_a_way_out_of_the_room() {
    let Some(said) = chapter("Between the bells and after", "Cautions") else {
        return skip("what_is_left", "qpdf or poppler is not installed");
    };
    for wanted in [
        "Clearing away",
        "No bag stays sealed overnight.",
        "Down the drain with plenty of water, the same day.",
        "into the bin with a lid. None is taken home",
        "never sweep or wipe powder dry",
        "Nobody eats it.",
        "Everybody washes hands with soap.",
    ] {
        assert!(said.contains(wanted), "{wanted} in {said}");
    }
}

/// Sources as they are cited by schools and makers: ANSI Z87.1 for goggles and Z358.1 for eyewashes,
/// Moritz and Henriques 1947 for burns, GHS H334 for enzymes, the nine allergens of FALCPA and the
/// FASTER Act; numbers and years from memory.
#[test]
fn a_caution_tells_what_in_the_plan_brings_it_up_and_who_says_so() {
    let Some(said) = chapter("Cautions", "Expected results") else {
        return skip("a_caution_tells", "qpdf or poppler is not installed");
    };
    assert!(said.contains("Your school's and state's rules come first."), "{said}");
    for (starts, source) in [
        (
            "S02 Enzyme liquid on skin, in eyes or in the air because an enzyme goes into",
            "H334",
        ),
        ("S03 Scald from hot water because water or a tray is above 43 °C", "23, 695 (1947)"),
        ("S05 Splash to the eyes because any bag is made", "Z87.1"),
        ("S06 No eyewash within reach because any bag is made", "Z358.1"),
        ("S10 Food allergy because a food in a bag", "FASTER Act 2021"),
        ("S16 Shared mouthpieces on a breath meter because a breath meter is", "49 CFR"),
    ] {
        let place = said.find(starts).unwrap_or_else(|| panic!("{starts} in {said}"));
        let own = &said[place + starts.len()..];
        let end = own.find(" because ").unwrap_or(own.len());
        assert!(own[..end].contains(source), "{starts}: no {source} in {}", &own[..end]);
    }
}

/// The run sheet tells the few that bite, and where the others stand.
#[test]
fn a_run_sheet_tells_few_cautions_and_the_page_of_all() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("a_run_sheet_tells_few_cautions", "qpdf is not installed");
    };
    let page = page_of(&found, "Run sheet, period 6");
    let Some(said) = read(page, page) else {
        return skip("a_run_sheet_tells_few_cautions", "poppler is not installed");
    };
    assert!(said.contains("Splash to the eyes: goggles on"), "{said}");
    let all = format!("on page {}.", page_of(&found, "Cautions"));
    assert!(said.contains(&all), "{all} in {said}");
    let code = |word: &&str| {
        word.len() == 3
            && word.starts_with('S')
            && word[1..].bytes().all(|digit| digit.is_ascii_digit())
    };
    let told = said.split_whitespace().filter(code).count();
    assert!((3..=6).contains(&told), "{told} codes in {said}");
}

/// True of any yeast: without yeast nothing makes gas; baker's yeast cannot take in starch (common
/// knowledge of baking, no source).
#[test]
fn every_treatment_stands_under_what_holds_it_back() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("every_treatment_stands_under", "qpdf is not installed");
    };
    let page = page_of(&found, "What holds each bag back");
    let Some(said) = read(page, page) else {
        return skip("every_treatment_stands_under", "poppler is not installed");
    };
    for (why, treatment) in [
        ("Nothing in it makes gas.", "Maple syrup, no yeast"),
        ("Yeast lives on what it has stored", "No food"),
        ("before an enzyme has cut them", "Oat flour"),
    ] {
        let place = said.find(why).unwrap_or_else(|| panic!("{why} in {said}"));
        let own: String = said[place + why.len()..].chars().take(180).collect();
        assert!(own.contains(treatment), "{treatment} is not after “{why}”: {own}");
    }
}

/// 112 bags and their 112 cards have a label each, and a tenth more is bought: 22.4, so 23.
#[test]
fn labels_of_bags_and_cards_are_counted() {
    let Some(said) = chapter("Shopping and mixing", "Trays") else {
        return skip("labels_of_bags_and_cards", "qpdf or poppler is not installed");
    };
    for wanted in ["247 labels", "112 bags, 112 cards, 23 spare", "labels 247"] {
        assert!(said.contains(wanted), "{wanted} in {said}");
    }
}

#[test]
fn one_moment_is_written_in_one_way_on_all_paper() {
    let print = print_of(Class::Demo, "en", "letter");
    for file in ["packet.pdf", "data-sheets.pdf", "substitute.pdf", "prep.pdf"] {
        let pdf = print.file(file).expect("it was printed");
        let Some(pages) = crate::pages::texts(&pdf) else {
            return skip("one_moment_is_written", "poppler is not installed");
        };
        let said = pages.join(" ");
        let time = |word: &&str| {
            let hour = word.split_once(':').map(|(hour, rest)| (hour.parse::<u32>(), rest));
            matches!(hour, Some((Ok(_), rest)) if rest.starts_with(|c: char| c.is_ascii_digit()))
        };
        for word in said.split_whitespace().filter(time) {
            assert!(!word.contains('½'), "{file}: {word}");
            let hour: u32 =
                word.split(':').next().unwrap_or_default().parse().expect("an hour");
            assert!((1..=12).contains(&hour), "{file}: {word}");
        }
    }
    // Two of the same half minutes, on the run sheet and on the sheet of the group.
    for file in ["packet.pdf", "data-sheets.pdf"] {
        let said =
            crate::pages::texts(&print.file(file).expect("it")).expect("poppler").join(" ");
        assert!(said.contains("8:24:30") && said.contains("1:19"), "{file}");
    }
    let a4 = print_of(Class::One, "en", "a4").file("packet.pdf").expect("a packet");
    let said = crate::pages::texts(&a4).expect("poppler").join(" ");
    assert!(said.contains("8:24:30"), "{said}");
}

/// Codes of standards are claimed with the student product that shows them, as the plan has it.
#[test]
fn a_standard_stands_only_beside_what_shows_it() {
    let print = print_of(Class::Demo, "en", "letter");
    let plan: toml::Table =
        fs::read_to_string(plan_of(Class::Demo)).expect("the plan").parse().expect("TOML");
    let standards = plan["standard"].as_array().expect("a list");
    assert!(standards.len() > 2);
    let mut told = 0;
    for pdf in print.pdfs() {
        let Some(pages) = crate::pages::texts(&pdf) else {
            return skip("a_standard_stands_only_beside", "poppler is not installed");
        };
        let said = pages.join(" ").split_whitespace().collect::<Vec<_>>().join(" ");
        for standard in standards {
            let code = standard["code"].as_str().expect("a code");
            let product = standard["shown_by"].as_str().expect("a product");
            if said.contains(code) {
                told += 1;
                assert!(said.contains(product), "{}: {code}", pdf.display());
            }
        }
    }
    assert!(told >= standards.len(), "the packet tells all of them");
}

#[test]
fn hostile_words_stand_in_the_packet_as_themselves() {
    let pdf = print_of(Class::Overfull, "es", "letter").file("packet.pdf").expect("a packet");
    let Some(pages) = crate::pages::texts(&pdf) else {
        return skip("hostile_words_stand_in_the_packet", "poppler is not installed");
    };
    let joined = |page: &String| -> String {
        page.chars().filter(|c| !c.is_whitespace() && !"\u{200B}\u{AD}".contains(*c)).collect()
    };
    let first = joined(&pages[0]);
    assert!(first.contains(HOSTILE), "the title: {first}");
    let all: String = pages.iter().map(joined).collect();
    assert!(all.contains(&format!("Nonfat{HOSTILE}milk")), "a treatment");
}
