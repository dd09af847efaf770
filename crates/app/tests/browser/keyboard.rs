//! What can be reached with the keyboard alone.

use crate::bench::join;
use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use serde_json::json;

#[test]
fn a_reading_is_written_with_the_keyboard_alone() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("the keyboard alone", why),
    };
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 5.0)], 245);
    let served = school.serve(0);
    join(&browser, &school, &served);
    // Tab (U+E004) to a key and Enter (U+E007) on it, twice; every stop shows where it is.
    for key in ["tens-1", "ones-2"] {
        let mut reached = false;
        for _ in 0..60 {
            browser.press("\u{e004}");
            let at = browser.run(
                "const one = document.activeElement; const style = getComputedStyle(one);
                 return [one.dataset.k ?? '', style.outlineStyle !== 'none'];",
            );
            assert_eq!(at[1], json!(true), "the focus is seen on {}", at[0]);
            if at[0] == json!(key) {
                reached = true;
                break;
            }
        }
        assert!(reached, "the keyboard reaches {key}");
        browser.press("\u{e007}");
    }
    browser.until("return document.querySelector('.written')?.innerText.includes('12 mm');");
}
