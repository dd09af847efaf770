//! Every kind of entry comes back as it went in, and the layouts on disk stay what they are.

use crate::made::{at, bag, entry, key, reading};
use crate::places::{Ground, tell};
use barm_domain::plan::{Difference, Extra, Lies, YeastKind};
use barm_domain::record::{
    Audience, Entry, Face, Lent, Made, Odd, Subject, Truth, What, Who, WordsKey,
};
use barm_domain::testing::{amount, bag as bag_choice, card};
use barm_store::{Kind, Place, StoreError};

fn everything() -> Vec<What> {
    let group = Audience::Group { period: "2".into(), group: 3 };
    let mut all = vec![
        What::Made(Made::default()),
        What::Made(Made {
            water_celsius: Some(38.4),
            difference: Some(Box::new(Difference {
                bag: Some(bag_choice("snack")),
                card: Some(card("3 x 5 in")),
                water: Some(amount("55 mL")),
                water_celsius: Some(0.1 + 0.2),
                yeast: Some(Some(YeastKind::Instant)),
                yeast_amount: Some(amount("1/4 tsp")),
                food: Some(None),
                food_amount: Some(amount("3 g")),
                enzyme: Some(Some("lactase-tablet".into())),
                enzyme_amount: Some(amount("2 drops")),
                extras: Some(vec![Extra { item: "salt".into(), amount: amount("1 packet") }]),
                lies: Some(Lies::WarmTray(41.5)),
            })),
        }),
        What::Made(Made {
            water_celsius: None,
            difference: Some(Box::new(Difference {
                yeast: Some(None),
                food: Some(Some("oat flour".into())),
                enzyme: Some(None),
                lies: Some(Lies::Towel),
                ..Difference::default()
            })),
        }),
        What::Sealed { plan: 3 },
        What::Zero { height_mm: 4.1 },
        What::Reading { planned: Some(12), height_mm: 1.0 / 3.0 },
        What::Reading { planned: None, height_mm: -0.5 },
        What::Correction { of: key(1), height_mm: 25.4 },
        What::Meter { percent: 0.032, turn: Some(2) },
        What::Meter { percent: 0.0, turn: None },
        What::SetRight(Truth { treatment: Some("oat flour".into()), group: Some(2) }),
        What::SetRight(Truth { treatment: None, group: None }),
        What::SetAside { rule: "leak".into() },
        What::TakenBack,
        What::OddBack { of: key(1) },
        What::Vented,
        What::Lost,
        What::Guess { expects: vec![(bag(1), 12.5)], because: Some(WordsKey(u128::MAX)) },
        What::Guess { expects: vec![], because: None },
        What::Here { students: 3 },
        What::StandIn(Lent::ClassData),
        What::StandIn(Lent::Simulated { seed: u64::MAX >> 11, plan: 2 }),
        What::Began,
        What::Stopped,
        What::WentOn,
        What::LastReading { minute: 16 },
        What::Jug { celsius: 40.2, jug: 1 },
        What::Blank { turn: 1, percent: Some(0.01) },
        What::Blank { turn: 6, percent: None },
        What::Ended,
        What::PlanSaved { version: 1 },
        What::Opened { face: Face::Results, to: Audience::Wall { period: "1".into() } },
        What::Closed { face: Face::Marks, to: group },
    ];
    all.extend(Odd::ALL.map(What::Odd));
    let to = Audience::Groups { period: "Período 4".into() };
    all.extend(Face::ALL.map(|face| What::Opened { face, to: to.clone() }));
    all
}

#[test]
fn every_kind_comes_back_as_it_went_in() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        let subjects = [
            Subject::Investigation,
            Subject::Period("Período 4".into()),
            Subject::Group { period: "2".into(), group: 0 },
            Subject::Bag(bag(7)),
        ];
        let group = Who::Group { period: "2".into(), group: 9 };
        let who = [Who::Teacher, group, Who::Aide, Who::Import, Who::Program];
        let entries: Vec<Entry> = (1..)
            .zip(everything())
            .map(|(number, what)| Entry {
                subject: subjects[number as usize % subjects.len()].clone(),
                who: who[number as usize % who.len()].clone(),
                ..entry(number, what)
            })
            .collect();
        store.append(id, entries.clone()).unwrap();
        drop(store);
        let store = ground.open();
        let found: Vec<Entry> =
            store.entries(id, 0).unwrap().into_iter().map(|(_, entry)| entry).collect();
        assert_eq!(found, entries);
        // And it is known again as what it is.
        assert!(store.append(id, entries).unwrap().iter().all(|receipt| receipt.known));
    });
}

#[test]
fn what_is_no_number_is_refused() {
    let ground = Ground::folder();
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    for height in [f64::NAN, f64::INFINITY] {
        let refused = store.append(id, vec![reading(1, 2.0), reading(2, height)]).unwrap_err();
        assert!(matches!(refused, StoreError::Unwritable { key: k, .. } if k == key(2)));
    }
    assert_eq!(store.entries(id, 0).unwrap(), []);
}

/// Opens the file behind the store's back.
fn behind(ground: &Ground) -> rusqlite::Connection {
    let Place::Folder(folder) = &ground.place else { panic!("a folder") };
    rusqlite::Connection::open(folder.join("record.sqlite")).unwrap()
}

