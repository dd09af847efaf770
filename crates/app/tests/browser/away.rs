//! A bench whose stream says nothing any more, and one without a server from its zero reading to
//! the bell.

use crate::bench::{ALL_SAVED, join, tap};
use crate::browser::{Browser, wait};
use crate::school::{GROUP, PERIOD, School};
use crate::skip;
use barm_domain::record::{Entry, Key, Odd, Subject, What, Who};
use jiff::{SignedDuration, Timestamp};
use serde_json::json;
use std::time::Instant;

/// The page's patience passes thirty times as fast as the clock in the room.
const IMPATIENT: &str =
    "const began = performance.now(); const true_now = performance.now.bind(performance);
    performance.now = () => began + (true_now() - began) * 30;
    const every = setInterval;
    globalThis.setInterval = (work, ms, ...more) => every(work, ms / 30, ...more);
    Object.defineProperty(document, 'hidden', { get: () => true });";

/// A line that broke without a word: it stays open and says nothing.
const SILENT: &str = "globalThis.EventSource = class extends EventTarget {
        static CONNECTING = 0; static OPEN = 1; static CLOSED = 2;
        readyState = 1;
        close() { this.readyState = 2; }
    };";

#[test]
fn a_bench_whose_stream_is_silent_or_blocked_asks_by_itself() {
    for (what, script, blocked) in [
        ("silent", format!("{IMPATIENT} {SILENT}"), json!([])),
        ("blocked", IMPATIENT.to_owned(), json!(["*/bench/events*"])),
    ] {
        let profile = tempfile::tempdir().expect("a folder");
        let browser = match Browser::start(profile.path()) {
            Ok(browser) => browser,
            Err(why) => return skip("a stream that says nothing", why),
        };
        let school = School::new();
        school.has_read(&[(0, 4.0), (4, 5.0)], 245);
        let served = school.serve(0);
        let first = browser.here();
        browser.special("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": script }));
        browser.special("Network.enable", &json!({}));
        browser.special("Network.setBlockedURLs", &json!({ "urls": blocked }));
        join(&browser, &school, &served);
        browser.until(ALL_SAVED);
        // Another device of the group writes; nothing tells this one.
        let second = browser.window();
        browser.turn_to(&second);
        browser.open(&served.at("/bench"));
        browser.until("return document.querySelector('#tabs button') !== null;");
        tap(&browser, 8);
        browser.until(ALL_SAVED);
        browser.turn_to(&first);
        browser.until(
            "return document.getElementById('wrote').innerText.includes('8 mm') && true;",
        );
        assert!(browser.complaints().is_empty(), "{what}: {:?}", browser.complaints());
    }
}

/// Seconds of the class in one true second.
const SPEED: f64 = 40.0;
/// The bell of period 4 on the invented day.
const BELL: &str = "2027-03-09T17:40:00Z";

/// Tries are counted, and their waits pass ten times as fast.
const HASTY: &str = "const later = setTimeout;
    globalThis.setTimeout = (work, ms, ...more) => later(work, ms / 10, ...more);
    globalThis.tries = 0;
    const call = fetch;
    globalThis.fetch = (...of) => { globalThis.tries += 1; return call(...of); };";

const ASKED: &str = "const pad = document.querySelector(\"[data-k='tens-0']\");
     const tab = document.querySelector('#tabs [aria-pressed=true]');
     return pad && tab ? tab.dataset.k.slice(4) : null;";

#[test]
fn a_whole_period_without_a_server_arrives_once() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a period without a server", why),
    };
    let school = School::new();
    let bell: Timestamp = BELL.parse().expect("a moment");
    let began = Entry {
        key: Key::new(1, 1),
        subject: Subject::Period(PERIOD.into()),
        what: What::Began,
        measured: bell,
        arrived: bell,
        who: Who::Teacher,
    };
    school.enter(school.investigation, &[began]);
    // Thirteen minutes after the bell; groups read zero from the fourteenth on.
    let (from, set) = (bell + SignedDuration::from_mins(13), Instant::now());
    let now = || from + SignedDuration::from_secs_f64(set.elapsed().as_secs_f64() * SPEED);
    let clock = || ["--clock".to_owned(), format!("{}@{SPEED}", now())];
    let served = school.serve_with(0, &clock());
    browser.special("Page.addScriptToEvaluateOnNewDocument", &json!({ "source": HASTY }));
    join(&browser, &school, &served);
    browser.until(ALL_SAVED);
    let port = served.port;
    served.stop();
    browser.run("globalThis.tries = 0;");
    // Zero readings, once it was said that there is no guess.
    let go = "document.querySelector(\"[data-k='zero-go']\")?.click();";
    browser.until(&format!("{go} {ASKED}"));
    let over = "return document.querySelector(\"[data-k^='vent-']\") !== null;";
    let (mut typed, mut odd) = (Vec::new(), 0);
    while browser.run(over) == false {
        let Some(bag) = browser.run(ASKED).as_str().map(str::to_owned) else { continue };
        let mm = 4 + typed.iter().filter(|(own, _)| *own == bag).count() as u32;
        tap(&browser, mm);
        typed.push((bag, f64::from(mm)));
        if typed.len() == school.bags.len() + 1 {
            browser.click("[data-k='odd-foam']");
            odd += 1;
        }
    }
    for bag in &school.bags {
        browser.click(&format!("[data-k='vent-{bag}']"));
    }
    wait("the bell", || (now() >= bell + SignedDuration::from_mins(45)).then_some(()));
    // Six waits stand in the list; the longest was reached, and it went on trying.
    browser.until("return globalThis.tries > 8;");
    let seals = school.bags.len();
    let all = typed.len() + odd + 2 * seals;
    browser.until(&format!(
        "return document.querySelector('#head .st.kept')?.textContent.startsWith('{all} ');"
    ));
    let served = school.serve_with(port, &clock());
    browser.until(ALL_SAVED);
    served.stop();
    let group = Who::Group { period: PERIOD.into(), group: GROUP };
    let own: Vec<Entry> =
        school.record().into_iter().filter(|entry| entry.who == group).collect();
    let mut found: Vec<(String, f64)> = own
        .iter()
        .filter_map(|entry| match (&entry.subject, &entry.what) {
            (
                Subject::Bag(code),
                What::Zero { height_mm } | What::Reading { height_mm, .. },
            ) => Some((code.to_string(), *height_mm)),
            _ => None,
        })
        .collect();
    let order = |a: &(String, f64), b: &(String, f64)| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1));
    found.sort_by(order);
    typed.sort_by(order);
    assert_eq!(found, typed, "every height once");
    assert!(typed.len() >= 5 * seals, "the period was read to its end: {}", typed.len());
    let count = |what: &What| own.iter().filter(|entry| entry.what == *what).count();
    assert_eq!(count(&What::Odd(Odd::Foam)), odd);
    assert_eq!(count(&What::Vented), seals);
    assert_eq!(count(&What::Sealed { plan: 1 }), seals);
    // Read when they say, though they came after the bell.
    let late = bell + SignedDuration::from_mins(45);
    for entry in &own {
        assert!(entry.measured < late && entry.arrived >= late, "{entry:?}");
    }
}
