//! Grades of one section: what each student of it got for each piece of work.
//!
//! A grade hangs on the id of a student and says nothing of a bag; no number of a reading becomes a
//! grade by itself.

use crate::roster::{Id, Section};
use jiff::civil::Date;
use std::collections::BTreeMap;

/// A piece of work that is graded.
#[derive(Debug, Clone, PartialEq)]
pub struct Work {
    /// Id, short and its own; another program finds the work again by it.
    pub id: Id,
    /// Title, such as "Conclusion".
    pub title: String,
    /// What it asks for.
    pub asks: String,
    /// Day on which it was given out.
    pub given: Date,
    /// Day on which it was due.
    pub due: Date,
    /// Points that can be got; more than 0.
    pub most: f64,
}

/// What a student got.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Score {
    /// Points, from 0 to the most of the work.
    Points(f64),
    /// Nothing was handed in.
    Missing,
    /// The student need not hand it in.
    Excused,
}

/// A grade: a score with a comment.
#[derive(Debug, Clone, PartialEq)]
pub struct Grade {
    /// What the student got.
    pub score: Score,
    /// Words to the student; may be blank.
    pub comment: String,
    /// Day on which it was graded.
    pub on: Date,
}

/// The grades of one section.
#[derive(Debug, Clone, PartialEq)]
pub struct Grades {
    section: Section,
    works: Vec<Work>,
    /// By place of the work, then by student.
    given: BTreeMap<(usize, Id), Grade>,
}

/// Why a grade or a piece of work was not taken.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum GradeError {
    /// Two pieces of work have one id.
    #[error("the work {id} stands there twice; every work needs an id of its own")]
    WorkTwice {
        /// The id.
        id: Id,
    },
    /// No points can be got for a work.
    #[error("{most} is no number of points for the work {id}; write one above 0")]
    NoPoints {
        /// The work.
        id: Id,
        /// What was written.
        most: f64,
    },
    /// A work is due before it was given out.
    #[error("the work {id} is due on {due}, before it was given out on {given}")]
    DueBefore {
        /// The work.
        id: Id,
        /// When it was given out.
        given: Date,
        /// When it is due.
        due: Date,
    },
    /// There is no such work.
    #[error("there is no work {id} in these grades")]
    NoSuchWork {
        /// The id.
        id: Id,
    },
    /// The student is not in the section.
    #[error("the student {student} is not in section {section}")]
    NotInSection {
        /// The student.
        student: Id,
        /// The section.
        section: Id,
    },
    /// More points than there are, or fewer than none.
    #[error("{points} is no score of the work {work}; write 0 to {most}")]
    OutOfRange {
        /// The work.
        work: Id,
        /// What was written.
        points: f64,
        /// Points that can be got.
        most: f64,
    },
}

impl Grades {
    /// A section and its pieces of work, with nothing graded yet.
    ///
    /// # Errors
    /// [`GradeError`] if a work stands there twice, gives no points or is due before it was given.
    pub fn new(section: Section, works: Vec<Work>) -> Result<Self, GradeError> {
        for (at, work) in works.iter().enumerate() {
            let id = work.id.clone();
            if works[..at].iter().any(|other| other.id == id) {
                return Err(GradeError::WorkTwice { id });
            }
            if !(work.most > 0.0 && work.most.is_finite()) {
                return Err(GradeError::NoPoints { id, most: work.most });
            }
            if work.due < work.given {
                return Err(GradeError::DueBefore { id, given: work.given, due: work.due });
            }
        }
        Ok(Self { section, works, given: BTreeMap::new() })
    }

    /// Notes a grade, in place of an earlier one of the same student and work.
    ///
    /// # Errors
    /// [`GradeError`] if the student, the work or the score does not belong here.
    pub fn give(&mut self, work: &Id, student: &Id, grade: Grade) -> Result<(), GradeError> {
        let at = self.works.iter().position(|one| one.id == *work);
        let at = at.ok_or_else(|| GradeError::NoSuchWork { id: work.clone() })?;
        if self.section.student(student).is_none() {
            let (student, section) = (student.clone(), self.section.id.clone());
            return Err(GradeError::NotInSection { student, section });
        }
        let most = self.works[at].most;
        if let Score::Points(points) = grade.score
            && !(0.0..=most).contains(&points)
        {
            return Err(GradeError::OutOfRange { work: work.clone(), points, most });
        }
        self.given.insert((at, student.clone()), grade);
        Ok(())
    }

    /// The section.
    pub const fn section(&self) -> &Section {
        &self.section
    }

    /// The pieces of work, in order.
    pub fn works(&self) -> &[Work] {
        &self.works
    }

    /// What a student got for a work.
    pub fn of(&self, work: &Id, student: &Id) -> Option<&Grade> {
        let at = self.works.iter().position(|one| one.id == *work)?;
        self.given.get(&(at, student.clone()))
    }

    /// Every grade with its work and the student's id, work by work.
    pub fn all(&self) -> impl Iterator<Item = (&Work, &Id, &Grade)> {
        self.given.iter().map(|((at, student), grade)| (&self.works[*at], student, grade))
    }
}

#[cfg(test)]
mod tests {
    use super::{Grade, GradeError, Grades, Score, Work};
    use crate::roster::{Id, Section, Shown, Student};
    use jiff::civil::date;

    fn id(written: &str) -> Id {
        Id::new(written).unwrap()
    }

    fn section() -> Section {
        let student = Student { shown: Shown::of("Ann Invented"), id: id("s1") };
        let (title, students) = (Shown::of("Science"), vec![student]);
        Section { title, id: id("c1"), code: None, school: None, term: None, students }
    }

    fn work(most: f64) -> Work {
        let (given, due) = (date(2027, 3, 9), date(2027, 3, 12));
        Work { id: id("w1"), title: "Conclusion".into(), asks: String::new(), given, due, most }
    }

    fn grade(points: f64) -> Grade {
        let score = Score::Points(points);
        Grade { score, comment: String::new(), on: date(2027, 3, 15) }
    }

    #[test]
    fn a_grade_belongs_to_a_work_a_student_and_a_range() {
        let mut grades = Grades::new(section(), vec![work(10.0)]).unwrap();
        grades.give(&id("w1"), &id("s1"), grade(9.5)).unwrap();
        grades.give(&id("w1"), &id("s1"), grade(10.0)).unwrap();
        assert_eq!(grades.all().count(), 1);
        assert_eq!(grades.of(&id("w1"), &id("s1")), Some(&grade(10.0)));
        for (work, student, points) in [
            ("w2", "s1", 1.0),
            ("w1", "s2", 1.0),
            ("w1", "s1", 10.5),
            ("w1", "s1", -1.0),
            ("w1", "s1", f64::NAN),
        ] {
            assert!(grades.give(&id(work), &id(student), grade(points)).is_err());
        }
        assert_eq!(grades.of(&id("w1"), &id("s1")), Some(&grade(10.0)));
    }

    #[test]
    fn a_work_gives_points_once_and_is_due_after_it_was_given() {
        for most in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            let refused = Grades::new(section(), vec![work(most)]).unwrap_err();
            assert!(matches!(refused, GradeError::NoPoints { .. }), "{refused}");
        }
        let twice = Grades::new(section(), vec![work(1.0), work(2.0)]).unwrap_err();
        assert!(matches!(twice, GradeError::WorkTwice { .. }));
        let mut late = work(1.0);
        late.due = date(2027, 3, 1);
        let refused = Grades::new(section(), vec![late]).unwrap_err();
        assert!(refused.to_string().contains("before it was given out"), "{refused}");
    }
}
