//! What to buy, in whole packs at least cost.

use super::held::{LeftOut, held};
use super::item::Item;
use super::measure::Measure;
use super::packs::{Offer, choose};
use super::total::Total;
use crate::plan::{Material, Plan};

/// The shopping list.
#[derive(Debug, Clone, PartialEq)]
pub struct Shopping {
    /// Everything that is used up, with what to buy of it.
    pub purchases: Vec<Purchase>,
    /// What all packs whose price is known cost together (dollars).
    pub cost: f64,
    /// What must be bought but has no price, and so is missing from the cost.
    pub without_price: Vec<Item>,
}

/// One line of the shopping list.
#[derive(Debug, Clone, PartialEq)]
pub struct Purchase {
    /// What it is.
    pub item: Item,
    /// All that the plan needs, with spare.
    pub need: Measure,
    /// What is in the cupboard.
    pub in_stock: Measure,
    /// What is missing.
    pub short: Measure,
    /// What to buy.
    pub buy: Buy,
    /// Packs and stocks of the plan that were left out, with the reason.
    pub left_out: Vec<LeftOut>,
    /// Whether the plan uses several kinds of this thing (such as two sizes of bag) but its
    /// materials do not tell them apart: then the same packs are taken for each kind, and stock is
    /// counted for none.
    pub kinds_not_told_apart: bool,
}

/// What to buy of one thing.
#[derive(Debug, Clone, PartialEq)]
pub enum Buy {
    /// Nothing: the stock lasts.
    Nothing,
    /// Whole packs.
    Packs {
        /// Packs that are bought, at least one of each.
        packs: Vec<Pack>,
        /// By which rule they were chosen.
        chosen: Chosen,
        /// What they cost together (dollars); nothing if a price is missing.
        cost: Option<f64>,
        /// What is left of them.
        left_over: Measure,
    },
    /// As much as is missing: the plan names no pack of it.
    NoPackKnown,
}

/// A number of packs of one size.
#[derive(Debug, Clone, PartialEq)]
pub struct Pack {
    /// The pack, as the plan says it.
    pub written: String,
    /// What one pack holds.
    pub holds: Measure,
    /// Price of one pack (dollars), if it is known.
    pub price: Option<f64>,
    /// How many.
    pub count: u64,
}

/// By which rule packs were chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Chosen {
    /// They cost least; of equal cost they are the fewest.
    LeastCost,
    /// They are the fewest, because a price is missing.
    FewestPacks,
    /// They hold enough, but there were so many ways that a better one may exist.
    NotProven,
}

/// Prices are compared in whole millionths of a dollar.
const MONEY_PARTS: f64 = 1e6;

/// The shopping list for those totals.
pub(super) fn shopping(plan: &Plan, totals: &[Total]) -> Shopping {
    let purchases: Vec<Purchase> = totals
        .iter()
        .filter_map(|total| total.item.material().map(|material| (total, material)))
        .map(|(total, material)| {
            let kinds =
                totals.iter().filter(|other| other.item.material() == Some(material)).count();
            purchase(plan, total, material, kinds > 1)
        })
        .collect();
    let mut cost = 0;
    let mut without_price = Vec::new();
    for purchase in &purchases {
        match &purchase.buy {
            Buy::Nothing => {}
            Buy::Packs { cost: Some(dollars), .. } => cost += money(*dollars),
            Buy::Packs { cost: None, .. } | Buy::NoPackKnown => {
                without_price.push(purchase.item.clone());
            }
        }
    }
    Shopping { purchases, cost: cost as f64 / MONEY_PARTS, without_price }
}

fn money(dollars: f64) -> u128 {
    (dollars * MONEY_PARTS).round() as u128
}

fn purchase(plan: &Plan, total: &Total, material: &str, several_kinds: bool) -> Purchase {
    let item = &total.item;
    let mut left_out = Vec::new();
    let mut in_stock = Measure::none(item.unit());
    let mut packs = Vec::new();
    for row in plan.materials.iter().filter(|row| row.item == material) {
        if let Some(stock) = row.in_stock.as_ref().filter(|stock| stock.value > 0.0) {
            match held(plan, item, stock) {
                Ok(held) if !several_kinds => in_stock = in_stock.plus(held),
                Ok(_) => {}
                Err(reason) => left_out.push(reason),
            }
        }
        match held(plan, item, &row.pack) {
            Ok(holds) => packs.push(pack(row, holds)),
            Err(reason) => left_out.push(reason),
        }
    }
    // The order of the plan's lines must not decide between packs that are equally good.
    packs.sort_by(|a, b| {
        let price = |pack: &Pack| pack.price.map(money);
        (b.holds, price(a), &a.written).cmp(&(a.holds, price(b), &b.written))
    });
    let need = total.need();
    let short = need.less(in_stock);
    let buy = if short.is_none() {
        Buy::Nothing
    } else {
        buy(short, packs).unwrap_or(Buy::NoPackKnown)
    };
    Purchase {
        item: item.clone(),
        need,
        in_stock,
        short,
        buy,
        left_out,
        kinds_not_told_apart: several_kinds,
    }
}

fn pack(row: &Material, holds: Measure) -> Pack {
    Pack { written: row.pack.written.clone(), holds, price: row.price, count: 0 }
}

/// The packs to take, the larger first; nothing if there are none.
fn buy(short: Measure, mut packs: Vec<Pack>) -> Option<Buy> {
    let priced = packs.iter().all(|pack| pack.price.is_some());
    let offers: Vec<Offer> = packs
        .iter()
        .map(|pack| Offer {
            holds: pack.holds.millionths(),
            price: pack.price.filter(|_| priced).map_or(0, money),
        })
        .collect();
    let choice = choose(short.millionths(), &offers)?;
    for (pack, count) in packs.iter_mut().zip(choice.counts) {
        pack.count = u64::try_from(count).unwrap_or(u64::MAX);
    }
    packs.retain(|pack| pack.count > 0);
    let cost = packs.iter().map(|pack| Some(money(pack.price?) * u128::from(pack.count)));
    let held = packs
        .iter()
        .fold(Measure::none(short.unit()), |sum, pack| sum.plus(pack.holds.times(pack.count)));
    Some(Buy::Packs {
        cost: cost.sum::<Option<u128>>().map(|cost| cost as f64 / MONEY_PARTS),
        left_over: held.less(short),
        chosen: match (priced, choice.proven) {
            (_, false) => Chosen::NotProven,
            (true, true) => Chosen::LeastCost,
            (false, true) => Chosen::FewestPacks,
        },
        packs,
    })
}
