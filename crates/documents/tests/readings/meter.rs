//! What a breath meter showed, as teachers write it under or beside the heights.

use crate::plan::plan;
use barm_documents::readings::{Layout, ReadingsFile, read};

fn file(text: &str) -> ReadingsFile {
    read(text.as_bytes(), &plan())
}

/// Bag, percent, minute and turn of all that was taken.
fn shown(file: &ReadingsFile) -> Vec<(&str, f64, Option<f64>, Option<u32>)> {
    file.meter.iter().map(|one| (one.bag.as_str(), one.percent, one.minute, one.turn)).collect()
}

#[test]
fn a_table_of_its_own_under_the_heights() {
    let text = "bag,minute,height (mm)\nP1-01A-C,0,4\nP1-01A-C,4,7\n\nbag,period,minute,turn,meter (%)\n\
                clean air,1,,1,0.01\nP1-01A-C,1,26,2,0.12\nP1-01B-A,1,26,3,\nAire limpio,P1,,4,\"0,02 %\"\n";
    let file = file(text);
    assert_eq!(file.rejected, []);
    assert_eq!(shown(&file), [("P1-01A-C", 0.12, Some(26.0), Some(2))]);
    assert_eq!(file.readings.len(), 2, "heights are read as ever");
    let air: Vec<(u32, f64)> = file.blanks["1"].iter().map(|b| (b.turn, b.percent)).collect();
    assert_eq!(air, [(1, 0.01), (4, 0.02)]);
    assert_eq!(file.layout, Some(Layout::Long));
}

#[test]
fn a_column_beside_the_heights_or_nothing_else() {
    let beside = file("bag,minute,height (mm),meter\nP1-01A-C,0,4,\nP1-01A-C,24,7,0.12\n");
    assert_eq!(beside.rejected, []);
    assert_eq!(shown(&beside), [("P1-01A-C", 0.12, Some(24.0), None)]);
    let alone = file("código;alcoholímetro\nP1-01A-C;0,12\nP1-01B-A;n/a\n");
    assert_eq!((&alone.rejected[..], alone.above_all.as_deref()), (&[][..], None));
    assert_eq!(alone.layout, Some(Layout::Metered));
    assert_eq!(shown(&alone), [("P1-01A-C", 0.12, None, None)]);
}

#[test]
fn what_cannot_be_a_reading_is_listed_with_its_line() {
    let text = "bag,minute,turn,meter\nP1-01A-C,26,2,12\nP1-01B-A,26,zwei,0.1\nclean air,,1,0.01\n\
                P1-01B-A,8:30,3,0.1\nP1-01B-A,26,4,lots\n";
    let file = file(text);
    // 8:30 under minutes is eight minutes and a half.
    assert_eq!(shown(&file), [("P1-01B-A", 0.1, Some(8.5), Some(3))]);
    let reasons: Vec<(u64, &str)> =
        file.rejected.iter().map(|one| (one.line, one.reason.as_str())).collect();
    let expected = [
        (2, "such as 0.12"),
        (3, "is no turn"),
        // Two periods: whose air?
        (4, "belongs to one period"),
        (6, "such as 0.12"),
    ];
    assert_eq!(reasons.len(), expected.len(), "{reasons:?}");
    for ((line, says), (at, part)) in reasons.iter().zip(expected) {
        assert!(*line == at && says.contains(part), "{line}: {says}");
    }
    let no_turn = self::file("bag,period,meter\nclean air,1,0.01\n");
    assert!(no_turn.rejected[0].reason.contains("needs its turn"), "{:?}", no_turn.rejected);
}
