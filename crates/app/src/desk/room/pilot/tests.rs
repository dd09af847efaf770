//! A pilot that is typed part by part: what is kept, what forecasts go by, and the way back.

use super::{Change, Looked, Saved, TypedSheet, change_lots, go_back, keep_file, look_at_file};
use super::{put_away, save_parts};
use crate::desk::pilot::protocol;
use crate::desk::room::{Kind, Room, Shelf};
use crate::desk::{Unheard, demo, doors, outlook};
use barm_domain::bench::tools::TRAPPED_AIR;
use barm_domain::code::BagCode;
use barm_domain::outlook::{Curve, Look};
use barm_domain::pilot::{Known, Part};
use barm_domain::plan::Plan;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use barm_science::card_height;
use jiff::Timestamp;
use std::path::Path;
use std::sync::Arc;
use std::thread;
use std::time::Duration;

fn now() -> Timestamp {
    "2027-03-02T15:00:00Z".parse().expect("a time")
}

/// An invented school in a folder.
fn school(folder: &Path) -> (Shelf, Arc<Room>) {
    let shelf = Shelf::open(folder, now()).expect("a shelf");
    let room =
        shelf.begin(demo::plan(), Kind::Invented, Key::new(1, 1), now()).expect("a room");
    (shelf, room)
}

/// The school's folder, once what was still being worked out for its rooms has let it go.
fn opened_again(folder: &Path) -> Shelf {
    for _ in 0..1500 {
        match Shelf::open(folder, now()) {
            Ok(shelf) => return shelf,
            Err(_) => thread::sleep(Duration::from_millis(20)),
        }
    }
    Shelf::open(folder, now()).expect("a shelf")
}

/// Spoons and syringe as somebody types them; the card rises as usual.
fn typed(room: &Room) -> TypedSheet {
    let plan = room.read(|scene| scene.newest.clone());
    let syringe = protocol(&plan).expect("a pilot").syringe.expect("a syringe");
    let mut sheet = TypedSheet::default();
    for (at, mass) in ["3.1 g", "3.2", "3.0", "3.15", "0.11 oz"].iter().enumerate() {
        sheet.set(&format!("spoon-{at}"), mass);
    }
    let (bag, card) = (&syringe.bag.bag, &syringe.card.card);
    let curve = card_height::prior(bag, card, syringe.water_ml).curve(0.0, 0.0, 1.0);
    for (at, air) in [0.0].iter().chain(&syringe.volumes_ml).enumerate() {
        let height = 5.0 + curve.rise_mm(air + TRAPPED_AIR.value);
        sheet.set(&format!("syringe-{at}-at"), &format!("{air}"));
        sheet.set(&format!("syringe-{at}"), &format!("{height:.0}"));
    }
    sheet
}

/// Widths of the plan's bands at the last reading.
fn widths(plan: &Plan) -> Vec<f64> {
    let look = Look { draws: 64, ..Look::default() };
    let entries = outlook(plan, look, &Unheard).expect("an outlook").entries;
    let width = |curve: &Curve| {
        let (_, low, high) = curve.last();
        high - low
    };
    entries.iter().map(|entry| width(&entry.rise_mm)).collect()
}

fn newest(room: &Room) -> (u32, Arc<Plan>) {
    room.read(|scene| (scene.version, scene.newest.clone()))
}

fn save(room: &Arc<Room>, sheet: &TypedSheet, part: Part) -> Saved {
    save_parts(room, sheet, &[part], newest(room).0, now()).expect("an answer")
}

