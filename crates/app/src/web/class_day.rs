//! The pages of the class day, from records made by hand: whole, well-formed, and silent about
//! what their readers may not know.
//!
//! With `BARM_PAGES` set to a folder the pages are left there to be looked at.

use super::page::sheet_with;
use super::{aide, round, run, wall};
use crate::desk::room::Kind;
use crate::desk::room::acted::{Acted, PERIOD, at, bag};
use crate::desk::room::aide::aide_view;
use crate::desk::room::round::round_view;
use crate::desk::room::run::{bag_page, run_view};
use crate::desk::room::wall::wall_view;
use crate::desk::{Catalog, Wording};
use barm_domain::record::{Audience, Face, Lent, Subject, What, Who};

/// Leaves a page where a person can look at it, if asked to.
fn leave(name: &str, language: &str, styles: &[&str], body: &maud::Markup) {
    let Ok(folder) = std::env::var("BARM_PAGES") else { return };
    let page = sheet_with(language, name, styles, &[], body).0;
    let page = page.replace(&super::assets::address(""), "assets/");
    std::fs::write(std::path::Path::new(&folder).join(format!("{name}.html")), page)
        .expect("the folder is there");
}

/// Elements are closed in the order in which they were opened; every id stands once; no style and
/// no script stands in the page itself.
fn sound(name: &str, page: &str) {
    const VOID: [&str; 6] = ["meta", "link", "input", "br", "hr", "img"];
    let mut open: Vec<&str> = Vec::new();
    let mut ids = std::collections::BTreeSet::new();
    let mut rest = page;
    while let Some(start) = rest.find('<') {
        let end = start + rest[start..].find('>').unwrap_or_else(|| panic!("{name}: no end"));
        let tag = &rest[start + 1..end];
        rest = &rest[end + 1..];
        if tag.starts_with('!') {
            continue;
        }
        if let Some(closed) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(closed), "{name}: </{closed}>");
            continue;
        }
        let element = tag.split([' ', '/']).next().unwrap_or_default();
        let names = tag.split_whitespace().skip(1).filter_map(|word| word.split_once('='));
        let mut names = names.map(|(attribute, _)| attribute);
        let inline = names.any(|name| name == "style" || name.starts_with("on"));
        assert!(!inline, "{name}: <{tag}>");
        if let Some(id) = tag.split(" id=\"").nth(1).and_then(|id| id.split('"').next()) {
            assert!(ids.insert(id.to_owned()), "{name}: the id {id} stands twice");
        }
        if !tag.ends_with('/') && !VOID.contains(&element) {
            open.push(element);
        }
    }
    assert!(open.is_empty(), "{name}: {open:?} stay open");
    for label in page.split("<label for=\"").skip(1) {
        let of = label.split('"').next().unwrap_or_default();
        assert!(ids.contains(of), "{name}: a label for {of}, which is not there");
    }
}

fn run_page(name: &str, acted: &Acted, minute: f64) -> String {
    let now = at(60.0 * minute);
    let view = acted
        .scene(|scene| run_view(scene, Wording::english(), PERIOD, None, now))
        .expect("a view");
    let body = run::drawn(&view);
    leave(name, "en", &["run.css"], &body);
    let page = body.into_string();
    sound(name, &page);
    page
}

fn wall_page(name: &str, acted: &Acted, minute: f64, language: &str) -> String {
    let now = at(60.0 * minute);
    let view = acted.scene(|scene| wall_view(scene, PERIOD, now)).expect("a view");
    let body = wall::drawn(&view, Catalog::of(language));
    leave(name, language, &["wall.css"], &body);
    let page = body.into_string();
    sound(name, &page);
    page
}

fn round_page(name: &str, acted: &Acted, minute: f64) -> String {
    let now = at(60.0 * minute);
    let view = acted
        .scene(|scene| round_view(scene, Wording::english(), PERIOD, now))
        .expect("a view");
    let body = round::drawn(Wording::english(), &view);
    leave(name, "en", &["wall.css"], &body);
    let page = body.into_string();
    sound(name, &page);
    page
}

