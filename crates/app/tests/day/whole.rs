//! All periods at once, as fast as the server takes it.

use crate::bench::{Bench, heights};
use crate::school::{School, Serving};
use barm_domain::outlook::{self, Look, Treated};
use barm_domain::plan::Plan;
use barm_domain::reading::Reading;
use barm_domain::record::{Bound, Counted, Key, Known, Ledger};
use barm_domain::rehearsal::{Device, Rates, script};
use barm_domain::result::analyze;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::sync::Arc;
use std::thread;

#[test]
fn a_whole_day_is_on_record_once_and_says_what_the_same_readings_say_as_a_file() {
    let school = School::new();
    let plan = &school.plan;
    let mut devices: Vec<(usize, Device)> = Vec::new();
    for (place, period) in plan.periods.iter().enumerate() {
        let script = script(plan, period, 20_270_309, &Rates::default()).expect("a script");
        let groups = script.devices.into_iter().filter(|device| device.group > 0);
        devices.extend(groups.map(|device| (place, device)));
    }
    let serving = Serving::start(school.folder.path());
    let port = serving.port;
    let mut benches: Vec<Bench> = devices
        .iter()
        .map(|(place, device)| Bench::holding(plan, *place, school.bell(*place), device))
        .collect();
    thread::scope(|scope| {
        for bench in &mut benches {
            scope.spawn(move || {
                while !bench.waiting.is_empty() {
                    assert!(bench.send(port), "the server answers");
                }
            });
        }
    });
    drop(serving);

    // Once each.
    let acknowledged: BTreeMap<Key, u32> =
        benches.iter().flat_map(|bench| bench.saved.clone()).collect();
    let typed: usize = devices.iter().map(|(_, device)| device.steps.len()).sum();
    assert_eq!(acknowledged.len(), typed, "every entry was acknowledged");
    let entries = school.entries();
    let keys: BTreeSet<Key> = entries.iter().map(|entry| entry.key).collect();
    assert_eq!(keys.len(), entries.len(), "none is there twice");
    assert_eq!(keys, acknowledged.into_keys().collect(), "on record is what was acknowledged");

    // The same answer as from a file.
    let known = Known::of([plan]);
    let ledger = Ledger::of(known.clone(), entries);
    assert_eq!(ledger.standing().refused, [], "the replay takes all of it");
    let counted = Counted::of(&known, ledger.standing());
    let look = Look { draws: 16, ..Look::default() };
    let forecasts: Vec<Treated> = plan
        .treatments()
        .map(|(_, treatment)| outlook::forecast(plan, treatment, look).expect("a forecast"))
        .collect();
    let newest = Arc::new(Plan::clone(plan));
    let versions = BTreeMap::from([(1, newest.clone())]);
    let truth = Bound::of(&versions, &newest, &ledger).plan_in_truth();
    let from_record = analyze(&truth, &forecasts, &counted.readings, &counted.set_aside);
    let mut file = String::from("bag,minute,height (mm)\n");
    for (place, device) in &devices {
        for (bag, heights) in heights(school.bell(*place), device) {
            let zero = heights[0].0;
            for (at, mm) in heights {
                let minute = at.duration_since(zero).as_secs_f64() / 60.0;
                writeln!(file, "{bag},{minute},{mm}").expect("text grows");
            }
        }
    }
    let read = barm_documents::readings::read(file.as_bytes(), plan);
    assert_eq!(read.rejected, [], "the file is read whole");
    // What comes from a record has no line.
    let no_line = |reading| Reading { line: 0, ..reading };
    let readings: Vec<Reading> = read.readings.into_iter().map(no_line).collect();
    let from_file = analyze(plan, &forecasts, &readings, &read.set_aside);
    assert!(from_file.minute.is_some(), "there is something to compare");
    assert_eq!(from_record.minute, from_file.minute);
    assert_eq!(from_record.questions, from_file.questions);
    assert_eq!(from_record, from_file);
}
