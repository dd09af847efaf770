//! The search for packs against trying everything.

use crate::school::cases;
use barm_domain::prep::{Choice, Offer, choose};
use proptest::prelude::*;

/// The best of all counts up to what each offer alone would take; by cost, then number, then what
/// is left over.
fn by_trying_everything(need: u128, offers: &[Offer]) -> Option<(u128, u128, u128)> {
    let mut best = None;
    let mut counts = vec![0_u128; offers.len()];
    loop {
        let sum = |of: fn(&Offer) -> u128| -> u128 {
            offers.iter().zip(&counts).map(|(offer, count)| of(offer) * count).sum()
        };
        let (holds, price) = (sum(|o| o.holds), sum(|o| o.price));
        if holds >= need {
            let found = (price, counts.iter().sum(), holds - need);
            best = Some(best.map_or(found, |b: (u128, u128, u128)| b.min(found)));
        }
        let mut place = 0;
        loop {
            let Some(offer) = offers.get(place) else { return best };
            let most = if offer.holds == 0 { 0 } else { need.div_ceil(offer.holds) };
            if counts[place] < most {
                counts[place] += 1;
                break;
            }
            counts[place] = 0;
            place += 1;
        }
    }
}

fn of(choice: &Choice) -> (u128, u128, u128) {
    (choice.price, choice.packs, choice.surplus)
}

fn offers() -> impl Strategy<Value = Vec<Offer>> {
    let offer = (0_u128..=40, 0_u128..=30).prop_map(|(holds, price)| Offer { holds, price });
    let fewest = (1_u128..=40).prop_map(|holds| Offer { holds, price: 0 });
    let by_size = (1_u128..=12).prop_map(|size| Offer { holds: 3 * size, price: 5 * size });
    prop_oneof![
        prop::collection::vec(offer, 0..=3),
        prop::collection::vec(fewest, 1..=3),
        prop::collection::vec(by_size, 1..=3),
    ]
}

proptest! {
    #![proptest_config(cases(2000))]

    #[test]
    fn no_other_packs_are_cheaper(need in 0_u128..=120, offers in offers()) {
        let found = choose(need, &offers);
        let best = by_trying_everything(need, &offers);
        if offers.iter().all(|offer| offer.holds == 0) {
            prop_assert_eq!(found, None);
            return Ok(());
        }
        let found = found.unwrap();
        prop_assert_eq!(Some(of(&found)), best);
        prop_assert!(found.proven);
        // What is said of the choice is what its counts come to.
        let sum = |of: fn(&Offer) -> u128| -> u128 {
            offers.iter().zip(&found.counts).map(|(offer, count)| of(offer) * count).sum()
        };
        prop_assert_eq!(sum(|o| o.holds), need + found.surplus);
        prop_assert_eq!(sum(|o| o.price), found.price);
        prop_assert_eq!(found.counts.iter().sum::<u128>(), found.packs);
    }

    #[test]
    fn the_order_of_the_offers_changes_nothing(
        need in 1_u128..=2000,
        (offers, mixed) in offers().prop_flat_map(|o| (Just(o.clone()), Just(o).prop_shuffle())),
    ) {
        prop_assert_eq!(choose(need, &offers).map(|c| of(&c)), choose(need, &mixed).map(|c| of(&c)));
    }
}

/// A need that no classroom has, in packs of nearly nothing, still ends and still suffices.
#[test]
fn absurd_packs_end_in_an_answer_that_suffices() {
    let need = 1_000_000_000_000_007;
    let offers: Vec<Offer> = [(1, 1), (2, 2), (3, 3), (5, 5), (7, 7), (11, 11)]
        .map(|(holds, price)| Offer { holds, price })
        .into();
    let found = choose(need, &offers).unwrap();
    assert!(found.price >= need && found.surplus < 11);
    let odd = [(999_983, 1_000_003), (999_979, 1_000_000), (1_000_003, 1_000_024)]
        .map(|(holds, price)| Offer { holds, price });
    let found = choose(need, &odd).unwrap();
    let held: u128 = odd.iter().zip(&found.counts).map(|(o, count)| o.holds * count).sum();
    assert_eq!(held, need + found.surplus);
}

/// Three packs of 113 g at $5.49 cost more than one pound at $8.99, and less than two.
#[test]
fn a_large_pack_may_be_cheaper_than_small_ones() {
    let offers = [Offer { holds: 113, price: 549 }, Offer { holds: 454, price: 899 }];
    for (need, counts, price) in [
        (113, vec![1, 0], 549),
        (114, vec![0, 1], 899),
        (500, vec![1, 1], 1448),
        (600, vec![0, 2], 1798),
    ] {
        let found = choose(need, &offers).unwrap();
        assert_eq!((found.counts, found.price), (counts, price), "{need} g");
    }
}
