//! What is judged of every page, at every width.

use crate::browser::Browser;
use crate::fetched::fetched;
use crate::nu::Nu;
use crate::{skip, times};
use serde_json::{Value, json};
use std::cell::RefCell;
use std::path::PathBuf;

/// Who reaches for a page, and with what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Hands {
    /// Children and aides on a phone: nothing is smaller than a finger.
    Fingers,
    /// A teacher at a computer, or a wall that nobody touches.
    Mouse,
}

/// Somebody who looks closely.
pub(crate) struct Eyes<'a> {
    pub(crate) browser: &'a Browser,
    axe: Option<String>,
    nu: Option<Nu>,
    /// Where pictures of what was seen are put, if somebody wants them.
    pictures: Option<PathBuf>,
    /// Everything that is wrong; said at the end, all at once.
    wrong: RefCell<Vec<String>>,
}

/// The checker of accessibility: axe-core 4.14.1.
fn axe() -> Result<String, String> {
    let file = fetched("axe-core", "4.14.1", "axe.min.js")?;
    std::fs::read_to_string(file).map_err(|_| "axe-core cannot be read".to_owned())
}

/// A checker, or why it is not there.
fn or_skip<T>(found: Result<T, String>, what: &str) -> Option<T> {
    found.map_err(|why| skip(what, &why)).ok()
}

impl<'a> Eyes<'a> {
    pub(crate) fn on(browser: &'a Browser) -> Self {
        let axe = or_skip(axe(), "the checker of accessibility");
        let nu = or_skip(Nu::found(), "the checker of markup");
        let pictures = std::env::var_os("BARM_PICTURES").map(PathBuf::from);
        Self { browser, axe, nu, pictures, wrong: RefCell::default() }
    }

    /// Looks at the page as it is now: 320 CSS pixels are WCAG 2.2's measure of reflow (1.4.10),
    /// the others common screens of phones, tablets, notebooks and projectors.
    pub(crate) fn look(&self, name: &str, hands: Hands) {
        if let Some(nu) = &self.nu {
            if let Some(served) = self.browser.served() {
                nu.keep(&format!("{name}, as served"), &served);
            }
            let drawn = "return '<!DOCTYPE html>' + document.documentElement.outerHTML;";
            let drawn = self.browser.run(drawn);
            nu.keep(&format!("{name}, as drawn"), drawn.as_str().expect("markup"));
        }
        let inner = "return document.body.innerText.match(/[a-z]+_[a-z]+/g) ?? [];";
        let inner = self.browser.run(inner);
        if inner != json!([]) {
            self.wrong
                .borrow_mut()
                .push(format!("{name}: a name of the program's own: {inner}"));
        }
        let complaints = self.browser.complaints();
        if !complaints.is_empty() {
            self.wrong.borrow_mut().push(format!("{name}: scripts: {complaints:?}"));
        }
        for width in widths() {
            self.at(name, *width, hands);
        }
        // What is folded away is looked at where it is hardest to show.
        let unfold = "const shut = [...document.querySelectorAll('details:not([open])')];
             for (const one of shut) { one.open = true; one.dataset.wasShut = ''; }
             return shut.length > 0;";
        if self.browser.run(unfold) == json!(true) {
            self.at(&format!("{name}, unfolded"), 320, hands);
            self.browser.run(
                "for (const one of document.querySelectorAll('[data-was-shut]')) {
                    one.open = false; delete one.dataset.wasShut;
                 }",
            );
        }
    }

    fn at(&self, name: &str, width: u32, hands: Hands) {
        self.browser.size(width, 900);
        // As high as the page, so that nothing that stays in its place covers something else.
        let high =
            "return document.fonts.ready.then(() => document.documentElement.scrollHeight);";
        let high = self.browser.run(high).as_f64().unwrap_or_default().clamp(900.0, 16_000.0);
        self.browser.size(width, high as u32);
        let place = format!("{name} at {width}");
        self.pictured(&place);
        let none = json!([]);
        let wrong = |what: &str, found: Value| {
            if found != none {
                self.wrong.borrow_mut().push(format!("{place}, {what}: {found:#}"));
            }
        };
        wrong("out of the screen", out_of_the_screen(self.browser));
        if hands == Hands::Fingers {
            wrong("smaller than a finger", too_small(self.browser));
        }
        // What it finds hangs on what is on the page, hardly on how wide that is.
        let asked = width == 320 || (width == 1366 && times(0, 1, 1) == 1);
        if let Some(axe) = self.axe.as_ref().filter(|_| asked) {
            wrong("hard to use", violations(self.browser, axe));
        }
    }

    fn pictured(&self, place: &str) {
        let Some(folder) = &self.pictures else { return };
        let name: String =
            place.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
        std::fs::create_dir_all(folder).expect("a folder for pictures");
        let file = folder.join(format!("{name}.png"));
        std::fs::write(file, unpacked(&self.browser.picture())).expect("a picture is kept");
    }

    /// What somebody else found wrong with a page.
    pub(crate) fn say(&self, name: &str, found: Vec<String>) {
        self.wrong.borrow_mut().extend(found.into_iter().map(|says| format!("{name}: {says}")));
    }

    /// Says everything that is wrong, the markup of all pages included.
    pub(crate) fn done(self) {
        let mut wrong = self.wrong.into_inner();
        wrong.extend(self.nu.iter().flat_map(Nu::judged));
        assert!(wrong.is_empty(), "{} things are wrong:\n{}", wrong.len(), wrong.join("\n"));
    }
}

