//! Writes a plan into a person's own file, touching only what has changed.

use super::read::read;
use super::upgrade::upgrade_text;
use super::write_new::write_new;
use barm_domain::pilot::Known;
use barm_domain::plan::Plan;
use toml_edit::{Array, ArrayOfTables, DocumentMut, Item, Table, TableLike, Value};

/// Writes `plan` into the text of an older version of its file.
///
/// Comments, order and spelling stay wherever the plan says the same as before: the old plan and
/// the new one are both written in the plain form of [`write_new`], and only what differs between
/// the two is carried over. A file of an older format is upgraded. Where the old text cannot be
/// read, or the result would not read as `plan`, the plan is written anew.
pub fn write(plan: &Plan, old_text: &str) -> String {
    // What pilots found is no part of this file.
    let plan = &Plan { known: Known::default(), ..plan.clone() };
    let old_text = old_text.strip_prefix('\u{feff}').unwrap_or(old_text);
    carried_over(plan, old_text)
        .into_iter()
        .flat_map(|text| [with_line_ends_of(old_text, &text), text])
        .find(|text| read(text.as_bytes()).plan.as_ref() == Some(plan))
        .unwrap_or_else(|| write_new(plan))
}

fn carried_over(plan: &Plan, old_text: &str) -> Option<String> {
    let old_plan = read(old_text.as_bytes()).plan?;
    let old_text = upgrade_text(old_text);
    if old_plan == *plan {
        return Some(old_text.into_owned());
    }
    let mut mine: DocumentMut = old_text.parse().ok()?;
    let before: DocumentMut = write_new(&old_plan).parse().ok()?;
    let wanted: DocumentMut = write_new(plan).parse().ok()?;
    merge(mine.as_table_mut(), before.as_table(), wanted.as_table());
    Some(mine.to_string())
}

/// The text with the line ends of the old one.
fn with_line_ends_of(old: &str, text: &str) -> String {
    if old.contains("\r\n") {
        text.replace("\r\n", "\n").replace('\n', "\r\n")
    } else {
        text.to_owned()
    }
}

/// Carries over into `mine` whatever differs between `before` and `wanted`.
fn merge(mine: &mut dyn TableLike, before: &dyn TableLike, wanted: &dyn TableLike) {
    for (key, want) in wanted.iter() {
        let was = before.get(key);
        if was.is_some_and(|was| same(was, want)) {
            continue;
        }
        let Some(item) = mine.get_mut(key) else {
            let mut fresh = want.clone();
            unplace(&mut fresh);
            mine.insert(key, fresh);
            continue;
        };
        if let Some(was) = was
            && merge_item(item, was, want)
        {
            continue;
        }
        match (item.as_value_mut(), want.as_value()) {
            (Some(value), Some(want)) => replace(value, want),
            _ => {
                *item = want.clone();
                unplace(item);
            }
        }
    }
    for (key, _) in before.iter().filter(|(key, _)| !wanted.contains_key(key)) {
        mine.remove(key);
    }
}

/// Merges two tables or two lists of tables, if the file has them in the same form.
fn merge_item(mine: &mut Item, was: &Item, want: &Item) -> bool {
    if let (Item::ArrayOfTables(mine), Item::ArrayOfTables(was), Item::ArrayOfTables(want)) =
        (&mut *mine, was, want)
    {
        return merge_tables(mine, was, want);
    }
    if let (Some(mine), Some(was), Some(want)) =
        (mine.as_array_mut(), was.as_array(), want.as_array())
    {
        return merge_lines(mine, was, want);
    }
    if let (Some(mine), Some(was), Some(want)) =
        (mine.as_table_like_mut(), was.as_table_like(), want.as_table_like())
    {
        merge(mine, was, want);
        return true;
    }
    false
}

fn merge_tables(mine: &mut ArrayOfTables, was: &ArrayOfTables, want: &ArrayOfTables) -> bool {
    if mine.len() != was.len() {
        return false;
    }
    let names =
        |list: &ArrayOfTables| list.iter().map(|table| name_of(table)).collect::<Vec<_>>();
    let pairs = pair(&names(was), &names(want));
    let old: Vec<Table> = mine.iter().cloned().collect();
    let in_order = pairs.iter().flatten().is_sorted();
    mine.clear();
    for (index, wanted) in pairs.iter().zip(want.iter()) {
        let kept = index.and_then(|index| Some((old.get(index)?, was.get(index)?)));
        let mut table = match kept {
            Some((old, was)) => {
                let mut table = old.clone();
                merge(&mut table, was, wanted);
                table
            }
            None => wanted.clone(),
        };
        if kept.is_none() || !in_order {
            unplace_table(&mut table);
        }
        mine.push(table);
    }
    // The note above the first table speaks for all of them.
    if pairs.first() != Some(&Some(0))
        && let (Some(first), Some(head)) = (mine.get_mut(0), old.first())
        && let Some(note) = head.decor().prefix()
    {
        first.decor_mut().set_prefix(note.clone());
    }
    true
}

