//! The lots there are, as a person sees them: which is in use, another in its place, one taken out.

use super::lots::{BagKind, EnzymeLot, Lot, Lots, YeastLot};
use super::readings::{LotNames, Part};
use crate::cupboard::spoken;
use barm_science::meter::MeterPosterior;
use barm_science::prior::Of;
use jiff::civil::Date;

/// What comes in lots.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Thing {
    /// Jars of yeast.
    Yeast,
    /// Boxes of bags.
    Bags,
    /// Bottles of an enzyme.
    Enzyme,
    /// Meters.
    Meter,
}

/// One lot with all the days on which it was tried.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotLine {
    /// What it is a lot of.
    pub thing: Thing,
    /// Of which sort, such as `instant yeast`; of one sort only one lot is in use.
    pub sort: String,
    /// Its name.
    pub name: String,
    /// When it was tried, the first day first.
    pub dates: Vec<Date>,
    /// What was measured of it on any of those days.
    pub parts: Vec<Part>,
    /// Whether forecasts go by it.
    pub in_use: bool,
}

/// What is found of a lot says of which sort it is.
trait Sorted {
    const THING: Thing;
    fn sort(&self) -> String;
    fn is_like(&self, other: &Self) -> bool {
        self.sort() == other.sort()
    }
}

impl Sorted for YeastLot {
    const THING: Thing = Thing::Yeast;
    fn sort(&self) -> String {
        Of::Yeast(self.kind).to_string()
    }
}

impl Sorted for BagKind {
    const THING: Thing = Thing::Bags;
    fn sort(&self) -> String {
        format!("{} bag, card {}", self.bag.written, self.card.written)
    }
    fn is_like(&self, other: &Self) -> bool {
        self.is(&other.bag.bag, &other.card.card)
    }
}

impl Sorted for EnzymeLot {
    const THING: Thing = Thing::Enzyme;
    fn sort(&self) -> String {
        spoken(&self.product).to_owned()
    }
}

impl Sorted for MeterPosterior {
    const THING: Thing = Thing::Meter;
    fn sort(&self) -> String {
        "breath meter".to_owned()
    }
}

impl LotLine {
    fn is<T: Sorted>(&self, lot: &Lot<T>) -> bool {
        T::THING == self.thing && lot.name == self.name && lot.found.sort() == self.sort
    }
}

fn lines<T: Sorted>(lots: &[Lot<T>], all: &mut Vec<LotLine>) {
    for lot in lots {
        let known = all.iter_mut().find(|line| line.is(lot));
        match known {
            Some(line) => {
                line.dates.push(lot.date);
                line.dates.sort_unstable();
                line.parts.extend(&lot.parts);
                line.parts.sort_unstable();
                line.parts.dedup();
                line.in_use |= lot.in_use;
            }
            None => all.push(LotLine {
                thing: T::THING,
                sort: lot.found.sort(),
                name: lot.name.clone(),
                dates: vec![lot.date],
                parts: lot.parts.clone(),
                in_use: lot.in_use,
            }),
        }
    }
}

/// Puts the last day of the lots that `of` picks in use, in place of all others of their sort.
fn choose<T: Sorted>(lots: &mut [Lot<T>], of: impl Fn(&Lot<T>) -> bool) {
    let picked = lots.iter().enumerate().filter(|(_, lot)| of(lot));
    let Some(last) = picked.max_by_key(|(_, lot)| lot.date).map(|(at, _)| at) else { return };
    let alike: Vec<bool> =
        lots.iter().map(|lot| lot.found.is_like(&lots[last].found)).collect();
    for (at, (lot, alike)) in lots.iter_mut().zip(alike).enumerate() {
        if alike {
            lot.in_use = at == last;
        }
    }
}

/// Takes out the lots that `of` picks. Where one of them was in use, the one of its sort that was
/// tried last comes in use.
fn take_out<T: Sorted + Clone>(lots: &mut Vec<Lot<T>>, of: impl Fn(&Lot<T>) -> bool) {
    let gone: Vec<T> =
        lots.iter().filter(|lot| of(lot) && lot.in_use).map(|lot| lot.found.clone()).collect();
    lots.retain(|lot| !of(lot));
    for found in gone {
        choose(lots, |lot| lot.found.is_like(&found));
    }
}

impl Lots {
    /// All lots: yeast, bags, enzymes, meters, each in the order in which it was first tried.
    pub fn lines(&self) -> Vec<LotLine> {
        let mut all = Vec::new();
        lines(&self.yeast, &mut all);
        lines(&self.bags, &mut all);
        lines(&self.enzymes, &mut all);
        lines(&self.meters, &mut all);
        all
    }

    /// Puts a lot in use.
    pub fn choose(&mut self, line: &LotLine) {
        match line.thing {
            Thing::Yeast => choose(&mut self.yeast, |lot| line.is(lot)),
            Thing::Bags => choose(&mut self.bags, |lot| line.is(lot)),
            Thing::Enzyme => choose(&mut self.enzymes, |lot| line.is(lot)),
            Thing::Meter => choose(&mut self.meters, |lot| line.is(lot)),
        }
    }

    /// Leaves a lot out of use, so that forecasts go by what is usual of its sort.
    pub fn leave_out(&mut self, line: &LotLine) {
        fn rest<T: Sorted>(lots: &mut [Lot<T>], line: &LotLine) {
            for lot in lots.iter_mut().filter(|lot| line.is(lot)) {
                lot.in_use = false;
            }
        }
        rest(&mut self.yeast, line);
        rest(&mut self.bags, line);
        rest(&mut self.enzymes, line);
        rest(&mut self.meters, line);
    }

    /// Takes a lot out with all its days.
    pub fn take_out(&mut self, line: &LotLine) {
        take_out(&mut self.yeast, |lot| line.is(lot));
        take_out(&mut self.bags, |lot| line.is(lot));
        take_out(&mut self.enzymes, |lot| line.is(lot));
        take_out(&mut self.meters, |lot| line.is(lot));
    }

    /// The lots without what one pilot left of them: those of that day and those names of which
    /// nothing was measured but these parts.
    #[must_use]
    pub fn without(&self, date: Date, names: &LotNames, parts: &[Part]) -> Self {
        fn left<T>(lot: &Lot<T>, date: Date, name: Option<&String>, parts: &[Part]) -> bool {
            lot.date == date
                && Some(&lot.name) == name
                && lot.parts.iter().all(|part| parts.contains(part))
        }
        let mut rest = self.clone();
        take_out(&mut rest.yeast, |lot| left(lot, date, names.yeast.as_ref(), parts));
        take_out(&mut rest.bags, |lot| left(lot, date, names.bags.as_ref(), parts));
        take_out(&mut rest.enzymes, |lot| left(lot, date, names.enzymes.as_ref(), parts));
        take_out(&mut rest.meters, |lot| left(lot, date, names.meter.as_ref(), parts));
        rest
    }
}
