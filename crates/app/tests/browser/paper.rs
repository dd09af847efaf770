//! A stack of data sheets typed by a teacher: keys counted, kept over a reload, and the same record
//! as from a file.

use crate::browser::Browser;
use crate::school::{School, Served};
use crate::skip;
use barm_domain::record::{Entry, Subject, What, Who};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// The keys of WebDriver (W3C WebDriver, section 17.4.2).
const ENTER: char = '\u{E007}';
const ESCAPE: char = '\u{E00C}';
const UP: char = '\u{E013}';
const DOWN: char = '\u{E015}';
const LEFT: char = '\u{E012}';
const RIGHT: char = '\u{E014}';

/// Bags that are typed at least: whole sheets, so it may be one or two more. Readings of each.
const BAGS: usize = 24;
const READINGS: usize = 6;

/// Waits until the page has asked what stands in it and said so.
const READY: &str = "return document.querySelector('[data-enter]')?.dataset.ready === '1';";

/// The teacher chooses a passphrase and is in.
fn sign_in(browser: &Browser, served: &Served) {
    browser.open(&served.at("/teacher"));
    browser.run_later(
        "for (const input of document.querySelectorAll('input[type=password]')) {
             input.value = 'four words of mine';
         }
         document.querySelector('form button').click();
         arguments[1](true);",
        &json!(null),
    );
    browser.until("return location.pathname === '/shelf';");
}

fn open(browser: &Browser, served: &Served, path: &str) {
    browser.open(&served.at(path));
    browser.until(READY);
}

/// What a group wrote for its nth bag: heights that rise as bags do.
fn height(bag: usize, reading: usize) -> u32 {
    4 + bag as u32 % 3
        + [0, 1, 3, 6, 8, 10][reading]
        + (bag as u32 % 2) * u32::from(reading > 3)
}

/// What is written for the bags of a record: place, height and true time.
type Written = BTreeMap<(String, Option<u32>), (f64, String)>;

fn written(record: &[Entry]) -> Written {
    let heights = record.iter().filter_map(|entry| {
        let Subject::Bag(code) = &entry.subject else { return None };
        let (place, mm) = match entry.what {
            What::Zero { height_mm } => (Some(0), height_mm),
            What::Reading { planned, height_mm } => (planned, height_mm),
            _ => return None,
        };
        assert_eq!(entry.who, Who::Import);
        Some(((code.to_string(), place), (mm, entry.measured.to_string())))
    });
    heights.collect()
}

/// The sheets of a period: group, codes of its bags, minutes.
fn sheet(browser: &Browser) -> (Vec<String>, Vec<u32>) {
    let told = browser.run(
        "const rows = [...document.querySelectorAll('.grid tbody tr')];
         const minutes = [...rows[0].querySelectorAll('[data-minute]')].map((one) => Number(one.dataset.minute));
         return [rows.map((row) => row.querySelector('[data-bag]').dataset.bag), minutes];",
    );
    serde_json::from_value(told).expect("codes and minutes")
}

/// Types a class's sheets and gives the keys pressed, the bags typed, and the rows of a file with the same numbers.
fn typed(browser: &Browser, served: &Served) -> (usize, usize, String) {
    open(browser, served, "/i/1/enter");
    let (mut keys, mut bags) = (0, 0);
    let mut file = String::new();
    while bags < BAGS {
        let here = browser.run("return location.pathname;");
        let (codes, minutes) = sheet(browser);
        if file.is_empty() {
            let heads: Vec<String> =
                minutes.iter().take(READINGS).map(u32::to_string).collect();
            file = format!("bag,{}\n", heads.join(","));
        }
        for code in codes {
            let heights: Vec<String> =
                (0..READINGS).map(|reading| height(bags, reading).to_string()).collect();
            file.push_str(&format!("{code},{}\n", heights.join(",")));
            let blank = minutes.len().saturating_sub(READINGS);
            let mut row: String =
                heights.iter().flat_map(|mm| mm.chars().chain([ENTER])).collect();
            row.extend(std::iter::repeat_n(ENTER, blank));
            keys += row.chars().count();
            browser.press(&row);
            bags += 1;
        }
        // Enter once more presses the button to which the last cell led.
        assert_eq!(browser.run("return document.activeElement.id;"), "save-next");
        browser.press(&ENTER.to_string());
        keys += 1;
        browser.until(&format!("return location.pathname !== {here};"));
        browser.until(READY);
    }
    (keys, bags, file)
}

