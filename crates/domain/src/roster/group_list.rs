//! Who is in which group of a period, and who was away.

use super::{Id, Section, Student};
use std::collections::BTreeMap;

/// Where a student is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Place {
    /// Number of the group, from 1; `None` is in none.
    pub group: Option<u32>,
    /// Whether the student was away on the day.
    pub absent: bool,
}

/// Which students of a section are in which group. Whoever is not in it is in no group, and was there.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct GroupList {
    places: BTreeMap<Id, Place>,
}

/// Why a student was not put into a group.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PlaceError {
    /// The student is not in the section.
    #[error("the student {student} is not in section {section}")]
    NotInSection {
        /// The student.
        student: Id,
        /// The section.
        section: Id,
    },
    /// There is no such group.
    #[error("there is no group {group}; this period has groups 1 to {groups}")]
    NoGroup {
        /// As it was asked.
        group: u32,
        /// How many there are.
        groups: u32,
    },
}

impl GroupList {
    /// A first proposal: students in the order of the list, and groups as even as can be; where they cannot be even,
    /// the first ones have one more.
    pub fn even(section: &Section, groups: u32) -> Self {
        let students = section.students.len();
        let each = usize::try_from(groups).unwrap_or(usize::MAX);
        if each == 0 {
            return Self::default();
        }
        let (least, more) = (students / each, students % each);
        let sizes = (1..=groups)
            .zip(0..each)
            .map(|(group, at)| (group, least + usize::from(at < more)));
        let groups = sizes.flat_map(|(group, size)| std::iter::repeat_n(group, size));
        let placed = section.students.iter().zip(groups).map(|(student, group)| {
            (student.id.clone(), Place { group: Some(group), absent: false })
        });
        Self { places: placed.collect() }
    }

    /// Puts a student of a section into one of so many groups, or into none.
    ///
    /// # Errors
    /// [`PlaceError`]; nothing is changed then.
    pub fn put(
        &mut self,
        (section, groups): (&Section, u32),
        student: &Id,
        place: Place,
    ) -> Result<(), PlaceError> {
        if section.student(student).is_none() {
            let (student, section) = (student.clone(), section.id.clone());
            return Err(PlaceError::NotInSection { student, section });
        }
        if let Some(group) = place.group.filter(|group| !(1..=groups).contains(group)) {
            return Err(PlaceError::NoGroup { group, groups });
        }
        if place == Place::default() {
            self.places.remove(student);
        } else {
            self.places.insert(student.clone(), place);
        }
        Ok(())
    }

    /// Where a student is.
    pub fn place(&self, student: &Id) -> Place {
        self.places.get(student).copied().unwrap_or_default()
    }

    /// The same for a newer list of a section with so many groups: whoever is still there stays, and nobody is in a group
    /// that is gone.
    #[must_use]
    pub fn carried(&self, section: &Section, groups: u32) -> Self {
        let kept = self.places.iter().filter(|(id, _)| section.student(id).is_some());
        let kept = kept.map(|(id, place)| {
            let group = place.group.filter(|group| (1..=groups).contains(group));
            (id.clone(), Place { group, ..*place })
        });
        Self { places: kept.filter(|(_, place)| *place != Place::default()).collect() }
    }

    /// The students of a group, in the order of the section.
    pub fn of_group<'s>(&self, section: &'s Section, group: u32) -> Vec<&'s Student> {
        let own = section.students.iter();
        own.filter(|student| self.place(&student.id).group == Some(group)).collect()
    }

    /// Everybody who is in a group or was away, by id.
    pub fn places(&self) -> impl Iterator<Item = (&Id, Place)> {
        self.places.iter().map(|(id, place)| (id, *place))
    }
}

#[cfg(test)]
mod tests {
    use super::{GroupList, Place, PlaceError};
    use crate::roster::{Id, Section, Shown, Student};

    fn section(students: usize) -> Section {
        let student = |number: usize| {
            let id = Id::new(&format!("s{number:03}")).unwrap();
            Student { shown: Shown::of(&format!("Student {number:03}")), id }
        };
        let id = Id::new("c1").unwrap();
        let students = (1..=students).map(student).collect();
        Section {
            title: Shown::of("Science"),
            id,
            code: None,
            school: None,
            term: None,
            students,
        }
    }

    fn sizes(students: usize, groups: u32) -> Vec<usize> {
        let section = section(students);
        let list = GroupList::even(&section, groups);
        (1..=groups).map(|group| list.of_group(&section, group).len()).collect()
    }

    #[test]
    fn groups_are_as_even_as_can_be_and_follow_the_list() {
        assert_eq!(sizes(22, 8), [3, 3, 3, 3, 3, 3, 2, 2]);
        assert_eq!(sizes(24, 8), [3; 8]);
        assert_eq!(sizes(2, 4), [1, 1, 0, 0]);
        assert_eq!(sizes(0, 3), [0; 3]);
        assert_eq!(GroupList::even(&section(3), 0), GroupList::default());
        // Nobody is left out, nobody stands twice, and the order of the list is that of the groups.
        for students in 0..40 {
            for groups in 1..12 {
                let section = section(students);
                let list = GroupList::even(&section, groups);
                let of = |student: &Student| list.place(&student.id).group.unwrap();
                let order: Vec<u32> = section.students.iter().map(of).collect();
                assert!(order.is_sorted(), "{students} in {groups}");
                let sizes = sizes(students, groups);
                assert_eq!(sizes.iter().sum::<usize>(), students);
                let (most, least) = (sizes.iter().max().unwrap(), sizes.iter().min().unwrap());
                assert!(most - least <= 1, "{sizes:?}");
            }
        }
    }

    #[test]
    fn a_student_is_put_into_a_group_that_is_there() {
        let section = section(2);
        let mut list = GroupList::default();
        let (one, away) =
            (section.students[0].id.clone(), Place { group: Some(2), absent: true });
        list.put((&section, 2), &one, away).unwrap();
        assert_eq!(list.place(&one), away);
        assert_eq!(list.of_group(&section, 2), [&section.students[0]]);
        let three = Place { group: Some(3), absent: false };
        let refused = list.put((&section, 2), &one, three).unwrap_err();
        assert_eq!(refused, PlaceError::NoGroup { group: 3, groups: 2 });
        let stranger = Id::new("x9").unwrap();
        let refused = list.put((&section, 2), &stranger, away).unwrap_err();
        assert!(matches!(refused, PlaceError::NotInSection { .. }), "{refused}");
        assert_eq!(list.place(&one), away, "nothing was changed");
        list.put((&section, 2), &one, Place::default()).unwrap();
        assert_eq!(list, GroupList::default());
    }

    #[test]
    fn a_newer_list_keeps_who_is_still_there() {
        let old = section(4);
        let mut list = GroupList::even(&old, 4);
        let away = Place { group: Some(3), absent: true };
        list.put((&old, 4), &old.students[2].id, away).unwrap();
        let mut new = section(5);
        let gone = new.students.remove(0);
        let carried = list.carried(&new, 3);
        assert_eq!(carried.place(&gone.id), Place::default());
        assert_eq!(carried.place(&new.students[0].id).group, Some(2));
        assert_eq!(carried.place(&new.students[1].id), away);
        // Group 4 is gone; the fifth student is new.
        assert_eq!(carried.place(&new.students[2].id), Place::default());
        assert_eq!(carried.place(&new.students[3].id), Place::default());
    }
}
