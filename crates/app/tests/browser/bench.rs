//! A group at its bench, with a good network, a bad one, and none.

use crate::browser::Browser;
use crate::school::{GROUP, PERIOD, School, Served};
use crate::{skip, times};
use barm_domain::record::{Subject, What, Who};
use serde_json::json;

/// A form that a script sends before the page has loaded to its end takes that page's place in the
/// history
/// (HTML standard, form submission, from memory); hands are slower than that.
pub(crate) const LOADED: &str =
    "return performance.getEntriesByType('navigation')[0]?.loadEventEnd > 0;";

/// Joins with both codes, as a group does.
pub(crate) fn join(browser: &Browser, school: &School, served: &Served) {
    browser.open(&served.at("/join"));
    browser.until(LOADED);
    let script = "document.getElementById('period').value = arguments[0][0];
         document.getElementById('group').value = arguments[0][1];
         document.querySelector('form button[type=submit]').click();
         arguments[1](true);";
    // Codes are typed as children type them.
    let codes = [school.period_code.to_lowercase(), school.group_code.to_lowercase()];
    browser.run_later(script, &json!(codes));
    browser.until("return location.pathname === '/bench' && document.querySelector('#tabs button') !== null;");
}

/// Two taps, and the height is written or asked about.
pub(crate) fn tap(browser: &Browser, mm: u32) {
    browser.click(&format!("[data-k='tens-{}']", mm / 10));
    browser.click(&format!("[data-k='ones-{}']", mm % 10));
    until_written(browser);
}

/// A tap while the height is on its way to the disk is not taken.
pub(crate) fn until_written(browser: &Browser) {
    browser.until(
        "const keys = [...document.querySelectorAll(\"[data-k^='tens-']\")];
         const rests = (key) => key.ariaPressed !== 'true' && key.ariaDisabled !== 'true';
         return document.getElementById('guard') !== null || keys.every(rests);",
    );
}

fn heights(school: &School) -> Vec<f64> {
    let group = Who::Group { period: PERIOD.into(), group: GROUP };
    let own = school.record().into_iter().filter(|entry| entry.who == group);
    own.filter_map(|entry| match entry.what {
        What::Zero { height_mm } | What::Reading { height_mm, .. } => Some(height_mm),
        _ => None,
    })
    .collect()
}

pub(crate) const ALL_SAVED: &str = "return document.querySelector('#head .st.saved') !== null;";

#[test]
fn a_group_guesses_and_reads_zero_and_all_of_it_is_on_record() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a group at its bench", why),
    };
    let school = School::new();
    let served = school.serve(0);
    join(&browser, &school, &served);
    let bags = school.bags.clone();
    for bag in &bags {
        browser.run(&format!("document.getElementById('guess-{bag}').value = '9.5';"));
    }
    browser.run("document.getElementById('guess-why').value = 'Sugar feeds yeast.';");
    browser.click("[data-k='guess-save']");
    browser.until("return document.querySelector('#guess .ic') !== null;");
    browser.click("[data-k='zero-go']");
    for _ in &bags {
        tap(&browser, 4);
    }
    let zeros = "return document.querySelectorAll('#wrote .was').length";
    browser.until(&format!("{zeros} === {};", bags.len()));
    browser.until(ALL_SAVED);
    // The guess is locked now.
    browser.until("return document.querySelector('#guess .seal') !== null;");
    served.stop();
    assert_eq!(heights(&school).len(), bags.len());
    let record = school.record();
    let own = Subject::Group { period: PERIOD.into(), group: GROUP };
    let guess = record.iter().find(|entry| entry.subject == own).expect("a guess");
    let What::Guess { expects, because } = &guess.what else { panic!("{guess:?}") };
    assert_eq!(expects.len(), bags.len());
    assert!(because.is_some());
    let sealed = record.iter().filter(|entry| entry.what == What::Sealed { plan: 1 });
    assert_eq!(sealed.count(), bags.len());
}

#[test]
fn an_odd_height_is_asked_about_and_the_answer_counts() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a question about an odd height", why),
    };
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 5.0), (8, 7.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    tap(&browser, 1);
    browser.until("return document.getElementById('guard') !== null;");
    assert!(
        browser.text().contains("At 8 minutes the card was at 7 mm. Is this 1 mm or 1 cm?")
    );
    browser.click("[data-k='write-10']");
    browser.until("return document.querySelector('.written')?.innerText.includes('10 mm');");
    browser.until(ALL_SAVED);
    served.stop();
    assert!(heights(&school).contains(&10.0));
    assert!(!heights(&school).contains(&1.0), "what was asked about was not written");
}

#[test]
fn the_water_is_written_in_either_unit_and_an_odd_tap_is_taken_back() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("the water at pouring", why),
    };
    let school = School::new();
    let served = school.serve(0);
    join(&browser, &school, &served);
    let types = |number: &str| {
        browser.run(&format!("document.getElementById('pour-0').value = '{number}';"));
    };
    // 104 °C is no water; 40 °F is far from the plan, and asked about; 104 °F is 40 °C.
    types("104");
    browser.click("[data-k='pour-0-C']");
    browser.until("return document.getElementById('pour-fault') !== null;");
    types("40");
    browser.click("[data-k='pour-0-F']");
    browser
        .until("return document.getElementById('pour').innerText.includes('tap once more');");
    // Over 60 °C burns, and that is what is asked then; a comma is a point.
    types("61,5");
    browser.click("[data-k='pour-0-C']");
    browser.until("return document.getElementById('pour').innerText.includes('burns skin');");
    types("104");
    browser.click("[data-k='pour-0-F']");
    browser.until(
        "return document.querySelector('#pour [role=status]')?.innerText.includes('40');",
    );
    assert!(browser.run("return document.getElementById('pour-fault');").is_null());
    browser.until(ALL_SAVED);
    browser.click("[data-k='zero-go']");
    browser.click("[data-k='zero-go']");
    tap(&browser, 4);
    browser.until("return document.querySelector(\"[data-k='odd-foam']\") !== null;");
    browser.click("[data-k='odd-foam']");
    browser.click("#odd .noted button");
    browser.until("return document.querySelector('#odd .noted') === null;");
    browser.until(ALL_SAVED);
    served.stop();
    let record = school.record();
    let water: Vec<f64> = record
        .iter()
        .filter_map(|entry| match &entry.what {
            What::Made(made) => made.water_celsius,
            _ => None,
        })
        .collect();
    assert_eq!(water, vec![40.0; school.bags.len()], "each bag once");
    let tapped = record.iter().find(|entry| matches!(entry.what, What::Odd(_)));
    let of = tapped.expect("it stays on record").key;
    assert!(record.iter().any(|entry| entry.what == What::OddBack { of }));
}