/// Written by hand from the definition of each layout. If this fails, old records do not open:
/// give the changed layout a new number instead.
#[test]
fn the_layouts_on_disk_are_frozen() {
    let ground = Ground::folder();
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    drop(store);
    let rows: &[(&str, &str, What)] = &[
        (
            "reading",
            r#"{"height_mm":9.5,"planned":4}"#,
            What::Reading { planned: Some(4), height_mm: 9.5 },
        ),
        ("reading", r#"{"height_mm":9}"#, What::Reading { planned: None, height_mm: 9.0 }),
        ("zero", r#"{"height_mm":4.25}"#, What::Zero { height_mm: 4.25 }),
        ("odd", r#"{"odd":"not-read"}"#, What::Odd(Odd::NotRead)),
        (
            "odd-back",
            r#"{"of":"00000000-0000-7000-8000-000000000004"}"#,
            What::OddBack { of: "00000000-0000-7000-8000-000000000004".parse().unwrap() },
        ),
        ("vented", "{}", What::Vented),
        ("blank", r#"{"turn":3,"percent":0.01}"#, What::Blank { turn: 3, percent: Some(0.01) }),
        ("blank", r#"{"turn":4}"#, What::Blank { turn: 4, percent: None }),
        ("sealed", r#"{"plan":2}"#, What::Sealed { plan: 2 }),
        (
            "made",
            r#"{"difference":{"water":{"written":"2 tsp","kind":"spoon mL","value":9.8},"food":null}}"#,
            What::Made(Made {
                water_celsius: None,
                difference: Some(Box::new(Difference {
                    water: Some(barm_domain::amount::Amount {
                        written: "2 tsp".into(),
                        kind: barm_domain::amount::AmountKind::Spoon,
                        value: 9.8,
                    }),
                    food: Some(None),
                    ..Difference::default()
                })),
            }),
        ),
        (
            "opened",
            r#"{"face":"day-curves","to":"group","period":"3","group":2}"#,
            What::Opened {
                face: Face::DayCurves,
                to: Audience::Group { period: "3".into(), group: 2 },
            },
        ),
        ("stand-in", "{}", What::StandIn(Lent::ClassData)),
        (
            "stand-in",
            r#"{"seed":9007199254740991,"plan":3}"#,
            What::StandIn(Lent::Simulated { seed: 9_007_199_254_740_991, plan: 3 }),
        ),
    ];
    let file = behind(&ground);
    for (seq, (kind, body, _)) in (1_i64..).zip(rows) {
        let key = key(u32::try_from(seq).unwrap()).to_string();
        // The newest layout of each, but for the empty one.
        let shape = if *kind == "stand-in" && *body != "{}" { 2 } else { 1 };
        file.execute(
            "insert into entry values (?1, ?2, ?3, 'bag', null, null, ?4, ?5, 0, 0, 'aide', \
             null, null, ?7, ?6)",
            rusqlite::params![seq, id, key, bag(1).to_string(), kind, body, shape],
        )
        .unwrap();
    }
    drop(file);
    let found = ground.open().entries(id, 0).unwrap();
    let found: Vec<&What> = found.iter().map(|(_, entry)| &entry.what).collect();
    assert_eq!(found, rows.iter().map(|(_, _, what)| what).collect::<Vec<_>>());
}

#[test]
fn an_entry_of_a_newer_program_is_named_and_not_dropped() {
    let ground = Ground::folder();
    let store = ground.open();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    store.append(id, vec![reading(1, 5.0)]).unwrap();
    drop(store);
    let file = behind(&ground);
    file.execute_batch(
        "insert into shape values ('reading', 2, '9.4.0');
         insert into entry values (2, 1, '00000000-0000-7000-8000-000000000009', 'investigation',
            null, null, null, 'reading', 0, 0, 'aide', null, null, 2, '{}');",
    )
    .unwrap();
    drop(file);
    let store = ground.open();
    let refused = store.entries(id, 0).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "entry 2 (reading, shape 2) needs Barm 9.4.0 or newer; nothing is lost, but this one \
         cannot read it"
    );
    // A kind that nobody here has heard of.
    drop(store);
    let file = behind(&ground);
    file.execute_batch(
        "insert into entry values (3, 1, '00000000-0000-7000-8000-00000000000a', 'investigation',
            null, null, null, 'weighed', 0, 0, 'aide', null, null, 1, '{}');",
    )
    .unwrap();
    drop(file);
    let refused = ground.open().entries(id, 2).unwrap_err();
    assert!(
        matches!(&refused, StoreError::NewerEntry { seq: 3, program, .. } if program.starts_with("after ")),
        "{refused}"
    );
}

#[test]
fn rows_of_the_record_can_be_neither_changed_nor_removed() {
    tell(|ground| {
        let store = ground.open();
        let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
        store.append(id, vec![reading(1, 5.0)]).unwrap();
        drop(store);
        for sql in ["update entry set body = '{}'", "delete from entry"] {
            let refused = match &ground.place {
                Place::Folder(_) => behind(ground).execute_batch(sql).unwrap_err().to_string(),
                Place::Postgres(address) => {
                    let mut client =
                        postgres::Client::connect(address, postgres::NoTls).unwrap();
                    let error = client.batch_execute(sql).unwrap_err();
                    error.as_db_error().unwrap().message().to_owned()
                }
            };
            assert!(refused.contains("never"), "{refused}");
        }
        assert_eq!(ground.open().entries(id, 0).unwrap(), [(1, reading(1, 5.0))]);
    });
}
