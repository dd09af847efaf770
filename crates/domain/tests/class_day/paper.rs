//! What a data sheet adds to a record.

use crate::day::{at, bag, correct, entry, key, known, read, zero};
use barm_domain::code::BagCode;
use barm_domain::paper::{Added, OnPaper, Outcome, When, added};
use barm_domain::record::{Entry, Ledger, Refused, Subject, What, Who};

fn on(number: u128, when: When, height_mm: f64) -> OnPaper {
    OnPaper { key: key(number), bag: bag(1, 1, 0), when, height_mm }
}

fn ledger(entries: &[Entry]) -> Ledger {
    Ledger::of(known(), entries.to_vec())
}

fn outcomes(added: &[Added]) -> Vec<Outcome> {
    added.iter().map(|one| one.outcome).collect()
}

/// The record with what was added.
fn after(mut ledger: Ledger, added: Vec<Added>) -> Ledger {
    for entry in added.into_iter().flat_map(|one| one.entries) {
        assert!(ledger.add(entry));
    }
    ledger
}

#[test]
fn a_sheet_of_a_bag_that_nobody_typed_is_sealed_zeroed_and_read() {
    let sheet = [
        on(10, When::Zero(at(840)), 3.0),
        on(20, When::Planned(4), 5.0),
        on(30, When::Planned(12), 11.5),
    ];
    let added = added(&ledger(&[]), 3, &sheet, at(9000));
    assert_eq!(outcomes(&added), [Outcome::New; 3]);
    let ledger = after(ledger(&[]), added);
    let standing = &ledger.standing().bags[&bag(1, 1, 0)];
    assert_eq!(standing.sealed, Some((at(840), 3)));
    assert_eq!(standing.rises(), [(0.0, 0.0), (4.0, 2.0), (12.0, 8.5)]);
    let planned: Vec<_> = standing.readings.iter().map(|one| one.planned).collect();
    assert_eq!(planned, [Some(4), Some(12)]);
    assert!(standing.readings.iter().all(|one| one.who == Who::Import));
    assert!(ledger.standing().refused.is_empty());
}

#[test]
fn the_same_sheet_again_adds_nothing_and_sent_twice_counts_once() {
    let sheet = [on(10, When::Zero(at(840)), 3.0), on(20, When::Planned(4), 5.0)];
    let first = added(&ledger(&[]), 1, &sheet, at(9000));
    let mut ledger = after(ledger(&[]), first.clone());
    // The same sending arrives again, before anybody looked.
    for entry in first.into_iter().flat_map(|one| one.entries) {
        assert!(!ledger.add(entry));
    }
    let fresh = [on(11, When::Zero(at(850)), 3.0), on(21, When::Planned(4), 5.0)];
    let again = added(&ledger, 1, &fresh, at(9100));
    assert_eq!(outcomes(&again), [Outcome::There; 2]);
    assert!(again.iter().all(|one| one.entries.is_empty()));
}

#[test]
fn another_number_is_a_correction_and_the_first_stays_on_record() {
    let tablet = [entry(2, 840, zero(8.0)), entry(3, 1080, read(4, 21.0))];
    let added = added(&ledger(&tablet), 1, &[on(20, When::Planned(4), 12.0)], at(9000));
    assert_eq!(outcomes(&added), [Outcome::Corrects { was_mm: 21.0 }]);
    let ledger = after(ledger(&tablet), added);
    let reading = &ledger.standing().bags[&bag(1, 1, 0)].readings[0];
    assert!((reading.height_mm - 12.0).abs() < 1e-9);
    assert_eq!(reading.measured, at(1080), "when it was read does not change");
    assert!((reading.mended[0].height_mm - 21.0).abs() < 1e-9);
    assert_eq!(ledger.entries_of(&Subject::Bag(bag(1, 1, 0))).len(), 3);
}

#[test]
fn what_was_typed_for_one_of_two_rivals_chooses_it() {
    let mut other = entry(4, 1085, read(4, 12.0));
    other.who = Who::Aide;
    let rivals = [entry(2, 840, zero(8.0)), entry(3, 1080, read(4, 21.0)), other];
    assert!(ledger(&rivals).standing().bags[&bag(1, 1, 0)].readings[0].rival);
    let added = added(&ledger(&rivals), 1, &[on(20, When::Planned(4), 12.0)], at(9000));
    assert_eq!(outcomes(&added), [Outcome::Chooses]);
    let ledger = after(ledger(&rivals), added);
    let readings = &ledger.standing().bags[&bag(1, 1, 0)].readings;
    assert_eq!(readings.len(), 1);
    assert!((readings[0].height_mm - 12.0).abs() < 1e-9 && !readings[0].rival);
    assert!(matches!(ledger.standing().refused[0].1, Refused::NotChosen { .. }));
}

