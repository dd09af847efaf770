//! Where a pilot starts from, and where what it found goes.

use super::bags::Role;
use super::fault::PilotFault;
use super::lots::{
    BagKind, Base, EnzymeLot, FIRST_LOT, Lot, Lots, YeastLot, base, in_use, put,
};
use super::numbers::of;
use super::protocol::{Protocol, yeast_of};
use super::readings::{Part, PilotReadings};
use crate::plan::{Plan, YeastKind};
use barm_science::enzyme::products::product;
use barm_science::meter::MeterPosterior;
use barm_science::prior::{Key, Learned};
use jiff::civil::Date;

/// A number that kept more than this of its width is not worth keeping in a file (1).
const KEPT: f64 = 0.98;

/// Where a pilot starts from.
pub(super) struct Start {
    /// The day that it counts for.
    pub(super) date: Date,
    pub(super) yeast: Begun<YeastLot>,
    pub(super) bags: Begun<BagKind>,
    pub(super) enzymes: Vec<Begun<EnzymeLot>>,
    pub(super) meter: Begun<MeterPosterior>,
}

/// One lot at the start.
#[derive(Debug, Clone)]
pub(super) struct Begun<T> {
    name: String,
    /// Parts of the day, this pilot's among them; none if the pilot says nothing of it.
    parts: Vec<Part>,
    /// What was known of it before.
    pub(super) found: T,
}

impl<T: Clone> Begun<T> {
    /// The same lot with what was found.
    fn lot(&self, date: Date, found: T) -> Lot<T> {
        let (name, parts) = (self.name.clone(), self.parts.clone());
        Lot { name, date, in_use: true, parts, found }
    }
}

/// What is measured, and what would be lost by it.
struct Begin<'a> {
    date: Date,
    measured: &'a [Part],
    lost: Vec<PilotFault>,
}

impl Begin<'_> {
    /// A lot of the kind that `like` picks: the one that is written, or else the one in use.
    fn lot<T: Clone>(
        &mut self,
        what: &str,
        lots: &[Lot<T>],
        like: impl Fn(&Lot<T>) -> bool,
        written: Option<&String>,
        parts: &[Part],
        fresh: T,
    ) -> Begun<T> {
        let used = in_use(lots, &like);
        let name = written.or_else(|| used.map(|lot| &lot.name));
        let name = name.map_or_else(|| FIRST_LOT.to_owned(), Clone::clone);
        let own = |lot: &Lot<T>| like(lot) && lot.name == name;
        let parts: Vec<Part> =
            self.measured.iter().filter(|part| parts.contains(part)).copied().collect();
        if parts.is_empty() {
            let known = in_use(lots, own).or(used).map(|lot| lot.found.clone());
            return Begun { name, parts, found: known.unwrap_or(fresh) };
        }
        match base(lots, own, self.date, &parts) {
            Base::From(found, parts) => Begun { name, parts, found: found.unwrap_or(fresh) },
            Base::Lost(gone) => {
                self.lost.push(PilotFault::lost(&format!("the {what} “{name}”"), &gone));
                Begun { name, parts, found: fresh }
            }
        }
    }
}

impl Start {
    /// Where these readings go on from.
    ///
    /// # Errors
    /// What an earlier pilot of the same day found and these readings would lose.
    pub(super) fn of(
        plan: &Plan,
        protocol: &Protocol,
        readings: &PilotReadings,
        lots: &Lots,
        today: Date,
    ) -> Result<Self, Vec<PilotFault>> {
        let (date, measured) = (readings.date.unwrap_or(today), readings.parts());
        let mut begin = Begin { date, measured: &measured, lost: Vec::new() };
        let names = &readings.lots;
        let kind = yeast_of(plan).unwrap_or(YeastKind::Instant);
        let yeast = begin.lot(
            "yeast",
            &lots.yeast,
            |lot| lot.found.kind == kind,
            names.yeast.as_ref(),
            &[Part::Spoons, Part::Bags],
            YeastLot { kind, teaspoon: None, numbers: Learned::default() },
        );
        let (bag, card) = (plan.base.bag.clone(), plan.base.card.clone());
        let bags = begin.lot(
            "box of bags",
            &lots.bags,
            |lot| lot.found.is(&bag.bag, &card.card),
            names.bags.as_ref(),
            &[Part::Syringe, Part::Dummy, Part::Bags],
            BagKind { bag: bag.clone(), card: card.clone(), numbers: Learned::default() },
        );
        let enzymes = enzymes_of(protocol).into_iter().map(|key| {
            begin.lot(
                "enzyme",
                &lots.enzymes,
                |lot| lot.found.product == key,
                names.enzymes.as_ref(),
                &[Part::Bags],
                EnzymeLot { product: key.clone(), numbers: Learned::default() },
            )
        });
        let enzymes = enzymes.collect();
        let meter = begin.lot(
            "meter",
            &lots.meters,
            |_| true,
            names.meter.as_ref(),
            &[Part::Meter],
            MeterPosterior::UNCHECKED,
        );
        if begin.lost.is_empty() {
            Ok(Self { date, yeast, bags, enzymes, meter })
        } else {
            Err(begin.lost)
        }
    }

