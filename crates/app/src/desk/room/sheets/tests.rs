//! Sheets and files against records made by hand.

use super::judge::Wrong;
use super::{
    State, Typed, TypedCell, TypedZero, first_sheet, from_file, judge, look_at_file, sheet_view,
};
use crate::desk::Wording;
use crate::desk::room::acted::{Acted, PERIOD, at, bag};
use barm_domain::code::BagCode;
use barm_domain::record::{Bag, Key, Who};
use std::collections::BTreeSet;

const GROUP: u32 = 2;

fn cell(number: u128, nth: usize, minute: u32, text: &str) -> TypedCell {
    let key = Key::new(1, 10 * number).to_string();
    TypedCell { key, bag: bag(2, nth).to_string(), minute, text: text.to_owned() }
}

fn sheet(cells: &[(usize, u32, &str)]) -> Typed {
    let cells = (1..).zip(cells).map(|(n, (nth, minute, text))| cell(n, *nth, *minute, text));
    Typed { cells: cells.collect(), zeros: Vec::new() }
}

fn states(acted: &Acted, typed: &Typed) -> Vec<State> {
    let judged =
        acted.scene(|scene| judge(scene, Wording::english(), PERIOD, GROUP, typed, at(9000.0)));
    judged.expect("a sheet").cells.into_iter().map(|cell| cell.state).collect()
}

/// Puts a sheet on record and gives the bags of its group.
fn save(acted: &mut Acted, typed: &Typed) -> Vec<Bag> {
    let judged =
        acted.scene(|scene| judge(scene, Wording::english(), PERIOD, GROUP, typed, at(9000.0)));
    for entry in judged.expect("a sheet").entries {
        assert!(acted.ledger.add(entry));
    }
    bags(acted)
}

fn bags(acted: &Acted) -> Vec<Bag> {
    let standing = acted.ledger.standing();
    (0..3).filter_map(|nth| standing.bags.get(&bag(2, nth)).cloned()).collect()
}

/// A bag's heights: minute as it is true, height.
fn heights(bag: &Bag) -> Vec<(f64, f64)> {
    let zero = bag.zero.as_ref().expect("a zero reading");
    let rises = bag.rises().into_iter();
    rises.map(|(minute, rise)| (minute, zero.height_mm + rise)).collect()
}

#[test]
fn numbers_are_read_as_people_write_them_and_marked_where_they_are_none() {
    let acted = Acted::new(8, 3);
    let typed = sheet(&[
        (0, 0, "3"),
        (0, 4, "1.2 cm"),
        (0, 8, "5/8 in"),
        (0, 12, "tall"),
        (1, 4, "5"),
        (2, 0, " "),
    ]);
    let states = states(&acted, &typed);
    assert_eq!(states[..3], [State::New, State::New, State::New]);
    assert!(matches!(&states[3], State::Wrong(Wrong::Height(why)) if why.contains("tall")));
    assert_eq!(states[4..], [State::Wrong(Wrong::NoZero), State::Blank]);
}

#[test]
fn a_sheet_without_a_clock_starts_when_the_schedule_says() {
    let mut acted = Acted::new(8, 3);
    acted.period(30.0, barm_domain::record::What::Began);
    let bags = save(&mut acted, &sheet(&[(0, 0, "3"), (0, 4, "5"), (0, 8, "9.5")]));
    let zero = bags[0].zero.as_ref().expect("a zero reading");
    // Eight groups in three waves: the second group starts with the first, 14 min after the bell.
    assert_eq!(zero.measured, at(30.0 + 60.0 * 14.0));
    assert_eq!(zero.who, Who::Import);
    assert_eq!(heights(&bags[0]), [(0.0, 3.0), (4.0, 5.0), (8.0, 9.5)]);
    assert!(bags[0].sealed.is_some());
}

#[test]
fn a_sheet_may_tell_when_its_bags_started() {
    let mut acted = Acted::new(8, 3);
    let mut typed = sheet(&[(0, 0, "3"), (0, 4, "5"), (1, 0, "4")]);
    // The first bell is at 10:20 in the room.
    let zero = |nth: usize, text: &str| TypedZero {
        bag: bag(2, nth).to_string(),
        text: text.to_owned(),
    };
    typed.zeros = vec![zero(0, "10:41:30"), zero(1, "soon")];
    assert_eq!(states(&acted, &typed)[2], State::Wrong(Wrong::Time("soon".into())));
    let bags = save(&mut acted, &typed);
    let started = bags[0].zero.as_ref().expect("a zero reading").measured;
    assert_eq!(started, at(60.0 * 21.5));
    assert_eq!(bags.len(), 1, "nothing was written for the bag whose time cannot be read");
}