#[test]
fn spoons_and_syringe_narrow_the_forecast_and_undoing_brings_it_back() {
    let folder = tempfile::tempdir().expect("a folder");
    let (shelf, room) = school(folder.path());
    let before = widths(&newest(&room).1);
    let sheet = typed(&room);
    assert!(matches!(save(&room, &sheet, Part::Spoons), Saved::As(_)));
    let kept = room.kept_sheet();
    assert!(kept.has(Part::Spoons) && !kept.has(Part::Syringe), "a part by itself");
    assert_eq!((kept.get("spoon-4"), kept.get("date")), ("0.11 oz", "2027-03-02"));
    assert!(matches!(save(&room, &sheet, Part::Syringe), Saved::As(_)));
    let (version, after) = newest(&room);
    assert_eq!(version, 3);
    // What rises at all (mm) is known better.
    let widths_after = widths(&after);
    let rising = widths_after.iter().zip(&before).filter(|(_, was)| **was > 2.0);
    let (narrower, others): (Vec<_>, Vec<_>) = rising.partition(|(is, was)| is < was);
    assert!(narrower.len() > 8 * others.len(), "{others:?}");
    let says = after.known.says().expect("a line");
    assert!(says.contains("yeast “first” (2027-03-02)"), "{says}");

    // The same again is nothing new, and the plan's text is what it was.
    assert!(matches!(save(&room, &sheet, Part::Spoons), Saved::Same));
    assert_eq!(room.plan_text(3).expect("a text"), room.plan_text(1).expect("a text"));

    // It is all there after the program was started anew, and goes back as far as one likes.
    drop((shelf, room));
    let shelf = opened_again(folder.path());
    let room = shelf.room(1, now()).expect("a room");
    assert_eq!(newest(&room).1.known, after.known);
    assert!(matches!(go_back(&room, 2, 3, now()), Ok(Saved::As(_))));
    assert!(!room.kept_sheet().has(Part::Syringe));
    assert!(matches!(go_back(&room, 1, 4, now()), Ok(Saved::As(_))));
    let (version, plan) = newest(&room);
    assert_eq!((version, &plan.known), (5, &Known::default()));
    assert_eq!(widths(&plan), before);
    // A window that does not know of it changes nothing.
    assert!(matches!(go_back(&room, 2, 3, now()), Ok(Saved::Overtaken)));
}

#[test]
fn a_part_that_is_mended_counts_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let (_shelf, room) = school(folder.path());
    let right = typed(&room);
    let mut wrong = right.clone();
    wrong.set("spoon-0", "4.9");
    save(&room, &wrong, Part::Spoons);
    save(&room, &right, Part::Syringe);
    assert!(matches!(save(&room, &right, Part::Spoons), Saved::As(_)));
    let mended = room.kept_pilot().lots.clone();
    let (other_folder, (_other_shelf, other)) = {
        let folder = tempfile::tempdir().expect("a folder");
        let school = school(folder.path());
        (folder, school)
    };
    let both = [Part::Spoons, Part::Syringe];
    save_parts(&other, &right, &both, 1, now()).expect("an answer");
    assert_eq!(mended, other.kept_pilot().lots, "as if it had never been wrong");
    drop(other_folder);
    // Cleared to the last cell, it has taught nothing.
    let empty = TypedSheet::default();
    save(&room, &empty, Part::Spoons);
    save(&room, &empty, Part::Syringe);
    assert!(room.kept_pilot().lots.is_empty());
    assert!(matches!(save(&room, &empty, Part::Meter), Saved::Nothing));
}

#[test]
fn what_is_wrong_is_said_at_its_field_and_nothing_is_kept() {
    let folder = tempfile::tempdir().expect("a folder");
    let (_shelf, room) = school(folder.path());
    let mut sheet = typed(&room);
    sheet.set("spoon-1", "heavy");
    sheet.set("room", "21");
    let Saved::Faulty(faults) = save(&room, &sheet, Part::Spoons) else { panic!("not kept") };
    let cells: Vec<&str> = faults.cells.keys().map(String::as_str).collect();
    assert_eq!(cells, ["room", "spoon-1"], "{faults:?}");
    assert_eq!((faults.rest.len(), newest(&room).0), (0, 1));
    // The other parts do not wait for it.
    sheet.set("room", "21 °C");
    assert!(matches!(save(&room, &sheet, Part::Syringe), Saved::As(_)));
}

#[test]
fn a_file_is_looked_at_first_and_then_stands_on_the_sheet() {
    let folder = tempfile::tempdir().expect("a folder");
    let (_shelf, room) = school(folder.path());
    let file = "yeast lot,jar\nspoon,mass (g)\n1,3.4\n2,3.6\n";
    let Ok(Looked::Sound(lesson)) = look_at_file(&room, file, now()) else { panic!("sound") };
    assert_eq!(lesson.taught.parts, [Part::Spoons]);
    assert_eq!(newest(&room).0, 1, "nothing is kept");
    assert!(matches!(keep_file(&room, file, 1, now()), Ok(Saved::As(_))));
    assert_eq!(room.kept_sheet().get("spoon-1"), "3.6");
    let Ok(Looked::Wrong(wrong)) = look_at_file(&room, "spoon,mass\n1,heavy\n", now()) else {
        panic!("wrong")
    };
    assert_eq!(wrong[0].0, 2, "by its line: {wrong:?}");
    // The rest of the same pilot comes on the same sheet; another jar is another pilot.
    let rest = "cooling,temperature (°C)\n0,40\n10,34\n";
    assert!(matches!(keep_file(&room, rest, 2, now()), Ok(Saved::As(_))));
    let sheet = room.kept_sheet();
    assert!(sheet.has(Part::Spoons) && sheet.has(Part::Dummy));
    let other = "yeast lot,other jar\nspoon,mass (g)\n1,3.0\n";
    assert!(matches!(keep_file(&room, other, 3, now()), Ok(Saved::As(_))));
    assert!(!room.kept_sheet().has(Part::Dummy));
    assert_eq!(room.kept_pilot().lots.yeast.len(), 2);
}

