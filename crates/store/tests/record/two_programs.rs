//! Two programs on one PostgreSQL database.

use crate::made::{at, reading};
use crate::server::Server;
use barm_store::{Kind, Place, Store};
use std::collections::BTreeSet;
use std::sync::mpsc;
use std::thread;

#[test]
fn two_programs_hear_of_each_other_and_share_one_record() {
    let Some(server) = Server::start() else { return };
    let place = Place::Postgres(server.address());
    let (one, two) = (Store::open(&place).unwrap(), Store::open(&place).unwrap());
    let id = one.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    let (tell, told) = mpsc::channel();
    two.on_change(move |investigation, seq| tell.send((investigation, seq)).unwrap());
    one.append(id, vec![reading(1, 5.0), reading(2, 6.0)]).unwrap();
    assert_eq!(told.recv().unwrap(), (id, 2));

    thread::scope(|scope| {
        for (store, first) in [(&one, 1000), (&two, 2000)] {
            scope.spawn(move || {
                for number in first..first + 30 {
                    store
                        .append(
                            id,
                            vec![reading(number, 1.0), reading(5000 + number % 1000, 9.0)],
                        )
                        .unwrap();
                }
            });
        }
    });
    let found = one.entries(id, 0).unwrap();
    assert_eq!(found, two.entries(id, 0).unwrap());
    let places: BTreeSet<i64> = found.iter().map(|(seq, _)| *seq).collect();
    assert_eq!(places.len(), found.len());
    assert_eq!(one.full_check().unwrap().entries, found.len());
}

#[test]
fn a_lost_connection_is_made_anew() {
    let Some(server) = Server::start() else { return };
    let store = Store::open(&Place::Postgres(server.address())).unwrap();
    let id = store.add_investigation("Syrup or oats", Kind::Real, at(0)).unwrap().id;
    store.append(id, vec![reading(1, 5.0)]).unwrap();
    assert_eq!(store.entries(id, 0).unwrap().len(), 1);
    let mut other = postgres::Client::connect(&server.address(), postgres::NoTls).unwrap();
    other
        .execute(
            "select pg_terminate_backend(pid) from pg_stat_activity \
             where pid <> pg_backend_pid() and backend_type = 'client backend'",
            &[],
        )
        .unwrap();
    // The first call may be the one that notices.
    let again = store.append(id, vec![reading(2, 6.0)]);
    let receipts = again.or_else(|_| store.append(id, vec![reading(2, 6.0)])).unwrap();
    assert_eq!(receipts[0].seq, 2);
    let found = store.entries(id, 0).or_else(|_| store.entries(id, 0)).unwrap();
    assert_eq!(found.len(), 2);
    // Notices come again too.
    let (tell, told) = mpsc::channel();
    store.on_change(move |investigation, _| tell.send(investigation).unwrap());
    let another = Store::open(&Place::Postgres(server.address())).unwrap();
    another.append(id, vec![reading(3, 7.0)]).unwrap();
    assert_eq!(told.recv().unwrap(), id);
}
