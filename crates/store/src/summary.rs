//! What entries add up to, kept so that a list need not replay them. A row that is out of date is
//! worked out anew by whoever asks; all of them can be thrown away at any time.

use crate::failure::StoreError;
use crate::line::Row;
use crate::store::Store;

/// A row of what entries add up to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// What it is about: a bag's code, or nothing for the whole investigation.
    pub subject: String,
    /// Place in the record of the last entry that went into it.
    pub last: i64,
    /// Version of the program that worked it out.
    pub program: String,
    /// What it adds up to, as the one who asks writes it.
    pub body: String,
}

impl Store {
    /// The place of the last entry of each investigation that has any.
    ///
    /// # Errors
    /// Why the record cannot be read.
    pub fn last_places(&self) -> Result<Vec<(i64, i64)>, StoreError> {
        let sql = "select investigation, max(seq) from entry group by investigation \
             order by investigation";
        self.read(|line| line.rows(sql, &[], |mut row| Ok((row.int()?, row.int()?))))
    }

    /// All summaries of a kind, with their investigation. Whether one is out of date is for the one
    /// who asks to see.
    ///
    /// # Errors
    /// Why they cannot be read.
    pub fn summaries(&self, kind: &str) -> Result<Vec<(i64, Summary)>, StoreError> {
        let sql = "select investigation, subject, last, program, body from summary \
             where kind = $1 order by investigation, subject";
        self.read(|line| {
            line.rows(sql, &[kind.into()], |mut row| Ok((row.int()?, read(&mut row)?)))
        })
    }

    /// Keeps summaries of a kind in place of all that the investigation had of it.
    ///
    /// # Errors
    /// Why they were not kept.
    pub fn keep_summaries(
        &self,
        id: i64,
        kind: &str,
        summaries: &[Summary],
    ) -> Result<(), StoreError> {
        let (kind, summaries) = (kind.to_owned(), summaries.to_vec());
        self.write(move |line| {
            crate::plans::must_be_there(line, id)?;
            let away = "delete from summary where investigation = $1 and kind = $2";
            line.run(away, &[id.into(), (&kind).into()])?;
            for one in &summaries {
                line.run(
                    "insert into summary (investigation, kind, subject, last, program, body) \
                     values ($1, $2, $3, $4, $5, $6)",
                    &[
                        id.into(),
                        (&kind).into(),
                        (&one.subject).into(),
                        one.last.into(),
                        (&one.program).into(),
                        (&one.body).into(),
                    ],
                )?;
            }
            Ok(())
        })
    }

    /// Throws all summaries away.
    ///
    /// # Errors
    /// Why they are still there.
    pub fn drop_summaries(&self) -> Result<(), StoreError> {
        self.write(|line| line.run("delete from summary", &[]).map(|_| ()))
    }
}

fn read(row: &mut Row) -> Result<Summary, StoreError> {
    let (subject, last) = (row.text()?, row.int()?);
    Ok(Summary { subject, last, program: row.text()?, body: row.text()? })
}
