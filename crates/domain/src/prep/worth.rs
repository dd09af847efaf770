//! What a plan uses up is worth, at the prices of its packs.

use super::held::held;
use super::{Item, Prep};
use crate::plan::Plan;

/// What is used up, in dollars.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Worth {
    /// What all things together are worth whose price is known (dollars).
    pub dollars: f64,
    /// Things that no pack with a price holds, and so are missing from it.
    pub without_price: Vec<Item>,
}

/// What everything that is used up is worth, spares among it: each thing at the pack that holds most for
/// its price, and only the part of the pack that is used. What lies in the cupboard is worth as much as
/// what is still to be bought.
pub fn worth(plan: &Plan, prep: &Prep) -> Worth {
    let mut worth = Worth::default();
    for purchase in &prep.shopping.purchases {
        let item = &purchase.item;
        let packs =
            plan.materials.iter().filter(|row| Some(row.item.as_str()) == item.material());
        let each = packs.filter_map(|row| {
            let holds = held(plan, item, &row.pack).ok()?.value();
            row.price
                .filter(|price| holds > 0.0 && price.is_finite())
                .map(|price| price / holds)
        });
        match each.reduce(f64::min) {
            Some(each) => worth.dollars += each * purchase.need.value(),
            None => worth.without_price.push(item.clone()),
        }
    }
    worth
}
