//! What forecasts go by: the lots in use.

use super::door;
use super::lots::{BagKind, EnzymeLot, Lot, Lots, Teaspoon, YeastLot, in_use};
use crate::amount::{Amount, AmountKind, TEASPOON_ML};
use crate::plan::{Bag, Card, YeastKind};
use barm_science::meter::MeterPosterior;
use barm_science::prior::{Learned, Prior};
use barm_science::setup::Setup;

/// What pilots found of the lots in use; nothing of what nobody tried.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Known {
    yeast: Vec<Lot<YeastLot>>,
    bags: Vec<Lot<BagKind>>,
    enzymes: Vec<Lot<EnzymeLot>>,
    meters: Vec<Lot<MeterPosterior>>,
    /// What a whole class taught besides, the lots' own numbers among it.
    class: Learned,
}

/// Sizes that differ by less than this are of one kind of bag (mm).
const SAME_MM: f64 = 0.5;

impl BagKind {
    /// Whether it is that bag under that card.
    pub fn is(&self, bag: &Bag, card: &Card) -> bool {
        let same = |a: f64, b: f64| (a - b).abs() < SAME_MM;
        let (own, on) = (&self.bag.bag, &self.card.card);
        same(own.width_mm, bag.width_mm)
            && same(own.height_mm, bag.height_mm)
            && same(own.film_um, bag.film_um)
            && same(on.length_mm, card.length_mm)
            && same(on.width_mm, card.width_mm)
    }
}

impl Teaspoon {
    /// Puts what is known of a level spoon into a bag whose yeast comes by the spoon.
    pub(super) fn measure(&self, amount: &Amount, setup: &mut Setup) {
        if amount.kind == AmountKind::Spoon
            && let Some(yeast) = &mut setup.yeast
        {
            yeast.grams = amount.value / TEASPOON_ML * self.grams;
            yeast.dosing_sd = self.scatter;
        }
    }
}

impl Known {
    /// The lots in use of all that were tried.
    pub fn of(lots: &Lots) -> Self {
        fn used<T: Clone>(lots: &[Lot<T>]) -> Vec<Lot<T>> {
            lots.iter().filter(|lot| lot.in_use).cloned().collect()
        }
        Self {
            yeast: used(&lots.yeast),
            bags: used(&lots.bags),
            enzymes: used(&lots.enzymes),
            meters: used(&lots.meters),
            class: Learned::default(),
        }
    }

    /// The same once a class's day taught these numbers of the same lots
    /// ([`DayTaught::learned`](crate::result::taught::DayTaught)).
    #[must_use]
    pub fn after_class(self, learned: &Learned) -> Self {
        Self { class: self.class.with(learned), ..self }
    }

    /// Whether nothing was tried, so that all is as usual.
    pub fn is_nothing(&self) -> bool {
        let none = self.yeast.is_empty() && self.bags.is_empty();
        none && self.enzymes.is_empty()
            && self.meters.is_empty()
            && self.class == Learned::default()
    }

    /// The jar of that yeast.
    pub fn yeast(&self, kind: YeastKind) -> Option<&YeastLot> {
        in_use(&self.yeast, |lot| lot.found.kind == kind).map(|lot| &lot.found)
    }

    /// The jars in use; one that was tried on several days as often.
    pub(super) fn jars(&self) -> &[Lot<YeastLot>] {
        &self.yeast
    }

    /// The bottles in use, likewise.
    pub(super) fn bottles(&self) -> &[Lot<EnzymeLot>] {
        &self.enzymes
    }

    /// The box of those bags under those cards.
    pub fn bags(&self, bag: &Bag, card: &Card) -> Option<&BagKind> {
        in_use(&self.bags, |lot| lot.found.is(bag, card)).map(|lot| &lot.found)
    }

    /// The meter.
    pub fn meter(&self) -> MeterPosterior {
        let used = in_use(&self.meters, |_| true);
        used.map_or(MeterPosterior::UNCHECKED, |lot| lot.found)
    }

    /// All numbers of the model that were learned; where two lots know one, the later day counts.
    pub fn numbers(&self) -> Learned {
        let yeast = self.yeast.iter().map(|lot| (lot.date, &lot.found.numbers));
        let bags = self.bags.iter().map(|lot| (lot.date, &lot.found.numbers));
        let enzymes = self.enzymes.iter().map(|lot| (lot.date, &lot.found.numbers));
        let mut all: Vec<_> = yeast.chain(bags).chain(enzymes).collect();
        all.sort_by_key(|(date, _)| *date);
        let lots =
            all.into_iter().fold(Learned::default(), |all, (_, numbers)| all.with(numbers));
        lots.with(&self.class)
    }

    /// What is believed of a day with these lots.
    pub fn prior(&self) -> Prior {
        door::prior(&self.numbers())
    }

    /// Puts what is known of a level spoon of its yeast into a bag that gets so much of it.
    pub fn measure(&self, amount: &Amount, setup: &mut Setup) {
        let kind = setup.yeast.map(|yeast| yeast.kind);
        if let Some(spoon) = kind.and_then(|kind| self.yeast(kind)?.teaspoon) {
            spoon.measure(amount, setup);
        }
    }

    /// One line about the lots in use; nothing if there are none.
    pub fn says(&self) -> Option<String> {
        fn named<T>(what: &str, lots: &[Lot<T>]) -> Vec<String> {
            lots.iter().map(|lot| format!("{what} “{}” ({})", lot.name, lot.date)).collect()
        }
        let all = [
            named("yeast", &self.yeast),
            named("bags", &self.bags),
            named("enzyme", &self.enzymes),
            named("meter", &self.meters),
        ]
        .concat();
        (!all.is_empty()).then(|| format!("By your pilot of {}.", all.join(", ")))
    }
}
