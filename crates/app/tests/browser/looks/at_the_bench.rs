//! The bench page: before the first reading, when one is due, with a question, and cut off.

use super::walk::Walk;
use super::{Look, look};
use crate::eyes::Hands::Fingers;

fn speak(walk: &Walk<'_>, language: &str) {
    walk.browser.click(&format!("[data-k='lang-{language}']"));
    walk.browser.until(&format!("return document.documentElement.lang === '{language}';"));
}

/// Joins as one of the groups to which something was given or opened.
fn lent(walk: &Walk<'_>, which: usize) {
    let (period, ..) = &walk.codes.during;
    walk.join(period, &walk.codes.lent[which]);
    speak(walk, "en");
    walk.browser.until("return document.querySelector('#opened svg.chart') !== null;");
}

pub(super) const LOOKS: &[Look] = &[
    look("/bench", "bench before, es", Fingers, |walk| {
        let (period, groups, _) = &walk.codes.before;
        walk.join(period, &groups[1]);
        speak(walk, "es");
    }),
    look("/bench", "bench before", Fingers, |walk| speak(walk, "en")),
    look("/bench", "bench", Fingers, |walk| {
        let (period, group, _) = &walk.codes.during;
        walk.join(period, group);
        speak(walk, "en");
    }),
    look("/bench", "bench, es", Fingers, |walk| speak(walk, "es")),
    look("/bench", "bench with a question", Fingers, |walk| {
        speak(walk, "en");
        walk.browser.click("[data-k='tens-0']");
        walk.browser.click("[data-k='ones-1']");
        walk.browser.until("return document.getElementById('guard') !== null;");
    }),
    look("/bench", "bench with a question, es", Fingers, |walk| speak(walk, "es")),
    look("/bench", "bench typing, es", Fingers, |walk| {
        walk.browser.click("[data-k='again']");
        walk.browser.click("[data-k='type']");
        walk.set("#height", "x");
        walk.browser.click("[data-k='type-go']");
        walk.browser.until("return document.getElementById('height-fault') !== null;");
    }),
    look("/bench", "bench typing", Fingers, |walk| speak(walk, "en")),
    look("/bench", "bench without a link", Fingers, |walk| {
        walk.cut_off();
        let open = "document.querySelector('#move summary').click();
             document.querySelector('#clear summary').click();";
        walk.browser.run(open);
        walk.browser.click("[data-k='list']");
        walk.browser.click("[data-k='odd-leak']");
        walk.browser.until(
            "return document.querySelector('#notes .away') !== null
                && document.querySelector('#device tbody tr') !== null;",
        );
    }),
    look("/bench", "bench without a link, es", Fingers, |walk| {
        speak(walk, "es");
        walk.browser.until("return document.querySelector('#notes .away') !== null;");
    }),
    look("/bench", "bench with class data", Fingers, |walk| {
        // What was kept is sent before the page is left, which asks otherwise.
        walk.browser.network(true);
        walk.browser.until(crate::bench::ALL_SAVED);
        lent(walk, 0);
    }),
    look("/bench", "bench with class data, es", Fingers, |walk| speak(walk, "es")),
    look("/bench", "bench with a simulated run", Fingers, |walk| lent(walk, 1)),
    look("/bench", "bench with a simulated run, es", Fingers, |walk| speak(walk, "es")),
    look("/bench", "bench with curves and results", Fingers, |walk| lent(walk, 2)),
    look("/bench", "bench with the gas of the class", Fingers, |walk| {
        let gas = "#opened input[value=gas]";
        walk.browser.until(&format!("return document.querySelector('{gas}') !== null;"));
        walk.browser.click(gas);
        walk.browser.until(
            "const seen = (one) => document.querySelector(one).checkVisibility();
             return seen('.of-gas') && !seen('.of-rise') && !seen('.of-ethanol');",
        );
    }),
    look("/bench", "bench with curves and results, es", Fingers, |walk| speak(walk, "es")),
];
