//! One device handed round: left in two taps, and nothing of one group stays for the next to see.

use crate::bench::join;
use crate::browser::Browser;
use crate::school::{GROUP, School, Served};
use crate::skip;
use serde_json::{Value, json};

/// Everything that is kept of entries on the device: seat and key of each.
fn kept(browser: &Browser) -> Value {
    let script = "const [, done] = arguments;
        const asked = indexedDB.open('barm-bench');
        asked.onerror = () => done('no store');
        asked.onsuccess = () => {
            const all = asked.result.transaction('entries').objectStore('entries').getAll();
            all.onsuccess = () => { asked.result.close(); done(all.result.map((one) => [one.seat, one.key])); };
        };";
    browser.run_later(script, &json!(null))
}

/// Types the group's code only; the class code is there.
fn join_next(browser: &Browser, code: &str) {
    browser.until("return document.getElementById('period').value !== '';");
    assert_eq!(browser.run("return document.activeElement.id;"), json!("group"));
    browser.press(&code.to_lowercase());
    browser.press("\u{e007}");
    browser.until("return location.pathname === '/bench' && document.querySelector('#tabs button') !== null;");
}

const DOOR: &str =
    "return location.pathname === '/join' && document.getElementById('period') !== null;";

/// Reads all of the bags that are due, and waits until they are saved.
fn read(browser: &Browser, bags: usize, mm: u32) {
    for _ in 0..bags {
        browser.click(&format!("[data-k='tens-{}']", mm / 10));
        browser.click(&format!("[data-k='ones-{}']", mm % 10));
        browser.until("return [...document.querySelectorAll(\"[data-k^='tens-']\")].every((key) => key.ariaPressed !== 'true' && key.ariaDisabled !== 'true');");
    }
    browser.until("return document.querySelector('#head .st.saved') !== null;");
}

fn bench(served: &Served, browser: &Browser) {
    browser.open(&served.at("/bench"));
}

#[test]
fn a_device_handed_round_is_left_in_two_taps_and_shows_nothing_of_the_group_before() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a device handed round", why),
    };
    let school = School::new();
    let (next_code, next_bags) = school.and_group(GROUP + 1, "EACH");
    school.has_read(&[(0, 4.0), (4, 8.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    read(&browser, school.bags.len(), 11);
    let before = browser.text();
    assert!(before.contains("11 mm") && before.contains(&format!("Group {GROUP}")), "{before}");
    // The two taps.
    browser.click("[data-k='pass']");
    browser.click("[data-k='pass-sure']");
    browser.until(DOOR);
    assert_eq!(kept(&browser), json!([]), "what was saved is not kept here any more");
    let at_door = browser.text();
    assert!(!at_door.contains("11 mm") && !at_door.contains(&format!("Group {GROUP}")));
    // Going back leads to the door and not to the group's page.
    browser.run("history.back();");
    browser.until(DOOR);
    bench(&served, &browser);
    browser.until(DOOR);
    join_next(&browser, &next_code);
    let now = browser.text();
    assert!(now.contains(&format!("Group {}", GROUP + 1)), "{now}");
    for gone in ["11 mm", "8 mm", &format!("Group {GROUP},")] {
        assert!(!now.contains(gone), "{gone} is still there: {now}");
    }
    assert!(!next_bags.is_empty());
    let whole = browser.run("return document.documentElement.outerHTML;");
    for bag in &school.bags {
        assert!(!whole.as_str().expect("markup").contains(&bag.to_string()), "{bag}");
    }
}

#[test]
fn what_was_not_sent_stays_for_its_own_group_and_is_shown_to_no_other() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("unsent entries on a device handed round", why),
    };
    let school = School::new();
    let (next_code, _) = school.and_group(GROUP + 1, "EACH");
    school.has_read(&[(0, 4.0), (4, 8.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    // Entries cannot be sent; everything else can.
    browser.special("Network.enable", &json!({}));
    browser.special("Network.setBlockedURLs", &json!({ "urls": ["*/bench/entries"] }));
    browser.click("[data-k='tens-1']");
    browser.click("[data-k='ones-2']");
    browser.until("return document.querySelector('#head .st.kept') !== null;");
    let (unsent, ours) = (kept(&browser), school.bags[0]);
    assert_ne!(unsent, json!([]));
    browser.click("[data-k='pass']");
    browser.click("[data-k='pass-sure']");
    browser.until(DOOR);
    assert_eq!(kept(&browser), unsent, "nothing that was not sent is lost");
    join_next(&browser, &next_code);
    browser.click("[data-k='list']");
    browser.until(
        "return document.getElementById('device').innerText.includes('for another group: 1');",
    );
    let shown = browser.run("return document.documentElement.outerHTML;");
    let shown = shown.as_str().expect("markup");
    assert!(!shown.contains(&ours.to_string()) && !shown.contains("12 mm"), "{shown}");
    // Back with its own group it is sent.
    browser.special("Network.setBlockedURLs", &json!({ "urls": [] }));
    browser.click("[data-k='pass']");
    browser.click("[data-k='pass-sure']");
    browser.until(DOOR);
    join_next(&browser, &school.group_code);
    browser.until("return document.querySelector('#head .st.saved') !== null && document.body.innerText.includes('12 mm');");
    served.stop();
    let on_record = school.record();
    let twelve = on_record.iter().filter(|entry| {
        matches!(entry.what, barm_domain::record::What::Reading { height_mm, .. } if (height_mm - 12.0).abs() < 1e-9)
    });
    assert_eq!(twelve.count(), 1, "once on record");
}
