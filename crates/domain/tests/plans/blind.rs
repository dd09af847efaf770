//! A card that feels nothing of the first gas is refused, and the way out is named in sizes.

use crate::school::{Asks, bag, card, sound};
use crate::{Dice, checked};

/// Gas for a millimetre of rise with an index card, by the own membrane simulation (not yet compared
/// with a measured bag): snack 10, quart 124, gallon 914 mL; with 5 x 8 in on a quart bag 38, with
/// 8 x 10 in on a gallon bag 128.
#[test]
fn the_way_out_of_a_blind_pair_names_a_card_and_a_bag() {
    for (on, under, way_out) in [
        (
            "quart",
            "3 x 5 in",
            "Take a card of 5 x 8 in for this bag, or a snack bag under this card.",
        ),
        (
            "gallon",
            "4 x 6 in",
            "Take a card of 8 x 10 in for this bag, or a sandwich bag under this card.",
        ),
        ("gallon", "1 x 1 in", "Take a card of 8 x 10 in for this bag."),
    ] {
        let mut plan = sound(Asks::Food, &mut Dice::of(7));
        plan.base.bag = bag(on);
        plan.base.card = card(under);
        let found = checked(&plan);
        let blind = found.iter().find(|finding| finding.code == "blind-card");
        assert_eq!(blind.map(|finding| finding.fix.as_str()), Some(way_out), "{under} on {on}");
    }
}
