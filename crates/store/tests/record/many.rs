//! Many who write at once, and send again what they do not know to have arrived.

use crate::made::{at, reading};
use crate::places::tell;
use crate::size::{Dice, count};
use barm_domain::record::{Entry, Key};
use barm_store::{Kind, Receipt};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, mpsc};
use std::thread;

#[test]
fn each_acknowledged_key_is_there_once_however_often_it_was_sent() {
    tell(|ground| {
        for seed in 1..=u64::from(count(3, 12, 60)) {
            let mut dice = Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15));
            let store = ground.open();
            let title = format!("Round {seed}");
            let id = store.add_investigation(&title, Kind::Real, at(0)).unwrap().id;
            let threads = 1 + dice.below(6);
            let told: Mutex<BTreeMap<Key, BTreeSet<i64>>> = Mutex::default();
            let note = |receipts: Vec<Receipt>| {
                let mut told = told.lock().unwrap();
                for receipt in receipts {
                    told.entry(receipt.key).or_default().insert(receipt.seq);
                }
            };
            let base = u32::try_from(seed).unwrap() * 100_000;
            let work = |mut dice: Dice| {
                for _ in 0..15 {
                    // Threads share their numbers, so that two send the same entry.
                    let entries: Vec<Entry> = (0..dice.below(5))
                        .map(|_| base + u32::try_from(dice.below(120)).unwrap())
                        .map(|n| reading(n, f64::from(n)))
                        .collect();
                    if dice.below(2) == 0 {
                        note(store.append(id, &entries).unwrap());
                    } else {
                        let (tell, told) = mpsc::channel();
                        store.append_then(id, &entries, move |r| tell.send(r).unwrap());
                        // Sent again before the answer is there.
                        note(store.append(id, &entries).unwrap());
                        note(told.recv().unwrap().unwrap());
                    }
                }
            };
            thread::scope(|scope| {
                for _ in 0..threads {
                    let own = Dice(dice.below(u64::MAX) | 1);
                    scope.spawn(|| work(own));
                }
            });
            drop(store);

            let store = ground.open();
            let mut found: BTreeMap<Key, BTreeSet<i64>> = BTreeMap::new();
            for (seq, entry) in store.entries(id, 0).unwrap() {
                assert!(found.entry(entry.key).or_default().insert(seq));
            }
            assert_eq!(found, told.into_inner().unwrap(), "seed {seed}");
            assert!(found.values().all(|places| places.len() == 1), "seed {seed}");
            store.full_check().unwrap();
        }
    });
}
