//! The pack for a substitute, the page for families, the slides: how many pages, and what may not stand
//! on them.

use crate::prints::{Class, PRINTS, Print, plan_of, print_of};
use crate::program::{run, skip};
use crate::tools::{name, say};
use std::fs;
use std::path::PathBuf;
use std::sync::LazyLock;

/// Pages of a file; none without poppler.
fn pages(print: &Print, file: &str) -> Option<usize> {
    let file = print.file(file).unwrap_or_else(|| panic!("{file} of {print:?}"));
    let (_, said) = say("pdfinfo", &[name(&file)])?;
    let line = said.lines().find_map(|line| line.strip_prefix("Pages:"));
    Some(line.expect("a count").trim().parse().expect("a number"))
}

fn text(print: &Print, file: &str) -> Option<String> {
    let file = print.file(file).unwrap_or_else(|| panic!("{file} of {print:?}"));
    let (_, said) = say("pdftotext", &[name(&file), "-"])?;
    Some(said.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
fn the_pack_for_a_substitute_is_two_pages_whatever_the_plan_holds() {
    for print in PRINTS.iter() {
        let Some(found) = pages(print, "substitute.pdf") else {
            return skip("the_pack_for_a_substitute_is_two_pages", "poppler is not installed");
        };
        assert_eq!(found, 2, "{print:?}");
        let said = text(print, "substitute.pdf").expect("poppler is there");
        for needed in ["Not today", "enzyme powder", "No kettle", "breath meter", "Whom to ask"]
        {
            assert!(said.contains(needed), "{needed}: {print:?}");
        }
        for hot in ["49 °C", "60 °C", "120 °F", "140 °F"] {
            assert!(!said.contains(hot), "warm, not hot: {hot} in {print:?}");
        }
    }
}

#[test]
fn the_page_for_families_is_one_and_names_no_group_and_no_bag() {
    let plan = fs::read_to_string(plan_of(Class::Demo)).expect("the plan");
    let codes: Vec<&str> =
        plan.split("{ code = \"").skip(1).filter_map(|rest| rest.get(..8)).collect();
    assert!(codes.len() > 100);
    for print in PRINTS.iter().filter(|print| print.class == Class::Demo) {
        let Some(found) = pages(print, "summary.pdf") else {
            return skip("the_page_for_families_is_one", "poppler is not installed");
        };
        assert_eq!(found, 1, "{print:?}");
        let said = text(print, "summary.pdf").expect("poppler is there");
        // Words that the demo's plan gives to groups.
        for hidden in codes.iter().copied().chain(["Otters", "Magpies"]) {
            assert!(!said.contains(hidden), "{hidden}: {print:?}");
        }
    }
}

#[test]
fn every_class_has_its_own_slides() {
    let print = print_of(Class::Demo, "es", "a4");
    let Some(said) = text(print, "slides.pdf") else {
        return skip("every_class_has_its_own_slides", "poppler is not installed");
    };
    // The last thing that each class is asked, in its language.
    let last = said.matches("¿Qué queda igual?").count();
    assert_eq!(last, 4, "a class a run");
    assert!(said.matches("Platiquen").count() >= 4, "the questions take a slide or more");
    for sign in ["P1", "P2", "P4", "P6"] {
        assert!(said.contains(sign), "{sign}");
    }
}

/// The one group's plan with very warm water in one bag and enzyme powder in another, and a standard
/// that no product shows.
static RISKY: LazyLock<(tempfile::TempDir, PathBuf)> = LazyLock::new(|| {
    let home = tempfile::tempdir().expect("a folder");
    let plan = fs::read_to_string(plan_of(Class::One)).expect("the plan");
    let honey = "name = \"Honey\"\nfood = \"honey\"\n";
    let flour = "name = \"White flour\"\nfood = \"white wheat flour\"\n";
    assert!(plan.contains(honey) && plan.contains(flour), "{plan}");
    let powder = "enzyme = \"glucoamylase powder\"\nenzyme_amount = \"0.1 g\"\n";
    let plan = plan
        .replacen(honey, &format!("{honey}water_temperature = \"55 °C\"\n"), 1)
        .replacen(flour, &format!("{flour}{powder}"), 1);
    fs::write(home.path().join("plan.toml"), plan).expect("written");
    let what = ["print", "plan.toml", "--what", "substitute,packet", "--out", "paper"];
    run(home.path(), &what).ended(0);
    let folder = home.path().join("paper");
    (home, folder)
});

fn risky(file: &str) -> Option<String> {
    let pages = crate::pages::texts(&RISKY.1.join(file))?;
    Some(pages.join(" ").split_whitespace().collect::<Vec<_>>().join(" "))
}

/// Nobody handles water above 43 °C without care, and dry enzyme is dust in the air.
#[test]
fn the_pack_for_a_substitute_names_what_is_left_out() {
    let Some(said) = risky("substitute.pdf") else {
        return skip("the_pack_for_a_substitute_names", "poppler is not installed");
    };
    let left_out = "Not made today, whatever its label says: Honey, White flour.";
    assert!(said.contains(left_out), "{said}");
}

#[test]
fn a_standard_that_no_product_shows_is_not_claimed() {
    let plan = fs::read_to_string(plan_of(Class::One)).expect("the plan");
    assert!(plan.contains("MS-LS1-7") && !plan.contains("shown_by ="), "{plan}");
    let Some(said) = risky("packet.pdf") else {
        return skip("a_standard_that_no_product_shows", "poppler is not installed");
    };
    assert!(!said.contains("MS-LS1-7") && !said.contains("Standards"), "{said}");
}

/// The last reading that a substitute waits for is the last of the last group, as in the packet.
#[test]
fn a_substitute_and_the_packet_name_the_same_last_reading() {
    let print = print_of(Class::Demo, "en", "letter");
    let Some((pack, packet)) = text(print, "substitute.pdf").zip(text(print, "packet.pdf"))
    else {
        return skip("a_substitute_and_the_packet", "poppler is not installed");
    };
    // Period, groups and bags; bell, water in, last zero, open from, last read, bell.
    assert!(pack.contains("8:10 8:21 8:25 8:49 8:49 8:55"), "{pack}");
    assert!(pack.contains("3 groups at a time, half a minute apart"), "{pack}");
    // Bags, first zero, last reading, open.
    assert!(packet.contains("28 8:24 8:49 8:49"), "{packet}");
    assert!(!pack.contains('½'), "{pack}");
}
