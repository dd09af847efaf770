//! Rubric, marks and remarks.

use barm_domain::marks::{Basis, Given, GivenFault, LEVELS, Rubric, RubricFault, offered};

#[test]
fn the_first_rubric_has_eight_strands_of_four_levels_without_a_fault() {
    let rubric = Rubric::default();
    assert_eq!((rubric.strands.len(), LEVELS), (8, 4));
    assert_eq!(rubric.faults(), []);
    // Nothing in it asks whether the forecast came true.
    for strand in &rubric.strands {
        for looks in &strand.looks {
            assert!(!looks.contains("forecast") && !looks.contains("expected"), "{looks}");
        }
    }
}

#[test]
fn all_faults_of_a_rubric_come_at_once() {
    let mut rubric = Rubric::default();
    rubric.levels[1] = " ".into();
    rubric.strands[0].id = "a b".into();
    rubric.strands[2].id = rubric.strands[1].id.clone();
    rubric.strands[3].looks[3] = "x".repeat(301);
    let faults = rubric.faults();
    assert_eq!(faults.len(), 4, "{faults:?}");
    assert!(faults[0].to_string().contains("the name of level 2"));
    assert!(faults[1].to_string().contains("strand 4, level 4"));
    assert_eq!(faults[2], RubricFault::Id { place: 1 });
    assert!(faults[3].to_string().contains("plan"));
    rubric.strands.clear();
    assert!(rubric.faults().contains(&RubricFault::Strands { strands: 0 }));
}

#[test]
fn marks_add_up_once_all_are_given() {
    let rubric = Rubric::default();
    let mut given = Given { basis: Basis::ClassData, ..Given::default() };
    assert_eq!(given.open(&rubric).len(), 8);
    for (at, strand) in rubric.strands.iter().enumerate() {
        assert_eq!(given.sum(&rubric), None);
        given.mark(&rubric, &strand.id, Some((at % 5) as u8)).unwrap();
    }
    // 0 1 2 3 4 0 1 2 by hand.
    assert_eq!(given.sum(&rubric), Some((13, 32)));
    given.mark(&rubric, "plan", None).unwrap();
    assert_eq!((given.sum(&rubric), given.open(&rubric)), (None, vec!["plan"]));
    // A strand that the teacher drops no longer counts, and comes back as it was.
    let mut shorter = rubric.clone();
    shorter.strands.retain(|strand| strand.id != "plan" && strand.id != "data");
    assert_eq!(given.sum(&shorter), Some((13 - 1 - 2, 24)));
}

#[test]
fn what_cannot_be_given_changes_nothing() {
    let rubric = Rubric::default();
    let mut given = Given::default();
    given.mark(&rubric, "claim", Some(3)).unwrap();
    given.remark(&rubric, "claim", " Clear and short. ").unwrap();
    let before = given.clone();
    assert_eq!(given.mark(&rubric, "claim", Some(5)), Err(GivenFault::NoLevel { level: 5 }));
    assert!(matches!(given.mark(&rubric, "tidy", Some(1)), Err(GivenFault::NoStrand { .. })));
    let long = "x".repeat(1001);
    let told = given.remark(&rubric, "claim", &long).unwrap_err();
    assert!(told.to_string().contains("1000"), "{told}");
    assert_eq!(given, before);
    given.remark(&rubric, "claim", "  ").unwrap();
    assert!(given.remarks.is_empty());
}

#[test]
fn remarks_are_offered_again_where_they_fit() {
    let rubric = Rubric::default();
    let one = |level: u8, words: &str| {
        let mut given = Given::default();
        given.mark(&rubric, "evidence", Some(level)).unwrap();
        given.remark(&rubric, "evidence", words).unwrap();
        given
    };
    let all = [
        one(2, "Give a second number."),
        one(3, "Good numbers."),
        one(2, "Add the unit."),
        one(2, "Add the unit."),
        one(3, "Good numbers."),
        one(3, "Good numbers."),
    ];
    let words = |level, own, most| -> Vec<String> {
        offered(&all, "evidence", level, (own, most)).into_iter().map(|o| o.words).collect()
    };
    let at_two = ["Add the unit.", "Give a second number.", "Good numbers."];
    assert_eq!(words(Some(2), None, 9), at_two);
    assert_eq!(words(Some(2), Some("Add the unit."), 9), at_two[1..]);
    assert_eq!(words(None, None, 1), ["Good numbers."]);
    assert!(offered(&all, "claim", Some(2), (None, 9)).is_empty());
}
