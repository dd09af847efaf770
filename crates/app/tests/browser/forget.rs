//! A device that is cleared keeps nothing of the group that used it.

use crate::bench::join;
use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use serde_json::{Value, json};

/// A text that a child wrote.
const WROTE: &str = "Because MARKWROTE says so";

/// Everything that this browser keeps for the page: databases, storage, and pages to be opened
/// again.
const KEPT: &str = "const [, done] = arguments;
    const asked = (request) => new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
    });
    (async () => {
        const found = { session: { ...sessionStorage }, local: { ...localStorage }, databases: {} };
        for (const { name } of await indexedDB.databases()) {
            const database = await asked(indexedDB.open(name));
            for (const store of database.objectStoreNames) {
                const all = database.transaction(store).objectStore(store).getAll();
                found.databases[`${name}/${store}`] = await asked(all);
            }
            database.close();
        }
        found.caches = globalThis.caches ? await caches.keys() : [];
        done(found);
    })().catch((error) => done(String(error)));";

fn kept(browser: &Browser) -> Value {
    browser.run_later(KEPT, &json!(null))
}

#[test]
fn a_cleared_device_keeps_nothing_and_is_in_no_group() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a device that is cleared", why),
    };
    let school = School::new();
    let served = school.serve(0);
    join(&browser, &school, &served);
    // A guess with a reason in a child's own words is written and cannot be sent.
    browser.special("Network.enable", &json!({}));
    browser.special("Network.setBlockedURLs", &json!({ "urls": ["*/bench/entries"] }));
    for bag in &school.bags {
        browser.run(&format!("document.getElementById('guess-{bag}').value = '9.5';"));
    }
    browser.run(&format!("document.getElementById('guess-why').value = '{WROTE}';"));
    browser.click("[data-k='guess-save']");
    browser.until("return document.querySelector('#head .st.kept') !== null;");
    let before = kept(&browser);
    assert!(before.to_string().contains("MARKWROTE"), "it was there: {before}");
    // Nothing is kept in a place that nobody knows of.
    let names = |of: &Value| -> Vec<String> {
        of.as_object().expect("by name").keys().cloned().collect()
    };
    assert_eq!(names(&before["databases"]), ["barm-bench/entries", "barm-bench/notes"]);
    assert_eq!(names(&before["session"]), ["class-code"], "{before}");
    assert_eq!(before["local"], json!({}), "{before}");
    browser.click("[data-k='clear']");
    browser.click("[data-k='clear-sure']");
    browser
        .until("return location.pathname === '/join' && document.readyState === 'complete';");
    let after = kept(&browser);
    assert_eq!(after["session"], json!({}), "{after}");
    assert_eq!(after["local"], json!({}), "{after}");
    assert_eq!(after["caches"], json!([]), "{after}");
    let databases = after["databases"].as_object().expect("what is kept");
    assert!(!databases.is_empty(), "{after}");
    assert!(databases.values().all(|all| *all == json!([])), "{after}");
    let fields =
        "return [...document.querySelectorAll('input')].map((one) => one.value).join();";
    let fields = browser.run(fields).to_string();
    assert!(!fields.contains(&school.period_code), "{fields}");
    // The seat is given up, too: the same browser is nobody now.
    browser.open(&served.at("/bench"));
    browser.until("return location.pathname === '/join';");
}