#[test]
fn a_stack_of_sheets_is_typed_by_keyboard_and_says_what_the_same_file_says() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("typing data sheets", why),
    };
    let by_hand = School::new();
    let served = by_hand.serve(0);
    sign_in(&browser, &served);
    let (keys, bags, file) = typed(&browser, &served);
    served.stop();
    // Two digits and Enter for a cell, and no more than one key beside for a row.
    assert!(keys <= bags * (READINGS * 3 + 2), "{keys} keys for {bags} bags");
    let by_hand = by_hand.record();
    let sealed =
        by_hand.iter().filter(|entry| matches!(entry.what, What::Sealed { .. })).count();
    assert_eq!(sealed, bags);
    let by_hand = written(&by_hand);
    assert_eq!(by_hand.len(), bags * READINGS);

    let by_file = School::new();
    let served = by_file.serve(0);
    sign_in(&browser, &served);
    open(&browser, &served, "/i/1/enter");
    browser.run_later(
        "document.getElementById('pasted').value = arguments[0];
         document.getElementById('file-look').click(); arguments[1](true);",
        &json!(file),
    );
    browser.until("return document.getElementById('file-add') !== null;");
    let said = browser.text();
    assert!(said.contains(&format!("New heights: {}.", bags * READINGS)), "{said}");
    browser.click("#file-add");
    browser.until("return document.body.innerText.includes('Added to the record');");
    served.stop();
    assert_eq!(by_hand, written(&by_file.record()));
}

#[test]
fn what_is_typed_survives_a_reload_and_a_program_that_is_gone_and_counts_once() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("data sheets without a server", why),
    };
    let school = School::new();
    let served = school.serve(0);
    let port = served.port;
    sign_in(&browser, &served);
    open(&browser, &served, "/i/1/enter/4/2");
    browser.press(&format!("4{ENTER}6{ENTER}1.1 cm{ENTER}tall{ENTER}"));
    browser.until("return document.querySelectorAll('.grid input.new').length === 3;");
    // What cannot be read is said in words, with the way to write it.
    browser.until("return document.getElementById('said').innerText.includes('tall');");
    // Escape puts back what stood there when the cell was entered.
    browser.press(&format!("9{ESCAPE}{UP}{DOWN}"));
    browser.run("location.reload();");
    browser.until(READY);
    let shown = browser.run(
        "return [...document.querySelectorAll('.grid input[data-bag]')].map((one) => one.value).slice(0, 5);",
    );
    assert_eq!(shown, json!(["4", "6", "1.1 cm", "tall", ""]));
    served.stop();
    browser.click("#save");
    browser.until(
        "return document.getElementById('status').innerText.includes('does not answer');",
    );
    let served = school.serve(port);
    // Twice in one go: the second finds the first under way or done.
    browser.run(
        "document.getElementById('save').click(); document.getElementById('save').click();",
    );
    browser
        .until("return document.getElementById('status').innerText.includes('Not saved: 1');");
    let left = browser.run(
        "return [...document.querySelectorAll('.grid input.bad')].map((one) => one.value);",
    );
    assert_eq!(left, json!(["tall"]));
    drop(served);
    assert_eq!(written(&school.record()).len(), 3);
    let heights = school.record().len();
    assert_eq!(heights, 4, "a seal and three heights, each once");
}

