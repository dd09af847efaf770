//! What the first visit of a group's device transfers.

use crate::bench::join;
use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use serde_json::json;

/// The most that a first visit of the bench page may transfer, compressed (bytes of bodies): a
/// whole class may come in over one weak radio in one minute.
const MOST: u64 = 60_000;

#[test]
#[allow(clippy::print_stdout)]
fn a_first_visit_of_the_bench_page_is_light() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("the weight of a first visit", why),
    };
    let school = School::new();
    let served = school.serve(0);
    for language in ["en", "es"] {
        browser.open(&served.at("/join"));
        join(&browser, &school, &served);
        browser.special("Network.clearBrowserCache", &json!({}));
        browser.open(&served.at(&format!("/bench?lang={language}")));
        browser.until("return document.querySelector('#tabs button') !== null && document.fonts.status === 'loaded';");
        browser.until(
            "return performance.getEntriesByName(location.origin + '/bench/state').length > 0;",
        );
        let all = browser.run(
            "return [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
                .map((one) => [new URL(one.name).pathname, one.encodedBodySize]);",
        );
        let all = all.as_array().expect("a list").clone();
        let size = |at: usize| all[at][1].as_u64().expect("a size");
        let sum: u64 = (0..all.len()).map(size).sum();
        println!("{language}: {sum} bytes in {} answers", all.len());
        let found = |end: &str| {
            all.iter().any(|one| one[0].as_str().is_some_and(|name| name.ends_with(end)))
        };
        // Everything is in the sum: page, scripts, styles and the three faces.
        for end in ["/bench", "bench.js", "bench-carry.js", "base.css", "-bench.woff2"] {
            assert!(found(end), "{end}: {all:?}");
        }
        let weighed = (0..all.len()).filter(|at| size(*at) > 0).count();
        assert!(weighed >= 22, "{weighed} of {all:?}");
        assert!(!found("-core.woff2") && !found("-full.woff2"), "{all:?}");
        assert!(!found(".json"), "only the language that was asked for: {all:?}");
        assert!(sum <= MOST, "{language}: {sum} bytes: {all:?}");
    }
}

#[test]
fn another_language_comes_when_it_is_asked_for_and_stays_without_a_link() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("another language without a link", why),
    };
    let school = School::new();
    let served = school.serve(0);
    join(&browser, &school, &served);
    let speaks = |code: &str| {
        browser.until(&format!("return document.documentElement.lang === {};", json!(code)));
    };
    speaks("en");
    browser.click("[data-k='lang-es']");
    speaks("es");
    browser
        .until("return document.getElementById('device').innerText.includes('Este aparato');");
    browser.click("[data-k='lang-en']");
    speaks("en");
    // Opened anew it speaks English, and Spanish is only in the browser's own store.
    browser.open(&served.at("/bench"));
    browser.until("return document.querySelector('#tabs button') !== null;");
    served.stop();
    browser.click("[data-k='lang-es']");
    speaks("es");
}

#[test]
fn a_language_that_was_never_fetched_is_said_to_be_missing_without_a_link() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a language that was never fetched", why),
    };
    let school = School::new();
    let served = school.serve(0);
    join(&browser, &school, &served);
    served.stop();
    browser.click("[data-k='lang-es']");
    browser.until("return document.querySelector('#notes [role=alert]') !== null;");
    assert!(browser.text().contains("The words of that language are not here yet."));
    assert_eq!(browser.run("return document.documentElement.lang;"), json!("en"));
}
