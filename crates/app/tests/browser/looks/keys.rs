//! Each page by the keyboard alone: every control is reached, is seen to have the focus, and lets
//! it go again (WCAG 2.2, 2.1.1, 2.1.2 and 2.4.7).

use crate::browser::Browser;
use crate::keyboard::TAB;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// Shift as WebDriver writes it (W3C WebDriver, 17.4.2).
const SHIFT: char = '\u{e008}';

/// What is on a page for hands, each by a name that outlives being drawn again. Of radio buttons
/// that belong together one is a stop; the others are reached from it by arrow keys.
const CONTROLS: &str = "
    const words = (one) => one.id || one.dataset.k || one.value ? '' : one.textContent.trim();
    const named = (one) => [one.localName, one.id, one.name, one.dataset.k, one.getAttribute('href'),
        one.type === 'radio' ? '' : one.value, words(one)]
        .map((part) => part ?? '').join(' ').slice(0, 160);
    const hands = 'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex]';
    const there = (one) => !one.disabled && one.tabIndex >= 0
        && one.checkVisibility({ visibilityProperty: true }) && one.getClientRects().length > 0
        && (one.localName !== 'summary' || one === one.parentElement.querySelector('summary'));
";

/// Where the focus is, and whether it can be seen there.
const STOP: &str = "
    const one = document.activeElement;
    if (one === null || one === document.body || one === document.documentElement) return null;
    const rings = [one, one.closest('.fld'), one.closest('label')].filter(Boolean).some((box) => {
        const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(box);
        return outlineStyle === 'auto' || (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2)
            || boxShadow !== 'none';
    });
    const { top, bottom, left, right } = one.getBoundingClientRect();
    const within = bottom > 0 && right > 0 && top < innerHeight && left < innerWidth;
    return [named(one), rings, within];";

/// Goes once round the page by Tab and a little way back; says what is wrong.
pub(super) fn tabbed(browser: &Browser) -> Vec<String> {
    let controls = format!(
        "{CONTROLS} return [...document.querySelectorAll(hands)].filter(there).map(named);"
    );
    let names = || -> BTreeSet<String> {
        let all = browser.run(&controls);
        let all = all.as_array().expect("a list").iter();
        all.filter_map(|name| name.as_str().map(str::to_owned)).collect()
    };
    let stop = format!("{CONTROLS} {STOP}");
    let before = names();
    // From the top, wherever hands were before.
    browser.run(
        "const top = document.createElement('span');
         top.tabIndex = -1; document.body.prepend(top); top.focus(); top.remove();",
    );
    let mut wrong = Vec::new();
    let mut reached: BTreeSet<String> = BTreeSet::new();
    let mut last = Value::Null;
    let most = 3 * before.len() + 40;
    let mut left_it = false;
    for _ in 0..most {
        browser.press(TAB);
        let at = browser.run(&stop);
        let Some(name) = at[0].as_str() else {
            left_it = true;
            break;
        };
        if at[1] == json!(false) {
            wrong.push(format!("the focus is not seen on {name}"));
        }
        if at[2] == json!(false) {
            wrong.push(format!("the focus is out of sight on {name}"));
        }
        reached.insert(name.to_owned());
        last = at[0].clone();
    }
    if !left_it {
        wrong.push(format!("after {most} stops the focus has not left the page, last {last}"));
    }
    // What came or went meanwhile, as on a live page, is nobody's fault.
    let after = names();
    for name in before.intersection(&after).filter(|name| !reached.contains(*name)) {
        wrong.push(format!("the keyboard does not reach {name}"));
    }
    // And the other way round.
    if reached.len() > 1 && left_it {
        browser.press_with(SHIFT, TAB);
        let first = browser.run(&stop);
        browser.press_with(SHIFT, TAB);
        let second = browser.run(&stop);
        if first[0].is_null() || first[0] == second[0] {
            wrong.push(format!("Shift and Tab do not lead back from {}", first[0]));
        }
    }
    wrong
}

/// A page says in one line, near its top, what it is for and what comes next. The bench page
/// says it with the hour: its clock, its steps or its question; with numbers that were lent, a line.
pub(super) fn led(browser: &Browser, route: &str) -> Vec<String> {
    let script = "
        const leads = [...document.querySelectorAll('p.lead')].filter((one) => one.checkVisibility());
        const said = leads.map((one) => one.textContent.trim());
        const bench = ['clock', 'steps', 'ask'].map((id) => document.getElementById(id)?.innerText.trim() ?? '');
        return [said, bench.join('')];";
    let said = browser.run(script);
    // Where nothing is, the page says what happened and where to go.
    if route == "(nowhere)" {
        return Vec::new();
    }
    let leads = said[0].as_array().expect("a list");
    if route == "/bench" {
        let nothing = leads.is_empty() && said[1].as_str().is_none_or(str::is_empty);
        return if nothing {
            vec!["nothing says what comes next".to_owned()]
        } else {
            Vec::new()
        };
    }
    match leads.first().and_then(Value::as_str) {
        // A line of three words says nothing.
        Some(lead) if lead.split_whitespace().count() >= 5 => Vec::new(),
        _ => vec![format!("no line says what it is for and what comes next: {leads:?}")],
    }
}
