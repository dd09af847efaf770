//! Claims dealt to readers.

use barm_domain::claim::{Review, deal};
use proptest::prelude::*;
use std::collections::BTreeSet;

#[test]
fn two_groups_read_each_other_and_one_reads_nothing() {
    assert_eq!(deal(0, 2, 1), []);
    assert_eq!(deal(1, 2, 1), []);
    let both = [Review { reader: 0, writer: 1 }, Review { reader: 1, writer: 0 }];
    assert_eq!(deal(2, 5, 1), both);
}

proptest! {
    #[test]
    fn everybody_reads_and_is_read_alike(groups in 2_usize..40, each in 0_usize..6, seed in any::<u64>()) {
        let reviews = deal(groups, each, seed);
        let each = each.min(groups - 1);
        for group in 0..groups {
            let reads = reviews.iter().filter(|one| one.reader == group).count();
            let read = reviews.iter().filter(|one| one.writer == group).count();
            prop_assert_eq!((reads, read), (each, each));
        }
        prop_assert!(reviews.iter().all(|one| one.reader != one.writer));
        let pairs: BTreeSet<(usize, usize)> =
            reviews.iter().map(|one| (one.reader, one.writer)).collect();
        prop_assert_eq!(pairs.len(), reviews.len());
        if groups > 2 && each == 1 {
            prop_assert!(!reviews.iter().any(|one| pairs.contains(&(one.writer, one.reader))));
        }
        prop_assert_eq!(deal(groups, each, seed), reviews);
    }
}
