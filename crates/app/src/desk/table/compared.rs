//! The levels of a table, compared.

use super::verdict;
use super::{TableError, columns, notes};
use crate::desk::DeskError;
use barm_documents::columns::Wanted;
use barm_domain::nearest::nearest;
use barm_science::statistics::levels::{Asked, Levels, LevelsError, Measured, levels};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// Decides the draws of the randomization test; any number would do, but one table keeps one answer.
const SEED: u64 = 1;

/// What a table says of its levels.
#[derive(Debug)]
pub(crate) struct Compared {
    /// Heading of the values.
    pub(crate) value: String,
    /// Heading of the levels.
    pub(crate) by: String,
    /// Heading of the blocks.
    pub(crate) block: Option<String>,
    /// The levels, in the order in which the table first names them.
    pub(crate) names: Vec<String>,
    /// Every test and comparison.
    pub(crate) told: Levels,
    /// The answer in a few sentences.
    pub(crate) says: Vec<String>,
    /// How the table was read, where a person should know.
    pub(crate) notes: Vec<String>,
}

/// Compares the levels of a table.
pub(crate) fn compare_table(
    path: &Path,
    value: &str,
    by: &str,
    block: Option<&str>,
    control: Option<&str>,
) -> Result<Compared, DeskError> {
    let text = |heading| Wanted { heading, number: false };
    let mut wanted = vec![Wanted { heading: value, number: true }, text(by)];
    wanted.extend(block.map(text));
    let table = columns(path, &wanted)?;
    let failed = |why| DeskError::Table { path: path.to_owned(), why };
    let mut levels_seen = Numbered::default();
    let mut blocks_seen = Numbered::default();
    let rows: Vec<Measured> = table
        .rows
        .iter()
        .map(|row| Measured {
            value: row.numbers[0],
            level: levels_seen.number(&row.texts[0]),
            block: row.texts.get(1).map_or(0, |block| blocks_seen.number(block)),
        })
        .collect();
    let names = levels_seen.names;
    let control = control.map(|control| find(&names, control).map_err(failed)).transpose()?;
    let asked = Asked { in_blocks: block.is_some(), control, seed: SEED };
    let told = levels(&rows, asked).map_err(|why| failed(named(why, &names)))?;
    let mut notes = notes(&table);
    notes.extend(
        control.filter(|_| block.is_some()).and_then(|c| never_beside(&rows, c, &names)),
    );
    let says = verdict::compared(&told, &names);
    let headings = table.headings;
    Ok(Compared {
        value: headings[0].clone(),
        by: headings[1].clone(),
        block: headings.get(2).cloned(),
        names,
        told,
        says,
        notes,
    })
}

/// Texts, numbered in the order of their first use.
#[derive(Debug, Default)]
struct Numbered {
    names: Vec<String>,
    places: BTreeMap<String, usize>,
}

impl Numbered {
    fn number(&mut self, text: &str) -> usize {
        if let Some(&at) = self.places.get(text) {
            return at;
        }
        self.places.insert(text.to_owned(), self.names.len());
        self.names.push(text.to_owned());
        self.names.len() - 1
    }
}

fn find(names: &[String], control: &str) -> Result<usize, TableError> {
    let wanted = control.trim();
    names.iter().position(|name| name == wanted).ok_or_else(|| {
        let meant = match nearest(wanted, names.iter().map(String::as_str)) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => {
                const NAMED: usize = 12;
                let named: Vec<&str> = names.iter().take(NAMED).map(String::as_str).collect();
                let more = if names.len() > NAMED { ", …" } else { "" };
                format!("there are \"{}\"{more}", named.join("\", \""))
            }
        };
        TableError::NoControl { control: control.to_owned(), meant }
    })
}

/// The reason with the levels' names.
fn named(why: LevelsError, names: &[String]) -> TableError {
    let LevelsError::Apart { sets } = &why else { return TableError::Levels(why) };
    let words = |set: &Vec<usize>| {
        let own: Vec<&str> = set.iter().map(|&level| names[level].as_str()).collect();
        own.join(", ")
    };
    let sets: Vec<String> = sets.iter().map(words).collect();
    TableError::Apart { sets: sets.join(" | "), why }
}

/// Levels that are in no block with the control, though a third links them.
fn never_beside(rows: &[Measured], control: usize, names: &[String]) -> Option<String> {
    let own = rows.iter().filter(|row| row.level == control).map(|row| row.block);
    let own: BTreeSet<usize> = own.collect();
    let beside = rows.iter().filter(|row| own.contains(&row.block)).map(|row| row.level);
    let beside: BTreeSet<usize> = beside.collect();
    let away: Vec<&str> = (0..names.len())
        .filter(|level| !beside.contains(level))
        .map(|level| names[level].as_str())
        .collect();
    (!away.is_empty()).then(|| {
        format!(
            "Never in a block with {}: {}. Such a difference rests on others that share blocks \
             with both.",
            names[control],
            away.join(", ")
        )
    })
}
