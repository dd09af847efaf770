//! Which card and which bag go together.

use barm_science::bag::StandardBag;
use barm_science::card_height::{best_card, blind_pair, fit_together, largest_bag};
use barm_science::setup::{Bag, Card};

/// Index stock and, from half a letter on, card of 200 g/m².
const CARDS: [Card; 6] = [
    Card { length_mm: 127.0, width_mm: 76.0, grams: 1.8 },
    Card { length_mm: 152.0, width_mm: 102.0, grams: 3.1 },
    Card { length_mm: 203.0, width_mm: 127.0, grams: 5.2 },
    Card { length_mm: 216.0, width_mm: 140.0, grams: 6.0 },
    Card { length_mm: 254.0, width_mm: 203.0, grams: 10.3 },
    Card { length_mm: 279.0, width_mm: 216.0, grams: 12.0 },
];

/// Gas that lifts a card by a millimetre, from the own membrane simulation (not yet compared with a
/// measured bag): 3 x 5 in on a snack bag 10 mL, 4 x 6 in on a sandwich bag 22, 5 x 8 in on a quart bag
/// 38, 8 x 10 in on a gallon bag 128 (letter 104, and coarser further up).
#[test]
fn each_bag_gets_the_card_that_feels_its_first_gas() {
    for (size, best) in [
        (StandardBag::Snack, 0),
        (StandardBag::Sandwich, 1),
        (StandardBag::Quart, 2),
        (StandardBag::Gallon, 4),
    ] {
        let bag = size.bag();
        assert_eq!(best_card(&bag, &CARDS, 50.0), Some(best), "{}", size.name());
        assert!(fit_together(&bag, &CARDS[best]) && !blind_pair(&bag, &CARDS[best]));
    }
    let pillow = Bag { width_mm: 500.0, height_mm: 600.0, film_um: 42.0 };
    assert_eq!(best_card(&pillow, &CARDS, 50.0), None);
}

#[test]
fn each_card_gets_the_largest_bag_that_it_feels() {
    let bags = StandardBag::ALL.map(StandardBag::bag);
    let largest: Vec<Option<&str>> = CARDS
        .iter()
        .map(|card| largest_bag(card, &bags).map(|at| StandardBag::ALL[at].name()))
        .collect();
    // Half a letter stands out 20 mm over a quart bag and is blind on a gallon bag.
    let by_hand =
        [Some("snack"), Some("sandwich"), Some("quart"), None, Some("gallon"), Some("gallon")];
    assert_eq!(largest, by_hand);
    let stamp = Card { length_mm: 25.0, width_mm: 20.0, grams: 0.1 };
    assert_eq!(largest_bag(&stamp, &bags), None);
}
