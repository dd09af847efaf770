//! What can be reached and done with the keyboard alone; every stop shows that it is one.

mod planning;
mod running;

use crate::bench::join;
use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use serde_json::json;

/// Keys as WebDriver writes them (W3C WebDriver, 17.4.2).
pub(crate) const TAB: &str = "\u{e004}";
/// The same.
pub(crate) const ENTER: &str = "\u{e007}";

impl Browser {
    /// Presses Tab until the focus is on what a selector finds, and looks at every stop.
    pub(crate) fn tab_to(&self, selector: &str) {
        let at = format!(
            "const one = document.activeElement;
             const bare = one === document.body || one === document.documentElement;
             const seen = [one, one.closest('.fld')].filter(Boolean).some((box) => {{
                const {{ outlineStyle, outlineWidth, boxShadow }} = getComputedStyle(box);
                return (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) || boxShadow !== 'none';
             }});
             return [one.matches({}), bare || seen, one.outerHTML.slice(0, 120)];",
            json!(selector)
        );
        // A plan has some hundred fields.
        for _ in 0..600 {
            self.press(TAB);
            let stop = self.run(&at);
            assert_eq!(stop[1], json!(true), "the focus is seen on {}", stop[2]);
            if stop[0] == json!(true) {
                return;
            }
        }
        panic!("the keyboard does not reach {selector}");
    }

    /// Waits until the focus is on what a selector finds.
    pub(crate) fn until_on(&self, selector: &str) {
        self.until(&format!("return document.activeElement.matches({});", json!(selector)));
    }
}

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
    for key in ["tens-1", "ones-2"] {
        browser.tab_to(&format!("[data-k='{key}']"));
        browser.press(ENTER);
    }
    browser.until("return document.querySelector('.written')?.innerText.includes('12 mm');");
}
