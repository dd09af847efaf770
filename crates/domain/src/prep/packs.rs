//! Which packs to buy, so that they hold enough and cost least.

use std::cmp::Ordering;

/// A pack on offer, in whole parts of whatever is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Offer {
    /// What it holds (parts, such as micrograms); an offer that holds nothing is never taken.
    pub holds: u128,
    /// What it costs (parts, such as millionths of a dollar); 0 throughout to find the fewest
    /// packs.
    pub price: u128,
}

/// How many of each offer to take.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    /// How many of each offer, in the order of the offers.
    pub counts: Vec<u128>,
    /// What they cost together (parts).
    pub price: u128,
    /// Packs on the whole.
    pub packs: u128,
    /// What they hold beyond the need (parts).
    pub surplus: u128,
    /// Whether no other choice can be better. It is not known only for offers so small and so many
    /// that the search was broken off.
    pub proven: bool,
}

/// Steps after which a search is broken off; a shopping list takes some dozens.
const STEPS: u32 = 2_000_000;

/// The packs that hold at least `need` and cost least; of equal cost the fewest, of as many the
/// ones that hold least. Nothing if no offer holds anything.
///
/// The search goes through the offers from the cheapest by content to the dearest and gives up a
/// branch as soon as the rest, bought in fractions of the cheapest pack left, would cost as much
/// as the best choice so far (branch and bound; Land & Doig 1960, *Econometrica* 28, 497-520).
pub fn choose(need: u128, offers: &[Offer]) -> Option<Choice> {
    let mut order: Vec<usize> = (0..offers.len()).filter(|&i| offers[i].holds > 0).collect();
    order.sort_by(|&a, &b| by_content(&offers[a], &offers[b]).then(a.cmp(&b)));
    if order.is_empty() {
        return None;
    }
    let sorted: Vec<Offer> = order.iter().map(|&i| offers[i]).collect();
    let largest = (0..sorted.len())
        .map(|from| sorted[from..].iter().map(|offer| offer.holds).max().unwrap_or(1))
        .collect();
    let counts = vec![0; sorted.len()];
    let mut search = Search { need, sorted, largest, counts, best: None, steps: 0 };
    search.go(0, Bought::default());
    let (found, best_counts) = search.best?;
    let mut counts = vec![0; offers.len()];
    for (place, count) in order.into_iter().zip(best_counts) {
        counts[place] = count;
    }
    Some(Choice {
        counts,
        price: found.price,
        packs: found.packs,
        surplus: found.holds - need,
        proven: search.steps < STEPS,
    })
}

/// The cheaper by content first; of equals the larger.
fn by_content(a: &Offer, b: &Offer) -> Ordering {
    let crossed = (a.price.saturating_mul(b.holds)).cmp(&b.price.saturating_mul(a.holds));
    crossed.then(b.holds.cmp(&a.holds))
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
struct Bought {
    price: u128,
    packs: u128,
    holds: u128,
}

/// What can still come of a beginning.
enum Outlook {
    /// Something better than the best so far.
    Open,
    /// Nothing better.
    NoBetter,
    /// Nothing better, nor with fewer of the last offer: less of it leaves more to be bought of
    /// dearer ones.
    Worse,
}

struct Search {
    need: u128,
    /// Offers by content.
    sorted: Vec<Offer>,
    /// The largest offer from each place on.
    largest: Vec<u128>,
    counts: Vec<u128>,
    best: Option<(Bought, Vec<u128>)>,
    steps: u32,
}

impl Search {
    fn go(&mut self, place: usize, bought: Bought) {
        if bought.holds >= self.need {
            self.keep(bought);
            return;
        }
        let Some(&offer) = self.sorted.get(place) else { return };
        let most = (self.need - bought.holds).div_ceil(offer.holds);
        for count in (0..=most).rev() {
            self.steps = self.steps.saturating_add(1);
            // The first way down always ends in a choice, so there is one to give by then.
            if self.steps >= STEPS && self.best.is_some() {
                break;
            }
            let next = Bought {
                price: bought.price + count * offer.price,
                packs: bought.packs + count,
                holds: bought.holds + count * offer.holds,
            };
            match self.outlook(place + 1, next) {
                Outlook::Open => {
                    self.counts[place] = count;
                    self.go(place + 1, next);
                }
                Outlook::NoBetter => {}
                Outlook::Worse => break,
            }
        }
        self.counts[place] = 0;
    }

    /// What can still come of a beginning, at best.
    fn outlook(&self, place: usize, bought: Bought) -> Outlook {
        let rest = self.need.saturating_sub(bought.holds);
        if rest > 0 && place == self.sorted.len() {
            return Outlook::Worse;
        }
        let Some((best, _)) = &self.best else { return Outlook::Open };
        let (mut price, mut packs) = (bought.price, bought.packs);
        if rest > 0 {
            let offer = self.sorted[place];
            price += rest.saturating_mul(offer.price).div_ceil(offer.holds);
            packs += rest.div_ceil(self.largest[place]);
        }
        if rest > 0 && price > best.price {
            Outlook::Worse
        } else if (price, packs, self.need) >= (best.price, best.packs, best.holds) {
            Outlook::NoBetter
        } else {
            Outlook::Open
        }
    }

    fn keep(&mut self, bought: Bought) {
        let key = |b: &Bought| (b.price, b.packs, b.holds);
        if self.best.as_ref().is_none_or(|(best, _)| key(&bought) < key(best)) {
            self.best = Some((bought, self.counts.clone()));
        }
    }
}
