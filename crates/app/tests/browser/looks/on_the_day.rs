//! The teacher's pages of the class day and after it. They follow those before the day.

use super::walk::{BEFORE, DURING, Walk};
use super::{Look, look};
use crate::eyes::Hands::Mouse;

fn press(walk: &Walk<'_>, button: &str, then: &str) {
    walk.browser.click(button);
    walk.browser.until(&format!("return document.querySelector(\"{then}\") !== null;"));
}

pub(super) const LOOKS: &[Look] = &[
    look("/i/{id}/run/{period}", "run before the bell", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/run/4"));
    }),
    look("/i/{id}/run/{period}/codes", "codes", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/run/4/codes"));
    }),
    look("/i/{id}/run/{period}", "run with nothing read", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/run/6"));
        press(walk, "#begin", "[data-stage='running']");
    }),
    look("/i/{id}/run/{period}", "run", Mouse, |walk| {
        walk.until_it_holds(&format!("/i/{DURING}/run/4"), "#needs li.slip");
    }),
    look("/i/{id}/run/{period}", "run after a mistake", Mouse, |walk| {
        walk.set("#w-bag", "99Z");
        walk.set("#w-mm", "12");
        press(walk, "#write button", ".doneline .fault");
    }),
    look("/i/{id}/run/{period}", "run with all clocks standing", Mouse, |walk| {
        press(walk, "#stop", "#go-on");
    }),
    look("/i/{id}/run/{period}", "run with a call to the class", Mouse, |walk| {
        press(walk, "#go-on", "#stop");
        walk.until_it_holds(&format!("/i/{DURING}/run/2"), "section.call");
    }),
    look("/i/{id}/run/{period}", "run when it is over", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/run/1"));
    }),
    look("/i/{id}/run/{period}/bag/{code}", "a bag", Mouse, |walk| {
        walk.until_it_holds(&format!("/i/{DURING}/run/4/bag/P4-05B-K"), ".bagface svg");
    }),
    look("/i/{id}/run/{period}/bag/{code}", "a bag set aside", Mouse, |walk| {
        press(walk, "#aside-leak", "#take-back");
    }),
    look("/i/{id}/results", "no results", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/results"));
    }),
    look("/i/{id}/again", "another round before the day is over", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/again"));
    }),
    look("/i/{id}/again", "two rounds that do not fit", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/again?with={BEFORE}"));
    }),
    look("/i/{id}/bags", "no bag read", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/bags"));
    }),
    look("/i/{id}/bags", "every bag", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/bags"));
    }),
    look("/i/{id}/bags", "gas of a period", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/bags?period=1&show=gas"));
    }),
    look("/i/{id}/talk/{period}", "nothing to talk about", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/talk/4"));
    }),
    look("/i/{id}/talk/{period}", "something to talk about", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/talk/1?students=es"));
    }),
    look("/i/{id}/talk/{period}", "a question on the wall", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/talk/4"));
        walk.leave_by(".talk button");
        assert!(walk.browser.text().contains("On the wall now"), "{}", walk.browser.text());
    }),
    look("/i/{id}/claims", "no claims", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/claims"));
    }),
    look("/i/{id}/claims", "claims", Mouse, |walk| {
        let (period, own, _) = &walk.codes.during;
        for (code, evidence) in [
            (own, "Our bags rose 12 mm and 19 mm in 20 min."),
            (&walk.codes.lent[2], "It was 99 mm high. One bag leaked."),
        ] {
            walk.join(period, code);
            walk.claim(evidence);
        }
        walk.open(&format!("/i/{DURING}/claims"));
        walk.leave_by("button[value=open]");
        assert!(walk.browser.text().contains("read each other’s claims now"));
    }),
    look("/i/{id}/marks/rubric", "the rubric", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/marks/rubric"));
    }),
    look("/i/{id}/marks/rubric", "a rubric that is not saved", Mouse, |walk| {
        walk.set("#level-2", "");
        walk.leave_by("button[value=save]");
        assert_ne!(
            walk.browser.run("return document.querySelector('.fault') !== null;"),
            false
        );
    }),
    look("/i/{id}/marks/{period}/{group}", "a group without a claim", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/marks/1/1"));
    }),
    look("/i/{id}/marks/{period}/{group}", "a group to mark", Mouse, |walk| {
        walk.set("textarea[name^=remark]", "Say how you know.");
        walk.leave_by("button[value=stay]");
        walk.open(&format!("/i/{DURING}/marks/4/2"));
        assert!(walk.browser.text().contains("Say how you know."), "offered again");
    }),
    look("/i/{id}/marks", "marks", Mouse, |walk| {
        let strands = "return document.querySelectorAll('[data-strand]').length;";
        for _ in 0..walk.browser.run(strands).as_u64().expect("strands") {
            walk.browser.press("3");
        }
        walk.browser.press("n");
        walk.open(&format!("/i/{DURING}/marks"));
    }),
    look("/i/{id}/marks", "marks handed out", Mouse, |walk| {
        walk.leave_by("form:has(input[value='4']) button");
        assert!(walk.browser.text().contains("1 group of period 4"), "{}", walk.browser.text());
    }),
    look("/i/{id}/results", "results", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/results"));
    }),
    look("/i/{id}/enter/{period}/{group}", "an empty data sheet", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/enter/4/2"));
        walk.browser.until("return document.querySelector('[data-ready]') !== null;");
    }),
    look("/i/{id}/enter/{period}/{group}", "a data sheet with odd cells", Mouse, |walk| {
        walk.set(".grid input[data-minute='0']", "4");
        walk.set(".grid input[data-minute='4']", "6");
        walk.set(".grid input[data-minute='8']", "1.1");
        walk.set(".grid input[data-minute='12']", "tall");
        walk.browser
            .until("return document.querySelector('#said .fault, #said .oddlist') !== null;");
    }),
    look("/i/{id}/enter/{period}/{group}", "a full data sheet", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/enter/1/2"));
        walk.browser.until("return document.querySelector('[data-ready]') !== null;");
    }),
    look("/i/{id}/names", "names and notes", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/names"));
    }),
    look("/shelf", "a shelf that is looked through", Mouse, |walk| {
        walk.open("/shelf?find=maple");
        assert!(walk.browser.text().contains("Show all"));
    }),
    look("/shelf", "a shelf without what is looked for", Mouse, |walk| {
        walk.open("/shelf?find=Zibbeldorn");
    }),
    look("/years", "classes and years", Mouse, |walk| walk.open("/years")),
    look("/kept", "what is kept about whom", Mouse, |walk| walk.open("/kept")),
    look("/kept", "a name is looked for", Mouse, |walk| {
        walk.set("#name", "Zibbeldorn");
        walk.leave_by("form[action='/kept#look'] button");
    }),
    look("/backups", "no backups", Mouse, |walk| walk.open("/backups")),
    look("/backups", "backups", Mouse, |walk| {
        walk.leave_by("button[value=make]");
    }),
];
