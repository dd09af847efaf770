//! What a teacher counts on, told on both engines.

use crate::made::{at, bag, entry, key, reading};
use crate::places::tell;
use barm_domain::record::{Subject, What, WordsKey};
use barm_store::{Code, Kind, Session, StoreError};
use jiff::ToSpan as _;
use std::sync::mpsc;

#[test]
fn what_was_acknowledged_is_there_after_the_program_was_closed() {
    tell(|ground| {
        let store = ground.open();
        let school = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap();
        let other = store.add_investigation("Dry run", Kind::Rehearsal, at(1)).unwrap();
        assert_eq!((school.id, other.id), (1, 2));
        let mine = vec![entry(1, What::Zero { height_mm: 4.1 }), reading(2, 9.3)];
        let receipts = store.append(school.id, mine.clone()).unwrap();
        assert_eq!(
            receipts.iter().map(|r| (r.seq, r.known)).collect::<Vec<_>>(),
            [(1, false), (2, false)]
        );
        store.append(other.id, vec![reading(3, 1.0)]).unwrap();
        store.append(school.id, vec![reading(4, 12.0)]).unwrap();
        drop(store);

        let store = ground.open();
        assert_eq!(store.investigations().unwrap(), [school.clone(), other.clone()]);
        let found = store.entries(school.id, 0).unwrap();
        assert_eq!(found.iter().map(|(seq, _)| *seq).collect::<Vec<_>>(), [1, 2, 4]);
        assert_eq!(found[0].1, mine[0]);
        assert_eq!(found[1].1, mine[1]);
        assert_eq!(store.entries(school.id, 2).unwrap(), [(4, reading(4, 12.0))]);
        assert_eq!(store.entries(other.id, 0).unwrap(), [(3, reading(3, 1.0))]);
    });
}

#[test]
fn the_same_entry_again_is_acknowledged_and_not_stored_again() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let first = store.append(id, vec![reading(1, 5.0)]).unwrap();
        let mut again = reading(1, 5.0);
        again.arrived = at(4000);
        // The device's clock was set right by another two seconds this time.
        again.measured += 2.seconds();
        let second = store.append(id, vec![again.clone(), reading(2, 6.0), again]).unwrap();
        assert_eq!(second[0].seq, first[0].seq);
        assert_eq!(second.iter().map(|r| r.known).collect::<Vec<_>>(), [true, false, true]);
        let found = store.entries(id, 0).unwrap();
        assert_eq!(found, [(1, reading(1, 5.0)), (2, reading(2, 6.0))]);
    });
}

#[test]
fn a_known_key_with_other_content_is_refused_with_all_that_came_with_it() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let other = store.add_investigation("Dry run", Kind::Rehearsal, at(0)).unwrap().id;
        store.append(id, vec![reading(1, 5.0)]).unwrap();
        let mut of_another_bag = reading(1, 5.0);
        of_another_bag.subject = Subject::Bag(bag(2));
        let mut much_later = reading(1, 5.0);
        much_later.measured = at(500);
        for clash in [reading(1, 5.5), of_another_bag, much_later] {
            let refused = store.append(id, vec![reading(2, 6.0), clash, reading(3, 7.0)]);
            assert!(matches!(refused, Err(StoreError::Clash { key: k }) if k == key(1)));
        }
        let twice = store.append(id, vec![reading(4, 6.0), reading(4, 6.5)]);
        assert!(matches!(twice, Err(StoreError::Clash { key: k }) if k == key(4)));
        let elsewhere = store.append(other, vec![reading(1, 5.0)]);
        assert!(matches!(elsewhere, Err(StoreError::Clash { .. })));
        assert_eq!(store.entries(id, 0).unwrap(), [(1, reading(1, 5.0))]);
        assert_eq!(store.entries(other, 0).unwrap(), []);
        // The places stay without gaps.
        assert_eq!(store.append(id, vec![reading(5, 8.0)]).unwrap()[0].seq, 2);
    });
}

