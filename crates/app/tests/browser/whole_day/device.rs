//! A group's device: a window of the browser under a name of its own.

use super::Typed;
use super::hall::Hall;
use crate::bench::{ALL_SAVED, LOADED, tap, until_written};
use crate::browser::Browser;
use barm_domain::code::BagCode;
use serde_json::json;
use std::collections::BTreeMap;

/// A device at a bench.
pub(super) struct Device {
    window: String,
    host: String,
    /// What was typed on it.
    pub(super) typed: Typed,
}

/// Whether there is a height to be typed now: the code of the bag, or nothing.
const ASKED: &str = "const pad = document.querySelector(\"[data-k='tens-0']\");
     const tab = document.querySelector('#tabs [aria-pressed=true]');
     return pad && tab ? tab.dataset.k.slice(4) : null;";

/// Writes both codes and joins.
const COME_IN: &str = "document.getElementById('period').value = arguments[0][0];
     document.getElementById('group').value = arguments[0][1];
     document.querySelector('form button[type=submit]').click();
     arguments[1](true);";

/// Writes another address on the page and goes there.
fn go_there(browser: &Browser, address: &str) {
    browser.run("document.querySelector('#move summary').click();");
    browser.run(&format!("document.getElementById('address').value = '{address}';"));
    browser.click("[data-k='move-go']");
}

/// Goes on to the zero readings; a group without a guess is asked once whether it wants none.
fn go_to_zero(browser: &Browser) {
    let go = "document.querySelector(\"[data-k='zero-go']\")?.click();";
    browser.until(&format!("{go} {ASKED}"));
}

impl Device {
    /// Joins as a group.
    pub(super) fn join(browser: &Browser, hall: &Hall, group: u32) -> Self {
        Self::joined(browser, hall, group, group)
    }

    fn joined(browser: &Browser, hall: &Hall, device: u32, group: u32) -> Self {
        let window = browser.window();
        browser.turn_to(&window);
        let host = hall.host(device);
        browser.open(&hall.at(&host, "/join?lang=en"));
        browser.until(LOADED);
        let own = &hall.group_codes[group as usize - 1];
        browser.run_later(COME_IN, &json!([hall.period_code(), own]));
        let there = "return location.pathname === '/bench' && document.querySelector('#tabs button') !== null;";
        browser.until(there);
        Self { window, host, typed: Typed::new() }
    }

    /// Seals its bags and reads zero, if it has not yet.
    pub(super) fn begin(&mut self, browser: &Browser) {
        browser.turn_to(&self.window);
        if !self.typed.is_empty() {
            return;
        }
        go_to_zero(browser);
        while self.asked(browser).is_some() {
            self.write(browser);
        }
    }

    fn asked(&self, browser: &Browser) -> Option<BagCode> {
        let asked = browser.run(ASKED);
        asked.as_str().map(|code| code.parse().expect("a code"))
    }

    /// Types one millimeter more than last time for the bag that is asked for. Which one that is
    /// may change until the first tap, so it is read and tapped at once.
    fn write(&mut self, browser: &Browser) {
        let next = |typed: &Vec<f64>| typed.last().map_or(4, |last| *last as u32 + 1);
        let known: BTreeMap<String, u32> =
            self.typed.iter().map(|(bag, typed)| (bag.to_string(), next(typed))).collect();
        let taps = format!(
            "const asked = (() => {{ {ASKED} }})();
             const mm = {}[asked] ?? 4;
             const key = (digit) => document.querySelector(`[data-k='${{digit}}']`);
             if (asked === null || key('tens-0').ariaDisabled === 'true') return null;
             key(`tens-${{Math.floor(mm / 10)}}`).click();
             key(`ones-${{mm % 10}}`).click();
             return [asked, mm];",
            json!(known)
        );
        let tapped = browser.run(&taps);
        let Some(bag) = tapped[0].as_str() else { return };
        let bag: BagCode = bag.parse().expect("a code");
        let mm = tapped[1].as_u64().and_then(|mm| u32::try_from(mm).ok()).expect("a height");
        until_written(browser);
        let heights = self.typed.entry(bag).or_default();
        let asks = browser.run("return document.getElementById('guard')?.innerText ?? null;");
        assert!(asks.is_null(), "a question about {mm} mm on bag {bag}: {asks}");
        heights.push(f64::from(mm));
    }