/// Merges a list of inline tables, one a line, such as the bags.
fn merge_lines(mine: &mut Array, was: &Array, want: &Array) -> bool {
    let all_tables = |list: &Array| list.iter().all(Value::is_inline_table);
    if mine.len() != was.len() || ![&*mine, was, want].iter().all(|list| all_tables(list)) {
        return false;
    }
    let names = |list: &Array| -> Vec<String> {
        list.iter().filter_map(Value::as_inline_table).map(|table| name_of(table)).collect()
    };
    let pairs = pair(&names(was), &names(want));
    let old: Vec<Value> = mine.iter().cloned().collect();
    mine.clear();
    for (index, wanted) in pairs.iter().zip(want.iter()) {
        let kept = index.and_then(|index| Some((old.get(index)?.clone(), was.get(index)?)));
        let value = match kept {
            Some((mut value, was)) => {
                if let (Some(table), Some(was), Some(wanted)) = (
                    value.as_inline_table_mut(),
                    was.as_inline_table(),
                    wanted.as_inline_table(),
                ) {
                    merge(table, was, wanted);
                }
                value
            }
            None => wanted.clone(),
        };
        mine.push_formatted(value);
    }
    if old.is_empty() {
        mine.set_trailing(want.trailing().clone());
        mine.set_trailing_comma(want.trailing_comma());
    }
    true
}

/// By what a table in a list is known, written in one line.
fn name_of(table: &dyn TableLike) -> String {
    let keys = ["code", "name", "id", "rule", "caution", "item", "pack", "number", "period"];
    // The period of a bag is not its name: it may be moved.
    let keys = if table.contains_key("code") { &keys[..1] } else { &keys[..] };
    let parts =
        keys.iter().filter_map(|key| Some(table.get(key)?.to_string().trim().to_owned()));
    parts.collect::<Vec<_>>().join(" ")
}

/// For each wanted table the old one it comes from: that of the same name, or else the one in the
/// same place, if that is nobody else's.
fn pair(old: &[String], wanted: &[String]) -> Vec<Option<usize>> {
    let mut free: Vec<bool> = vec![true; old.len()];
    let mut pairs: Vec<Option<usize>> = wanted
        .iter()
        .map(|name| {
            let found =
                old.iter().enumerate().position(|(at, other)| free[at] && other == name)?;
            free[found] = false;
            Some(found)
        })
        .collect();
    for (at, found) in pairs.iter_mut().enumerate() {
        if found.is_none() && free.get(at) == Some(&true) {
            free[at] = false;
            *found = Some(at);
        }
    }
    pairs
}

/// Puts a new value in the place of an old one; the note on its line stays.
fn replace(mine: &mut Value, want: &Value) {
    let decor = mine.decor().clone();
    *mine = want.clone();
    *mine.decor_mut() = decor;
}

/// Whether two items of the plain form say the same.
fn same(one: &Item, other: &Item) -> bool {
    if let (Item::ArrayOfTables(one), Item::ArrayOfTables(other)) = (one, other) {
        let tables = one.iter().zip(other.iter());
        return one.len() == other.len() && tables.into_iter().all(|(a, b)| same_table(a, b));
    }
    match (one.as_value(), other.as_value(), one.as_table(), other.as_table()) {
        (Some(one), Some(other), ..) => one.to_string() == other.to_string(),
        (_, _, Some(one), Some(other)) => same_table(one, other),
        _ => false,
    }
}

fn same_table(one: &Table, other: &Table) -> bool {
    one.len() == other.len()
        && one.iter().all(|(key, item)| other.get(key).is_some_and(|other| same(item, other)))
}

/// Takes the place in the text off a table, so that it is written after what stands before it.
fn unplace_table(table: &mut Table) {
    table.set_position(None);
    for (_, item) in table.iter_mut() {
        unplace(item);
    }
}

fn unplace(item: &mut Item) {
    match item {
        Item::Table(table) => unplace_table(table),
        Item::ArrayOfTables(tables) => tables.iter_mut().for_each(unplace_table),
        Item::None | Item::Value(_) => {}
    }
}