#[test]
fn a_third_number_settles_two_rivals_even_if_the_day_is_still_to_come() {
    let mut other = entry(4, 1085, read(4, 12.0));
    other.who = Who::Aide;
    let rivals = [entry(2, 840, zero(8.0)), entry(3, 1080, read(4, 21.0)), other];
    // Typed before the time that the readings carry, as with an invented class.
    let added = added(&ledger(&rivals), 1, &[on(20, When::Planned(4), 13.0)], at(0));
    assert_eq!(outcomes(&added), [Outcome::Corrects { was_mm: 21.0 }]);
    let ledger = after(ledger(&rivals), added);
    let readings = &ledger.standing().bags[&bag(1, 1, 0)].readings;
    assert_eq!(readings.len(), 1);
    assert!((readings[0].height_mm - 13.0).abs() < 1e-9);
}

#[test]
fn a_number_that_was_corrected_before_is_judged_by_what_counts_now() {
    let story = [
        entry(2, 840, zero(8.0)),
        entry(3, 1080, read(4, 21.0)),
        entry(4, 1100, correct(3, 12.0)),
    ];
    let paper = |mm| added(&ledger(&story), 1, &[on(20, When::Planned(4), mm)], at(9000));
    assert_eq!(outcomes(&paper(12.0)), [Outcome::There]);
    assert_eq!(outcomes(&paper(21.0)), [Outcome::Corrects { was_mm: 12.0 }]);
}

#[test]
fn planned_minutes_wait_while_all_clocks_stand_and_true_minutes_do_not() {
    let period = |number, second, what| Entry {
        subject: Subject::Period("1".into()),
        who: Who::Teacher,
        ..entry(number, second, what)
    };
    // Stopped for five minutes, six minutes after the zero reading.
    let drill = [
        period(1, 0, What::Began),
        entry(2, 840, zero(8.0)),
        period(3, 1200, What::Stopped),
        period(4, 1500, What::WentOn),
    ];
    let sheet = [
        on(20, When::Planned(4), 9.0),
        on(30, When::Planned(8), 12.0),
        on(40, When::Minute { minute: 9.5, planned: None }, 11.0),
        on(50, When::Minute { minute: 12.4, planned: Some(12) }, 13.0),
    ];
    let added = added(&ledger(&drill), 1, &sheet, at(9000));
    let measured: Vec<_> = added.iter().map(|one| one.entries[0].measured).collect();
    let true_minutes = [240, 480 + 300, 570, 744];
    assert_eq!(measured, true_minutes.map(|seconds| at(840 + seconds)));
    assert_eq!(added[3].entries[0].what, read(12, 13.0));
}

#[test]
fn readings_need_a_zero_and_a_bag() {
    let nowhere = BagCode::all_of(97, 1).next().expect("a code");
    let lost = OnPaper { bag: nowhere, ..on(20, When::Planned(4), 9.0) };
    let added = added(&ledger(&[]), 1, &[on(10, When::Planned(4), 9.0), lost], at(9000));
    assert_eq!(outcomes(&added), [Outcome::NoZero, Outcome::NoSuchBag]);
    assert!(added.iter().all(|one| one.entries.is_empty()));
}

#[test]
fn one_between_is_the_same_reading_within_half_a_minute() {
    let between = What::Reading { planned: None, height_mm: 10.0 };
    let story = [entry(2, 840, zero(8.0)), entry(3, 840 + 330, between)];
    let paper = |minute, mm| {
        let when = When::Minute { minute, planned: None };
        added(&ledger(&story), 1, &[on(20, when, mm)], at(9000))
    };
    assert_eq!(outcomes(&paper(5.5, 10.0)), [Outcome::There]);
    assert_eq!(outcomes(&paper(5.9, 11.0)), [Outcome::Corrects { was_mm: 10.0 }]);
    assert_eq!(outcomes(&paper(6.5, 10.0)), [Outcome::New]);
}
