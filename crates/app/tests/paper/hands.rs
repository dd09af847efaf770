//! What students hold: the right codes on the right pages in order, and room for everything.

use crate::pages::{as_set, texts};
use crate::prints::{Class, HOSTILE, PRINTS, plan_of, print_of};
use crate::program::{run, skip};
use crate::tools::name;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// The parts that students hold, and those that hang on the wall or are cut out for them.
pub(crate) const PARTS: [&str; 6] =
    ["planning", "bench-cards", "data-sheets", "tally", "graph-paper", "gauge"];

/// The check character of ISO/IEC 7064, MOD 37-2, over `P102`, from memory: with it the weighted sum
/// is 1 modulo 37.
pub(crate) fn sheet_code(period: &str, group: i64) -> String {
    const ALPHABET: &str = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
    let body = format!("P{period}{group:02}");
    let sum = body
        .chars()
        .fold(0, |sum, c| (sum + ALPHABET.find(c).expect("a character of a code")) * 2 % 37);
    let check = ALPHABET.as_bytes()[(38 - sum) % 37] as char;
    format!("P{period}-{group:02}-{check}")
}

/// The bags of each group of a plan file, by period and group: place and code.
fn bags(plan: &Path) -> BTreeMap<(usize, i64), Vec<(i64, String)>> {
    let text = fs::read_to_string(plan).expect("the plan");
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

/// Codes of bags among words.
fn codes(words: &[&str]) -> Vec<String> {
    let is_code = |word: &&&str| {
        let parts: Vec<&str> = word.split('-').collect();
        matches!(parts.as_slice(), [p, bag, check]
            if p.starts_with('P') && bag.len() == 3 && check.len() == 1)
    };
    words.iter().filter(is_code).map(|word| (*word).to_owned()).collect()
}

/// Whether every page of a file is that of one group, its bags in the order of their places, group
/// after group, in the order in which the text was set.
fn has_each_groups_codes(plan: &Path, pdf: &Path) -> Option<()> {
    let mut found: Vec<(String, Vec<String>)> = Vec::new();
    for page in as_set(pdf)? {
        let words: Vec<&str> = page.split_whitespace().collect();
        let sheet = words.iter().find(|word| {
            let parts: Vec<&str> = word.split('-').collect();
            matches!(parts.as_slice(), [p, group, _] if p.starts_with('P') && group.len() == 2)
        });
        let sheet = (*sheet.unwrap_or_else(|| panic!("no code among {words:?}"))).to_owned();
        let sheet = sheet.trim_end_matches(',').to_owned();
        let mut own = codes(&words);
        match found.last_mut() {
            Some((last, all)) if *last == sheet => all.append(&mut own),
            _ => found.push((sheet, own)),
        }
    }
    let wanted: Vec<(String, Vec<String>)> = bags(plan)
        .into_iter()
        .map(|((_, group), mut own)| {
            own.sort();
            let period = own[0].1.split('-').next().expect("a code")[1..].to_owned();
            (sheet_code(&period, group), own.into_iter().map(|(_, code)| code).collect())
        })
        .collect();
    assert_eq!(found, wanted, "{}", pdf.display());
    Some(())
}

#[test]
fn every_group_finds_its_own_codes_in_order_on_its_card_and_its_data_sheet() {
    // The bare plan has no bags.
    for print in PRINTS.iter().filter(|print| print.class != Class::Bare) {
        for file in ["bench-cards.pdf", "data-sheets.pdf"] {
            let pdf = print.file(file).expect("it is printed");
            if has_each_groups_codes(&plan_of(print.class), &pdf).is_none() {
                return skip("every_group_finds_its_codes", "poppler is not installed");
            }
        }
    }
}

/// A teacher may move bags on the bench: the card and the data sheet follow, as the screen does.
#[test]
fn bags_that_were_moved_stand_in_the_order_of_their_places_on_all_paper() {
    let home = tempfile::tempdir().expect("a folder");
    let mut text = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    for (code, from, to) in [("P1-01A-C", 1, 3), ("P1-01C-8", 3, 1)] {
        let line = |place| format!("{code}\", period = \"1\", group = 1, place = {place}");
        assert!(text.contains(&line(from)), "{code} is in the demo");
        text = text.replace(&line(from), &line(to));
    }
    let plan = home.path().join("moved.toml");
    fs::write(&plan, text).expect("written");
    let out = home.path().join("out");
    let what = ["print", name(&plan), "--what", "bench-cards,data-sheets", "--out", name(&out)];
    run(home.path(), &what).ended(0);
    for file in ["bench-cards.pdf", "data-sheets.pdf"] {
        if has_each_groups_codes(&plan, &out.join(file)).is_none() {
            return skip("bags_that_were_moved", "poppler is not installed");
        }
    }
}

/// The unit in each box, a box for the rise, the guess that is locked before the zero, odd events.
#[test]
fn a_data_sheet_has_a_box_with_its_unit_for_all_that_is_written() {
    let pdf = print_of(Class::Demo, "en", "letter").file("data-sheets.pdf").expect("printed");
    let Some(pages) = as_set(&pdf) else {
        return skip("a_data_sheet_has_a_box", "poppler is not installed");
    };
    let of = |sheet: &str| pages.iter().find(|page| page.contains(sheet)).expect("its page");
    let page = of(&sheet_code("1", 3));
    // Three bags: a guess each, and a box at zero, at six planned minutes and for the rise. The
    // question says mm once more.
    let units = page.split(' ').filter(|word| *word == "mm").count();
    assert!(units > 3 + 3 * 8, "{units} units: {page}");
    assert_eq!(page.matches("last − zero").count(), 3, "{page}");
    assert!(page.contains("Leak Spill Foam Late Bumped Not read"), "{page}");
    let at = |says: &str| page.find(says).unwrap_or_else(|| panic!("no {says}: {page}"));
    assert!(at("Your guess") < at("Locked at"), "{page}");
    assert!(at("Locked at") < at("zero at"), "a guess comes before the zero: {page}");
    assert!(at("zero at") < at("Something odd?"), "{page}");
    assert!(!of(&sheet_code("1", 0)).contains("Locked at"), "the teacher guesses nothing");
}

/// Every bag of the period stands on its wall sheet once, behind its own treatment.
#[test]
fn every_bag_stands_once_under_its_own_kind_on_the_tally() {
    let pdf = print_of(Class::Demo, "en", "letter").file("tally.pdf").expect("printed");
    let Some(pages) = as_set(&pdf) else {
        return skip("every_bag_stands_once_on_the_tally", "poppler is not installed");
    };
    let text = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    let plan: toml::Table = text.parse().expect("a plan is TOML");
    let bags = plan["bag_list"]["bags"].as_array().expect("bags");
    let text = |value: &toml::Value, key: &str| value[key].as_str().expect("a text").to_owned();
    for (page, period) in pages.iter().zip(["1", "2", "4", "6"]) {
        let mut kinds: Vec<(String, Vec<String>)> = Vec::new();
        for bag in bags.iter().filter(|bag| text(bag, "period") == period) {
            let group = bag["group"].as_integer().expect("a group");
            let letter = text(bag, "code").chars().nth(5).expect("a letter");
            let name =
                if group == 0 { format!("T{letter}") } else { format!("{group}{letter}") };
            let kind = text(bag, "treatment");
            match kinds.iter_mut().find(|(known, _)| *known == kind) {
                Some((_, names)) => names.push(name),
                None => kinds.push((kind, vec![name])),
            }
        }
        let plain = page.replace(" mm", "");
        for (kind, names) in kinds {
            let row = format!("{kind} {}", names.join(" "));
            assert_eq!(plain.matches(&row).count(), 1, "{row} in {plain}");
            for name in names {
                let times = plain.split(' ').filter(|word| *word == name).count();
                assert_eq!(times, 1, "{name} in {plain}");
            }
        }
        // The class writes the scale: no number but zero stands on it.
        assert!(plain.contains("how far each card rose 0 "), "{plain}");
    }
    assert_eq!(pages.len(), 4, "a sheet a period");
}

/// Squares reach to the last planned minute, with a strong line at each: those of the data sheet.
#[test]
fn the_squares_follow_the_minutes_of_the_plan() {
    let home = tempfile::tempdir().expect("a folder");
    let text = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    for (every, lines, columns) in [
        ("4 min", "4 8 12 16 20 0 24 min", "4 min 8 min 12 min 16 min 20 min 24 min"),
        ("6 min", "6 12 18 0 24 min", "6 min 12 min 18 min 24 min"),
    ] {
        let plan = home.path().join("plan.toml");
        let own = format!("reading_interval = \"{every}\"");
        assert!(text.contains("reading_interval = \"4 min\""), "the demo says how often");
        fs::write(&plan, text.replace("reading_interval = \"4 min\"", &own)).expect("written");
        let out = home.path().join(every);
        let what =
            ["print", name(&plan), "--what", "graph-paper,data-sheets", "--out", name(&out)];
        run(home.path(), &what).ended(0);
        for (file, wanted) in [("graph-paper.pdf", lines), ("data-sheets.pdf", columns)] {
            let Some(pages) = as_set(&out.join(file)) else {
                return skip("the_squares_follow_the_minutes", "poppler is not installed");
            };
            // A number and its unit stand so close that poppler may see one word.
            let close = |text: &str| text.split_whitespace().collect::<String>();
            assert!(close(&pages[0]).contains(&close(wanted)), "{every}: {}", pages[0]);
        }
    }
}

/// Bells, mixing and interval are those of the plan; three benches start each half minute, the teacher's
/// first.
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
        (sheet_code("1", 3), ["8:24:30", "8:28:30", "8:48:30"]),
        (sheet_code("6", 8), ["1:20", "1:24", "1:44"]),
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