#[test]
fn a_second_tap_is_not_a_second_height() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a second tap", why),
    };
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 5.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    browser.click("[data-k='tens-0']");
    browser.run(
        "const key = document.querySelector(\"[data-k='ones-6']\"); key.click(); key.click();
         document.querySelector(\"[data-k='ones-7']\").click();",
    );
    browser.until("return document.querySelector('.written')?.innerText.includes('6 mm');");
    browser.until(ALL_SAVED);
    let before = 2 * school.bags.len();
    served.stop();
    assert_eq!(heights(&school).len(), before + 1);
}

#[test]
fn what_is_kept_on_the_device_outlives_a_killed_browser() {
    for _ in 0..times(2, 5, 20) {
        let profile = tempfile::tempdir().expect("a folder");
        let browser = match Browser::start(profile.path()) {
            Ok(browser) => browser,
            Err(why) => return skip("a killed browser", why),
        };
        let school = School::new();
        school.has_read(&[(0, 4.0), (4, 5.0)], 245);
        let served = school.serve(0);
        join(&browser, &school, &served);
        let port = served.port;
        served.stop();
        tap(&browser, 7);
        browser.until("return document.querySelector('#ask .st.kept') !== null;");
        std::thread::sleep(std::time::Duration::from_secs(1));
        browser.kill();
        let served = school.serve(port);
        let browser = Browser::start(profile.path()).expect("it started before");
        browser.open(&served.at("/bench"));
        browser.until("return document.querySelector('#tabs button, #period') !== null;");
        // The cookie may not have been on disk yet; then the group joins again, and is told what
        // this device still holds.
        if browser.run("return location.pathname;") == json!("/join") {
            browser.until("return document.getElementById('brings').hidden === false;");
            join(&browser, &school, &served);
        }
        browser.until("return document.querySelector('#wrote')?.innerText.includes('7 mm');");
        browser.until(ALL_SAVED);
        served.stop();
        let count = heights(&school).iter().filter(|mm| **mm > 6.0).count();
        assert_eq!(count, 1, "it arrived once");
    }
}

#[test]
fn a_whole_round_is_read_without_a_server_and_arrives_once_at_another_port() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("a server that moves", why),
    };
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 5.0), (8, 7.0)], 245);
    let bags = school.bags.clone();
    let served = school.serve(0);
    join(&browser, &school, &served);
    served.stop();
    let before = heights(&school).len();
    for _ in &bags {
        tap(&browser, 9);
    }
    // The page goes on by itself: the next thing is to wait for the next reading.
    browser.until("return document.querySelector('#clock .wait [role=timer]') !== null;");
    browser.until(&format!(
        "return document.querySelector('#head .st.kept')?.textContent.startsWith('{}');",
        bags.len()
    ));
    browser.click("[data-k='list']");
    let rows = browser.run("return document.querySelectorAll('#device tbody tr').length;");
    assert_eq!(rows.as_u64(), Some(bags.len() as u64));
    let served = school.serve(0);
    browser.click("#move summary");
    browser.run(&format!(
        "document.getElementById('address').value = 'localhost:{}';",
        served.port
    ));
    browser.click("[data-k='move-go']");
    // Cookies are shared by the ports of one computer, so that it is still in the group there.
    browser.until(&format!("return location.port === '{}';", served.port));
    browser.until("return document.querySelector('#notes .guard button') !== null;");
    browser.click("#notes .guard button");
    browser.until("return document.querySelector('#notes .guard') === null;");
    browser.until(ALL_SAVED);
    // Sent again, as by a device that did not hear the answer, they are known.
    browser.open(&served.at("/bench"));
    browser.until("return document.querySelector('#tabs button') !== null;");
    browser.until(ALL_SAVED);
    served.stop();
    assert_eq!(heights(&school).len(), before + bags.len());
}

#[test]
fn a_label_asks_for_the_class_code_only_and_a_wrong_one_is_told_plainly() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("joining by a label", why),
    };
    let school = School::new();
    let served = school.serve(0);
    let bag = school.bags[0];
    browser.open(&served.at(&format!("/join?bag={bag}&lang=es")));
    assert!(browser.text().contains(&format!("Tienen la bolsa {bag}.")));
    browser.run("document.getElementById('period').value = 'XXXX9';");
    browser.click("form button[type=submit]");
    browser.until("return document.getElementById('fault') !== null;");
    assert!(browser.text().contains("Los códigos no van juntos"));
    browser
        .run(&format!("document.getElementById('period').value = '{}';", school.period_code));
    browser.click("form button[type=submit]");
    browser.until("return location.pathname === '/bench' && document.querySelector('#tabs button') !== null;");
    browser.until(&format!("return document.body.innerText.includes('Grupo {GROUP}');"));
}
