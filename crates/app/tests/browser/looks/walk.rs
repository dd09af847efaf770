//! Two servers, somebody who goes from page to page of them, and codes to come in with.

use crate::browser::Browser;
use crate::class::Class;
use crate::school::{School, Served};
use barm_domain::record::{Entry, Key};
use serde_json::json;

/// What the walk needs: a shelf with nothing on it, and one with an investigation that has only a
/// plan and one in the middle of its day.
pub(crate) struct Stage {
    bare: Served,
    full: Served,
    codes: Codes,
    _nothing: School,
    school: School,
    /// What was on record before anybody came.
    laid: Vec<Key>,
}

/// Codes of period 4.
#[derive(Default)]
pub(crate) struct Codes {
    /// Before the day: of the period, of its groups 1 to 3, of the wall page.
    pub(crate) before: (String, [String; 3], String),
    /// In the middle of it: of the period, of group 2, of the wall page.
    pub(crate) during: (String, String, String),
    /// Of groups of that middle: one with class data, one with a simulated run, one to which
    /// curves and results are open.
    pub(crate) lent: [String; 3],
    pub(crate) round: String,
    pub(crate) aide: String,
}

/// The investigation that has only a plan.
pub(crate) const BEFORE: i64 = 1;
/// The one whose day goes on: period 1 is over, period 2 is low, period 4 reads.
pub(crate) const DURING: i64 = 2;
/// The teacher's passphrase.
pub(crate) const PASSPHRASE: &str = "maple oat potato milk";

impl Stage {
    pub(crate) fn new() -> Self {
        let (nothing, school) = (School::bare(), School::bare());
        assert_eq!((school.begin("Before"), school.begin("During")), (BEFORE, DURING));
        school.tried();
        let mut class = Class::new();
        let mut entries = class.period("1", 300, true, &|_, _, mm| Some(mm));
        // Nothing rises anywhere.
        entries.extend(class.period("2", 34, false, &|_, _, _| Some(4.0)));
        entries.extend(class.period("4", 29, false, &|code, minute, mm| {
            match (code.group(), minute) {
                // Written in centimeters; not read in time; and group 2 has not read yet.
                (5, 8) => Some((mm / 10.0).round()),
                (7, 8) => None,
                (2, 12..) => None,
                _ => Some(mm),
            }
        }));
        entries.extend(class.lent("4"));
        school.enter(DURING, &entries);
        let laid = entries.iter().map(|entry| entry.key).collect();
        let groups = [("DART", 1), ("HEAT", 2), ("NEAR", 3)];
        let groups =
            groups.map(|(code, group)| school.code(BEFORE, code, "group", Some(group)));
        let codes = Codes {
            before: (
                school.code(BEFORE, "CAFE", "period", None),
                groups,
                school.code(BEFORE, "FARMED", "wall", None),
            ),
            during: (
                school.code(DURING, "PACE", "period", None),
                school.code(DURING, "CHAT", "group", Some(2)),
                school.code(DURING, "WATCHED", "wall", None),
            ),
            lent: [("READ", 3), ("CARD", 4), ("FARM", 8)]
                .map(|(code, group)| school.code(DURING, code, "group", Some(group))),
            round: school.code(DURING, "TRACED", "round", None),
            aide: school.code(DURING, "WARMED", "aide", None),
        };
        let (bare, full) = (nothing.serve(0), school.serve(0));
        Self { bare, full, codes, _nothing: nothing, school, laid }
    }

    /// Pulls the plug and gives what was put on record since the beginning.
    pub(crate) fn ended(self) -> Vec<Entry> {
        self.full.stop();
        let record = self.school.entries(DURING).into_iter();
        record.filter(|entry| !self.laid.contains(&entry.key)).collect()
    }

    pub(crate) fn walk<'a>(&'a self, browser: &'a Browser) -> Walk<'a> {
        Walk { browser, bare: &self.bare, full: &self.full, codes: &self.codes }
    }
}

/// Somebody who goes from page to page.
pub(crate) struct Walk<'a> {
    pub(crate) browser: &'a Browser,
    pub(crate) bare: &'a Served,
    pub(crate) full: &'a Served,
    pub(crate) codes: &'a Codes,
}

impl Walk<'_> {
    /// Opens a page of the full shelf.
    pub(crate) fn open(&self, path: &str) {
        self.browser.open(&self.full.at(path));
    }

    /// Writes into a field.
    pub(crate) fn set(&self, selector: &str, value: &str) {
        let script = "const [[selector, value], done] = arguments;
             const field = document.querySelector(selector);
             field.value = value;
             field.dispatchEvent(new Event('input', { bubbles: true }));
             done(true);";
        self.browser.run_later(script, &json!([selector, value]));
    }

    /// Picks a file of these bytes.
    pub(crate) fn pick(&self, selector: &str, name: &str, bytes: &[u8]) {
        let script = "const [[selector, name, bytes], done] = arguments;
             const box = new DataTransfer();
             box.items.add(new File([new Uint8Array(bytes)], name));
             document.querySelector(selector).files = box.files;
             done(true);";
        self.browser.run_later(script, &json!([selector, name, bytes]));
    }

    /// Clicks what leads to another page, and waits until that page is there.
    pub(crate) fn leave_by(&self, selector: &str) {
        self.browser.run("window.left = true;");
        self.browser.click(selector);
        let there = "return window.left === undefined && document.readyState === 'complete';";
        self.browser.until(there);
    }

    /// Presses a key that leads to another page, and waits until that page is there.
    pub(crate) fn leave_with(&self, key: &str) {
        self.browser.run("window.left = true;");
        self.browser.press(key);
        let there = "return window.left === undefined && document.readyState === 'complete';";
        self.browser.until(there);
    }

    /// Takes the network away from this window, as Chrome's own tools do.
    pub(crate) fn cut_off(&self) {
        self.browser.network(false);
    }

    /// Where it is.
    pub(crate) fn path(&self) -> String {
        let path = self.browser.run("return location.pathname;");
        path.as_str().expect("a path").to_owned()
    }

    /// Chooses the passphrase of a new shelf.
    pub(crate) fn choose(&self, passphrase: &str) {
        self.set("#passphrase", passphrase);
        self.set("#again", passphrase);
        self.leave_by("form[action='/teacher/first'] button");
    }

    /// Comes in with the code of a page.
    pub(crate) fn come_in(&self, code: &str, path: &str) {
        self.open("/join");
        self.browser.run("document.querySelector('details.other').open = true;");
        self.set("#code", code);
        self.leave_by("details.other button[type=submit]");
        assert_eq!(self.path(), path);
    }

    /// Comes in as a group.
    pub(crate) fn join(&self, period: &str, group: &str) {
        self.open("/join");
        self.set("#period", period);
        self.set("#group", group);
        self.leave_by("form[action='/join'] button[type=submit]");
        assert_eq!(self.path(), "/bench");
        let drawn = "return document.querySelector('#tabs button, #opened section') !== null;";
        self.browser.until(drawn);
    }

    /// Waits until the page, loaded again and again, holds something.
    pub(crate) fn until_it_holds(&self, path: &str, selector: &str) {
        let there = format!("return document.querySelector('{selector}') !== null;");
        crate::browser::wait(selector, || {
            self.open(path);
            (self.browser.run(&there) == json!(true)).then_some(())
        });
    }
}
