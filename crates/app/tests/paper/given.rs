//! What each level of inquiry gives to a group and what it leaves to it, on its card and on its
//! planning sheet.

use crate::hands::sheet_code;
use crate::pages::{Page, as_set, pages};
use crate::picture::{DPI, Picture};
use crate::prints::{Class, plan_of};
use crate::program::{run, skip};
use crate::tools::name;
use std::path::PathBuf;
use std::sync::LazyLock;

const LEVELS: [&str; 4] = ["confirmation", "structured", "guided", "open"];

/// Cards and planning sheets of the demo at every level, made once.
static HOME: LazyLock<tempfile::TempDir> = LazyLock::new(|| {
    let home = tempfile::tempdir().expect("a folder");
    let plan = plan_of(Class::Demo);
    for level in LEVELS {
        let out = home.path().join(level);
        let what =
            ["print", name(&plan), "--what", "planning,bench-cards", "--out", name(&out)];
        run(home.path(), &[&what[..], &["--level", level][..]].concat()).ended(0);
    }
    home
});

fn file(level: &str, part: &str) -> PathBuf {
    HOME.path().join(level).join(format!("{part}.pdf"))
}

/// The first group of the third period: milk, milk with lactase, no food; two questions.
fn of_two_questions(level: &str, part: &str) -> Option<String> {
    let sheet = sheet_code("4", 1);
    let mut pages = as_set(&file(level, part))?;
    pages.retain(|page| page.contains(&sheet));
    Some(pages.join(" "))
}

/// Whether a text holds each of some words, and none of others.
fn holds(text: &str, place: &str, with: &[&str], without: &[&str]) {
    for says in with {
        assert!(text.contains(says), "{place} lacks “{says}”: {text}");
    }
    for says in without {
        assert!(!text.contains(says), "{place} tells “{says}”: {text}");
    }
}

/// The plan's second question is not its title, so that it can be looked for.
const ASKS: &str = "Does the digestive enzyme help?";

#[test]
fn a_card_gives_less_from_level_to_level_and_every_bag_its_steps() {
    let known = "An enzyme cuts food into small bits.";
    let amounts = ["0.8 g", "5 drops", "Put this in each bag:"];
    let own = ["Write what goes into each bag.", "We change", "1 snack bag"];
    for level in LEVELS {
        let Some(card) = of_two_questions(level, "bench-cards") else {
            return skip("a_card_gives_less_from_level_to_level", "poppler is not installed");
        };
        let (with, without): (Vec<&str>, Vec<&str>) = match level {
            "confirmation" => ([&[ASKS, known][..], &amounts[..]].concat(), own.to_vec()),
            "structured" => {
                ([&[ASKS][..], &amounts[..]].concat(), [&[known][..], &own[..]].concat())
            }
            "guided" => {
                ([&[ASKS][..], &own[..]].concat(), [&[known][..], &amounts[..]].concat())
            }
            _ => (
                [&["What do you want to find out?"][..], &own[..]].concat(),
                [&[ASKS, known][..], &amounts[..]].concat(),
            ),
        };
        holds(&card, level, &with, &without);
        // What every bag needs, in order.
        let steps =
            ["40 mL (2 tbsp + 2 tsp)", "Press the air out", "Rub the bag", "Lay it flat"];
        let places: Vec<_> = steps.iter().map(|step| card.rfind(step)).collect();
        assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{level}: {card}");
    }
}

/// Question, one change, kinds, comparison, what stays the same, prediction and reason.
#[test]
fn a_planning_sheet_has_its_seven_fields_at_every_level() {
    for level in LEVELS {
        let Some(sheet) = of_two_questions(level, "planning") else {
            return skip("a_planning_sheet_has_its_seven_fields", "poppler is not installed");
        };
        let fields = match level {
            "confirmation" | "structured" => [
                "Question 2 Does the digestive enzyme help?",
                "You change one thing:",
                "kind of bag",
                "compare it with",
                "What stays the same?",
                "What do you expect?",
                "Why?",
            ],
            _ => [
                "Your question",
                "What will you change?",
                "What goes into your bags?",
                "What will you compare them with?",
                "What stays the same?",
                "What do you expect?",
                "Why?",
            ],
        };
        let mut from = 0;
        for field in fields {
            let found = sheet[from..].find(field);
            from += found
                .unwrap_or_else(|| panic!("{level} lacks “{field}” in its place: {sheet}"));
        }
        // Both kinds of unit, whoever plans.
        holds(&sheet, level, &["40 mL (2 tbsp + 2 tsp)", "40 °C (104 °F)"], &[]);
        let own = ["Choose one", "Kind 1", "In the cupboard", "hand it in"];
        match level {
            "confirmation" | "structured" => holds(&sheet, level, &["Bags: C"], &own),
            "guided" => holds(&sheet, level, &[ASKS, "Choose one question."], &["Bags: C"]),
            _ => holds(&sheet, level, &own[1..], &[ASKS, "Bags: C"]),
        }
    }
}

