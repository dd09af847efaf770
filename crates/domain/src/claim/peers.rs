//! Which group reads whose claim: peer review without names.

use barm_science::statistics::chance::Chance;

/// A review that is to be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Review {
    /// Place of the group that reads, among the groups.
    pub reader: usize,
    /// Place of the group whose claim is read.
    pub writer: usize,
}

/// Deals claims to readers: every group reads `each` claims of others and has its own read as often. The groups sit in a
/// ring in an order that the seed decides, and each reads those that follow it, so that with more than two groups two
/// do not merely change papers. With few groups each reads all others.
pub fn deal(groups: usize, each: usize, seed: u64) -> Vec<Review> {
    let mut ring: Vec<usize> = (0..groups).collect();
    let mut chance = Chance::from_seed(seed);
    for at in (1..groups).rev() {
        ring.swap(at, chance.below(at + 1));
    }
    let mut reviews: Vec<Review> = (0..groups)
        .flat_map(|at| (1..=each.min(groups - 1)).map(move |on| (at, (at + on) % groups)))
        .map(|(reader, writer)| Review { reader: ring[reader], writer: ring[writer] })
        .collect();
    reviews.sort_by_key(|review| review.reader);
    reviews
}
