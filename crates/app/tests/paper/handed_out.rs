//! The pack for a substitute, the page for families, the slides: how many pages, and what may not stand
//! on them.

use crate::prints::{Class, PRINTS, Print, plan_of, print_of};
use crate::program::skip;
use crate::tools::{name, say};
use std::fs;

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
    assert_eq!(said.matches("Platiquen").count(), 4, "a class a run, in its language");
    for sign in ["P1", "P2", "P4", "P6"] {
        assert!(said.contains(sign), "{sign}");
    }
}
