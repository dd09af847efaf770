//! Wishes of groups and limits of the teacher as a table; described in `docs/assign.md`.

use barm_domain::assign::{Bad, Row};
use barm_domain::nearest::{nearest, plain};

/// Heads of the ranked questions, the dearest first.
pub const CHOICES: [&str; 8] =
    ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
/// All other heads.
pub const HEADS: [&str; 8] =
    ["period", "group", "set", "never", "bags", "question", "least", "most"];

/// Reads a table in UTF-8 with commas, semicolons or tabs, whatever the order of its columns.
/// `period` and `group` must be there.
///
/// # Errors
/// What makes the file as a whole unreadable, each with its line.
pub fn read(bytes: &[u8]) -> Result<Vec<Row>, Vec<Bad>> {
    let wrong = |line, what: &str, fix: &str| Bad { line, what: what.into(), fix: fix.into() };
    let (heads, mut reader) = crate::headed::opened(bytes)
        .ok_or_else(|| vec![wrong(1, "this is no text in UTF-8", "save it as CSV in UTF-8")])?;
    let columns = Columns::of(&heads)?;
    let mut rows = Vec::new();
    for record in reader.records() {
        let Ok(record) = record else {
            return Err(vec![wrong(1, "a line cannot be read", "save the file as CSV again")]);
        };
        if record.iter().all(str::is_empty) {
            continue;
        }
        let at = |column: Option<usize>| {
            column.and_then(|at| record.get(at)).unwrap_or_default().to_owned()
        };
        let other = |head: &str| {
            let place = HEADS.iter().position(|known| *known == head);
            at(place.and_then(|place| columns.others[place]))
        };
        let never = other("never");
        rows.push(Row {
            line: record.position().map_or(0, csv::Position::line),
            period: other("period"),
            group: other("group"),
            choices: columns.choices.iter().map(|column| at(*column)).collect(),
            set: other("set"),
            never: never.split([';', '|']).map(|one| one.trim().to_owned()).collect(),
            bags: other("bags"),
            question: other("question"),
            least: other("least"),
            most: other("most"),
        });
    }
    Ok(rows)
}

/// Where each head stands.
struct Columns {
    choices: Vec<Option<usize>>,
    others: Vec<Option<usize>>,
}

impl Columns {
    fn of(heads: &[String]) -> Result<Self, Vec<Bad>> {
        let at = |known: &str| heads.iter().position(|head| plain(head) == plain(known));
        let known = || CHOICES.into_iter().chain(HEADS);
        let mut bad = Vec::new();
        for needed in ["period", "group"] {
            if at(needed).is_none() {
                bad.push(Bad {
                    line: 1,
                    what: format!("there is no column “{needed}”"),
                    fix: format!(
                        "the first line names the columns: {}",
                        known().collect::<Vec<_>>().join(", ")
                    ),
                });
            }
        }
        for head in heads.iter().filter(|head| !head.is_empty()) {
            if known().any(|known| plain(known) == plain(head)) {
                continue;
            }
            // A column that nobody reads is passed over, but a slip must not lose wishes.
            if let Some(near) = nearest(head, known()) {
                bad.push(Bad {
                    line: 1,
                    what: format!("there is no column “{head}”"),
                    fix: format!("call it “{near}” if that is meant, or give it another name"),
                });
            }
        }
        let place = |known: &&str| at(known);
        if bad.is_empty() {
            Ok(Self {
                choices: CHOICES.iter().map(place).collect(),
                others: HEADS.iter().map(place).collect(),
            })
        } else {
            Err(bad)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::read;

    #[test]
    fn columns_stand_in_any_order_and_delimiters_are_found() {
        let table = "\u{feff}Group;PERIOD;second;first;never;note\n3; 1 ;food;enzyme;a | b;hello\n\n;;;;;\n";
        let rows = read(table.as_bytes()).unwrap();
        assert_eq!(rows.len(), 1);
        let row = &rows[0];
        assert_eq!((row.line, row.period.as_str(), row.group.as_str()), (2, "1", "3"));
        assert_eq!(row.choices[..3], ["enzyme", "food", ""]);
        assert_eq!(row.never, ["a", "b"]);
    }

    #[test]
    fn a_file_that_is_no_table_of_wishes_says_so() {
        let said = |bytes: &[u8]| {
            read(bytes)
                .unwrap_err()
                .iter()
                .map(ToString::to_string)
                .collect::<Vec<_>>()
                .join("\n")
        };
        assert!(said(b"\xff\xfe").contains("UTF-8"));
        assert!(said(b"").contains("line 1: there is no column “period”"));
        assert!(said(b"period,first\n").contains("no column “group”"));
        assert!(said(b"period,group,fisrt\n").contains("call it “first”"));
    }
}
