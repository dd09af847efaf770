//! Packages that others made.

use crate::any::small;
use crate::refused::{package, says, zipped};
use barm_documents::package::read;
use serde_json::{Value, json};
use std::collections::BTreeMap;

fn descriptor(files: &BTreeMap<String, Vec<u8>>) -> Value {
    serde_json::from_slice(&files["datapackage.json"]).unwrap()
}

fn put(files: &mut BTreeMap<String, Vec<u8>>, descriptor: &Value) {
    files.insert("datapackage.json".into(), descriptor.to_string().into_bytes());
}

#[test]
fn a_foreign_package_with_our_tables_is_read() {
    let mut files = package();
    let mut own = descriptor(&files);
    own.as_object_mut().unwrap().remove("barm");
    own["licenses"] = json!([{ "name": "Other-1.0" }]);
    own["resources"]
        .as_array_mut()
        .unwrap()
        .insert(0, json!({ "name": "more", "path": "more.csv" }));
    for resource in own["resources"].as_array_mut().unwrap() {
        if resource["name"] == "bags" {
            resource["path"] = json!(["data/all bags.csv"]);
        }
    }
    put(&mut files, &own);
    let bags = String::from_utf8(files.remove("bags.csv").unwrap()).unwrap();
    // Another order of columns, one more, and line ends of another kind.
    let row: Vec<&str> = bags.lines().nth(1).unwrap().split(',').collect();
    let heads: Vec<&str> = bags.lines().next().unwrap().split(',').collect();
    let turned = |cells: &[&str]| cells.iter().rev().copied().collect::<Vec<_>>().join(",");
    let bags = format!("{},teacher\n{},Ann\n", turned(&heads), turned(&row));
    files.insert("data/all bags.csv".into(), bags.into_bytes());
    let opened = read(&zipped(&files)).unwrap();
    assert_eq!(opened.shared, small());
    assert_eq!((opened.licence, opened.grade, opened.made_up), (None, None, false));
}

// The sample that comes with the validator's own introduction, in other words: a table with `t_min`
// and `h_mm`.
#[test]
fn a_foreign_package_without_our_tables_is_refused_naming_them() {
    let resource = json!({ "name": "d", "path": "d.csv" });
    let mut files = BTreeMap::from([("d.csv".to_owned(), b"t_min,h_mm\n0,4\n".to_vec())]);
    put(&mut files, &json!({ "name": "check", "resources": [resource] }));
    for table in ["treatments", "ingredients", "bags", "readings", "set-aside", "meter"] {
        says(&files, &format!("“{table}” ("));
    }
}
