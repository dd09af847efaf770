//! What lies in the cupboard, as a limit on bags.

use super::rule::{Rule, Stock};
use crate::plan::{Plan, PlannedBag};
use crate::prep::{Item, PrepError, prep};
use std::collections::BTreeMap;

/// Millionths of a whole.
const PARTS: f64 = 1e6;

/// A rule for each material of which the plan says how much there is, as if no more were bought.
/// Cards, cups and spoons are used again, and labels can be printed on any paper.
///
/// # Errors
/// [`PrepError`] if a recipe cannot be measured out.
pub(super) fn stocks(plan: &Plan) -> Result<Vec<Rule>, PrepError> {
    let names: Vec<String> = plan.treatments().map(|(_, t)| t.name.clone()).collect();
    let mut takes: BTreeMap<Item, Vec<i64>> = BTreeMap::new();
    let mut held: BTreeMap<Item, (i64, String)> = BTreeMap::new();
    for (place, name) in names.iter().enumerate() {
        let prepared = prep(&with_one_bag(plan, name))?;
        for purchase in prepared.shopping.purchases {
            let counted =
                matches!(purchase.item, Item::Yeast(_) | Item::Food(_) | Item::Enzyme(_));
            let counted = counted || matches!(purchase.item, Item::Bag(_));
            let said = plan.materials.iter().any(|material| {
                purchase.item.material() == Some(&material.item) && material.in_stock.is_some()
            });
            if !counted || !said {
                continue;
            }
            let total = prepared.totals.iter().find(|total| total.item == purchase.item);
            let Some(total) = total else { continue };
            let with_spare = total.used.millionths() as f64 * (1.0 + plan.spare);
            let of = takes.entry(purchase.item.clone()).or_insert_with(|| vec![0; names.len()]);
            of[place] = with_spare.ceil().min(1e15) as i64;
            let most = (purchase.in_stock.value() * PARTS).min(1e15) as i64;
            held.insert(purchase.item, (most, purchase.in_stock.to_string()));
        }
    }
    let rules = takes.into_iter().filter_map(|(item, takes)| {
        let (most, in_words) = held.remove(&item)?;
        Some(Rule::Stock(Stock { name: item.name(), in_words, takes, most }))
    });
    Ok(rules.collect())
}

/// The plan with a single bag of one treatment.
fn with_one_bag(plan: &Plan, treatment: &str) -> Plan {
    let period = plan.periods.first().map(|period| period.name.clone()).unwrap_or_default();
    let bag = PlannedBag {
        code: "P1-01A-C".into(),
        period,
        group: 1,
        place: 1,
        question: String::new(),
        treatment: treatment.to_owned(),
        replicate: 1,
    };
    Plan { bags: vec![bag], ..plan.clone() }
}
