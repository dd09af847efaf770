//! Rosters in, grades out.

#[path = "../by_hand/mod.rs"]
mod by_hand;
mod columns;
mod dropped;
mod grades;
mod large;
mod refused;
mod school;

use barm_documents::roster::{Passed, Version};
use school::{School, shown};

#[test]
fn a_roster_has_sections_and_the_students_in_them() {
    for version in Version::ALL {
        let taken = School::of(version).taken();
        assert_eq!(taken.version, version);
        let (ann, cy) = match version {
            Version::V1_1 => ("Ann Invented", "Cy Nobody"),
            // Preferred names where there are some, each by itself.
            Version::V1_2 => ("Annie Invented", "Cy Somebody"),
        };
        let expected = [
            ("Science 8 period 3".to_owned(), vec![cy.to_owned()]),
            (
                "Science 8, period 1".to_owned(),
                vec![ann.to_owned(), "Bea \"B\" Made Up".to_owned()],
            ),
        ];
        assert_eq!(shown(&taken), expected);
        let first = &taken.roster.sections()[1];
        assert_eq!(first.id.as_str(), "c1");
        assert_eq!(first.code.as_ref().unwrap().words(), "SCI8-1");
        assert_eq!(first.school.as_ref().unwrap().as_str(), "o1");
        assert_eq!(first.term.as_ref().unwrap().as_str(), "t1");
        assert_eq!(first.students[0].id.as_str(), "s1");
        // The teacher, the enrollment that ended at Christmas, the homeroom.
        let passed = Passed { others: 1, ended: 1, empty: 1, ..Passed::default() };
        assert_eq!(taken.passed, passed);
        assert_eq!(taken.passed.said().len(), 3);
    }
}

#[test]
fn version_numbers_with_three_parts_are_versions() {
    for (old, new) in [("1.1", "1.1.1"), ("1.2", "1.2.1")] {
        let version = if old == "1.1" { Version::V1_1 } else { Version::V1_2 };
        let old = format!("oneroster.version,{old}");
        let school =
            School::of(version).with("manifest.csv", &old, &format!("oneroster.version,{new}"));
        assert_eq!(school.taken().version, version);
    }
}

#[test]
fn columns_stand_in_any_order_and_among_others() {
    let school = School::of(Version::V1_1);
    let expected = school.taken();
    let users = "metadata.x,familyName,GIVENNAME,status,sourcedId,note\n\
                 ,Invented,Ann,active,s1,\n,Made Up,\"Bea \"\"B\"\"\",,s2,x\n,Nobody,Cy,ACTIVE,s3,\n";
    let fewer = school.clone().with_bytes("users.csv", users.into());
    assert_eq!(fewer.taken().roster, expected.roster);
    let marked = [b"\xef\xbb\xbf".as_slice(), &school.0["users.csv"]].concat();
    assert_eq!(school.clone().with_bytes("users.csv", marked).taken(), expected);
    let returns = school.text("classes.csv").replace('\n', "\r\n");
    assert_eq!(school.with_bytes("classes.csv", returns.into()).taken(), expected);
}

#[test]
fn files_that_are_absent_or_not_asked_for_do_not_matter() {
    let school = School::of(Version::V1_2);
    let expected = school.taken();
    let fewer = school.clone().without("demographics.csv").without("roles.csv");
    assert_eq!(fewer.taken(), expected);
    let odd = school
        .with_bytes("demographics.csv", b"\xff\xfe\0 no table \"".to_vec())
        .with_bytes("readme.txt", b"hello".to_vec());
    assert_eq!(odd.taken(), expected);
}

#[test]
fn enrollments_that_point_nowhere_are_counted_and_said() {
    let school = School::of(Version::V1_1).with(
        "enrollments.csv",
        "e4,,,",
        "e6,,,c9,o1,s1,student,,,\ne7,,,c1,o1,s9,student,,,\ne8,,,c2,o1,s9,student,,,\n\
         e9,,,c1,o1,s1,student,,,\ne4,,,",
    );
    let taken = school.taken();
    let expected = School::of(Version::V1_1).taken();
    assert_eq!(taken.roster, expected.roster);
    let passed = Passed { no_class: 1, no_user: 2, twice: 1, ..expected.passed };
    assert_eq!(taken.passed, passed);
    let said = taken.passed.said().join(" ");
    assert!(said.contains("1 enrollment names a class"), "{said}");
    assert!(said.contains("2 enrollments name a user"), "{said}");
}

#[test]
fn rows_marked_for_deletion_are_passed_over() {
    let school = School::of(Version::V1_1)
        .with("enrollments.csv", "e2,,", "e2,tobedeleted,")
        .with("users.csv", "s3,,", "s3,tobedeleted,");
    let taken = school.taken();
    let titles: Vec<String> = shown(&taken).into_iter().map(|(title, _)| title).collect();
    assert_eq!(titles, ["Science 8, period 1"]);
    assert_eq!(taken.passed.deleted, 2);
    assert_eq!(taken.passed.no_user, 1);
}

#[test]
fn a_student_without_a_name_is_shown_by_the_id() {
    let taken = School::of(Version::V1_1).with("users.csv", "Cy,Nobody", " , ").taken();
    assert_eq!(shown(&taken)[0].1, ["s3"]);
}

#[test]
fn an_enrollment_ends_on_its_last_day() {
    let ends = |end: &str| {
        let school = School::of(Version::V1_1).with("enrollments.csv", "2027-06-10", end);
        school.taken().passed.ended
    };
    assert_eq!((ends("2027-03-09"), ends("2027-03-08")), (1, 2));
    assert_eq!(ends("2027-03-08T00:00:00.000Z"), 2);
}
