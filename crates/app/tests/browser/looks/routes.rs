//! No page of the route table is left out, and none is looked at that is not there.

use super::ALL;
use std::collections::BTreeSet;

/// What is asked for with GET and is no page: files, streams, answers to scripts, and addresses
/// that only lead on.
const NO_PAGE: [&str; 32] = [
    "/",
    "/a/{version}/{name}",
    "/time",
    "/i/{id}/plan.toml",
    "/i/{id}/pilot.pdf",
    "/i/{id}/pilot.csv",
    "/i/{id}/prep.pdf",
    "/i/{id}/forecast.pdf",
    "/i/{id}/results.pdf",
    "/i/{id}/data.zip",
    "/i/{id}/data.csv",
    "/i/{id}/bags.svg",
    "/i/{id}/curves.csv",
    "/i/{id}/print/{file}",
    "/i/{id}/proposals.csv",
    "/i/{id}/grades/{period}/{file}",
    "/i/{id}/run",
    "/i/{id}/talk",
    "/i/{id}/enter",
    "/i/{id}/rehearse/state",
    "/bench/state",
    "/bench-worker.js",
    "/i/{id}/events",
    "/i/{id}/version",
    "/bench/events",
    "/bench/version",
    "/wall/events",
    "/wall/version",
    "/round/events",
    "/round/version",
    "/aide/events",
    "/aide/version",
];

#[test]
fn every_page_of_the_route_table_is_looked_at() {
    let table = include_str!("../../../src/web/routes.rs");
    let rows = table.split("pub(super) fn table()").nth(1).expect("the table");
    let read = rows.split("get(\"").skip(1).filter_map(|rest| rest.split('"').next());
    let read: BTreeSet<&str> = read.collect();
    assert!(read.len() > 30, "the table is read: {read:?}");
    let seen = ALL.iter().flat_map(|list| list.iter()).map(|look| look.route);
    let seen: BTreeSet<&str> = seen.filter(|route| *route != "(nowhere)").collect();
    let known: BTreeSet<&str> = seen.iter().copied().chain(NO_PAGE).collect();
    assert_eq!(seen.len() + NO_PAGE.len(), known.len(), "a page is not also no page");
    let left_out: Vec<_> = read.difference(&known).collect();
    assert!(left_out.is_empty(), "not looked at: {left_out:?}");
    let gone: Vec<_> = known.difference(&read).collect();
    assert!(gone.is_empty(), "not in the table: {gone:?}");
}
