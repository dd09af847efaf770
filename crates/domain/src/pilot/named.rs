//! The day and the lots of a pilot whose sheet leaves them open.

use super::bags::Role;
use super::lots::{FIRST_LOT, Lot, Lots, in_use};
use super::protocol::{Protocol, yeast_of};
use super::readings::LotNames;
use crate::plan::Plan;

/// What the things that a pilot tries are called: as they were written, or else the lot in use, or
/// else [`FIRST_LOT`].
pub fn named(plan: &Plan, protocol: &Protocol, lots: &Lots, written: &LotNames) -> LotNames {
    fn name<T>(
        written: Option<&String>,
        lots: &[Lot<T>],
        like: impl Fn(&Lot<T>) -> bool,
    ) -> Option<String> {
        let used = || in_use(lots, like).map(|lot| &lot.name);
        Some(written.or_else(used).map_or_else(|| FIRST_LOT.to_owned(), Clone::clone))
    }
    let (bag, card) = (&plan.base.bag.bag, &plan.base.card.card);
    let enzyme = protocol.bags.iter().find_map(|bag| match &bag.role {
        Role::Carrier(key) | Role::Enzyme(key) => Some(key),
        Role::Yeast => None,
    });
    LotNames {
        yeast: name(written.yeast.as_ref(), &lots.yeast, |lot| {
            Some(lot.found.kind) == yeast_of(plan)
        }),
        bags: name(written.bags.as_ref(), &lots.bags, |lot| lot.found.is(bag, card)),
        enzymes: name(written.enzymes.as_ref(), &lots.enzymes, |lot| {
            Some(&lot.found.product) == enzyme
        }),
        meter: name(written.meter.as_ref(), &lots.meters, |_| true),
    }
}
