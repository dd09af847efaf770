//! The teacher's pages over all investigations. They follow those of the class day.

use super::on_the_day::press;
use super::walk::Walk;
use super::{Look, look};
use crate::eyes::Hands::Mouse;
use crate::school::plan;
use barm_documents::package::{About, write};
use barm_domain::shared::Shared;
use std::path::Path;

/// The invented day, whole, as a colleague would give it away.
fn package() -> Vec<u8> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/demo/readings.csv");
    let file = std::fs::read(file).expect("the invented readings");
    let plan = plan();
    let read = barm_documents::readings::read(&file, &plan);
    let shared = Shared::of(&plan, &read.readings, &read.set_aside, &[]).expect("it is sound");
    write(&shared, &About { made_up: true, ..About::default() })
}

fn looked_at(walk: &Walk<'_>) {
    walk.open("/package");
    walk.pick("#pick", "neighbors.zip", &package());
    press(walk, "#look", "#take");
}

pub(super) const LOOKS: &[Look] = &[
    look("/shelf", "a shelf that is looked through", Mouse, |walk| {
        walk.open("/shelf?find=maple");
        assert!(walk.browser.text().contains("Show all"));
    }),
    look("/shelf", "a shelf without what is looked for", Mouse, |walk| {
        walk.open("/shelf?find=Zibbeldorn");
    }),
    look("/years", "classes and years", Mouse, |walk| {
        walk.open("/years");
        let said = walk.browser.text();
        assert!(said.contains("jar of March (instant yeast): it has lost about"), "{said}");
    }),
    look("/package", "a colleague’s package", Mouse, |walk| walk.open("/package")),
    look("/package", "a colleague’s package that is none", Mouse, |walk| {
        walk.pick("#pick", "neighbors.zip", b"no zip at all");
        press(walk, "#look", "#said .fault");
    }),
    look("/package", "a colleague’s package that is looked at", Mouse, looked_at),
    look("/package", "a colleague’s package under a day to come", Mouse, |walk| {
        walk.set("#day", "2999-01-01");
        press(walk, "#take", "[data-refused] .fault");
    }),
    look("/i/{id}/results", "results of a colleague’s class", Mouse, |walk| {
        walk.set("#title", "A neighbor’s class");
        walk.set("#day", "2025-03-04");
        walk.leave_by("#take");
        assert!(walk.path().ends_with("/results"), "{}", walk.path());
        let done = "return document.querySelector('[data-working]') === null;";
        walk.browser.until(done);
    }),
    look("/i/{id}/again", "another round with proposals", Mouse, |walk| {
        let again = walk.path().replace("/results", "/again");
        walk.open(&again);
        walk.leave_by("form[method=post] button");
        walk.until_it_holds(&walk.path(), "button[name=take]");
    }),
    look("/years", "classes and years together", Mouse, |walk| {
        walk.open("/years");
        let text = walk.browser.text();
        assert!(
            text.contains("A neighbor’s class") && text.contains("Over 2 classes"),
            "{text}"
        );
    }),
];