#[test]
fn another_lot_is_chosen_and_a_wrong_one_taken_out_with_its_sheet() {
    let folder = tempfile::tempdir().expect("a folder");
    let (_shelf, room) = school(folder.path());
    let mut sheet = typed(&room);
    sheet.set("yeast", "old");
    save(&room, &sheet, Part::Spoons);
    assert!(matches!(put_away(&room, 2, now()), Ok(Saved::As(_))));
    assert!(room.kept_sheet().is_empty() && !room.kept_pilot().lots.is_empty());
    sheet.set("yeast", "new");
    save(&room, &sheet, Part::Spoons);
    let used = || {
        let lines = room.kept_pilot().lots.lines();
        lines.into_iter().filter(|line| line.in_use).map(|line| line.name).collect::<Vec<_>>()
    };
    assert_eq!(used(), ["new"]);
    let change = |place, change| {
        change_lots(&room, place, change, newest(&room).0, now()).expect("an answer")
    };
    change(0, Change::Choose);
    assert_eq!(used(), ["old"]);
    change(0, Change::LeaveOut);
    assert!(used().is_empty());
    assert!(room.kept_sheet().has(Part::Spoons));
    change(1, Change::TakeOut);
    assert!(room.kept_sheet().is_empty(), "the sheet on which it was tried goes along");
    assert_eq!(room.kept_pilot().lots.lines().len(), 1);
}

#[test]
fn a_sealed_bag_keeps_the_forecast_it_was_sealed_under() {
    let folder = tempfile::tempdir().expect("a folder");
    let (_shelf, room) = school(folder.path());
    let codes: Vec<BagCode> = room.read(|scene| {
        scene.plan.bags.iter().filter_map(|bag| bag.code.parse().ok()).take(2).collect()
    });
    let entry = Entry {
        key: doors::key(now()).expect("a key"),
        subject: Subject::Bag(codes[0]),
        what: What::Sealed { plan: 1 },
        measured: now(),
        arrived: now(),
        who: Who::Teacher,
    };
    room.enter_and_wait(&[entry]).expect("on record");
    save(&room, &typed(&room), Part::Syringe);
    room.read(|scene| {
        assert_eq!(scene.lots_of(codes[0]), &Known::default());
        assert_eq!(scene.lots_of(codes[1]), &scene.newest.known);
        assert!(scene.bound.kept.is_empty(), "it is still the same treatment");
    });
    // Both forecasts come by themselves, each when it is there.
    room.foresee();
    let both = || room.read(|scene| codes.iter().all(|code| scene.outlook_of(*code).is_some()));
    while !both() {
        thread::sleep(Duration::from_millis(20));
    }
    room.read(|scene| {
        let rise = |code: BagCode| {
            let name = scene.treatment_of(code).expect("a treatment");
            let entries = &scene.outlook_of(code).expect("an outlook").entries;
            entries.iter().find(|own| own.treatment == name).expect("it").rise_mm.clone()
        };
        let usual = Plan { known: Known::default(), ..Plan::clone(scene.plan) };
        let usual = outlook(&usual, Look::default(), &Unheard).expect("an outlook");
        let name = scene.treatment_of(codes[0]).expect("a treatment");
        let was = usual.entries.iter().find(|own| own.treatment == name).expect("it");
        assert_eq!(rise(codes[0]), was.rise_mm);
        let now = scene.outlook.expect("an outlook");
        let is = now.entries.iter().find(|own| own.treatment == name).expect("it");
        assert_ne!(rise(codes[0]), is.rise_mm);
    });
}
