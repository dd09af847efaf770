//! Who is in a section: ids of the school's own system and the words to show for each.
//!
//! Kept apart from everything of science: no value of a plan, a record or a result holds one of
//! these, and none of these holds a bag.

mod group_list;
mod id;
mod shown;

pub use group_list::{GroupList, Place, PlaceError};
pub use id::{Id, IdError};
pub use shown::Shown;

use std::collections::BTreeSet;

/// A student, as far as the program needs to know one.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Student {
    /// The words to show.
    pub shown: Shown,
    /// The id in the school's own system; it finds the way back into the gradebook.
    pub id: Id,
}

/// A class as the school's system has it: one group of students with one timetable.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Section {
    /// Title, such as "Science 8, period 3".
    pub title: Shown,
    /// Id in the school's own system.
    pub id: Id,
    /// The school's short code of it, if it has one.
    pub code: Option<Shown>,
    /// Id of its school; a gradebook wants it back.
    pub school: Option<Id>,
    /// Id of its first term; a gradebook wants it back.
    pub term: Option<Id>,
    /// Its students.
    pub students: Vec<Student>,
}

/// Sections with their students, sorted by what is shown.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Roster {
    sections: Vec<Section>,
}

/// Why sections are no roster.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RosterError {
    /// Two sections have one id.
    #[error("the section {id} stands there twice; every section needs an id of its own")]
    SectionTwice {
        /// The id.
        id: Id,
    },
    /// A student stands twice in a section.
    #[error("the student {student} stands twice in section {section}; take one away")]
    StudentTwice {
        /// The student.
        student: Id,
        /// The section.
        section: Id,
    },
}

impl Roster {
    /// Sections in any order.
    ///
    /// # Errors
    /// [`RosterError`] if an id stands where it stood before.
    pub fn new(mut sections: Vec<Section>) -> Result<Self, RosterError> {
        let mut ids = BTreeSet::new();
        for section in &mut sections {
            if !ids.insert(section.id.clone()) {
                return Err(RosterError::SectionTwice { id: section.id.clone() });
            }
            let mut students = BTreeSet::new();
            if let Some(twice) = section.students.iter().find(|one| !students.insert(&one.id)) {
                let (student, section) = (twice.id.clone(), section.id.clone());
                return Err(RosterError::StudentTwice { student, section });
            }
            section.students.sort();
        }
        sections.sort();
        Ok(Self { sections })
    }

    /// The sections, by title.
    pub fn sections(&self) -> &[Section] {
        &self.sections
    }

    /// The section of that id.
    pub fn section(&self, id: &Id) -> Option<&Section> {
        self.sections.iter().find(|section| section.id == *id)
    }
}

impl Section {
    /// The student of that id.
    pub fn student(&self, id: &Id) -> Option<&Student> {
        self.students.iter().find(|student| student.id == *id)
    }
}

#[cfg(test)]
mod tests {
    use super::{Id, Roster, RosterError, Section, Shown, Student};

    fn student(id: &str, shown: &str) -> Student {
        Student { shown: Shown::of(shown), id: Id::new(id).unwrap() }
    }

    fn section(id: &str, title: &str, students: Vec<Student>) -> Section {
        let id = Id::new(id).unwrap();
        let title = Shown::of(title);
        Section { title, id, code: None, school: None, term: None, students }
    }

    #[test]
    fn sections_and_students_stand_in_the_order_in_which_they_are_shown() {
        let students = vec![student("1", "Zed"), student("2", "Ann")];
        let roster =
            Roster::new(vec![section("b", "Two", students), section("a", "One", Vec::new())])
                .unwrap();
        let titles: Vec<&str> = roster.sections().iter().map(|one| one.title.words()).collect();
        assert_eq!(titles, ["One", "Two"]);
        let two = roster.section(&Id::new("b").unwrap()).unwrap();
        assert_eq!(two.students[0].shown.words(), "Ann");
        assert!(two.student(&Id::new("3").unwrap()).is_none());
    }

    #[test]
    fn no_id_stands_twice() {
        let twice = vec![section("a", "One", Vec::new()), section("a", "Two", Vec::new())];
        assert!(matches!(Roster::new(twice), Err(RosterError::SectionTwice { .. })));
        let same = vec![student("1", "Ann"), student("1", "Bea")];
        let refused = Roster::new(vec![section("a", "One", same)]).unwrap_err();
        assert!(refused.to_string().contains("student 1 stands twice"), "{refused}");
    }

    #[test]
    fn names_do_not_come_out_where_a_program_is_looked_into() {
        let seen = format!("{:?}", section("a", "One", vec![student("1", "Ann Invented")]));
        assert!(!seen.contains("Ann"), "{seen}");
    }
}
