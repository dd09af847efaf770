//! The run page: a height, something odd, an offered mend, all clocks stopped and set going.

use super::ENTER;
use crate::browser::Browser;
use crate::looks::{DURING, Stage};
use crate::skip;
use barm_domain::record::{Odd, What};

/// Waits until the page listens to keys.
fn until_keys(browser: &Browser) {
    browser.until("return document.getElementById('keys')?.hidden === false;");
}

fn until_said(browser: &Browser, bag: &str) {
    let line = "document.querySelector('[data-part=done]').innerText";
    browser.until(&format!("return {line}.includes('{bag}');"));
}

#[test]
fn a_period_is_run_with_the_keyboard_alone() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("the run page by keyboard", why),
    };
    let stage = Stage::new();
    let walk = stage.walk(&browser);
    walk.open("/teacher");
    walk.choose(crate::looks::PASSPHRASE);
    let run = format!("/i/{DURING}/run/4");
    let needs = "#needs .btns button[value^='correct P4-05']";
    walk.until_it_holds(&run, &needs.replace('\'', "\\'"));
    until_keys(&browser);
    // A bag that is due: its height by `w`, then by the height that was read last.
    browser.press("w");
    browser.until_on("#w-bag");
    browser.press(&format!("8A{ENTER}"));
    browser.until_on("#w-mm");
    browser.press(&format!("9{ENTER}"));
    until_said(&browser, "8A");
    // Wherever one looks from, the list goes on.
    browser.press("\u{e00c}n");
    browser.until("return document.querySelector('#now a') !== null;");
    browser.press("\u{e00c}r");
    browser.until_on("#now a");
    browser.tab_to("#now a.pick");
    let picked = browser.run("return document.activeElement.dataset.pick;");
    let picked = picked.as_str().expect("a bag").to_owned();
    browser.press(ENTER);
    browser.until_on("#w-mm");
    browser.press(&format!("11{ENTER}"));
    until_said(&browser, &picked);
    // What is offered for a doubtful height.
    browser.press("\u{e00c}n");
    browser.until_on("#needs *");
    browser.tab_to(needs);
    let about = "const one = document.activeElement;
         return [one.value, one.closest('[data-row]').dataset.row.split('-')[0]];";
    let about = browser.run(about);
    let (offered, bag) = (&about[0], about[1].as_str().expect("a bag"));
    browser.until("return document.querySelector('#now a') !== null;");
    browser.press(ENTER);
    let offers = "[...document.querySelectorAll('#needs button')]";
    // Looking elsewhere before the answer has come: it leaves the focus where it was taken.
    browser.press("r");
    browser.until(&format!("return {offers}.every((one) => one.value !== {offered});"));
    until_said(&browser, bag);
    browser.until_on("#now a.bagname");
    // Something odd, on the page of the bag, and back.
    browser.press("r");
    browser.until_on("#now a.bagname");
    browser.press(ENTER);
    browser.until("return location.pathname.includes('/bag/') && document.querySelector('#odd-foam') !== null;");
    browser.tab_to("#odd-foam");
    browser.press(ENTER);
    browser.until("return document.querySelector('[data-part=done] p') !== null;");
    walk.open(&run);
    until_keys(&browser);
    // A fire drill.
    browser.press("s");
    browser.until_on("#stop");
    browser.press(ENTER);
    browser.until("return document.querySelector('[data-stage=standing] #go-on') !== null;");
    browser.press("s");
    browser.until_on("#go-on");
    browser.press(ENTER);
    browser.until("return document.querySelector('[data-stage=running] #stop') !== null;");
    let record = stage.ended();
    let own: Vec<&What> = record.iter().map(|entry| &entry.what).collect();
    let heights = own.iter().filter_map(|what| match what {
        What::Reading { height_mm, .. } => Some(*height_mm),
        _ => None,
    });
    assert_eq!(heights.collect::<Vec<_>>(), [9.0, 11.0], "both were written once");
    let count = |wanted: fn(&What) -> bool| own.iter().filter(|what| wanted(what)).count();
    assert_eq!(count(|what| *what == What::Odd(Odd::Foam)), 1);
    assert_eq!(count(|what| matches!(what, What::Correction { .. })), 1);
    assert_eq!(count(|what| *what == What::Stopped), 1);
    assert_eq!(count(|what| *what == What::WentOn), 1);
}
