//! Things that are worked out side by side, on as many threads as there are cores.

use std::thread;

/// What `one` gives for each number below `count`, in order; how many work at it changes nothing of it.
pub fn each<T: Send>(count: usize, one: impl Fn(usize) -> T + Sync) -> Vec<T> {
    let hands = thread::available_parallelism().map_or(1, usize::from).min(count);
    if hands < 2 {
        return (0..count).map(one).collect();
    }
    let one = &one;
    let of_hand = |hand: usize| (hand..count).step_by(hands).map(one).collect::<Vec<T>>();
    let mut each: Vec<std::vec::IntoIter<T>> = thread::scope(|scope| {
        let others: Vec<_> =
            (1..hands).map(|hand| scope.spawn(move || of_hand(hand))).collect();
        let first = vec![of_hand(0).into_iter()];
        let others = others.into_iter().map(|other| match other.join() {
            Ok(found) => found.into_iter(),
            Err(panic) => std::panic::resume_unwind(panic),
        });
        first.into_iter().chain(others).collect()
    });
    (0..count).filter_map(|at| each[at % hands].next()).collect()
}

#[cfg(test)]
mod tests {
    use super::each;

    #[test]
    fn all_come_in_order() {
        for count in [0, 1, 2, 7, 64] {
            assert_eq!(
                each(count, |at| at * at),
                (0..count).map(|at| at * at).collect::<Vec<_>>()
            );
        }
    }
}
