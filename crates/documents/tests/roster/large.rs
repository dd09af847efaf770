//! A whole school in one export.

use crate::school::School;
use barm_documents::bundle::pack;
use barm_documents::roster::{Version, read};
use jiff::civil::date;
use std::fmt::Write as _;

/// 1,200 students in 8 of 320 classes each, with ids that are numbered through: tables that pack as
/// tightly as any of a school.
#[test]
fn a_school_of_1200_fits_and_packs_far_less_tightly_than_a_bomb() {
    let school = School::of(Version::V1_1);
    let head = |file: &str| school.text(file).lines().next().unwrap().to_owned() + "\n";
    let (mut users, mut classes, mut enrollments) =
        (head("users.csv"), head("classes.csv"), head("enrollments.csv"));
    for class in 0..320 {
        let _ = writeln!(classes, "c{class},,,Class {class},08,k1,,scheduled,,o1,t1,,,");
    }
    for student in 0..1200 {
        let _ = writeln!(
            users,
            "s{student},,,true,o1,student,u{student},,Given{student},Family{student},,,,,,,08,"
        );
        for hour in 0..8 {
            let class = hour * 40 + student % 40;
            let _ = writeln!(
                enrollments,
                "e{student}-{hour},,,c{class},o1,s{student},student,false,2026-08-20,2027-06-10"
            );
        }
    }
    let school = school
        .with_bytes("users.csv", users.into())
        .with_bytes("classes.csv", classes.into())
        .with_bytes("enrollments.csv", enrollments.into());
    let files: Vec<(&str, &[u8])> =
        school.0.iter().map(|(name, bytes)| (*name, bytes.as_slice())).collect();
    let zip = pack(&files);
    let plain: usize = files.iter().map(|(_, bytes)| bytes.len()).sum();
    // The limit is 1 to 100.
    assert!(plain / zip.len() < 30, "{plain} in {}", zip.len());
    let taken = read(&zip, date(2027, 3, 9)).unwrap();
    assert_eq!(taken.roster.sections().len(), 320);
    let seats: usize = taken.roster.sections().iter().map(|one| one.students.len()).sum();
    assert_eq!(seats, 9600);
    assert!(taken.passed.said().is_empty());
}
