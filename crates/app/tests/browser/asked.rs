//! What the page asks for stays what it is while somebody answers, and says what is not sent.

use crate::bench::{ALL_SAVED, join, tap};
use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use barm_domain::record::{Subject, What};
use serde_json::json;

const TAB: &str =
    "return document.querySelector('#tabs [aria-pressed=true]')?.dataset.k ?? null;";

#[test]
fn a_question_stays_with_its_bag_while_a_hand_writes() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a question that stays with its bag", why),
    };
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 5.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    let first = browser.here();
    let asked = browser.run(TAB);
    browser.click("[data-k='tens-0']");
    // Meanwhile another device of the group reads that very bag.
    let second = browser.window();
    browser.turn_to(&second);
    browser.open(&served.at("/bench"));
    browser.until("return document.querySelector('#tabs button') !== null;");
    assert_eq!(browser.run(TAB), asked, "both are asked for the same bag first");
    tap(&browser, 8);
    browser.until(ALL_SAVED);
    assert_ne!(browser.run(TAB), asked, "that one goes on to the next bag");
    browser.turn_to(&first);
    browser.until("return document.getElementById('wrote').innerText.includes('8 mm');");
    assert_eq!(browser.run(TAB), asked, "the one with half a height does not");
    browser.click("[data-k='ones-9']");
    browser.until("return document.querySelector('#two .guard') !== null;");
    browser.until(ALL_SAVED);
    served.stop();
    let code = asked.as_str().and_then(|key| key.strip_prefix("tab-")).expect("a bag");
    let bag = Subject::Bag(code.parse().expect("a code"));
    let mm = school.record().into_iter().filter(|entry| entry.subject == bag);
    let mm: Vec<f64> = mm
        .filter_map(|entry| match entry.what {
            What::Reading { planned: Some(8), height_mm } => Some(height_mm),
            _ => None,
        })
        .collect();
    assert_eq!(mm, [8.0, 9.0], "both heights are of that bag");
}

#[test]
fn what_a_link_brought_is_not_called_saved_before_somebody_took_it() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("entries that a link brought", why),
    };
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 5.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    browser.until(ALL_SAVED);
    let link = "const [[bag], done] = arguments;
        const entry = { key: '01900000-0000-7000-8000-000000000001', bag, what: 'reading', at: Date.now(), offset: 0, mm: 8, planned: 8 };
        import('/a/0/bench-carry.js').then(({ linkTo }) => {
            done(linkTo(location.origin, [{ key: entry.key, entry, seat: 'of old', state: 'kept' }]));
        });";
    let link = browser.run_later(link, &json!([school.bags[0].to_string()]));
    browser.open("about:blank");
    browser.open(link.as_str().expect("a link"));
    browser.until("return document.querySelector('#notes .guard button') !== null;");
    assert_eq!(browser.run(ALL_SAVED), json!(false));
    assert!(browser.text().contains("1 not sent yet"), "{}", browser.text());
    browser.click("#notes .guard button");
    browser.until(ALL_SAVED);
    served.stop();
}
