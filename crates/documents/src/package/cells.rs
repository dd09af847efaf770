//! The cells of each row, in the order of the columns.

use super::tables::YEASTS;
use barm_domain::shared::{
    AsideRow, BagRow, IngredientRow, MeterRow, ReadingRow, TreatmentRow,
};
use barm_science::setup::YeastKind;

/// A number without an exponent, and without a sign before 0.
pub(super) fn number(value: f64) -> String {
    (value + 0.0).to_string()
}

fn or_blank<T: ToString>(value: Option<T>) -> String {
    value.map(|value| value.to_string()).unwrap_or_default()
}

pub(super) const fn yeast(kind: Option<YeastKind>) -> &'static str {
    match kind {
        None => YEASTS[0],
        Some(YeastKind::ActiveDry) => YEASTS[1],
        Some(YeastKind::Instant) => YEASTS[2],
        Some(YeastKind::Compressed) => YEASTS[3],
    }
}

pub(super) fn of_treatment(row: &TreatmentRow) -> Vec<String> {
    vec![
        row.code.to_string(),
        or_blank(row.question),
        or_blank(row.beside),
        row.control.to_string(),
        number(row.bag_width_mm),
        number(row.bag_height_mm),
        number(row.card_length_mm),
        number(row.card_width_mm),
        number(row.water_ml),
        number(row.water_celsius),
        yeast(row.yeast).to_owned(),
        number(row.yeast_g),
        row.lying.word().to_owned(),
        or_blank(row.tray_celsius.map(number)),
    ]
}

pub(super) fn of_ingredient(row: &IngredientRow) -> Vec<String> {
    vec![
        row.treatment.to_string(),
        row.part.word().to_owned(),
        row.item.id().to_owned(),
        number(row.amount),
        row.measure.ucum().to_owned(),
    ]
}

pub(super) fn of_bag(row: &BagRow) -> Vec<String> {
    vec![
        row.code.to_string(),
        row.code.period().to_string(),
        row.code.group().to_string(),
        row.treatment.to_string(),
        row.replicate.to_string(),
        number(row.room_celsius),
        number(row.pressure_hpa),
    ]
}

pub(super) fn of_reading(row: &ReadingRow) -> Vec<String> {
    vec![row.bag.to_string(), number(row.minute), number(row.height_mm)]
}

pub(super) fn of_aside(row: &AsideRow) -> Vec<String> {
    vec![row.bag.to_string(), row.rule.word().to_owned()]
}

pub(super) fn of_meter(row: &MeterRow) -> Vec<String> {
    vec![
        row.bag.to_string(),
        or_blank(row.turn),
        or_blank(row.minute.map(number)),
        number(row.percent),
        or_blank(row.celsius.map(number)),
        number(row.gas_ml),
        number(row.air_ml),
    ]
}
