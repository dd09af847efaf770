//! Every page in every state that looks different: accessible, whole on a narrow screen, sound
//! markup, usable by the keyboard alone, and with a line that says what it is for.

mod at_the_bench;
mod before_the_day;
mod for_the_class;
mod keys;
mod library;
mod on_the_day;
mod routes;
pub(crate) mod walk;

use crate::browser::Browser;
use crate::eyes::{Eyes, Hands};
use crate::{skip, times};
use std::collections::BTreeSet;
use std::panic::{AssertUnwindSafe, catch_unwind};
pub(crate) use walk::{BEFORE, Codes, DURING, PASSPHRASE, Stage, Walk};

/// A page in a state.
struct Look {
    /// Its address, as the route table writes it.
    route: &'static str,
    name: &'static str,
    hands: Hands,
    /// How one comes to see it. Looks of one list follow one another.
    go: fn(&Walk<'_>),
}

const fn look(
    route: &'static str,
    name: &'static str,
    hands: Hands,
    go: fn(&Walk<'_>),
) -> Look {
    Look { route, name, hands, go }
}

/// All lists.
const ALL: [&[Look]; 5] = [
    before_the_day::LOOKS,
    on_the_day::LOOKS,
    library::LOOKS,
    for_the_class::LOOKS,
    at_the_bench::LOOKS,
];

fn look_at(lists: &[&[Look]], what: &str) {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip(what, why),
    };
    let stage = Stage::new();
    let walk = stage.walk(&browser);
    let eyes = Eyes::on(&browser);
    // Parts of names, parted by bars.
    let only = std::env::var("BARM_LOOK").unwrap_or_default();
    let wanted = |name: &str| only.split('|').any(|part| name.contains(part));
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    for look in lists.iter().flat_map(|list| list.iter()) {
        browser.size(1366, 768);
        let gone = catch_unwind(AssertUnwindSafe(|| (look.go)(&walk)));
        assert!(gone.is_ok(), "on the way to “{}”:\n{}", look.name, browser.text());
        // In the quick size each page in its first state, else in every one.
        let due = seen.insert(look.route) || times(0, 1, 1) == 1;
        if due && wanted(look.name) {
            eyes.look(look.name, look.hands);
            browser.size(1366, 768);
            eyes.say(look.name, keys::led(&browser, look.route));
            eyes.say(look.name, keys::tabbed(&browser));
        }
    }
    eyes.done();
}

#[test]
fn every_page_of_the_teacher_is_accessible_whole_and_sound() {
    look_at(&[before_the_day::LOOKS, on_the_day::LOOKS, library::LOOKS], "what a teacher sees");
}

#[test]
fn every_page_of_the_class_is_accessible_whole_and_sound() {
    look_at(&[for_the_class::LOOKS, at_the_bench::LOOKS], "what a class sees");
}