#[test]
fn one_call_that_is_refused_takes_no_other_with_it() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        store.append(id, vec![reading(1, 5.0)]).unwrap();
        let (tell, told) = mpsc::channel();
        for number in 1..=40 {
            let tell = tell.clone();
            // Every tenth call brings the known key with another height.
            let entry = if number % 10 == 0 { reading(1, 99.0) } else { reading(number, 5.0) };
            store.append_then(id, vec![entry], move |result| {
                tell.send((number, result.is_ok())).unwrap();
            });
        }
        drop(tell);
        let told: Vec<(u32, bool)> = told.iter().collect();
        assert_eq!(told.len(), 40);
        for (number, kept) in told {
            assert_eq!(kept, number % 10 != 0, "call {number}");
        }
        assert_eq!(store.entries(id, 0).unwrap().len(), 36);
    });
}

#[test]
fn an_investigation_that_is_not_there_takes_nothing() {
    tell(|ground| {
        let store = ground.open();
        let refused = store.append(7, vec![reading(1, 5.0)]);
        assert_eq!(
            refused.unwrap_err().to_string(),
            "there is no investigation number 7 in this record"
        );
        assert!(matches!(
            store.save_plan(7, "x", at(0)),
            Err(StoreError::NoInvestigation { id: 7 })
        ));
        assert!(matches!(store.plan(7, 1), Err(StoreError::NoPlan { id: 7, version: 1 })));
    });
}

#[test]
fn every_version_of_a_plan_stays() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        assert_eq!(store.save_plan(id, "title = \"é\"\n", at(1)).unwrap(), 1);
        assert_eq!(store.save_plan(id, "title = \"ü\"\n", at(2)).unwrap(), 2);
        assert_eq!(store.save_plan(id, "title = \"ü\"\n", at(3)).unwrap(), 2);
        assert_eq!(store.save_plan(id, "title = \"é\"\n", at(4)).unwrap(), 3);
        drop(store);
        let store = ground.open();
        assert_eq!(store.plan(id, 2).unwrap(), "title = \"ü\"\n");
        let versions: Vec<u32> = store.plans(id).unwrap().into_iter().map(|(v, _)| v).collect();
        assert_eq!(versions, [1, 2, 3]);
    });
}

#[test]
fn what_pilots_found_stays_with_the_version_and_comes_along_with_the_next() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let early = store.save_pilot(id, "lots", "read", at(1));
        assert!(matches!(early, Err(StoreError::NoPlan { .. })), "nothing to keep it with");
        store.save_plan(id, "one", at(1)).unwrap();
        assert_eq!(store.save_pilot(id, "jar é", "spoon,3 g", at(2)).unwrap(), 2);
        assert_eq!(store.save_pilot(id, "jar é", "spoon,3 g", at(3)).unwrap(), 2, "the same");
        assert_eq!(store.save_plan(id, "one", at(3)).unwrap(), 2, "the same plan");
        assert_eq!(store.save_plan(id, "two", at(4)).unwrap(), 3);
        assert_eq!(store.save_pilot(id, "", "", at(5)).unwrap(), 4, "back to nothing");
        drop(store);
        let store = ground.open();
        let kept: Vec<_> = store.pilots(id).unwrap();
        let kept: Vec<_> = kept
            .iter()
            .map(|one| (one.version, one.saved, one.lots.as_str(), one.readings.as_str()))
            .collect();
        let spoon = "spoon,3 g";
        assert_eq!(
            kept,
            [
                (1, at(1), "", ""),
                (2, at(2), "jar é", spoon),
                (3, at(4), "jar é", spoon),
                (4, at(5), "", "")
            ]
        );
        let bodies: Vec<String> =
            store.plans(id).unwrap().into_iter().map(|(_, b)| b).collect();
        assert_eq!(bodies, ["one", "one", "two", "two"]);
        assert!(matches!(
            store.save_pilot(7, "x", "", at(0)),
            Err(StoreError::NoInvestigation { id: 7 })
        ));
    });
}