#[test]
fn what_is_on_record_is_shown_and_another_number_corrects_it() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(60.0, 1.0, |code, minute| code == bag(2, 0) && minute == 8);
    let shown = acted.scene(|scene| sheet_view(scene, PERIOD, GROUP)).expect("a sheet");
    assert_eq!(shown.minutes[..4], [0, 4, 8, 12]);
    let there = shown.rows[0].cells[1].there[0];
    assert!(shown.rows[0].cells[2].there.is_empty());
    assert!(shown.rows[0].zero_known);
    let (same, other) = (there.to_string(), (there + 3.0).to_string());
    assert_eq!(states(&acted, &sheet(&[(0, 4, &same)])), [State::There]);
    let typed = sheet(&[(0, 4, &other)]);
    assert_eq!(states(&acted, &typed), [State::Corrects(there)]);
    let before = bags(&acted)[0].readings[0].measured;
    let bag = save(&mut acted, &typed).remove(0);
    assert!((bag.readings[0].height_mm - there - 3.0).abs() < 1e-9);
    assert_eq!(bag.readings[0].measured, before);
    let shown = acted.scene(|scene| sheet_view(scene, PERIOD, GROUP)).expect("a sheet");
    assert_eq!(shown.rows[0].cells[1].was, [there]);
}

#[test]
fn what_looks_odd_is_said_and_written_all_the_same() {
    let mut acted = Acted::new(8, 3);
    // Centimeters in a column of millimeters, as on the run page.
    let typed =
        sheet(&[(0, 0, "4"), (0, 4, "6"), (0, 8, "1.1"), (1, 0, "4"), (1, 4, "300 mm")]);
    let judged = acted
        .scene(|scene| judge(scene, Wording::english(), PERIOD, GROUP, &typed, at(9000.0)));
    let judged = judged.expect("a sheet");
    let odd: Vec<_> = judged
        .odd
        .iter()
        .map(|(code, minute, tag, _)| (*code, *minute, tag.as_str()))
        .collect();
    assert!(odd.contains(&(bag(2, 0), Some(8), "Unit?")), "{odd:?}");
    assert_eq!(judged.cells[2].state, State::New);
    assert!(matches!(judged.cells[4].state, State::Wrong(Wrong::Height(_))));
    let bags = save(&mut acted, &typed);
    assert!((bags[0].readings[1].height_mm - 1.1).abs() < 1e-9, "never changed");
}

#[test]
fn cells_of_other_sheets_are_none_of_this_one() {
    let acted = Acted::new(8, 3);
    let mut typed = sheet(&[(0, 0, "3"), (1, 0, "3")]);
    typed.cells[0].bag = bag(3, 0).to_string();
    typed.cells[1].key = "short".into();
    let wrong = || State::Wrong(Wrong::NotHere);
    assert_eq!(states(&acted, &typed), [wrong(), wrong()]);
}

#[test]
fn a_height_after_a_loss_is_said_not_to_count() {
    let mut acted = Acted::new(8, 3);
    acted.runs_to(20.0, 1.0, |_, _| false);
    acted.bag(60.0 * 20.5, bag(2, 0), barm_domain::record::What::Lost);
    let states = states(&acted, &sheet(&[(0, 16, "9")]));
    assert!(matches!(&states[0], State::NotCounted(why) if !why.is_empty()), "{states:?}");
}

#[test]
fn sheets_lead_from_one_to_the_next_that_is_not_full() {
    let mut acted = Acted::new(2, 1);
    let first = acted.scene(first_sheet).expect("a sheet");
    let shown = acted.scene(|scene| sheet_view(scene, &first.0, first.1)).expect("a sheet");
    assert!(shown.next.is_some());
    acted.runs_to(200.0, 1.0, |_, _| false);
    let shown = acted.scene(|scene| sheet_view(scene, PERIOD, 1)).expect("a sheet");
    let tab = shown.groups.iter().find(|tab| tab.group == 2).expect("group 2");
    assert_eq!(tab.done, tab.of);
    assert!(shown.next.is_none_or(|(period, _)| period != PERIOD));
    assert!(acted.scene(|scene| sheet_view(scene, PERIOD, 9)).is_none());
    assert!(acted.scene(|scene| sheet_view(scene, "nowhere", 1)).is_none());
}

/// The three bags of the group as a file of each layout.
fn files() -> [String; 3] {
    let code = |nth| bag(2, nth).to_string();
    let (a, b, c) = (code(0), code(1), code(2));
    [
        format!(
            "bag,minute,height (mm)\n{a},0,3\n{a},4,5\n{a},8,9.5\n{b},0,4\n{b},4,6\n{b},8,10\n\
             {c},0,3\n{c},4,3\n{c},8,4\n"
        ),
        format!("bag;0;4 min;8\n{a};3;5;9,5\n{b};4;0.6 cm;10\n{c};3;3;4\n"),
        format!("minute,{a},{b},{c}\n0,3,4,3\n4,5,6,3\n8,9.5,10,4\n"),
    ]
}