/// As on any day: two groups read, a bag leaks, one is late, a tablet is silent.
fn busy() -> Acted {
    let mut acted = Acted::new(8, 3);
    let (leaks, late) = (bag(1, 1), bag(4, 2));
    acted.runs_to(32.1, 1.0, |code, planned| {
        (code == late || code == leaks) && planned == 16
            || code.group() == 7 && planned > 4
            || code.group() == 6 && planned > 12
    });
    acted.bag(60.0 * 30.4, leaks, What::Reading { planned: Some(16), height_mm: 9.0 });
    acted.period(60.0 * 13.0, What::Jug { celsius: 39.5, jug: 1 });
    acted
}

fn open_curves(acted: &mut Acted) {
    let to = Audience::Wall { period: PERIOD.to_owned() };
    let what = What::Opened { face: Face::PeriodCurves, to };
    acted.enter(60.0 * 20.0, Subject::Investigation, what, Who::Teacher);
}

#[test]
fn the_run_page_stands_in_every_state() {
    let mut before = Acted::new(8, 3);
    run_page("run-before", &before, -5.0);
    before.period(0.0, What::Began);
    run_page("run-setup", &before, 9.0);
    run_page("run-empty", &Acted::new(0, 0), 3.0);
    let mut one = Acted::new(1, 2);
    one.runs_to(18.0, 1.0, |_, _| false);
    run_page("run-one", &one, 18.1);
    let page = run_page("run-busy", &busy(), 32.6);
    for wanted in
        ["Leak?", "Late ", "Not heard since", "Read now", "Needs you", "Made-up class"]
    {
        assert!(page.contains(wanted), "{wanted}");
    }
    // Every bag that is read now stands beside its curve on its forecast, in a picture and in words.
    let now =
        page.split("class=\"duet\"").nth(1).and_then(|rest| rest.split("</table>").next());
    let now = now.expect("bags are due");
    let pictures: Vec<&str> = now.split("class=\"spark\"").skip(1).collect();
    assert_eq!(pictures.len(), now.matches("class=\"bag\"").count());
    for picture in pictures {
        let picture = picture.split("</svg>").next().unwrap_or_default();
        assert_eq!(picture.matches("<path").count(), 2, "band and curve: {picture}");
        assert!(picture.contains("expected"), "{picture}");
    }
    let mut many = Acted::new(14, 3);
    many.runs_to(29.0, 1.0, |code, planned| code.letter() == 'C' && planned == 8);
    run_page("run-many", &many, 29.3);
    let mut low = busy();
    low.ledger = Acted::new(8, 3).ledger;
    low.runs_to(28.0, 0.1, |_, _| false);
    let page = run_page("run-low", &low, 28.2);
    assert_eq!(page.matches("class=\"call\"").count(), 1);
    let mut stopped = busy();
    stopped.period(60.0 * 32.7, What::Stopped);
    let page = run_page("run-stopped", &stopped, 36.0);
    assert!(page.contains("Go on") && !page.contains("Stop the clocks"));
    let mut over = Acted::new(8, 3);
    over.runs_to(45.0, 1.0, |_, _| false);
    run_page("run-past-bell", &over, 45.2);
    over.period(60.0 * 45.5, What::Ended);
    let page = run_page("run-over", &over, 46.0);
    assert_eq!(page.matches("type=\"checkbox\"").count(), 6, "six ticks");
}

#[test]
fn the_page_of_a_bag_stands() {
    let mut acted = busy();
    let code = bag(1, 1);
    acted.bag(60.0 * 31.0, code, What::Odd(barm_domain::record::Odd::Leak));
    let now = at(60.0 * 32.6);
    let view = acted
        .scene(|scene| bag_page(scene, Wording::english(), PERIOD, code, None, now))
        .expect("a view");
    let body = run::bag_drawn(&view);
    leave("run-bag", "en", &["run.css"], &body);
    sound("bag", &body.into_string());
}