/// The widths that are looked at (CSS pixels).
fn widths() -> &'static [u32] {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => &[320, 1366],
        _ => &[320, 360, 768, 1366, 1920],
    }
}

/// Bytes out of base64 (RFC 4648, section 4).
fn unpacked(text: &str) -> Vec<u8> {
    let value = |letter: u8| match letter {
        b'A'..=b'Z' => Some(letter - b'A'),
        b'a'..=b'z' => Some(letter - b'a' + 26),
        b'0'..=b'9' => Some(letter - b'0' + 52),
        b'+' => Some(62),
        b'/' => Some(63),
        _ => None,
    };
    let digits: Vec<u32> = text.bytes().filter_map(value).map(u32::from).collect();
    let mut bytes = Vec::new();
    for four in digits.chunks(4) {
        let whole =
            four.iter().fold(0, |whole, digit| whole << 6 | digit) << (6 * (4 - four.len()));
        let three = [whole >> 16, whole >> 8, whole].map(|byte| byte as u8);
        bytes.extend_from_slice(&three[..four.len() - 1]);
    }
    bytes
}

/// What the checker of accessibility finds: rule and the first places of each.
fn violations(browser: &Browser, axe: &str) -> Value {
    browser.run(&format!("if (!window.axe) {{ {axe} }}"));
    let script = "const [, done] = arguments;
         const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
         axe.run(document, { runOnly: rules, resultTypes: ['violations'] })
            .then((said) => done(said.violations.map((one) => [one.id, one.nodes.map((n) => n.html).slice(0, 3)])))
            .catch((error) => done(String(error)));";
    browser.run_later(script, &json!(null))
}

/// Everything that reaches over the screen's edge and cannot be scrolled to within its own box, as
/// a table may (WCAG 2.2, 1.4.10).
fn out_of_the_screen(browser: &Browser) -> Value {
    browser.run(
        "const scrolls = (one) => {
            for (let box = one.parentElement; box; box = box.parentElement) {
                if (box === document.body) return false;
                const inside = box.getBoundingClientRect().right <= innerWidth + 1;
                if (inside && ['auto', 'scroll'].includes(getComputedStyle(box).overflowX)) return true;
            }
            return false;
         };
         const wide = [...document.querySelectorAll('body *')].filter((one) => {
            const box = one.getBoundingClientRect();
            const seen = box.width > 1 && box.height > 1 && one.checkVisibility();
            return seen && (box.right > innerWidth + 1 || box.left < -1)
                && !one.closest('.fixw, .vh') && !scrolls(one);
         }).slice(0, 3).map((one) => one.outerHTML.slice(0, 120));
         if (document.scrollingElement.scrollWidth > innerWidth) wide.push('the page scrolls sideways');
         return wide;",
    )
}

/// Everything to be touched that is smaller than 44 by 44 CSS pixels; links within a sentence may
/// be (WCAG 2.2, 2.5.5).
fn too_small(browser: &Browser) -> Value {
    browser.run(
        "return [...document.querySelectorAll('button, a, input, select, textarea, summary')].filter((one) => {
            const tick = one.matches('[type=checkbox], [type=radio]') ? one.closest('label') : null;
            const box = (tick ?? one).getBoundingClientRect();
            const seen = box.width > 1 && one.checkVisibility();
            return seen && (box.height < 44 || box.width < 44) && !one.closest('p, .vh');
         }).map((one) => one.outerHTML.slice(0, 120));",
    )
}
