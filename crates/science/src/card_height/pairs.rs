//! Which card and which bag go together.

use super::{blind_pair, prior};
use crate::setup::{Bag, Card};

/// How far a card may stand out over the bag's edge on one axis, both ends together (mm): it lies on
/// the middle all the same.
const OVERHANG_MM: f64 = 10.0;

/// Share of the room for gas at which cards are compared (1): where a class reads most.
const THIRD_FULL: f64 = 1.0 / 3.0;

/// Whether a card fits on a bag, and feels the first gas there.
pub fn fit_together(bag: &Bag, card: &Card) -> bool {
    let sides = |one: f64, other: f64| (one.max(other), one.min(other));
    let (bag_long, bag_short) = sides(bag.width_mm, bag.height_mm);
    let (long, short) = sides(card.length_mm, card.width_mm);
    long <= bag_long + OVERHANG_MM && short <= bag_short + OVERHANG_MM && !blind_pair(bag, card)
}

/// The card that tells gas apart most finely on this bag: of those that fit it and feel the first gas,
/// the one with the least gas to a millimetre when a third of the room is full. Its place among
/// `cards`; `None` if none will do.
pub fn best_card(bag: &Bag, cards: &[Card], liquid_ml: f64) -> Option<usize> {
    let coarseness = |card: &Card| {
        let curve = prior(bag, card, liquid_ml).mean;
        curve.ml_per_mm(curve.rise_mm(THIRD_FULL * curve.room_ml()))
    };
    let will_do = cards.iter().enumerate().filter(|(_, card)| fit_together(bag, card));
    let best =
        will_do.min_by(|(_, one), (_, other)| coarseness(one).total_cmp(&coarseness(other)));
    best.map(|(at, _)| at)
}

/// The largest bag under this card: of those that it fits on and feels the first gas of, the one with
/// the largest face. Its place among `bags`; `None` if none will do.
pub fn largest_bag(card: &Card, bags: &[Bag]) -> Option<usize> {
    let face = |bag: &Bag| bag.width_mm * bag.height_mm;
    let will_do = bags.iter().enumerate().filter(|(_, bag)| fit_together(bag, card));
    will_do.max_by(|(_, one), (_, other)| face(one).total_cmp(&face(other))).map(|(at, _)| at)
}
