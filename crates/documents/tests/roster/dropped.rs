//! What is not needed is in no value.

use crate::school::School;
use barm_documents::roster::Version;

#[test]
fn nothing_but_names_ids_and_classes_is_kept() {
    for version in Version::ALL {
        let taken = School::of(version).taken();
        let mut words = Vec::new();
        for section in taken.roster.sections() {
            words.push(section.title.words().to_owned());
            words.extend(section.code.iter().map(|code| code.words().to_owned()));
            words.extend(section.students.iter().map(|one| one.shown.words().to_owned()));
        }
        let all = format!("{taken:?} {}", words.join(" "));
        for secret in
            ["SECRET", "hunter2", "example.invalid", "555", "Terry", "Teacher", "Room", "2013"]
        {
            assert!(!all.contains(secret), "{secret} in {all}");
        }
        // Names come out where they are asked for, and not where a program is looked into.
        assert!(all.contains("Bea") && !format!("{taken:?}").contains("Bea"));
    }
}