#[test]
fn the_wall_stands_in_every_state_and_in_both_languages() {
    for language in ["en", "es"] {
        let named = |state: &str| format!("wall-{state}-{language}");
        let mut acted = Acted::new(8, 3);
        wall_page(&named("before"), &acted, -5.0, language);
        acted.period(0.0, What::Began);
        let page = wall_page(&named("setup"), &acted, 6.0, language);
        assert!(page.contains("K7MP4"), "how to join stands there in the first minutes");
        let page = wall_page(&named("later"), &acted, 12.0, language);
        assert!(!page.contains("K7MP4"), "and not later");
        wall_page(&named("closed"), &busy(), 32.6, language);
        let mut open = busy();
        open_curves(&mut open);
        open.enter(
            60.0,
            Subject::Group { period: PERIOD.to_owned(), group: 8 },
            What::StandIn(Lent::Simulated { seed: 3, plan: 1 }),
            Who::Teacher,
        );
        let page = wall_page(&named("curves"), &open, 32.6, language);
        let mark = if language == "en" {
            "Simulated run, not measured: group 8"
        } else {
            "Prueba simulada, no medida: grupo 8"
        };
        assert!(page.contains(mark), "{mark}");
        open.period(60.0 * 32.7, What::Stopped);
        wall_page(&named("stopped"), &open, 34.0, language);
        open.period(60.0 * 35.0, What::WentOn);
        wall_page(&named("past-bell"), &open, 45.2, language);
        open.period(60.0 * 46.0, What::Ended);
        wall_page(&named("over"), &open, 47.0, language);
        let mut many = Acted::new(14, 3);
        many.runs_to(22.0, 1.0, |_, _| false);
        open_curves(&mut many);
        wall_page(&named("many"), &many, 28.9, language);
    }
}

/// Children see the wall and the walk-round page: with a forecast and without one they are the same,
/// letter by letter.
#[test]
fn what_children_can_see_does_not_hang_on_the_forecast() {
    for curves in [false, true] {
        let mut knows = busy();
        let mut low = Acted::new(8, 3);
        low.runs_to(28.0, 0.1, |_, _| false);
        if curves {
            open_curves(&mut knows);
            open_curves(&mut low);
        }
        for mut acted in [knows, low] {
            let wall = wall_page("wall-with", &acted, 32.6, "en");
            let round = round_page("round-with", &acted, 32.6);
            acted.outlook = None;
            assert_eq!(wall, wall_page("wall-without", &acted, 32.6, "en"));
            assert_eq!(round, round_page("round-without", &acted, 32.6));
        }
    }
}

#[test]
fn curves_stand_on_the_wall_only_while_they_are_open() {
    let mut acted = busy();
    assert!(!wall_page("wall", &acted, 32.6, "en").contains("class=\"chart\""));
    open_curves(&mut acted);
    assert!(wall_page("wall", &acted, 32.6, "en").contains("class=\"chart\""));
    let to = Audience::Wall { period: PERIOD.to_owned() };
    let what = What::Closed { face: Face::PeriodCurves, to };
    acted.enter(60.0 * 32.0, Subject::Investigation, what, Who::Teacher);
    assert!(!wall_page("wall", &acted, 32.6, "en").contains("class=\"chart\""));
}

#[test]
fn nobody_is_late_on_the_wall() {
    let page = wall_page("wall", &busy(), 32.6, "en");
    assert!(!page.to_lowercase().contains("late"));
}

#[test]
fn the_walk_round_page_stands_in_every_state() {
    let page = round_page("round-busy", &busy(), 32.6);
    assert!(page.contains("Leak?") && page.contains("Late ") && page.contains("Read now"));
    round_page("round-before", &Acted::new(8, 3), -3.0);
    round_page("round-empty", &Acted::new(0, 0), 3.0);
    let mut stopped = busy();
    stopped.period(60.0 * 32.7, What::Stopped);
    round_page("round-stopped", &stopped, 34.0);
}

#[test]
fn an_aide_has_a_list_for_each_station_in_both_languages() {
    let mut acted = Acted::new(8, 3);
    for kind in [Kind::Real, Kind::Invented] {
        acted.kind = kind;
        for language in ["en", "es"] {
            let words = Catalog::of(language);
            let view = acted.scene(|scene| aide_view(scene, words));
            let stations: Vec<&str> = view.stations.iter().map(|one| one.word).collect();
            assert_eq!(stations, ["trays", "water", "stock", "vent", "clean"]);
            for station in [None, Some("water"), Some("stock"), Some("trays"), Some("nonsense")]
            {
                let body = aide::drawn(&view, station, words);
                let name = format!("aide-{}-{language}", station.unwrap_or("first"));
                leave(&name, language, &["wall.css"], &body);
                let page = body.into_string();
                sound(&name, &page);
                assert_eq!(page.contains("madeup"), kind == Kind::Invented);
                assert!(!page.contains("aide-jug"), "a key without a text");
            }
        }
    }
}