#[test]
fn words_are_kept_apart_and_do_not_come_back_once_deleted() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let (mine, yours) = (WordsKey(7), WordsKey(8));
        assert!(store.keep_words(id, mine, "reason", "because it is sweet").unwrap());
        assert!(store.keep_words(id, mine, "reason", "because it is sweet").unwrap());
        assert!(store.keep_words(id, yours, "name", "Ada").unwrap());
        let clash = store.keep_words(id, mine, "reason", "because it is warm");
        assert!(matches!(clash, Err(StoreError::WordsClash { .. })));
        assert_eq!(store.words(mine).unwrap().as_deref(), Some("because it is sweet"));
        assert_eq!(store.forget_words(&[mine, WordsKey(9)]).unwrap().words, 1);
        assert_eq!(store.words(mine).unwrap(), None);
        // A tablet that was cut off sends them once more.
        assert!(!store.keep_words(id, mine, "reason", "because it is sweet").unwrap());
        assert_eq!(store.words(mine).unwrap(), None);
        assert_eq!(store.all_words(id).unwrap(), [(yours, "name".into(), "Ada".into())]);
        assert_eq!(store.forget_all_words(id).unwrap().words, 1);
        assert_eq!(store.words(yours).unwrap(), None);
    });
}

#[test]
fn sessions_end_and_codes_open() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let session = Session {
            role: "bench".into(),
            investigation: Some(id),
            period: Some("2".into()),
            group: Some(3),
            made: at(0),
            seen: at(0),
            ends: at(100),
        };
        store.keep_session("a secret token", &session).unwrap();
        assert_eq!(store.session("a secret token", at(99)).unwrap(), Some(session.clone()));
        assert_eq!(store.session("a secret token", at(100)).unwrap(), None);
        assert_eq!(store.session("A secret token", at(1)).unwrap(), None);
        store.see_session("a secret token", at(9)).unwrap();
        assert_eq!(store.session("a secret token", at(10)).unwrap().unwrap().seen, at(9));
        store.end_sessions(id, "bench", Some("1")).unwrap();
        assert!(store.session("a secret token", at(10)).unwrap().is_some());
        store.end_sessions(id, "bench", Some("2")).unwrap();
        assert_eq!(store.session("a secret token", at(10)).unwrap(), None);
        store.keep_session("t2", &session).unwrap();
        store.sweep_sessions(at(100)).unwrap();
        assert_eq!(store.session("t2", at(0)).unwrap(), None);
        store.keep_session("t3", &session).unwrap();
        store.end_session("t3").unwrap();
        assert_eq!(store.session("t3", at(0)).unwrap(), None);

        let code = Code {
            code: "WREN-4".into(),
            role: "bench".into(),
            investigation: id,
            period: Some("2".into()),
            group: None,
            made: at(0),
            ends: None,
        };
        assert!(store.keep_code(&code).unwrap());
        assert!(!store.keep_code(&Code { role: "wall".into(), ..code.clone() }).unwrap());
        assert_eq!(store.code("WREN-4").unwrap(), Some(code.clone()));
        assert_eq!(store.codes(id).unwrap(), [code]);
        store.drop_code("WREN-4").unwrap();
        assert_eq!(store.code("WREN-4").unwrap(), None);

        store.keep_secret("passphrase", "one").unwrap();
        store.keep_secret("passphrase", "two").unwrap();
        assert_eq!(store.secret("passphrase").unwrap().as_deref(), Some("two"));
        assert_eq!(store.setting("passphrase").unwrap(), None);
        store.drop_secret("passphrase").unwrap();
        assert_eq!(store.secret("passphrase").unwrap(), None);
        store.keep_setting("language", "es").unwrap();
        assert_eq!(store.setting("language").unwrap().as_deref(), Some("es"));
    });
}

#[test]
fn a_listener_hears_of_what_is_on_disk() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let (tell, told) = mpsc::channel();
        store.on_change(move |investigation, seq| tell.send((investigation, seq)).unwrap());
        store.append(id, vec![reading(1, 5.0), reading(2, 6.0)]).unwrap();
        assert_eq!(told.recv().unwrap(), (id, 2));
        // Nothing new, nothing told.
        store.append(id, vec![reading(1, 5.0)]).unwrap();
        store.append(id, vec![reading(3, 7.0)]).unwrap();
        assert_eq!(told.recv().unwrap(), (id, 3));
    });
}