/// The cautions of the plan say that students never see powder, and an example is one of what lies
/// there.
#[test]
fn a_group_chooses_among_what_it_is_given() {
    let Some(sheet) = of_two_questions("guided", "planning") else {
        return skip("a_group_chooses_among_what_it_is_given", "poppler is not installed");
    };
    let with = ["glucoamylase solution", "lactase drops", "Like: maple syrup + 0.8 g"];
    holds(&sheet, "guided", &with, &["powder", "white sugar"]);
}

/// One question a block: one thing ticked in each, each kind beside what it is compared with.
#[test]
fn a_sheet_with_two_questions_ticks_one_thing_for_each() {
    let pdf = file("structured", "planning");
    let Some(all) = pages(&pdf) else {
        return skip("a_sheet_with_two_questions", "poppler is not installed");
    };
    for (group, wanted) in [(1, &["the food", "the enzyme"][..]), (2, &["the food"][..])] {
        let sheet = sheet_code("4", group);
        let own = |page: &Page| page.words.iter().any(|word| word.text == sheet);
        let at = all.iter().position(own).expect("its page");
        let picture = Picture::of_page(&pdf, at + 1).expect("poppler is installed");
        let (found, boxes) = ticked(&all[at], &picture);
        assert_eq!(found, wanted, "{sheet}");
        assert_eq!(boxes, THINGS.len() * wanted.len(), "{sheet}: boxes");
    }
    let sheet = of_two_questions("structured", "planning").expect("poppler is installed");
    for compared in [
        "Nonfat dry milk Bags: A No food Bags: D",
        "Nonfat dry milk + lactase Bags: C Nonfat dry milk Bags: A",
    ] {
        assert_eq!(sheet.matches(compared).count(), 1, "{compared}: {sheet}");
    }
}

/// What can be changed, as the sheet says it.
const THINGS: [&str; 7] = [
    "the food",
    "how much food",
    "something else, like salt",
    "how warm the water is",
    "how much water",
    "how much yeast",
    "the enzyme",
];

/// The things whose boxes are ticked, from top to bottom, and how many boxes there are.
fn ticked(page: &Page, picture: &Picture) -> (Vec<&'static str>, usize) {
    let (mut found, mut boxes) = (Vec::new(), 0);
    for thing in THINGS {
        let said: Vec<&str> = thing.split(' ').collect();
        for words in page.words.windows(said.len()) {
            if !words.iter().map(|word| word.text.as_str()).eq(said.iter().copied()) {
                continue;
            }
            // The box is 0.8 of the letters' size of 12 pt and ends 4 pt before them.
            let dots = DPI / 72.0;
            let middle = (words[0].left - 4.0 - 4.8) * dots;
            let row = (words[0].top + words[0].bottom) / 2.0 * dots;
            let near =
                |at: f64, wide: f64| (at - wide * dots) as usize..(at + wide * dots) as usize;
            let dark = |x: usize, y: usize| picture.grey(x, y) < 128;
            let frame = near(middle, 6.0).filter(|x| dark(*x, row as usize)).count();
            boxes += usize::from(frame > 0);
            let mut inside =
                near(row, 1.0).flat_map(|y| near(middle, 1.0).map(move |x| (x, y)));
            if inside.all(|(x, y)| dark(x, y)) {
                found.push((words[0].top, thing));
            }
        }
    }
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    (found.into_iter().map(|(_, thing)| thing).collect(), boxes)
}
