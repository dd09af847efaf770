//! Brings the tables of a record to what this program knows.
//!
//! A migration is never edited once a release has used it; what changes gets another one.

use crate::failure::StoreError;
use crate::line::{Line, Value};
use crate::wire::KINDS;

/// The version of this program, as other versions will name it.
pub(crate) const PROGRAM: &str = env!("CARGO_PKG_VERSION");

/// A step: its name, what both engines understand, and what only one does.
struct Step {
    name: &'static str,
    both: &'static str,
    sqlite: &'static str,
    #[cfg(feature = "postgres")]
    postgres: &'static str,
}

/// All steps in order; the first is number 1.
const STEPS: &[Step] = &[
    Step {
        name: "record",
        both: include_str!("../migrations/0001_record.sql"),
        sqlite: include_str!("../migrations/only_sqlite/0001_record.sql"),
        #[cfg(feature = "postgres")]
        postgres: include_str!("../migrations/only_postgres/0001_record.sql"),
    },
    Step {
        name: "summary",
        both: include_str!("../migrations/0002_summary.sql"),
        sqlite: "",
        #[cfg(feature = "postgres")]
        postgres: "",
    },
    Step {
        name: "pilot",
        both: include_str!("../migrations/0003_pilot.sql"),
        sqlite: "",
        #[cfg(feature = "postgres")]
        postgres: "",
    },
];

const TABLE: &str = "create table if not exists migration (
    version bigint primary key, name text not null, program text not null)";

/// Does the steps that are still to do, all or none.
///
/// # Errors
/// [`StoreError::Newer`] if a newer program has been here; then nothing was touched.
pub(crate) fn migrate(line: &mut Line, place: &str) -> Result<(), StoreError> {
    line.alone(|line| {
        line.script(TABLE)?;
        let newest = line.first(
            "select version, program from migration order by version desc limit 1",
            &[],
            |mut row| Ok((row.int()?, row.text()?)),
        )?;
        let (done, program) = newest.unwrap_or_default();
        let done = usize::try_from(done).unwrap_or_default();
        if done > STEPS.len() {
            return Err(StoreError::Newer { place: place.to_owned(), program });
        }
        for (number, step) in (1_i64..).zip(STEPS).skip(done) {
            line.script(step.both)?;
            line.script(match line {
                Line::Sqlite(_) => step.sqlite,
                #[cfg(feature = "postgres")]
                Line::Postgres(_) => step.postgres,
            })?;
            line.run(
                "insert into migration (version, name, program) values ($1, $2, $3)",
                &[number.into(), step.name.into(), PROGRAM.into()],
            )?;
        }
        tell_shapes(line)
    })
}

/// How many steps a record has behind it, if there are some still to do; nothing for a new one.
pub(crate) fn behind(line: &mut Line) -> Result<Option<usize>, StoreError> {
    let there = "select count(*) from sqlite_master where name = 'migration'";
    if line.first(there, &[], |mut row| row.int())? != Some(1) {
        return Ok(None);
    }
    let done =
        line.first("select max(version) from migration", &[], |mut row| row.maybe_int())?;
    let done = usize::try_from(done.flatten().unwrap_or_default()).unwrap_or_default();
    Ok((1..STEPS.len()).contains(&done).then_some(done))
}

/// Writes down which layouts this program knows, for older ones that will meet them.
fn tell_shapes(line: &mut Line) -> Result<(), StoreError> {
    let told = line
        .rows("select kind, shape from shape", &[], |mut row| Ok((row.text()?, row.int()?)))?;
    for (kind, shape) in KINDS {
        if !told.iter().any(|(known, number)| known == kind && number == shape) {
            let with: [Value<'_>; 3] = [(*kind).into(), (*shape).into(), PROGRAM.into()];
            line.run("insert into shape (kind, shape, program) values ($1, $2, $3)", &with)?;
        }
    }
    Ok(())
}