#[test]
fn a_file_of_any_layout_adds_what_typing_the_sheet_adds() {
    let typed = sheet(&[
        (0, 0, "3"),
        (0, 4, "5"),
        (0, 8, "9.5"),
        (1, 0, "4"),
        (1, 4, "6"),
        (1, 8, "1 cm"),
        (2, 0, "3"),
        (2, 4, "3"),
        (2, 8, "4"),
    ]);
    let mut by_hand = Acted::new(8, 3);
    let typed = save(&mut by_hand, &typed);
    for file in files() {
        let mut acted = Acted::new(8, 3);
        let seed = Key::new(5, 0);
        let look = acted.scene(|scene| look_at_file(scene, file.as_bytes(), seed, at(9000.0)));
        assert_eq!((look.count, look.there, look.contradictions.len()), (9, 0, 0), "{file}");
        let none = BTreeSet::new();
        let entries =
            acted.scene(|scene| from_file(scene, file.as_bytes(), seed, &none, at(9000.0)));
        for entry in entries {
            assert!(acted.ledger.add(entry));
        }
        for (typed, read) in typed.iter().zip(bags(&acted)) {
            assert_eq!(heights(typed), heights(&read), "{file}");
            let zero = |bag: &Bag| bag.zero.as_ref().map(|zero| zero.measured);
            assert_eq!(zero(typed), zero(&read));
        }
        let again = acted.scene(|scene| look_at_file(scene, file.as_bytes(), seed, at(9001.0)));
        assert_eq!((again.count, again.there), (0, 9), "nothing is left to add");
        assert!(!again.adds());
    }
}

#[test]
fn a_file_that_contradicts_the_record_changes_only_what_is_ticked() {
    let mut acted = Acted::new(8, 3);
    save(&mut acted, &sheet(&[(0, 0, "3"), (0, 4, "15"), (1, 0, "4"), (1, 4, "16")]));
    let [file, ..] = files();
    let seed = Key::new(5, 0);
    let look = acted.scene(|scene| look_at_file(scene, file.as_bytes(), seed, at(9100.0)));
    let said: Vec<_> = look
        .contradictions
        .iter()
        .map(|one| (one.bag.as_str(), one.minute.as_str(), one.was_mm, one.file_mm))
        .collect();
    assert_eq!(said, [("2A", "4", 15.0, 5.0), ("2B", "4", 16.0, 6.0)]);
    assert_eq!((look.count, look.there), (5, 2));
    let take = BTreeSet::from([look.contradictions[1].place]);
    let entries =
        acted.scene(|scene| from_file(scene, file.as_bytes(), seed, &take, at(9100.0)));
    for entry in entries {
        assert!(acted.ledger.add(entry));
    }
    let bags = bags(&acted);
    let at_4 =
        |bag: &Bag| bag.readings.iter().find(|r| r.planned == Some(4)).map(|r| r.height_mm);
    assert_eq!((at_4(&bags[0]), at_4(&bags[1])), (Some(15.0), Some(6.0)));
}

#[test]
fn times_of_day_rules_and_odd_words_of_a_file_are_kept() {
    let acted = Acted::new(8, 3);
    let code = bag(2, 0);
    let rule = acted.plan.set_aside_rules.first().expect("a rule").id.clone();
    // The first bell is at 10:20; minutes 4 and 8 are read a little late.
    let file = format!(
        "bag,clock,height mm,set aside,note\n{code},10:41:30,3,,\n{code},10:45:50,5,,foam\n\
         {code},10:49:40,9,{rule},looked sad\n"
    );
    let seed = Key::new(5, 0);
    let look = acted.scene(|scene| look_at_file(scene, file.as_bytes(), seed, at(9000.0)));
    assert_eq!(look.new, [("2A".to_owned(), vec!["zero".into(), "4".into(), "8".into()])]);
    assert_eq!(look.odd, [("2A".to_owned(), "foam")]);
    assert_eq!(look.set_aside, [("2A".to_owned(), rule)]);
    assert_eq!(look.notes_left, 1);
    let named = file.replace(&look.set_aside[0].1, "Casey spilled it");
    let named = acted.scene(|scene| look_at_file(scene, named.as_bytes(), seed, at(9000.0)));
    assert!(named.set_aside.is_empty());
    assert!(named.rejected.iter().any(|(line, why)| *line == 4 && why.contains("no rule")));
    let none = BTreeSet::new();
    let entries =
        acted.scene(|scene| from_file(scene, file.as_bytes(), seed, &none, at(9000.0)));
    let zero =
        entries.iter().find(|e| matches!(e.what, barm_domain::record::What::Zero { .. }));
    assert_eq!(zero.expect("a zero").measured, at(60.0 * 21.5));
    let keys: BTreeSet<Key> = entries.iter().map(|entry| entry.key).collect();
    assert_eq!(keys.len(), entries.len(), "every entry has a key of its own");
}

#[test]
fn a_file_that_is_none_says_so_and_adds_nothing() {
    let acted = Acted::new(8, 3);
    for bytes in [&b""[..], b"\xff\xfe\x00", b"dear diary"] {
        let look = acted.scene(|scene| look_at_file(scene, bytes, Key::new(5, 0), at(9000.0)));
        assert!(look.above_all.is_some() && !look.adds());
    }
    let other: BagCode = bag(1, 0);
    let file = format!("bag,minute,height\n{other},4,5\n");
    let look =
        acted.scene(|scene| look_at_file(scene, file.as_bytes(), Key::new(5, 0), at(9000.0)));
    assert!(!look.adds());
    assert!(look.rejected.iter().any(|(line, why)| *line == 2 && why.contains("no zero")));
}
