//! What students hold: the right codes on the right pages in order, and room for everything.

use crate::pages::{Page, Word, pages, texts};
use crate::prints::{Class, HOSTILE, PRINTS, plan_of, print_of};
use crate::program::skip;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// The parts that students hold, and those that hang on the wall or are cut out for them.
pub(crate) const PARTS: [&str; 6] =
    ["planning", "bench-cards", "data-sheets", "tally", "graph-paper", "gauge"];

/// The check character of ISO/IEC 7064, MOD 37-2, over `P102`, from memory: with it the weighted sum
/// is 1 modulo 37.
fn sheet_code(period: &str, group: i64) -> String {
    const ALPHABET: &str = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
    let body = format!("P{period}{group:02}");
    let sum = body
        .chars()
        .fold(0, |sum, c| (sum + ALPHABET.find(c).expect("a character of a code")) * 2 % 37);
    let check = ALPHABET.as_bytes()[(38 - sum) % 37] as char;
    format!("P{period}-{group:02}-{check}")
}

/// The bags of each group of a plan file, by period and group: place and code.
fn bags(class: Class) -> BTreeMap<(usize, i64), Vec<(i64, String)>> {
    let text = fs::read_to_string(plan_of(class)).expect("the plan");
    let plan: toml::Table = text.parse().expect("a plan is TOML");
    let periods = plan["period"].as_array().expect("periods");
    let number = |bag: &toml::Value, key: &str| bag[key].as_integer().expect("a number");
    let text = |value: &toml::Value| value.as_str().expect("a text").to_owned();
    let mut all: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for bag in plan["bag_list"]["bags"].as_array().expect("bags") {
        let of = |period: &toml::Value| text(&period["name"]) == text(&bag["period"]);
        let period = periods.iter().position(of).expect("its period");
        let own = all.entry((period, number(bag, "group"))).or_default();
        own.push((number(bag, "place"), text(&bag["code"])));
    }
    all
}

/// Words of a page as one reads: line after line.
fn read(page: &Page) -> Vec<&str> {
    let mut words: Vec<_> = page.words.iter().collect();
    let line = |word: &Word| (word.bottom / 3.0).round() as i64;
    words.sort_by(|a, b| line(a).cmp(&line(b)).then(a.left.total_cmp(&b.left)));
    words.into_iter().map(|word| word.text.as_str()).collect()
}

/// Codes of bags among words.
fn codes(words: &[&str]) -> Vec<String> {
    let is_code = |word: &&&str| {
        let parts: Vec<&str> = word.split('-').collect();
        matches!(parts.as_slice(), [p, bag, check]
            if p.starts_with('P') && bag.len() == 3 && check.len() == 1)
    };
    words.iter().filter(is_code).map(|word| (*word).to_owned()).collect()
}

/// Whether every page of a file is that of one group, its bags in that order, group after group.
fn has_each_groups_codes(class: Class, pdf: &Path, by_letter: bool) -> Option<()> {
    let mut found: Vec<(String, Vec<String>)> = Vec::new();
    for page in pages(pdf)? {
        let words = read(&page);
        let sheet = words.iter().find(|word| {
            let parts: Vec<&str> = word.split('-').collect();
            matches!(parts.as_slice(), [p, group, _] if p.starts_with('P') && group.len() == 2)
        });
        let sheet = (*sheet.unwrap_or_else(|| panic!("no code among {words:?}"))).to_owned();
        let mut own = codes(&words);
        match found.last_mut() {
            Some((last, all)) if *last == sheet => all.append(&mut own),
            _ => found.push((sheet, own)),
        }
    }
    let wanted: Vec<(String, Vec<String>)> = bags(class)
        .into_iter()
        .map(|((_, group), mut own)| {
            if by_letter {
                own.sort_by(|a, b| a.1.cmp(&b.1));
            } else {
                own.sort();
            }
            let period = own[0].1.split('-').next().expect("a code")[1..].to_owned();
            (sheet_code(&period, group), own.into_iter().map(|(_, code)| code).collect())
        })
        .collect();
    assert_eq!(found, wanted, "{}", pdf.display());
    Some(())
}

#[test]
fn every_group_finds_its_own_codes_in_order_on_its_card_and_its_data_sheet() {
    for print in PRINTS.iter().filter(|print| print.class != Class::Overfull) {
        for (file, by_letter) in [("bench-cards.pdf", false), ("data-sheets.pdf", true)] {
            let pdf = print.file(file).expect("it is printed");
            if has_each_groups_codes(print.class, &pdf, by_letter).is_none() {
                return skip("every_group_finds_its_codes", "poppler is not installed");
            }
        }
    }
}

/// Bells, mixing and interval are those of the plan; groups start half a minute apart, the teacher's
/// bench first.
#[test]
fn planned_times_stand_on_the_data_sheet() {
    let pdf = print_of(Class::Demo, "en", "letter").file("data-sheets.pdf").expect("printed");
    let Some(texts) = texts(&pdf) else {
        return skip("planned_times_stand_on_the_data_sheet", "poppler is not installed");
    };
    // Period 1 begins at 8:10, its zero reading is 14 min later; the last period begins at
    // 1:05 in the afternoon, as Letter has it.
    for (sheet, times) in [
        (sheet_code("1", 0), ["8:24", "8:28", "8:48"]),
        (sheet_code("1", 3), ["8:25:30", "8:29:30", "8:49:30"]),
        (sheet_code("6", 8), ["1:23", "1:27", "1:47"]),
    ] {
        let page = texts.iter().find(|text| text.contains(&sheet)).expect("its page");
        for time in times {
            assert!(page.split_whitespace().any(|word| word == time), "{sheet} {time}: {page}");
        }
    }
}

/// Signs of markup print as themselves; another script is told apart from nothing.
#[test]
fn hostile_texts_print_as_themselves() {
    let prints = PRINTS.iter().find(|print| print.class == Class::Overfull);
    let pdf = prints.and_then(|print| print.file("bench-cards.pdf")).expect("it is printed");
    let Some(texts) = texts(&pdf) else {
        return skip("hostile_texts_print_as_themselves", "poppler is not installed");
    };
    let whole: String = texts.concat().split_whitespace().collect();
    let plain: String = HOSTILE.split_whitespace().collect();
    assert!(whole.contains(&plain), "{plain} is not on any card");
    assert!(whole.contains("[?]"), "letters that do not print are told");
}
