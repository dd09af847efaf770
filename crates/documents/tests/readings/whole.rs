//! Files with one thing wrong with all of them: it is said once, and every row is still listed.

use crate::layouts::taken;
use crate::plan::plan;
use barm_documents::readings::{Layout, ReadingsFile, read};

/// Reads a file of which nothing can be taken, for a reason with that word and with what to do.
#[track_caller]
fn check(text: &str, says: &str, to_do: &str, rejected: &[u64]) -> ReadingsFile {
    let file = read(text.as_bytes(), &plan());
    let said = file.above_all.clone().unwrap_or_else(|| panic!("nothing was said: {file:#?}"));
    assert!(said.contains(says) && said.contains(to_do), "{said}");
    assert_eq!(said.matches(". ").count() + 1, 1, "more than one sentence: {said}");
    let lines: Vec<u64> = file.rejected.iter().map(|rejected| rejected.line).collect();
    assert_eq!(lines, rejected, "{file:#?}");
    assert_eq!(taken(&file), [], "{text}");
    file
}

#[test]
fn an_empty_file_is_said_to_be_empty() {
    for text in ["", "\n\n", " , ,\n,,\n", "\u{FEFF}", "sep=;\n"] {
        check(text, "is empty", "type the readings into it", &[]);
    }
    check(
        "bag,minute,height (mm)\n",
        "headings on line 1 but no row",
        "type the readings",
        &[],
    );
    check("\nbag,0,4\n,,\n", "headings on line 2 but no row", "type the readings", &[]);
    let file = check(
        "bag,0,4\nP1-01A-C,,\nP1-01B-A,-,\n",
        "heights are blank",
        "type the heights",
        &[],
    );
    assert_eq!(file.cells.blank, 4);
}

#[test]
fn columns_under_each_others_headings_are_named_once() {
    let rows = "P1-01A-C,4,0\nP1-01A-C,7,4\nP1-01A-C,7,8\n\nP1-01B-A,5,0\nP1-01B-A,6,4\n";
    for headings in ["bag,minute,height (mm)", "Bag,Time,Card height", "código,minutos,altura"]
    {
        let file = check(
            &format!("{headings}\n{rows}"),
            "look swapped, so none of the 5 rows was taken",
            "write each heading over its own numbers",
            &[2, 3, 4, 6, 7],
        );
        let minute = headings.split(',').nth(1).unwrap();
        assert!(file.above_all.unwrap().contains(&format!("\"{minute}\"")));
        assert!(file.rejected[0].reason.contains("looks like a height"), "{:?}", file.rejected);
        assert_eq!((file.cells.taken, file.cells.rejected), (0, 5));
    }
    // Units of length under "minute" leave no doubt, even with a height of 0.
    let inches = "bag,minute,height\nP1-01A-C,0 in,0\nP1-01A-C,1/4 in,4\nP1-01A-C,3/8 in,8\n";
    check(inches, "look swapped", "each heading", &[2, 3, 4]);
    let semicolons = format!("bag;minute;height\n{}", rows.replace(',', ";"));
    check(&semicolons, "look swapped", "each heading", &[2, 3, 4, 6, 7]);
}

#[test]
fn columns_in_their_place_are_not_taken_for_swapped() {
    let rows = [
        // Rises in place of heights begin at 0 as well.
        "P1-01A-C,0,0\nP1-01A-C,4,3\nP1-01A-C,8,7\n",
        // No zero reading, and a card that lies flat on the bench at first.
        "P1-01A-C,4,0\nP1-01A-C,8,3\nP1-01A-C,12,7\n",
        // One bag whose readings were typed the wrong way round, among others.
        "P1-01A-C,4,0\nP1-01A-C,7,4\nP1-01B-A,0,4\nP1-01B-A,4,7\n",
        "P1-01A-C,0,4\n",
    ];
    for rows in rows {
        let file = read(format!("bag,minute,height (mm)\n{rows}").as_bytes(), &plan());
        assert_eq!((file.above_all, file.rejected), (None, vec![]), "{rows}");
    }
}

#[test]
fn a_file_without_headings_is_understood_where_its_columns_tell() {
    let two = [
        ("P1-01A-C", 0.0, 4.0),
        ("P1-01A-C", 4.0, 7.5),
        ("P1-01B-A", 0.0, 5.0),
        ("P1-01B-A", 4.0, 6.0),
    ];
    for text in [
        "P1-01A-C,0,4\nP1-01A-C,4,7.5\nP1-01B-A,0,5\nP1-01B-A,4,6\n",
        "P1-01A-C;0;4\nP1-01A-C;4;7,5\n\nP1-01B-A;0;5;\nP1-01B-A;4;6\n",
        "4 mm\tp1 01a c\t0\n7.5 mm\tp1 01a c\t4 min\n5 mm\tp1 01b a\t0\n6 mm\tp1 01b a\t4\n",
    ] {
        let file = read(text.as_bytes(), &plan());
        assert_eq!((taken(&file), file.layout), (two.to_vec(), Some(Layout::Long)), "{file:?}");
        assert_eq!(file.rejected, []);
        let said = file.above_all.unwrap();
        assert!(said.contains("no row of headings") && said.contains("minute"), "{said}");
        assert!(said.contains("write the right headings"), "{said}");
    }
}

#[test]
fn a_file_without_headings_that_may_mean_two_things_is_not_guessed_at() {
    let write = "write a first row such as bag,minute,height (mm)";
    let none = "no row of headings that can be understood, so none of its 2 rows";
    for text in [
        // Both begin at 0; both keep to the timetable; a fourth column; a code that is none.
        "P1-01A-C,0,0\nP1-01A-C,4,7\n",
        "P1-01A-C,0,4\nP1-01A-C,4,8\n",
        "P1-01A-C,0,4,foam\nP1-01A-C,4,7,\n",
        "P1-01A-C,0,4\nP1-01A-X,4,7\n",
        "bag,height\nP1-01A-C,4\n",
        "sac,temps,hauteur\nP1-01A-C,0,4\n",
    ] {
        let file = check(text, none, write, &[1, 2]);
        assert!(file.rejected.iter().all(|rejected| rejected.reason.contains("no headings")));
    }
    check("P1-01A-C,0,4\n", "its one row was not taken", write, &[1]);
}
