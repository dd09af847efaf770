//! A record that went bad on disk is found while the program runs, and the teacher is told.

use super::class::{Call, Class, DURING_1, plan_text};
use crate::desk::room::Kind;
use crate::desk::room::whole_check::{Checkup, check_whole};
use barm_domain::record::{Entry, Key, Subject, What, Who};
use std::fs;

/// Stands on record once, and in no plan.
const HEIGHT_MM: f64 = 12.6875;

#[tokio::test]
async fn damage_that_the_quick_check_passes_is_found_and_stands_on_the_shelf_page() {
    let class = Class::at(DURING_1, Kind::Real);
    let (shelf, now) = (class.web.shelf.clone(), class.web.now());
    let sound = check_whole(&shelf, now).expect("looked");
    assert!(matches!(sound, Checkup::Whole { entries: 1.., .. }), "{sound:?}");
    assert!(sound.in_the_log().contains("whole"));
    // A second class, one height of which goes bad.
    let other = shelf.begin(&plan_text(), Kind::Real, Key::new(7, 1), now).expect("begun");
    let code = other.read(|scene| scene.plan.bags[0].code.parse()).expect("a code");
    let what = What::Zero { height_mm: HEIGHT_MM };
    let (key, subject, who) = (Key::new(7, 2), Subject::Bag(code), Who::Teacher);
    let entry = Entry { key, subject, what, measured: now, arrived: now, who };
    other.enter_and_wait(&[entry]).expect("on disk");
    drop((other, shelf));
    let folder = class.close();
    let path = folder.path().join("record.sqlite");
    let mut bytes = fs::read(&path).expect("the record");
    let (good, bad) = (HEIGHT_MM.to_string(), "12.68x5");
    let found = bytes.windows(good.len()).position(|window| window == good.as_bytes());
    let at = found.expect("the height stands in the file");
    bytes[at..at + bad.len()].copy_from_slice(bad.as_bytes());
    fs::write(&path, bytes).expect("damaged");

    // Opened again: the quick check sees nothing, and no page is in the way of a class.
    let class = Class::again(folder, DURING_1);
    let teacher = class.teacher();
    let shelf = || Call::get("/shelf").cookie("barm-teacher", &teacher);
    let page = class.call(shelf()).await;
    assert_eq!(page.status, 200);
    assert!(!page.body.contains("The record is damaged"));
    let damaged = check_whole(&class.web.shelf, class.web.now()).expect("looked");
    assert!(damaged.in_the_log().contains("damaged"), "{damaged:?}");
    let page = class.call(shelf()).await.body;
    for says in [
        "The record is damaged",
        "2027-03-09 15:30 UTC",
        "Copy the whole data folder",
        "/backups",
    ] {
        assert!(page.contains(says), "{says}: {page}");
    }
}
