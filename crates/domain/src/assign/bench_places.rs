//! Chance, where nothing else decides: bench places, who pours first, which bag a group pours first.
//!
//! What cannot be the same for all bags, such as a cool window or a tired arm, is left to chance, so
//! that it favors no treatment (NIST/SEMATECH e-Handbook of Statistical Methods, section 5.3.3.2).

use super::day::Day;
use super::share::Order;
use barm_science::statistics::chance::Chance;

/// Numbers from 0 on in an order by chance (Fisher & Yates; Durstenfeld 1964, *Communications of the
/// ACM* 7, 420, from memory).
pub(super) fn shuffled(count: usize, chance: &mut Chance) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    for last in (1..count).rev() {
        order.swap(last, chance.below(last + 1));
    }
    order
}

/// In which order groups and arms are taken: among equally good answers chance decides.
pub(super) fn order(day: &Day, chance: &mut Chance) -> Order {
    Order { groups: shuffled(day.groups.len(), chance), arms: shuffled(day.arms.len(), chance) }
}

/// For each group a number within its period, from 1, by chance.
pub(super) fn numbers(day: &Day, chance: &mut Chance) -> Vec<u32> {
    let mut numbers = vec![0; day.groups.len()];
    for period in 0..day.periods.len() {
        let own: Vec<usize> =
            (0..day.groups.len()).filter(|g| day.groups[*g].period == period).collect();
        for (place, at) in shuffled(own.len(), chance).into_iter().enumerate() {
            numbers[own[at]] = u32::try_from(place + 1).unwrap_or(u32::MAX);
        }
    }
    numbers
}
