//! A plan file while somebody edits it field by field.
//!
//! A form writes into the file itself, so that notes, order and spelling stay, and so that a value
//! that is wrong stands there as it was typed until it is mended.

use super::upgrade::upgrade_text;
use barm_domain::finding::Field;
use toml_edit::{
    Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value,
};

/// A plan file that is TOML, whether or not it is a sound plan.
#[derive(Debug, Clone)]
pub struct Draft {
    file: DocumentMut,
}

/// Keys whose values are whole numbers.
const COUNTS: &[&str] = &[
    "grade",
    "students",
    "groups",
    "replicates",
    "number",
    "per_period",
    "thermometers",
    "meters",
    "rulers",
    "kettles",
    "balances",
    "goggles",
];

/// One step into a file: a key, or the place in a list from 0.
enum Step<'f> {
    Key(&'f str),
    Place(usize),
}

fn steps(field: &str) -> Option<Vec<Step<'_>>> {
    let mut steps = Vec::new();
    for part in field.split('.') {
        let mut pieces = part.split('[');
        steps.push(Step::Key(pieces.next().filter(|key| !key.is_empty())?));
        for piece in pieces {
            steps.push(Step::Place(piece.strip_suffix(']')?.parse().ok()?));
        }
    }
    Some(steps)
}

/// A table, however it is written.
enum Node<'d> {
    Table(&'d mut dyn TableLike),
    Tables(&'d mut ArrayOfTables),
    List(&'d mut Array),
    Value(&'d mut Value),
}

fn node(item: &mut Item) -> Option<Node<'_>> {
    match item {
        Item::Table(table) => Some(Node::Table(table)),
        Item::ArrayOfTables(tables) => Some(Node::Tables(tables)),
        Item::Value(value) => Some(value_node(value)),
        Item::None => None,
    }
}

fn value_node(value: &mut Value) -> Node<'_> {
    match value {
        Value::InlineTable(table) => Node::Table(table),
        Value::Array(list) => Node::List(list),
        value => Node::Value(value),
    }
}

fn down<'d>(from: Node<'d>, step: &Step<'_>) -> Option<Node<'d>> {
    match (from, step) {
        (Node::Table(table), Step::Key(key)) => node(table.get_mut(key)?),
        (Node::Tables(tables), Step::Place(place)) => {
            Some(Node::Table(tables.get_mut(*place)?))
        }
        (Node::List(list), Step::Place(place)) => Some(value_node(list.get_mut(*place)?)),
        _ => None,
    }
}

impl Draft {
    /// Opens the text of a plan; nothing if it is not TOML. An older format is upgraded.
    pub fn open(text: &str) -> Option<Self> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        Some(Self { file: upgrade_text(text).parse().ok()? })
    }

    /// The text as it stands.
    pub fn text(&self) -> String {
        self.file.to_string()
    }

    fn at(&mut self, steps: &[Step<'_>]) -> Option<Node<'_>> {
        let root = Node::Table(self.file.as_table_mut());
        steps.iter().try_fold(root, down)
    }

    /// What a field says, as one would type it; nothing if it is not written.
    pub fn value(&mut self, field: &Field) -> Option<String> {
        match self.at(&steps(&field.0)?)? {
            Node::Value(value) => Some(plain(value)),
            _ => None,
        }
    }

    /// How many tables or values a list holds.
    pub fn count(&mut self, list: &str) -> usize {
        let Some(steps) = steps(list) else { return 0 };
        match self.at(&steps) {
            Some(Node::Tables(tables)) => tables.len(),
            Some(Node::List(list)) => list.len(),
            _ => 0,
        }
    }

    /// Writes a field as it was typed; an empty one leaves the file. Gives whether there is a
    /// place for it.
    pub fn put(&mut self, field: &Field, typed: &str) -> bool {
        let Some(steps) = steps(&field.0) else { return false };
        let Some((Step::Key(key), way)) = steps.split_last() else { return false };
        let Some(Node::Table(table)) = self.at(way) else { return false };
        let typed = typed.trim();
        if typed.is_empty() {
            table.remove(key);
            return true;
        }
        let mut value = value_of(key, typed);
        match table.get_mut(key).and_then(Item::as_value_mut) {
            Some(old) => {
                if plain(old) != plain(&value) {
                    *value.decor_mut() = old.decor().clone();
                    *old = value;
                }
            }
            None => {
                table.insert(key, Item::Value(value));
            }
        }
        true
    }

    /// Adds a table to a list of tables, such as `question[0].treatment`, with these keys.
    pub fn add(&mut self, list: &str, keys: &[(&str, &str)]) -> bool {
        let Some(steps) = steps(list) else { return false };
        let Some((Step::Key(key), way)) = steps.split_last() else { return false };
        let Some(Node::Table(table)) = self.at(way) else { return false };
        if !table.contains_key(key) {
            table.insert(key, Item::ArrayOfTables(ArrayOfTables::new()));
        }
        match table.get_mut(key).and_then(node) {
            Some(Node::Tables(tables)) => {
                let mut fresh = Table::new();
                for (key, typed) in keys {
                    fresh.insert(key, Item::Value(value_of(key, typed)));
                }
                fresh.decor_mut().set_prefix("\n");
                tables.push(fresh);
                true
            }
            Some(Node::List(list)) => {
                let mut fresh = InlineTable::new();
                for (key, typed) in keys {
                    fresh.insert(*key, value_of(key, typed));
                }
                list.push(fresh);
                true
            }
            _ => false,
        }
    }

    /// Takes a table out of its list, such as `question[0].treatment[2]`.
    pub fn take_out(&mut self, table: &str) -> bool {
        let Some(steps) = steps(table) else { return false };
        let Some((Step::Place(place), way)) = steps.split_last() else { return false };
        match self.at(way) {
            Some(Node::Tables(tables)) if *place < tables.len() => {
                tables.remove(*place);
                true
            }
            Some(Node::List(list)) if *place < list.len() => {
                list.remove(*place);
                true
            }
            _ => false,
        }
    }
}

/// A value as one would type it into a field.
fn plain(value: &Value) -> String {
    match value {
        Value::String(text) => text.value().clone(),
        Value::Datetime(time) => time.value().to_string(),
        other => {
            let mut bare = other.clone();
            bare.decor_mut().clear();
            bare.to_string().trim().to_owned()
        }
    }
}

/// What was typed, as the kind of value that its key takes; as text where it is not of that kind,
/// so that reading the plan can say what is wrong with it.
fn value_of(key: &str, typed: &str) -> Value {
    if COUNTS.contains(&key)
        && let Ok(number) = typed.parse::<i64>()
    {
        return number.into();
    }
    if key == "date"
        && let Ok(date) = typed.parse::<toml_edit::Datetime>()
    {
        return date.into();
    }
    if key == "invented"
        && let Ok(is) = typed.parse::<bool>()
    {
        return is.into();
    }
    typed.into()
}
