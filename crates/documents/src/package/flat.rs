//! Shared data as one plain table, for a spreadsheet.

use super::cells::{number, yeast};
use crate::rfc4180;
use barm_domain::shared::{
    BagRow, IngredientRow, Part, ReadingRow, Rows, Shared, TreatmentRow,
};
use std::borrow::Cow;

/// The mark by which spreadsheets know UTF-8.
const MARK: &[u8] = b"\xef\xbb\xbf";

const HEADS: [&str; 22] = [
    "bag",
    "period",
    "group",
    "treatment",
    "compared_with",
    "replicate",
    "food",
    "enzyme",
    "extra",
    "yeast",
    "yeast_g",
    "water_mL",
    "water_Cel",
    "lying",
    "tray_Cel",
    "bag_mm",
    "card_mm",
    "room_Cel",
    "pressure_hPa",
    "set_aside",
    "minute",
    "height_mm",
];

/// One table with a row a height, and everything that is known of its bag beside it; a bag that was
/// never read has one row without a height. What a breath meter showed is not in it.
///
/// UTF-8 with a mark. No cell can be taken for a formula.
pub fn flat(shared: &Shared) -> Vec<u8> {
    let rows = shared.rows();
    let mut lines: Vec<Vec<String>> = Vec::new();
    for bag in &rows.bags {
        let Some(treatment) = rows.treatments.iter().find(|row| row.code == bag.treatment)
        else {
            continue;
        };
        let own = of_bag(rows, bag, treatment);
        let mut readings = rows.readings.iter().filter(|row| row.bag == bag.code).peekable();
        if readings.peek().is_none() {
            lines.push(with(&own, None));
        }
        lines.extend(readings.map(|reading| with(&own, Some(reading))));
    }
    let lines = lines.into_iter().map(|line| line.into_iter().map(Cow::Owned));
    let mut bytes = MARK.to_vec();
    bytes.extend(rfc4180::write(&HEADS, lines));
    bytes
}

fn with(own: &[String], reading: Option<&ReadingRow>) -> Vec<String> {
    let cell =
        |of: fn(&ReadingRow) -> f64| reading.map(|row| number(of(row))).unwrap_or_default();
    let mut line = own.to_vec();
    line.extend([cell(|row| row.minute), cell(|row| row.height_mm)]);
    line
}

fn of_bag(rows: &Rows, bag: &BagRow, treatment: &TreatmentRow) -> Vec<String> {
    let parts = |part: Part| {
        let own = |row: &&IngredientRow| row.treatment == treatment.code && row.part == part;
        let says = |row: &IngredientRow| {
            format!("{} {} {}", row.item.id(), number(row.amount), row.measure.ucum())
        };
        rows.ingredients.iter().filter(own).map(says).collect::<Vec<_>>().join("; ")
    };
    let sizes = |one: f64, other: f64| format!("{} x {}", number(one), number(other));
    let aside = rows.set_aside.iter().find(|row| row.bag == bag.code);
    vec![
        bag.code.to_string(),
        bag.code.period().to_string(),
        bag.code.group().to_string(),
        treatment.code.to_string(),
        treatment.beside.map(|code| code.to_string()).unwrap_or_default(),
        bag.replicate.to_string(),
        parts(Part::Food),
        parts(Part::Enzyme),
        parts(Part::Extra),
        yeast(treatment.yeast).to_owned(),
        number(treatment.yeast_g),
        number(treatment.water_ml),
        number(treatment.water_celsius),
        treatment.lying.word().to_owned(),
        treatment.tray_celsius.map(number).unwrap_or_default(),
        sizes(treatment.bag_width_mm, treatment.bag_height_mm),
        sizes(treatment.card_length_mm, treatment.card_width_mm),
        number(bag.room_celsius),
        number(bag.pressure_hpa),
        aside.map(|row| row.rule.word().to_owned()).unwrap_or_default(),
    ]
}
