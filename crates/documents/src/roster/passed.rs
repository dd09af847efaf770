//! What stood in a roster and was passed over, in numbers.

/// Rows that were passed over, by reason. Only counts: nothing of them is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Passed {
    /// Enrollments, classes and users that are marked for deletion.
    pub deleted: usize,
    /// Enrollments of anyone who is no student there, such as teachers.
    pub others: usize,
    /// Enrollments that ended before the day.
    pub ended: usize,
    /// Enrollments in a class that the export does not have.
    pub no_class: usize,
    /// Enrollments of a user whom the export does not have.
    pub no_user: usize,
    /// Enrollments of a student in a class in which the student is already.
    pub twice: usize,
    /// Classes without any student.
    pub empty: usize,
}

impl Passed {
    /// Each reason that there was, in one sentence.
    pub fn said(&self) -> Vec<String> {
        let rows = |count: usize, one: &str, many: &str| {
            (count > 0).then(|| {
                if count == 1 { format!("1 {one}.") } else { format!("{count} {many}.") }
            })
        };
        [
            rows(
                self.no_class,
                "enrollment names a class that is not in the export and was passed over",
                "enrollments name a class that is not in the export and were passed over",
            ),
            rows(
                self.no_user,
                "enrollment names a user who is not in the export and was passed over",
                "enrollments name a user who is not in the export and were passed over",
            ),
            rows(
                self.twice,
                "enrollment puts a student into a class for a second time and was passed over",
                "enrollments put a student into a class for a second time and were passed over",
            ),
            rows(
                self.ended,
                "enrollment has ended and was passed over",
                "enrollments have ended and were passed over",
            ),
            rows(
                self.deleted,
                "row is marked for deletion and was passed over",
                "rows are marked for deletion and were passed over",
            ),
            rows(
                self.others,
                "enrollment is of somebody who is no student and was passed over",
                "enrollments are of people who are no students and were passed over",
            ),
            rows(
                self.empty,
                "class has no student and was passed over",
                "classes have no student and were passed over",
            ),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}
