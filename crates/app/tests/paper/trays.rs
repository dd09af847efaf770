//! The preparation sheet: the trays of a period are laid out from one page.

use crate::prints::{Class, plan_of, print_of};
use crate::program::skip;
use std::collections::BTreeMap;
use std::fs;

/// Codes of the bags of each period, read from the plan's text and by nothing of ours.
fn periods(class: Class) -> BTreeMap<String, Vec<String>> {
    let text = fs::read_to_string(plan_of(class)).expect("the plan");
    let plan: toml::Table = text.parse().expect("TOML");
    let mut periods: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for bag in plan["bag_list"]["bags"].as_array().expect("a list") {
        let word = |key: &str| bag[key].as_str().expect("words").to_owned();
        periods.entry(word("period")).or_default().push(word("code"));
    }
    periods
}

#[test]
fn the_trays_of_a_period_stand_on_one_page() {
    for (language, paper) in [("en", "letter"), ("es", "a4")] {
        let pdf = print_of(Class::Demo, language, paper).file("prep.pdf").expect("it");
        let Some(pages) = crate::pages::texts(&pdf) else {
            return skip("trays of a period", "poppler is not installed");
        };
        for (period, codes) in periods(Class::Demo) {
            let on = |page: &&String| codes.iter().any(|code| page.contains(code.as_str()));
            let own: Vec<&String> = pages.iter().filter(on).collect();
            assert_eq!(own.len(), 1, "{}: period {period}", pdf.display());
            for code in &codes {
                assert!(own[0].contains(code.as_str()), "{}: {code}", pdf.display());
            }
        }
    }
}