    /// Types everything that is asked for now.
    pub(super) fn work(&mut self, browser: &Browser) {
        browser.turn_to(&self.window);
        while self.asked(browser).is_some() {
            self.write(browser);
        }
    }

    /// Gives the network or takes it away.
    pub(super) fn network(&self, browser: &Browser, on: bool) {
        browser.turn_to(&self.window);
        browser.network(on);
    }

    /// How many entries it keeps that nobody acknowledged.
    pub(super) fn kept(&self, browser: &Browser) -> u64 {
        browser.turn_to(&self.window);
        let text = "return parseInt(document.querySelector('#head .st.kept')?.textContent ?? '0', 10);";
        browser.run(text).as_u64().unwrap_or_default()
    }

    pub(super) fn until_saved(&self, browser: &Browser) {
        browser.turn_to(&self.window);
        browser.until(ALL_SAVED);
    }

    /// Half of a height is typed when the page is loaded again: nothing of it is written.
    pub(super) fn load_again_in_the_middle(&mut self, browser: &Browser) {
        browser.turn_to(&self.window);
        browser.until(ASKED);
        browser.click("[data-k='tens-3']");
        browser.run("location.reload();");
        browser.until("return document.querySelector('[aria-pressed=true][data-k^=tens]') === null && document.querySelector('#tabs button') !== null;");
        self.work(browser);
    }

    /// Somebody presses the browser's back button, and opens the page again.
    pub(super) fn go_back_and_return(&mut self, browser: &Browser, hall: &Hall) {
        self.work(browser);
        browser.back();
        browser.until("return document.readyState === 'complete';");
        browser.open(&hall.at(&self.host, "/bench"));
        browser.until("return document.querySelector('#tabs button') !== null;");
    }

    /// The page is told the address that stands on the wall, where it reaches this device; else
    /// the port of it under the device's own name.
    pub(super) fn move_to(&mut self, browser: &Browser, hall: &Hall, wall: &str) {
        let brings = self.kept(browser) > 0;
        let place = hall.place(&self.host);
        let own = wall == format!("http://{place}");
        go_there(browser, if own { wall } else { &place });
        let there = format!(
            "return location.host === '{place}' && document.querySelector('#tabs button') !== null;"
        );
        browser.until(&there);
        // What it brings along is taken over by a tap.
        if brings {
            browser.until("return document.querySelector('#notes .guard button') !== null;");
            browser.click("#notes .guard button");
            browser.until("return document.querySelector('#notes .guard') === null;");
        }
        browser.until(ALL_SAVED);
    }

    /// The program is called by another name now, under which this device is in no group: it
    /// brings what it holds to the door, and joins anew.
    pub(super) fn move_elsewhere(&mut self, browser: &Browser, hall: &Hall, group: u32) {
        let brings = self.kept(browser);
        assert!(brings > 0, "it holds what it typed meanwhile");
        self.host = hall.other_name();
        let place = hall.place(&self.host);
        go_there(browser, &place);
        let door =
            format!("return location.host === '{place}' && location.pathname === '/join';");
        browser.until(&door);
        browser.until("return document.getElementById('carry')?.hidden === false;");
        browser.click("#carry-take");
        browser.until("return document.getElementById('brings')?.hidden === false;");
        let codes = json!([hall.period_code(), hall.group_codes[group as usize - 1]]);
        browser.run_later(COME_IN, &codes);
        browser.until("return location.pathname === '/bench' && document.querySelector('#tabs button') !== null;");
        browser.until(ALL_SAVED);
    }
}

/// A second device of group 2 is out of reach when the zero readings are taken; both type one for
/// the first bag, and the second brings its own later. Gives the bag and both heights.
pub(super) fn two_at_once(
    browser: &Browser,
    hall: &Hall,
    first: &mut Device,
) -> (BagCode, [f64; 2]) {
    let second = Device::joined(browser, hall, 0, 2);
    browser.network(false);
    first.begin(browser);
    browser.turn_to(&second.window);
    go_to_zero(browser);
    let bag = second.asked(browser).expect("a bag is asked for");
    tap(browser, 6);
    browser.network(true);
    second.until_saved(browser);
    browser.close();
    browser.turn_to(&first.window);
    // It counts as typed; the next height is above both.
    let own = first.typed.get_mut(&bag).expect("typed on the first, too");
    own.push(6.0);
    (bag, [own[0], 6.0])
}
