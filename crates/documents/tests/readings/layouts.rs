//! One row a reading, one row a bag, one row a time.

use crate::plan::plan;
use barm_documents::readings::{Layout, ReadingsFile, read};

/// Bag, minute and millimeters of every reading, in the order of the file.
pub(crate) fn taken(file: &ReadingsFile) -> Vec<(&str, f64, f64)> {
    file.readings.iter().map(|r| (r.bag.as_str(), r.minute, r.height_mm)).collect()
}

/// Reads a file that must be taken whole, and gives its readings.
#[track_caller]
fn check(text: &str, expected: &[(&str, f64, f64)]) -> ReadingsFile {
    let file = read(text.as_bytes(), &plan());
    assert_eq!(file.rejected, [], "{text}");
    let found = taken(&file);
    assert_eq!(found.len(), expected.len(), "{text}: {found:?}");
    for (found, expected) in found.iter().zip(expected) {
        let same = found.0 == expected.0
            && (found.1 - expected.1).abs() < 1e-9
            && (found.2 - expected.2).abs() < 1e-9;
        assert!(same, "{text}: {found:?}, not {expected:?}");
    }
    file
}

const TWO: [(&str, f64, f64); 4] = [
    ("P1-01A-C", 0.0, 4.0),
    ("P1-01A-C", 4.0, 7.5),
    ("P1-01B-A", 0.0, 5.0),
    ("P1-01B-A", 4.0, 6.0),
];

#[test]
fn one_row_a_reading() {
    let file = check(
        "bag,minute,height (mm)\nP1-01A-C,0,4\nP1-01A-C,4,7.5\nP1-01B-A,0,5\nP1-01B-A,4,6\n",
        &TWO,
    );
    assert_eq!(file.layout, Some(Layout::Long));
    assert_eq!(file.notes, [] as [String; 0]);
    let lines: Vec<u64> = file.readings.iter().map(|r| r.line).collect();
    assert_eq!(lines, [2, 3, 4, 5]);
}

#[test]
fn one_row_a_bag() {
    for headings in ["bag,0,4", "Bag code,0 min,4 min", "código,t=0,t=4", "BAG,0:00,4:00"] {
        let file =
            check(&format!("{headings}\np1 01a c,4 mm,7.5 mm\nP1-01B-A,5mm,0.6 cm"), &TWO);
        assert_eq!(file.layout, Some(Layout::Wide));
    }
    check("bag;zero (mm);4 min (mm)\nP1-01A-C;4;7,5\nP1-01B-A;5;6", &TWO);
}

#[test]
fn one_row_a_time() {
    let text = "minute,P1-01A-C,P1-01B-A\n0,4 mm,5 mm\n4,7.5 mm,6 mm\n";
    let file = read(text.as_bytes(), &plan());
    assert_eq!(file.layout, Some(Layout::BagsAcross));
    let mut found = taken(&file);
    found.sort_by(|a, b| a.0.cmp(b.0).then(a.1.total_cmp(&b.1)));
    assert_eq!(found, TWO);
}

#[test]
fn semicolons_tabs_bars_and_a_named_separator() {
    let commas =
        "bag,minute,height (mm)\nP1-01A-C,0,4\nP1-01A-C,4,7.5\nP1-01B-A,0,5\nP1-01B-A,4,6";
    for sign in [";", "\t", "|"] {
        check(&commas.replace(',', sign), &TWO);
        check(&format!("sep={sign}\n{}", commas.replace(',', sign)), &TWO);
    }
    check(&commas.replace(',', ";").replace("7.5", "7,5"), &TWO);
    check(&commas.replace("7.5", "\"7,5\""), &TWO);
    check(&commas.replace('\n', "\r\n"), &TWO);
    check(&commas.replace('\n', "\r"), &TWO);
}