    /// Everything that is known of the numbers before.
    pub(super) fn numbers(&self) -> Learned {
        let start = self.yeast.found.numbers.with(&self.bags.found.numbers);
        self.enzymes.iter().fold(start, |all, enzyme| all.with(&enzyme.found.numbers))
    }

    /// All lots with what this pilot found.
    pub(super) fn stored(
        &self,
        lots: &Lots,
        yeast: &YeastLot,
        numbers: &Learned,
        meter: MeterPosterior,
    ) -> Lots {
        let mut lots = lots.clone();
        let telling = |name: &str| {
            let (mean, sd) = of(numbers, name);
            sd < KEPT || mean.abs() > 1.0 - KEPT
        };
        if !self.yeast.parts.is_empty() {
            let numbers = numbers.only(|name| is_of_yeast(name) && telling(name));
            let new = self.yeast.lot(self.date, YeastLot { numbers, ..yeast.clone() });
            put(&mut lots.yeast, new, |lot| lot.found.kind == yeast.kind);
        }
        if !self.bags.parts.is_empty() {
            let own = &self.bags.found;
            let numbers = numbers.only(|name| is_of_bags(name) && telling(name));
            let new = self.bags.lot(self.date, BagKind { numbers, ..own.clone() });
            put(&mut lots.bags, new, |lot| lot.found.is(&own.bag.bag, &own.card.card));
        }
        for enzyme in self.enzymes.iter().filter(|enzyme| !enzyme.parts.is_empty()) {
            let product = enzyme.found.product.clone();
            let own = activity(&product);
            let numbers = numbers.only(|name| name == own && telling(name));
            let same = |lot: &Lot<EnzymeLot>| lot.found.product == enzyme.found.product;
            put(&mut lots.enzymes, enzyme.lot(self.date, EnzymeLot { product, numbers }), same);
        }
        if !self.meter.parts.is_empty() {
            put(&mut lots.meters, self.meter.lot(self.date, meter), |_| true);
        }
        lots
    }
}

/// Name of an enzyme's activity in the fit of a day.
fn activity(key: &str) -> String {
    product(key).map_or_else(String::new, |product| Key::activity(product.kind).to_string())
}

/// Keys of the enzymes that a pilot tries, each once.
fn enzymes_of(protocol: &Protocol) -> Vec<String> {
    let mut keys: Vec<String> = Vec::new();
    for bag in &protocol.bags {
        if let Role::Carrier(key) | Role::Enzyme(key) = &bag.role
            && !keys.contains(key)
        {
            keys.push(key.clone());
        }
    }
    keys
}

/// Whether a number belongs to bag, card and the room they lie in.
fn is_of_bags(name: &str) -> bool {
    let plain = name.split(" of ").next().unwrap_or(name);
    ["exponent", "dead-share", "capacity", "pocket", "film", "heat"].contains(&plain)
}

/// Whether a number belongs to the yeast: not to bags, enzymes, foods or the tray.
fn is_of_yeast(name: &str) -> bool {
    let other = ["tray", "enzyme-half", "enzyme-loss", "raw-starch"].contains(&name);
    let dose = name.starts_with("activity of ") || name.starts_with("content ");
    !(is_of_bags(name) || other || dose)
}
