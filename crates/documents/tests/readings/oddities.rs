//! What goes wrong in files, and that it is listed.

use crate::layouts::taken;
use crate::plan::plan;
use barm_documents::readings::{ReadingsFile, read};

/// Reads a file of which some lines cannot be taken; gives what was taken.
#[track_caller]
fn check(text: &str, rejected: &[(u64, &str)]) -> ReadingsFile {
    let file = read(text.as_bytes(), &plan());
    let found: Vec<(u64, &str)> =
        file.rejected.iter().map(|r| (r.line, r.reason.as_str())).collect();
    assert_eq!(found.len(), rejected.len(), "{text}: {found:#?}");
    for ((line, reason), (expected_line, word)) in found.iter().zip(rejected) {
        assert_eq!(line, expected_line, "{reason}");
        assert!(reason.contains(word), "{reason} does not say {word}");
    }
    file
}

const HEAD: &str = "bag,minute,height (mm)\n";

#[test]
fn codes_that_the_plan_does_not_have() {
    let file = check(
        &format!(
            "{HEAD}P1-01A-X,0,4\nP1-01D-6,0,4\n,0,4\nTotal,,11\nMean of 4,0,5\np101bseven,0,5\nP1-01B-A,0,5\n"
        ),
        &[
            (2, "a character is wrong or two are swapped; did you mean P1-01A-C?"),
            (3, "a code, but of no bag"),
            (4, "no bag code"),
            (5, "totals or means"),
            (6, "totals or means"),
            (7, "no bag of this plan"),
        ],
    );
    assert_eq!(taken(&file), [("P1-01B-A", 0.0, 5.0)]);
}

#[test]
fn two_heights_for_one_bag_and_minute() {
    let file = check(
        &format!("{HEAD}P1-01A-C,0,4\nP1-01A-C,4,7\nP1-01A-C,4,9\nP1-01A-C,4.0 min,7\n"),
        &[(4, "is 9 mm here but 7 mm on line 3"), (5, "repeats line 3")],
    );
    assert_eq!(taken(&file), [("P1-01A-C", 0.0, 4.0), ("P1-01A-C", 4.0, 7.0)]);
    check("bag,zero (mm),0,4\nP1-01A-C,4,5 mm,7 mm", &[(2, "4 mm on line 2")]);
}

#[test]
fn lines_that_are_no_readings() {
    let file = check(
        "Period 1,,\n\nbag,minute,height (mm)\nP1-01A-C,0,4\nBag,Minute,Height (mm)\n\
         P1-01A-C,4,7\n,,\nsum,,11\n",
        &[(1, "above the headings"), (5, "repeats the headings of line 3"), (8, "totals")],
    );
    assert_eq!(file.readings.len(), 2);
}

#[test]
fn a_second_table_may_have_other_columns() {
    let text = "bag,0,4\nP1-01A-C,4 mm,7 mm\n\nbag,0,5\nP2-01A-X,3 mm,8 mm\n";
    let file = check(text, &[]);
    assert_eq!(taken(&file)[3], ("P2-01A-X", 5.0, 8.0));
    assert!(file.notes.iter().any(|note| note.contains("line 4")), "{:?}", file.notes);
}

#[test]
fn cells_that_are_no_heights() {
    let file = check(
        "bag,0,4,8,12\nP1-01A-C,=B2+1,-3 mm,abc,\"1,250\"\nP1-01B-A,5 mm,12\0 mm,,—\n",
        &[
            (2, "formula"),
            (2, "below zero"),
            (2, "column \"8\": \"abc\""),
            (2, "1.250 or 1250"),
            (3, "unreadable"),
        ],
    );
    assert_eq!((file.cells.taken, file.cells.rejected, file.cells.blank), (1, 5, 2));
    assert!(
        file.notes.iter().any(|note| note.contains("1 cells hold a dash")),
        "{:?}",
        file.notes
    );
}

#[test]
fn rows_that_are_too_long_or_too_short() {
    let file = check(
        &format!("{HEAD}P1-01A-C,0,4,5\nP1-01A-C\nP1-01A-C,4\nP1-01A-C,,9\nP1-01A-C,soon,9\n"),
        &[(2, "no heading"), (5, "no time"), (6, "\"soon\" is not minutes")],
    );
    assert_eq!((file.cells.taken, file.cells.rejected, file.cells.blank), (1, 3, 2));
}

#[test]
fn a_quotation_mark_that_is_never_closed_swallows_nothing() {
    let file = check(
        &format!(
            "{HEAD}P1-01A-C,0,4\nP1-01A-C,4,\"7\nP1-01A-C,8,9\n\"P1-01B-A\",0,\"5\"\nP1-01B-A,4,6\n"
        ),
        &[(3, "mark too many")],
    );
    assert_eq!(file.readings.len(), 4);
    assert!(file.notes[0].contains("line 3"), "{:?}", file.notes);
    assert!(file.notes[0].contains("3 lines"), "{:?}", file.notes);
    let file = check(
        &format!("{HEAD}P1-01A-C,0,4\nP1-01A-C,4,\"7\nP1-01A-C,8,9\"\n"),
        &[(3, "mark too many"), (4, "mark too many")],
    );
    assert_eq!(file.readings.len(), 1);
    check(&format!("{HEAD}P1-01A-C,0,\"4\n5\"\n"), &[(2, "several lines")]);
}

#[test]
fn columns_that_are_not_read_are_named() {
    let file = check("bag,Reader,minute,mm\nP1-01A-C,front row,0,4\n", &[]);
    assert!(file.notes[0].contains("\"Reader\""), "{:?}", file.notes);
}

#[test]
fn times_of_day_that_cannot_be_counted() {
    check("bag,time,mm\nP1-01A-C,0,4\nP1-01A-C,8:35,7\n", &[(3, "zero reading has none")]);
    check(
        "bag,zero time,time,mm\nP1-01A-C,8:31,8:29,4\nP1-01A-C,8:31,8:35,6\nP1-01A-C,8:33,8:39,8\n",
        &[(2, "2 min before"), (4, "another time of its zero")],
    );
    check(
        "bag,clock,mm\nP1-01A-C,2027-03-09 08:31,4\nP1-01A-C,2027-03-10 08:35,7\nP1-01A-C,12,8\n",
        &[(3, "another date"), (4, "time of day such as 8:31")],
    );
    check("bag,minute,mm\nP1-01A-C,0,4\nP1-01A-C,1441,7\n", &[(3, "more than a day")]);
}

/// What a cell says must not be able to spoil the page or the terminal on which it is shown.
#[test]
fn reasons_show_cells_on_one_short_line() {
    let long = "x".repeat(5000);
    let file = read(
        format!("{HEAD}\"a\u{1b}[31m\nb\u{202E}\",0,4\n{long},0,4\nP1-01A-C,0,{long}\n")
            .as_bytes(),
        &plan(),
    );
    assert_eq!(file.rejected.len(), 3);
    for rejected in &file.rejected {
        let plain = rejected.reason.chars().all(|c| !c.is_control() && c != '\u{202E}');
        assert!(plain && rejected.reason.len() < 200, "{:?}", rejected.reason);
    }
}