#[test]
fn encodings_are_told_apart() {
    let text =
        "código,minuto,altura (mm)\nP1-01A-C,0,4\nP1-01A-C,4,7½\nP1-01B-A,0,5\nP1-01B-A,4,6";
    let marked = format!("\u{FEFF}{text}");
    let little: Vec<u8> = marked.encode_utf16().flat_map(u16::to_le_bytes).collect();
    let big: Vec<u8> = marked.encode_utf16().flat_map(u16::to_be_bytes).collect();
    let latin: Vec<u8> = text.chars().map(|c| u8::try_from(c).unwrap()).collect();
    let rows: [(&[u8], &str); 6] = [
        (text.as_bytes(), ""),
        (marked.as_bytes(), ""),
        (&little, "UTF-16"),
        (&big, "UTF-16"),
        (&little[2..], "UTF-16"),
        (&latin, "Windows-1252"),
    ];
    for (bytes, note) in rows {
        let file = read(bytes, &plan());
        assert_eq!(taken(&file), TWO, "{note}");
        assert_eq!(file.rejected, []);
        let said = file.notes.join(" ");
        assert_eq!(said.is_empty(), note.is_empty(), "{said}");
        assert!(said.contains(note), "{said}");
    }
}

#[test]
fn units_of_a_cell_a_row_and_a_column() {
    let mixed = "bag,minute,height (in),unit\nP1-01A-C,0,3/8,\nP1-01A-C,4,\"1 3/8\"\"\",\n\
                 P1-01B-A,0,0.9 cm,\nP1-01B-A,4,12,mm\n";
    check(
        mixed,
        &[
            ("P1-01A-C", 0.0, 9.525),
            ("P1-01A-C", 4.0, 34.925),
            ("P1-01B-A", 0.0, 9.0),
            ("P1-01B-A", 4.0, 12.0),
        ],
    );
    // A mark for inches needs no quoting where the cell does not begin with it.
    check(
        "bag,0,4\nP1-01A-C,3/8\",1 3/8\"",
        &[("P1-01A-C", 0.0, 9.525), ("P1-01A-C", 4.0, 34.925)],
    );
    let file =
        check("bag,0,4\nP1-01A-C,4,7", &[("P1-01A-C", 0.0, 4.0), ("P1-01A-C", 4.0, 7.0)]);
    assert!(file.notes[0].contains("2 heights have no unit"), "{:?}", file.notes);
}

#[test]
fn times_of_day_count_from_each_bags_own_zero() {
    let long = "bag,time,mm\nP1-01A-C,8:31,4\nP1-01A-C,8:35:30,7.5\nP1-01B-A,8:33 am,5\n\
                P1-01B-A,8:37 am,6\n";
    let staggered = [
        ("P1-01A-C", 0.0, 4.0),
        ("P1-01A-C", 4.5, 7.5),
        ("P1-01B-A", 0.0, 5.0),
        ("P1-01B-A", 4.0, 6.0),
    ];
    let file = check(long, &staggered);
    assert!(file.notes[0].contains("earliest"), "{:?}", file.notes);
    // Over noon, without saying so.
    check(
        "bag,hora,mm\nP2-01A-X,12:58,4\nP2-01A-X,1:02,7\nP2-01A-X,1:06,9",
        &[("P2-01A-X", 0.0, 4.0), ("P2-01A-X", 4.0, 7.0), ("P2-01A-X", 8.0, 9.0)],
    );
    check(
        "bag,8:31,8:35,8:39 (mm)\nP1-01A-C,4 mm,7 mm,\nP1-01B-A,,5 mm,6",
        &[
            ("P1-01A-C", 0.0, 4.0),
            ("P1-01A-C", 4.0, 7.0),
            ("P1-01B-A", 0.0, 5.0),
            ("P1-01B-A", 4.0, 6.0),
        ],
    );
    let file = check(
        "bag,zero time,zero (mm),8:35 (mm),8:39 (mm)\nP1-01A-C,8:31,4,7,\nP1-01B-A,8:34,5,,6",
        &[
            ("P1-01A-C", 0.0, 4.0),
            ("P1-01A-C", 4.0, 7.0),
            ("P1-01B-A", 0.0, 5.0),
            ("P1-01B-A", 5.0, 6.0),
        ],
    );
    assert_eq!(file.notes, [] as [String; 0]);
}

