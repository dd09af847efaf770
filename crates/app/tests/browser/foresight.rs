//! The plan page keeps up with the keys: an older answer never overwrites a newer one.

use crate::browser::Browser;
use crate::looks::{BEFORE, PASSPHRASE, Stage};
use crate::skip;
use serde_json::json;

/// Holds back every answer to the first question that is asked from now on, and writes into each
/// forecast the number of the question that it answers. It also lets nobody call an answer off:
/// one that is on its way comes.
const SLOW: &str = "
    const own = window.fetch;
    window.go = [];
    window.fetch = async (address, { signal, ...options }) => {
        const { number } = JSON.parse(options.body);
        window.slow ??= number;
        const told = await (await own(address, options)).json();
        told.forecast = `<p id='from'>${number}</p>`;
        if (number === window.slow) await new Promise((go) => window.go.push(go));
        return { ok: true, json: async () => told };
    };";

#[test]
fn a_late_answer_to_an_older_question_is_dropped() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("answers that come late", why),
    };
    let stage = Stage::new();
    let walk = stage.walk(&browser);
    walk.open("/teacher");
    walk.choose(PASSPHRASE);
    walk.open(&format!("/i/{BEFORE}/plan"));
    browser.until("return document.documentElement.dataset.foreseen !== undefined;");
    browser.run(SLOW);
    let field = "form.editform input[name^='f:']";
    let types = |value: &str| walk.set(field, value);
    types("one");
    browser.until("return window.go.length === 1;");
    types("two");
    browser.until(
        "return document.getElementById('from')?.textContent === String(window.slow + 1)
            && document.documentElement.dataset.foreseen === String(window.slow + 1);",
    );
    // Now the older one comes, with all the time it wants.
    let after = "const [, done] = arguments;
         window.go.forEach((go) => go());
         setTimeout(() => requestAnimationFrame(() => done(document.getElementById('from').textContent)), 200);";
    let shown = browser.run_later(after, &json!(null));
    let newer = browser.run("return String(window.slow + 1);");
    assert_eq!(shown, newer);
    assert_eq!(browser.run("return document.documentElement.dataset.foreseen;"), newer);
}
