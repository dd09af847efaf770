//! `datapackage.json`: what is in a package, for programs.

use super::tables::{Field, Kind, Table};
use super::{About, FORMAT};
use serde_json::{Map, Value, json};

/// Its name in the zip.
pub(super) const FILE: &str = "datapackage.json";

/// The descriptor of tables with that many bytes each.
///
/// # Source
/// Data Package version 2.0, datapackage.org (from memory, held to by the `frictionless` validator).
/// `unit` and `barm` are properties of our own, which the standard allows.
pub(super) fn written(about: &About, tables: &[(&Table, usize)]) -> Vec<u8> {
    let made = if about.made_up { "Invented: no class made these bags. " } else { "" };
    let described = format!(
        "{made}Zip bags with yeast, warm water, food and enzymes, made by a school class; the rise of \
         a card on each bag was read with a ruler. Everything has codes, nothing has names. README.md \
         explains every column."
    );
    let resources: Vec<Value> =
        tables.iter().map(|(table, bytes)| resource(table, *bytes)).collect();
    let descriptor = json!({
        "$schema": "https://datapackage.org/profiles/2.0/datapackage.json",
        "name": "yeast-bags-of-a-class",
        "title": "Yeast bags of a school class",
        "description": described,
        "version": "1.0.0",
        "keywords": ["yeast", "fermentation", "enzymes", "school", "class practical"],
        "licenses": [{
            "name": about.licence.id(),
            "title": about.licence.title(),
            "path": about.licence.address(),
        }],
        "contributors": [{ "title": "Groups of a school class, by codes only" }],
        "barm": {
            "format": FORMAT,
            "madeUp": about.made_up,
            "grade": about.grade,
            "readableMm": about.readable_mm,
            "intervalMin": about.interval_min,
        },
        "resources": resources,
    });
    // A value made of maps with keys of text can be written.
    let mut text = serde_json::to_vec_pretty(&descriptor).unwrap_or_default();
    text.push(b'\n');
    text
}

fn resource(table: &Table, bytes: usize) -> Value {
    let fields: Vec<Value> = table.fields.iter().map(field).collect();
    let links: Vec<Value> = table
        .links
        .iter()
        .map(|(own, table, there)| {
            json!({ "fields": [own], "reference": { "resource": table, "fields": [there] } })
        })
        .collect();
    let mut schema = json!({
        "$schema": "https://datapackage.org/profiles/2.0/tableschema.json",
        "fields": fields,
        "missingValues": [""],
    });
    if !table.key.is_empty() {
        schema["primaryKey"] = json!(table.key);
    }
    if !links.is_empty() {
        schema["foreignKeys"] = json!(links);
    }
    json!({
        "name": table.name,
        "type": "table",
        "title": table.says,
        "path": format!("{}.csv", table.name),
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "bytes": bytes,
        "schema": schema,
    })
}

fn field(field: &Field) -> Value {
    let mut constraints = Map::new();
    if field.required {
        constraints.insert("required".into(), json!(true));
    }
    let kind = match field.kind {
        Kind::Code(pattern) => {
            constraints.insert("pattern".into(), json!(pattern));
            "string"
        }
        Kind::OneOf(words) => {
            constraints.insert("enum".into(), json!(words()));
            "string"
        }
        Kind::Integer(least, most) => {
            constraints.insert("minimum".into(), json!(least));
            constraints.insert("maximum".into(), json!(most));
            "integer"
        }
        Kind::Number(least, most) => {
            constraints.insert("minimum".into(), json!(least));
            constraints.insert("maximum".into(), json!(most));
            "number"
        }
        Kind::Boolean => "boolean",
    };
    let mut described = json!({ "name": field.name, "type": kind, "description": field.says });
    if let Some(unit) = field.unit {
        described["unit"] = json!(unit);
    }
    if !constraints.is_empty() {
        described["constraints"] = Value::Object(constraints);
    }
    described
}