#[test]
fn minutes_and_seconds_are_not_taken_for_times_of_day() {
    let file = check(
        "bag,time,mm\nP1-01A-C,0:00,4\nP1-01A-C,4:30,7",
        &[("P1-01A-C", 0.0, 4.0), ("P1-01A-C", 4.5, 7.0)],
    );
    assert!(file.notes[0].contains("0:00"), "{:?}", file.notes);
    check(
        "bag,minute,mm\nP1-01A-C,0,4\nP1-01A-C,12:30,7\nP1-01A-C,16 min 15 s,8",
        &[("P1-01A-C", 0.0, 4.0), ("P1-01A-C", 12.5, 7.0), ("P1-01A-C", 16.25, 8.0)],
    );
    let file = read(b"bag,time,mm\nP1-01A-C,4:00,4\nP1-01A-C,8:00,7", &plan());
    assert_eq!(file.readings.len(), 1);
    assert!(file.rejected[0].reason.contains("minutes and seconds"), "{:?}", file.rejected);
}

#[test]
fn a_zero_column_serves_every_row_of_its_bag() {
    let file = check(
        "bag,zero,minute,height (mm)\nP1-01A-C,4 mm,4,7\nP1-01A-C,4 mm,8,9",
        &[("P1-01A-C", 0.0, 4.0), ("P1-01A-C", 4.0, 7.0), ("P1-01A-C", 8.0, 9.0)],
    );
    assert_eq!((file.cells.taken, file.cells.rejected), (4, 0));
    check(
        "bag,zero,minute,height (mm)\nP1-01A-C,4 mm,0,4\nP1-01A-C,4 mm,8,9",
        &[("P1-01A-C", 0.0, 4.0), ("P1-01A-C", 8.0, 9.0)],
    );
}

#[test]
fn notes_and_bags_set_aside_are_kept() {
    let text = "bag,minute,mm,set aside,note\nP1-01A-C,0,4,,\nP1-01A-C,4,7,no,foam\n\
                P1-01A-C,8,,leak,\"dripped,\nthen fell\"\n";
    let file = read(text.as_bytes(), &plan());
    assert_eq!(file.readings[1].event.as_deref(), Some("foam"));
    assert_eq!(file.set_aside.len(), 1);
    assert_eq!((file.set_aside[0].rule.as_str(), file.set_aside[0].line), ("leak", 4));
    assert_eq!(file.remarks[0].says, "dripped,\nthen fell");
    assert_eq!(file.remarks[0].minute, Some(8.0));
    assert_eq!(file.cells.blank, 1);
}

#[test]
fn periods_are_compared_with_the_plan() {
    let text = "bag,period,minute,mm\nP1-01A-C,P1,0,4\nP1-01A-C,Period 1,4,7\nP2-01A-X,1,0,4\n";
    let file = read(text.as_bytes(), &plan());
    assert_eq!(file.readings.len(), 2);
    assert_eq!(file.rejected[0].line, 4);
    assert!(file.rejected[0].reason.contains("a bag of period 2"), "{:?}", file.rejected);
}

/// The examples that teachers are shown must be read whole.
#[test]
fn the_examples_in_the_documentation_are_read() {
    let page = include_str!("../../../../docs/readings.md");
    let examples: Vec<&str> =
        page.split("```text\n").skip(1).filter_map(|rest| rest.split("```").next()).collect();
    let layouts = [Layout::Long, Layout::Wide, Layout::BagsAcross, Layout::Metered];
    let heights = [2, 7, 4, 0];
    assert_eq!(examples.len(), layouts.len());
    for ((example, layout), heights) in examples.into_iter().zip(layouts).zip(heights) {
        let file = read(example.as_bytes(), &plan());
        assert_eq!(file.rejected, [], "{example}");
        assert_eq!((file.layout, file.readings.len()), (Some(layout), heights), "{example}");
    }
}
