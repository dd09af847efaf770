//! What pilots found, kept for each lot of yeast, box of bags, enzyme and meter.

use super::readings::Part;
use crate::plan::{BagChoice, CardChoice, YeastKind};
use barm_science::meter::MeterPosterior;
use barm_science::prior::Learned;
use jiff::civil::Date;

/// A lot that nobody named.
pub const FIRST_LOT: &str = "first";

/// What one day's pilot left of one lot; a lot that was tried on several days has as many.
#[derive(Debug, Clone, PartialEq)]
pub struct Lot<T> {
    /// A word of the teacher's own, such as `jar of March`.
    pub name: String,
    /// When it was tried.
    pub date: Date,
    /// Whether forecasts go by it. Of all lots of one kind of thing only one is in use.
    pub in_use: bool,
    /// What was measured that day, in order.
    pub parts: Vec<Part>,
    /// What is known of it since.
    pub found: T,
}

/// A level customary teaspoon of a yeast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Teaspoon {
    /// Its mass (g).
    pub grams: f64,
    /// Standard deviation of what is known of that (g).
    pub grams_sd: f64,
    /// Relative standard deviation from spoon to spoon (1).
    pub scatter: f64,
}

/// What is known of a jar of yeast.
#[derive(Debug, Clone, PartialEq)]
pub struct YeastLot {
    /// Which yeast.
    pub kind: YeastKind,
    /// A level teaspoon of it, if any was weighed.
    pub teaspoon: Option<Teaspoon>,
    /// Learned of the yeast.
    pub numbers: Learned,
}

/// What is known of a box of bags, under one kind of card and in one room.
#[derive(Debug, Clone, PartialEq)]
pub struct BagKind {
    /// The bag.
    pub bag: BagChoice,
    /// The card.
    pub card: CardChoice,
    /// Learned of bag, card and cooling.
    pub numbers: Learned,
}

/// What is known of a bottle of an enzyme.
#[derive(Debug, Clone, PartialEq)]
pub struct EnzymeLot {
    /// Key of the product.
    pub product: String,
    /// Learned of the enzyme.
    pub numbers: Learned,
}

/// What pilots found for one plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Lots {
    /// Jars of yeast.
    pub yeast: Vec<Lot<YeastLot>>,
    /// Boxes of bags.
    pub bags: Vec<Lot<BagKind>>,
    /// Bottles of enzymes.
    pub enzymes: Vec<Lot<EnzymeLot>>,
    /// Meters.
    pub meters: Vec<Lot<MeterPosterior>>,
}

/// From where a day's pilot of one lot goes on.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Base<T> {
    /// From what was found before, if anything was.
    From(Option<T>, Vec<Part>),
    /// These parts of the same day would be lost.
    Lost(Vec<Part>),
}

/// Where a pilot of that day goes on, of the lots that `like` picks.
///
/// A day's parts count once: the same parts again take the place of what that day found before, and
/// other parts of the same day come on top of it.
pub(super) fn base<T: Clone>(
    lots: &[Lot<T>],
    like: impl Fn(&Lot<T>) -> bool,
    date: Date,
    parts: &[Part],
) -> Base<T> {
    let own = || lots.iter().filter(|lot| like(lot));
    let before = own().filter(|lot| lot.date < date).max_by_key(|lot| lot.date);
    let before = || before.map(|lot| lot.found.clone());
    let Some(same) = own().find(|lot| lot.date == date) else {
        return Base::From(before(), parts.to_vec());
    };
    if same.parts.iter().all(|part| !parts.contains(part)) {
        let mut all: Vec<Part> = same.parts.iter().chain(parts).copied().collect();
        all.sort_unstable();
        return Base::From(Some(same.found.clone()), all);
    }
    let lost: Vec<Part> =
        same.parts.iter().filter(|part| !parts.contains(part)).copied().collect();
    if lost.is_empty() { Base::From(before(), parts.to_vec()) } else { Base::Lost(lost) }
}

/// Puts what a day found into the list, in place of what that day had found of the same lot, and in
/// use in place of all others of the kind that `like` picks.
pub(super) fn put<T>(lots: &mut Vec<Lot<T>>, new: Lot<T>, like: impl Fn(&Lot<T>) -> bool) {
    for lot in lots.iter_mut().filter(|lot| like(lot)) {
        lot.in_use = false;
    }
    let same = |lot: &Lot<T>| like(lot) && lot.name == new.name && lot.date == new.date;
    match lots.iter().position(same) {
        Some(place) => lots[place] = new,
        None => lots.push(new),
    }
}

/// The lot that is in use, of those that `like` picks: where one has several days, the last.
pub(super) fn in_use<T>(lots: &[Lot<T>], like: impl Fn(&Lot<T>) -> bool) -> Option<&Lot<T>> {
    lots.iter().filter(|lot| lot.in_use && like(lot)).max_by_key(|lot| lot.date)
}

impl Lots {
    /// Whether nothing was ever tried.
    pub fn is_empty(&self) -> bool {
        self.yeast.is_empty()
            && self.bags.is_empty()
            && self.enzymes.is_empty()
            && self.meters.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::{Base, Lot, Part, base, in_use, put};
    use jiff::civil::{Date, date};

    fn lot(name: &str, date: Date, parts: &[Part], found: u32) -> Lot<u32> {
        Lot { name: name.into(), date, in_use: true, parts: parts.to_vec(), found }
    }

    #[test]
    fn a_days_parts_count_once() {
        let (monday, friday) = (date(2027, 3, 1), date(2027, 3, 5));
        let all = |_: &Lot<u32>| true;
        let lots = [
            lot("a", monday, &[Part::Syringe], 1),
            lot("a", friday, &[Part::Dummy, Part::Bags], 2),
        ];
        let from = |found, parts: &[Part]| Base::From(found, parts.to_vec());
        // A new day goes on from the last one.
        assert_eq!(
            base(&lots, all, date(2027, 3, 8), &[Part::Bags]),
            from(Some(2), &[Part::Bags])
        );
        // Another part of the same day comes on top.
        let both = [Part::Dummy, Part::Syringe, Part::Bags];
        assert_eq!(base(&lots, all, friday, &[Part::Syringe]), from(Some(2), &both));
        // The same parts again start where that day had started.
        assert_eq!(base(&lots, all, friday, &both), from(Some(1), &both));
        assert_eq!(base(&lots, all, monday, &[Part::Syringe]), from(None, &[Part::Syringe]));
        // Half of them would lose the other half.
        assert_eq!(base(&lots, all, friday, &[Part::Bags]), Base::Lost(vec![Part::Dummy]));
        // Nothing of another lot.
        assert_eq!(base(&lots, |_| false, friday, &[Part::Bags]), from(None, &[Part::Bags]));
    }

    #[test]
    fn one_lot_is_in_use() {
        let (monday, friday) = (date(2027, 3, 1), date(2027, 3, 5));
        let mut lots = vec![lot("a", monday, &[], 1)];
        let all = |_: &Lot<u32>| true;
        put(&mut lots, lot("b", friday, &[], 2), all);
        assert_eq!(in_use(&lots, all).map(|lot| lot.found), Some(2));
        put(&mut lots, lot("b", friday, &[], 3), all);
        assert_eq!(lots.len(), 2);
        assert_eq!(in_use(&lots, all).map(|lot| lot.found), Some(3));
        put(&mut lots, lot("a", friday, &[], 4), all);
        assert_eq!(lots.iter().filter(|lot| lot.in_use).count(), 1);
    }
}
