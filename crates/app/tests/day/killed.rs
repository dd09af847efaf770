//! The server is killed in the middle of a class, again and again.

use crate::bench::Bench;
use crate::school::{Dice, School, Serving, count};
use barm_domain::record::Key;
use barm_domain::rehearsal::{Rates, script};
use std::collections::BTreeSet;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Duration;

#[test]
fn nothing_acknowledged_is_lost_or_doubled_when_the_server_is_killed_under_load() {
    let school = School::new();
    let plan = &school.plan;
    let mut dice = Dice(0x6b69_6c6c);
    let mut told: BTreeSet<Key> = BTreeSet::new();
    let mut benches: Vec<Bench> = Vec::new();
    for round in 0..count(5, 25, 200) {
        // Another class comes in when one is done; its heights for the same bags are kept too.
        if benches.iter().map(|bench| bench.waiting.len()).sum::<usize>() < 120 {
            let place = usize::try_from(dice.below(4)).expect("a place");
            let period = &plan.periods[place];
            let script = script(plan, period, round.into(), &Rates::NONE).expect("a script");
            let groups = script.devices.iter().filter(|device| device.group > 0);
            let bell = school.bell(place);
            benches.extend(groups.map(|device| Bench::holding(plan, place, bell, device)));
        }
        let serving = Serving::start(school.folder.path());
        let port = serving.port;
        // Now and then before anything was acknowledged.
        let enough = if round % 5 == 4 { 0 } else { 1 + dice.below(80) };
        let acknowledged = AtomicU64::new(0);
        thread::scope(|scope| {
            for bench in &mut benches {
                let acknowledged = &acknowledged;
                scope.spawn(move || {
                    while bench.send(port) {
                        acknowledged.fetch_add(1, Ordering::Relaxed);
                    }
                });
            }
            let mut patience = 60_000;
            while acknowledged.load(Ordering::Relaxed) < enough {
                thread::sleep(Duration::from_millis(1));
                patience -= 1;
                assert!(patience > 0, "round {round}: the server does not answer");
            }
            thread::sleep(Duration::from_micros(dice.below(20_000)));
            serving.kill();
        });
        told.extend(benches.iter().flat_map(|bench| bench.saved.keys().copied()));
        benches.retain(|bench| !bench.waiting.is_empty());
        let entries = school.entries();
        let keys: BTreeSet<Key> = entries.iter().map(|entry| entry.key).collect();
        assert_eq!(keys.len(), entries.len(), "round {round}: an entry is there twice");
        let lost = told.difference(&keys).count();
        assert_eq!(lost, 0, "round {round}: {lost} of {} were lost", told.len());
    }
    // What was on its way when the server died is sent again, and counts once.
    let serving = Serving::start(school.folder.path());
    for bench in &mut benches {
        while !bench.waiting.is_empty() {
            assert!(bench.send(serving.port), "the server answers");
        }
        told.extend(bench.saved.keys().copied());
    }
    drop(serving);
    let entries = school.entries();
    let keys: BTreeSet<Key> = entries.iter().map(|entry| entry.key).collect();
    assert_eq!(keys.len(), entries.len(), "an entry is there twice");
    assert_eq!(keys, told, "on record is what was acknowledged");
}
