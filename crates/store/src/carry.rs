//! Carries a whole record from one engine to the other.

use crate::failure::StoreError;
use crate::line::{Line, Value};

/// A statement that reads a table and one that writes its rows, in the order of their needs.
/// Sessions and the list of backups belong to the place and stay there.
macro_rules! table {
    ($name:literal, $columns:literal, $numbers:literal) => {
        (
            concat!("select ", $columns, " from ", $name),
            concat!(
                "insert into ",
                $name,
                " (",
                $columns,
                ") values (",
                $numbers,
                ") on conflict do nothing"
            ),
        )
    };
}

const TABLES: &[(&str, &str)] = &[
    table!("shape", "kind, shape, program", "$1, $2, $3"),
    table!("investigation", "id, title, kind, made", "$1, $2, $3, $4"),
    table!(
        "plan",
        "investigation, version, body, saved, lots, readings",
        "$1, $2, $3, $4, $5, $6"
    ),
    table!(
        "entry",
        "seq, investigation, key, subject, period, grp, bag, kind, measured, arrived, who, \
         who_period, who_group, shape, body",
        "$1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15"
    ),
    table!("words", "key, investigation, kind, body", "$1, $2, $3, $4"),
    table!("forgotten", "key", "$1"),
    table!("secret", "name, value", "$1, $2"),
    table!("setting", "name, value", "$1, $2"),
    table!(
        "code",
        "code, role, investigation, period, grp, made, ends",
        "$1, $2, $3, $4, $5, $6, $7"
    ),
];

/// Copies all rows into a record that has its tables and nothing in them, all or nothing.
///
/// # Errors
/// [`StoreError::NotEmpty`] if there are investigations already; or what the engines say.
pub(crate) fn carry(from: &mut Line, to: &mut Line) -> Result<(), StoreError> {
    from.still(|from| {
        to.alone(|to| {
            let there =
                to.first("select id from investigation limit 1", &[], |mut row| row.int())?;
            if there.is_some() {
                return Err(StoreError::NotEmpty);
            }
            for (read, write) in TABLES {
                let rows = from.rows(read, &[], |row| Ok(row.rest()))?;
                for row in &rows {
                    let row: &[Value<'_>] = row;
                    to.run(write, row)?;
                }
            }
            Ok(())
        })
    })
}
