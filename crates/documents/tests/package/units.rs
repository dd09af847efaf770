//! Units by a table of their own.

use barm_documents::package::{Kind, TABLES};
use barm_domain::shared::Measure;

/// Codes and what they are: The Unified Code for Units of Measure (Regenstrief Institute), case
/// sensitive form; from memory.
const UCUM: [(&str, &str); 10] = [
    ("mm", "millimeter"),
    ("min", "minute"),
    ("h", "hour"),
    ("Cel", "degree Celsius"),
    ("g", "gram"),
    ("mL", "milliliter"),
    ("hPa", "hectopascal"),
    ("%", "percent"),
    ("[drp]", "drop"),
    ("{piece}", "an annotation: a count"),
];

#[test]
fn every_unit_is_a_code_of_the_table() {
    let known = |unit: &str| UCUM.iter().any(|(code, _)| *code == unit);
    for table in TABLES {
        for field in table.fields {
            assert!(field.unit.is_none_or(known), "{}", field.name);
        }
    }
    assert!(Measure::ALL.into_iter().all(|measure| known(measure.ucum())));
}

// A head that ends in a unit says the same as the unit beside it.
#[test]
fn heads_and_units_agree_and_numbers_that_measure_have_one() {
    for field in TABLES.iter().flat_map(|table| table.fields) {
        let last = field.name.rsplit_once('_').map(|(_, last)| last);
        let named = last.filter(|last| UCUM.iter().any(|(code, _)| code == last));
        if let Some(unit) = named {
            assert_eq!(field.unit, Some(unit), "{}", field.name);
        }
        if matches!(field.kind, Kind::Number(..)) && field.name != "amount" {
            assert!(field.unit.is_some(), "{}", field.name);
        }
    }
}
