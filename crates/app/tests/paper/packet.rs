//! The teacher's packet: its chapters, its order, and the hours as the plan's own minutes make them.

use crate::prints::{Class, PRINTS, plan_of, print_of};
use crate::program::skip;
use crate::tools::{name, say};
use std::fs;

/// What a page of a demo packet says, or the whole of it; none without poppler.
fn text(from: usize, to: usize) -> Option<String> {
    let packet = print_of(Class::Demo, "en", "letter").file("packet.pdf").expect("a packet");
    let (from, to) = (from.to_string(), to.to_string());
    let (fine, said) =
        say("pdftotext", &["-layout", "-f", &from, "-l", &to, name(&packet), "-"])?;
    assert!(fine, "{said}");
    Some(said)
}

/// Titles of the bookmarks at the top, each with its page; none without qpdf.
pub(crate) fn chapters(class: Class) -> Option<Vec<(String, usize)>> {
    let packet = print_of(class, "en", "letter").file("packet.pdf").expect("a packet");
    let (_, said) = say("qpdf", &["--json", "--json-key=outlines", name(&packet)])?;
    let start = said.find('{').expect("JSON");
    let mut read = serde_json::Deserializer::from_str(&said[start..]).into_iter();
    let json: serde_json::Value = read.next().expect("a value").expect("JSON");
    let chapters = json["outlines"].as_array().expect("a list").iter().map(|one| {
        let page = one["destpageposfrom1"].as_u64().expect("a page");
        (
            one["title"].as_str().expect("a title").to_owned(),
            usize::try_from(page).expect("small"),
        )
    });
    Some(chapters.collect())
}

#[test]
fn every_chapter_has_a_bookmark_in_the_order_of_the_day() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("every_chapter_has_a_bookmark", "qpdf is not installed");
    };
    let titles: Vec<&str> = found.iter().map(|(title, _)| title.as_str()).collect();
    let wanted = [
        "Which breakfast-cupboard food feeds yeast best?",
        "Shopping and mixing",
        "Trays",
        "Run sheet, period 1",
        "Run sheet, period 2",
        "Run sheet, period 4",
        "Run sheet, period 6",
        "Between the bells and after",
        "Cautions",
        "Expected results",
        "What holds each bag back",
    ];
    assert_eq!(titles, wanted);
    assert_eq!((found[0].1, found[1].1), (1, 2), "the overview is one page");
    let runs: Vec<usize> = found[3..8].iter().map(|(_, page)| *page).collect();
    assert!(runs.windows(2).all(|two| two[1] == two[0] + 1), "a page a period: {runs:?}");
}

/// Bell, mixing, interval, length and clearing as the demo's plan file has them: 25 min to read in, 24 to
/// the last reading, so benches start three at a time within a minute, the teacher's first.
#[test]
fn the_hour_is_made_of_the_plans_own_minutes() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("the_hour_is_made_of_the_plans_own_minutes", "qpdf is not installed");
    };
    let plan = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    for line in ["start = \"08:10\"", "mixing = \"14 min\"", "reading_interval = \"4 min\""] {
        assert!(plan.contains(line), "{line}");
    }
    let page = page_of(&found, "Run sheet, period 1");
    let Some(said) = text(page, page) else {
        return skip("the_hour_is_made_of_the_plans_own_minutes", "poppler is not installed");
    };
    let row = |start: &str| {
        // Notes of the margin may stand before the row.
        let line = said.lines().find(|line| {
            line.split_whitespace().any(|word| word == start) && line.matches(':').count() > 5
        });
        let line = line.unwrap_or_else(|| panic!("{start} in {said}"));
        line.split_whitespace().filter(|word| word.contains(':')).map(str::to_owned).collect()
    };
    // 8:10 and 14 minutes, then every 4 up to 24, the last multiple before 45 less 14 and 6.
    let you: Vec<String> = row("You");
    assert_eq!(you, ["8:24", "8:28", "8:32", "8:36", "8:40", "8:44", "8:48"]);
    let otters: Vec<String> = row("Otters");
    assert_eq!(otters[0], "8:24:30", "the third group starts in the second wave");
    assert_eq!(otters[6], "8:48:30");
    let heads = ["Minute by", "When to", "Cautions", "Expected"];
    let places: Vec<usize> =
        heads.iter().map(|head| said.find(head).unwrap_or_else(|| panic!("{head}"))).collect();
    assert!(places.is_sorted(), "read in this order: {places:?}");
}

