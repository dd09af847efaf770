//! Before the day: from the shelf to a plan, a field of the plan and back, three answers to
//! proposals.

use super::ENTER;
use crate::browser::Browser;
use crate::looks::{BEFORE, PASSPHRASE, Stage, Walk};
use crate::skip;

/// Plays in a browser, as the teacher who has just come in.
fn as_teacher(what: &str, play: impl FnOnce(&Browser, &Walk<'_>)) {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip(what, why),
    };
    let stage = Stage::new();
    let walk = stage.walk(&browser);
    walk.open("/teacher");
    walk.choose(PASSPHRASE);
    play(&browser, &walk);
}

/// Presses Enter, and waits for the page that follows.
fn enter(browser: &Browser) {
    browser.run("window.left = true;");
    browser.press(ENTER);
    browser.until("return window.left === undefined && document.readyState === 'complete';");
}

#[test]
fn a_plan_is_begun_with_the_keyboard_alone() {
    as_teacher("a plan by keyboard", |browser, walk| {
        browser.tab_to("a[href='/start']");
        enter(browser);
        browser.tab_to("ul.lessons a.btn");
        enter(browser);
        browser.tab_to("#date");
        browser.press("03092027");
        browser.tab_to("#water");
        browser.press("hot");
        browser.tab_to("main form button[type=submit]");
        enter(browser);
        assert!(browser.text().contains("Water as poured"), "it asks again");
        browser.tab_to("#water");
        // A field that is reached by Tab is marked whole.
        browser.press("40 °C");
        enter(browser);
        assert!(walk.path().ends_with("/plan"), "{}", walk.path());
    });
}

#[test]
fn a_plan_is_changed_and_changed_back_with_the_keyboard_alone() {
    as_teacher("the plan page by keyboard", |browser, walk| {
        walk.open(&format!("/i/{BEFORE}/plan"));
        let field = "[name='f:base.water_temperature']";
        let value = format!("return document.querySelector(\"{field}\").value;");
        let was = browser.run(&value);
        browser.tab_to(field);
        browser.press("39 °C");
        enter(browser);
        assert_eq!(browser.run(&value), "39 °C");
        assert!(browser.text().contains("Saved as version 2."), "it is saved");
        browser.tab_to("ul.versions button[value='1']");
        enter(browser);
        assert_eq!(browser.run(&value), was, "as it was");
        assert!(browser.text().contains("Version 3"), "going back is a version, too");
    });
}

#[test]
fn proposals_are_answered_with_the_keyboard_alone() {
    as_teacher("the approval queue by keyboard", |browser, walk| {
        let (period, groups, _) = &walk.codes.before;
        // The last says nothing of what it is compared with.
        let levels: [&[&str]; 3] =
            [&["Oat flour", "Mashed banana"], &["Oat flour"], &["Honey"]];
        for (group, levels) in groups.iter().zip(levels) {
            walk.join(period, group);
            walk.propose("food", levels);
            walk.hand_in();
        }
        walk.open(&format!("/i/{BEFORE}/approve"));
        let waiting =
            || browser.run("return document.querySelectorAll('[data-proposal]').length;");
        assert_eq!(waiting(), 3);
        browser.until_on("[data-proposal]");
        browser.press("r");
        browser.until_on("[name=asks]");
        browser.press("What will you compare honey with?");
        enter(browser);
        assert_eq!(waiting(), 2);
        browser.until_on("[data-proposal]");
        browser.press("c");
        browser.until_on("[name=levels]");
        browser.press("Oat flour; Maple syrup");
        enter(browser);
        assert_eq!(waiting(), 1);
        browser.until_on("[data-proposal]");
        browser.press("a");
        browser.until("return document.querySelectorAll('[data-proposal]').length === 0;");
        let said = browser.text();
        assert!(said.contains("3 answered"), "{said}");
    });
}
