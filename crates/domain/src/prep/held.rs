//! What a pack or a stock holds.

use super::dose::as_bought;
use super::item::Item;
use super::measure::{Measure, Unit};
use crate::amount::{Amount, AmountKind};
use crate::bench::{self, ShelfEnzyme};
use crate::plan::Plan;
use barm_science::enzyme::products::product;

/// A pack or stock of the plan that could not be counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// As the plan says it.
    pub written: String,
    /// What is wrong.
    pub problem: String,
    /// What to write instead.
    pub fix: String,
}

/// What a pack or stock holds of an item.
pub(super) fn held(plan: &Plan, item: &Item, amount: &Amount) -> Result<Measure, LeftOut> {
    let left_out = |problem: String, fix: String| LeftOut {
        written: amount.written.clone(),
        problem,
        fix,
    };
    let counted = |value: Option<f64>| {
        value.ok_or_else(|| {
            left_out(
                format!("“{}” does not say how much {} that is", amount.written, item.name()),
                match item.unit() {
                    Unit::Gram => "write grams, such as \"100 g\"".into(),
                    Unit::Milliliter => "write mL, such as \"15 mL\"".into(),
                    Unit::Piece => {
                        "write how many pieces there are, such as \"100 pieces\"".into()
                    }
                },
            )
        })
    };
    let value =
        match item {
            Item::Yeast(kind) => bench::yeast_grams(*kind, amount)
                .map(|(grams, _)| grams)
                .map_err(|error| left_out(error.problem, error.fix))?,
            Item::Food(id) => bench::ingredient(plan, id, "item")
                .and_then(|food| bench::food_grams(&food, amount, "pack"))
                .map(|(grams, _)| grams)
                .map_err(|error| left_out(error.problem, error.fix))?,
            Item::Enzyme(key) => counted(product(key).and_then(|product| {
                as_bought(ShelfEnzyme { product, is_stock: false }, amount)
            }))?,
            _ => counted((amount.kind == AmountKind::Pieces).then_some(amount.value))?,
        };
    let held = Measure::new(item.unit(), value);
    if held.is_none() {
        return Err(left_out(
            format!("“{}” holds nothing", amount.written),
            "write what one pack holds, such as \"100 g\"".into(),
        ));
    }
    Ok(held)
}
