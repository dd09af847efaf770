//! What can be seen and reached: narrow screens, fingers, keyboards, and a checker of accessibility.

use crate::bench::join;
use crate::browser::Browser;
use crate::school::School;
use crate::skip;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The checker, from the registry of Node packages: axe-core 4.14.1, for tests only.
fn axe() -> Result<String, &'static str> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("axe");
    let file: PathBuf = folder.join("node_modules/axe-core/axe.min.js");
    if !file.is_file() {
        std::fs::create_dir_all(&folder).map_err(|_| "no place for axe-core")?;
        let npm = Command::new("npm")
            .args(["install", "--no-save", "--no-audit", "--no-fund", "axe-core@4.14.1"])
            .arg("--prefix")
            .arg(&folder)
            .output();
        let done = npm.map_err(|_| "npm is not installed, so axe-core is not there")?;
        if !done.status.success() {
            return Err("npm could not install axe-core 4.14.1");
        }
    }
    std::fs::read_to_string(file).map_err(|_| "axe-core is not where npm puts it")
}

fn violations(browser: &Browser, axe: &str) -> Value {
    browser.run(axe);
    let script = "const [, done] = arguments;
         axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
            .then((said) => done(said.violations.map((one) => [one.id, one.nodes.map((n) => n.html).slice(0, 3)])))
            .catch((error) => done(String(error)));";
    browser.run_later(script, &json!(null))
}

/// Nothing hangs out of a narrow screen, and fingers find what they are to tap.
fn fits(browser: &Browser, place: &str) {
    let wide = browser.run(
        "return [...document.querySelectorAll('body *')].filter((one) =>
            one.getBoundingClientRect().right > innerWidth + 1 && !one.closest('.fixw, .vh'))
            .map((one) => one.outerHTML.slice(0, 80));",
    );
    assert_eq!(wide, json!([]), "{place}: out of the screen");
    let small = browser.run(
        "return [...document.querySelectorAll('button, a, input, textarea, summary')].filter((one) => {
            const box = one.getBoundingClientRect();
            return box.width > 0 && (box.height < 44 || box.width < 44) && !one.closest('p');
        }).map((one) => one.outerHTML.slice(0, 80));",
    );
    assert_eq!(small, json!([]), "{place}: smaller than a finger");
}

#[test]
fn every_state_is_accessible_in_both_languages_and_fits_a_narrow_screen() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("what can be seen", why),
    };
    let axe = match axe() {
        Ok(axe) => Some(axe),
        Err(why) => {
            skip("the checker of accessibility", why);
            None
        }
    };
    let look = |place: &str| {
        for width in [320, 768, 1366] {
            browser.size(width, 800);
            fits(&browser, &format!("{place} at {width}"));
            if let Some(axe) = &axe {
                assert_eq!(violations(&browser, axe), json!([]), "{place} at {width}");
            }
        }
    };
    let before = School::new();
    let served = before.serve(0);
    for language in ["en", "es"] {
        browser.open(&served.at(&format!("/join?lang={language}")));
        look(&format!("join, {language}"));
    }
    join(&browser, &before, &served);
    for language in ["en", "es"] {
        browser.click(&format!("[data-k='lang-{language}']"));
        look(&format!("before, {language}"));
    }
    served.stop();
    let during = School::new();
    during.has_read(&[(0, 4.0), (4, 5.0), (8, 7.0)], 245);
    let served = during.serve(0);
    join(&browser, &during, &served);
    for language in ["en", "es"] {
        browser.click(&format!("[data-k='lang-{language}']"));
        look(&format!("due, {language}"));
    }
    browser.click("[data-k='tens-0']");
    browser.click("[data-k='ones-1']");
    browser.until("return document.getElementById('guard') !== null;");
    look("a question");
    browser.click("[data-k='again']");
    browser.click("[data-k='type']");
    browser.run("document.getElementById('height').value = 'x';");
    browser.click("[data-k='type-go']");
    browser.until("return document.getElementById('height-fault') !== null;");
    look("typing");
    served.stop();
    browser.run("document.querySelector('#move summary').click(); document.querySelector('#clear summary').click();");
    browser.click("[data-k='list']");
    browser.click("[data-k='odd-leak']");
    browser.until("return document.querySelector('#notes .away') !== null && document.querySelector('#device tbody tr') !== null;");
    look("no link");
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