#[test]
fn every_bag_lies_on_a_tray_once() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("every_bag_lies_on_a_tray_once", "qpdf is not installed");
    };
    let Some(trays) =
        text(page_of(&found, "Trays"), page_of(&found, "Run sheet, period 1") - 1)
    else {
        return skip("every_bag_lies_on_a_tray_once", "poppler is not installed");
    };
    let plan = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    let codes: Vec<&str> =
        plan.split("{ code = \"").skip(1).filter_map(|rest| rest.get(..8)).collect();
    assert!(codes.len() > 100, "{} codes", codes.len());
    for code in codes {
        assert_eq!(trays.matches(code).count(), 1, "{code}");
    }
}

#[test]
fn what_students_must_not_see_says_so() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("what_students_must_not_see_says_so", "qpdf is not installed");
    };
    for (title, page) in found {
        let tells =
            ["Run sheet", "Expected", "What holds"].iter().any(|head| title.starts_with(head));
        if tells {
            let Some(said) = text(page, page) else {
                return skip("what_students_must_not_see_says_so", "poppler is not installed");
            };
            assert!(said.contains("teacher only"), "{title}");
        }
    }
}

#[test]
fn every_plan_gets_a_packet_with_a_run_sheet_for_each_period() {
    for print in PRINTS.iter() {
        assert!(print.file("packet.pdf").is_some(), "{print:?}");
    }
    let Some(found) = chapters(Class::One) else {
        return skip("every_plan_gets_a_packet", "qpdf is not installed");
    };
    let runs = found.iter().filter(|(title, _)| title.starts_with("Run sheet")).count();
    assert_eq!(runs, 1);
}

/// The page on which a chapter begins.
pub(crate) fn page_of(found: &[(String, usize)], title: &str) -> usize {
    let own = found.iter().find(|(name, _)| name == title);
    own.unwrap_or_else(|| panic!("{title} in {found:?}")).1
}

/// Pages of the demo's packet in reading order, all space as one; none without the tools.
pub(crate) fn read(from: usize, to: usize) -> Option<String> {
    let packet = print_of(Class::Demo, "en", "letter").file("packet.pdf").expect("a packet");
    let pages = crate::pages::texts(&packet)?;
    let text = pages[from - 1..to].join(" ").replace(['\u{200B}', '\u{AD}'], "");
    Some(text.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// A chapter of the demo's packet up to the next one; none without the tools.
pub(crate) fn chapter(title: &str, next: &str) -> Option<String> {
    let found = chapters(Class::Demo)?;
    read(page_of(&found, title), page_of(&found, next) - 1)
}

/// 14 minutes of mixing and eight half minutes after it the last group takes its zero; 24 minutes later
/// its last reading: minute 42 of 45, where clearing begins at 39. By hand from the plan's own minutes.
#[test]
fn the_ruler_and_the_steps_of_an_hour_tell_the_same_minutes() {
    let Some(found) = chapters(Class::Demo) else {
        return skip("the_ruler_and_the_steps", "qpdf is not installed");
    };
    let page = page_of(&found, "Run sheet, period 1");
    let packet = print_of(Class::Demo, "en", "letter").file("packet.pdf").expect("a packet");
    let Some(pages) = crate::pages::pages(&packet) else {
        return skip("the_ruler_and_the_steps", "poppler is not installed");
    };
    let words = &pages[page - 1].words;
    let mix = words.iter().find(|word| word.text == "mix").expect("the ruler names its parts");
    let name = |name: &str| {
        let level = |word: &&crate::pages::Word| (word.top - mix.top).abs() < 12.0;
        let own = words.iter().filter(level).find(|word| word.text == name);
        own.unwrap_or_else(|| panic!("{name} is not on the ruler")).left
    };
    let minute = (name("read") - mix.left) / 14.0;
    for (part, at) in [("open", 39.0), ("clean", 41.0)] {
        let off = name(part) - mix.left - at * minute;
        assert!(off.abs() < 1.0, "{part} is {off} pt off minute {at}");
    }
    let under =
        |word: &&crate::pages::Word| word.top > mix.top + 12.0 && word.top < mix.top + 45.0;
    for number in ["5", "35", "40", "45"] {
        let there = words.iter().filter(under).any(|word| word.text == number);
        assert!(there, "{number} is not on the ruler");
    }
    let said = read(page, page).expect("poppler is there");
    for wanted in [
        "3 benches at a time, every ½ min",
        "8:25 15 Last zero, groups 6, 7, 8.",
        "8:49 39 Last reading of the last group.",
        "8:49 39 Open all bags",
        "8:51 41 Empty, wipe",
        "8:55 45 Bell.",
    ] {
        assert!(said.contains(wanted), "{wanted} in {said}");
    }
    assert!(!said.contains("Tight:"), "all is read when bags are opened: {said}");
}