#[test]
fn arrow_keys_move_in_the_grid_and_a_code_leads_to_its_sheet() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("arrow keys on data sheets", why),
    };
    let school = School::new();
    let served = school.serve(0);
    sign_in(&browser, &served);
    open(&browser, &served, "/i/1/enter/4/2");
    let at = || {
        let script = "const one = document.activeElement;
             return [one.dataset.bag ?? '', one.dataset.minute ?? ''].join(' ');";
        browser.run(script).as_str().expect("a cell").to_owned()
    };
    let minutes = "return [...new Set([...document.querySelectorAll('.grid input[data-bag]')]
        .map((one) => one.dataset.minute))];";
    let minutes = browser.run(minutes);
    let cell = |bag: usize, minute: usize| {
        format!("{} {}", school.bags[bag], minutes[minute].as_str().expect("a minute"))
    };
    assert_eq!(at(), cell(0, 0), "it begins in the first cell");
    for (key, bag, minute) in [
        (RIGHT, 0, 1),
        (DOWN, 1, 1),
        (RIGHT, 1, 2),
        (LEFT, 1, 1),
        (UP, 0, 1),
        (LEFT, 0, 0),
        // There is nothing above the first row.
        (UP, 0, 0),
    ] {
        browser.press(&key.to_string());
        assert_eq!(at(), cell(bag, minute), "{key:?}");
    }
    // Within a number the arrows stay in it: they mend it.
    browser.press(&format!("12{LEFT}"));
    assert_eq!(at(), cell(0, 0));
    browser.press(&format!("{ESCAPE}"));
    let go = |code: &str| {
        browser.run("window.left = true;");
        browser.run(&format!("document.getElementById('sheet').value = '{code}';"));
        browser.click(".named button");
        browser.until("return window.left === undefined;");
        browser.until(READY);
        browser.run("return location.pathname;").as_str().expect("a path").to_owned()
    };
    let other =
        &crate::school::plan().bags.into_iter().find(|bag| bag.period == "1" && bag.group == 3);
    let other = other.as_ref().expect("a bag").code.clone();
    assert_eq!(go(&other.to_lowercase()), "/i/1/enter/1/3");
    assert_eq!(go("4-5"), "/i/1/enter/4/5");
    assert_eq!(go(&school.bags[0].to_string()[..5]), "/i/1/enter/4/2");
    go("sheet 99");
    assert!(browser.text().contains("No sheet has that code."));
    served.stop();
}

#[test]
fn a_sheet_typed_twice_blind_shows_where_the_two_differ() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("data sheets typed twice", why),
    };
    let school = School::new();
    let served = school.serve(0);
    sign_in(&browser, &served);
    open(&browser, &served, "/i/1/enter/4/2");
    browser.press(&format!("4{ENTER}12{ENTER}15{ENTER}"));
    browser.click("#again");
    let blank = "return [...document.querySelectorAll('.grid input[data-bag]')].every((one) => one.value === '');";
    assert_eq!(browser.run(blank), Value::Bool(true), "the second time is blind");
    // The same in other units is the same.
    browser.press(&format!("4{ENTER}21{ENTER}1.5 cm{ENTER}"));
    browser.click("#compare");
    browser.until("return document.querySelectorAll('#differ-list li').length === 1;");
    let says = browser.run("return document.getElementById('differ-list').innerText;");
    let says = says.as_str().unwrap_or_default().to_owned();
    assert!(says.contains("12") && says.contains("21"), "{says}");
    browser.run("document.querySelectorAll('#differ-list button')[1].click();");
    browser.click("#save");
    browser.until(
        "return document.getElementById('status').innerText.includes('Saved: 3 heights');",
    );
    drop(served);
    let mut heights: Vec<f64> = written(&school.record()).values().map(|(mm, _)| *mm).collect();
    heights.sort_by(f64::total_cmp);
    assert_eq!(heights, [4.0, 15.0, 21.0]);
}
