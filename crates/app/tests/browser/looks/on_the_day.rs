//! The teacher's pages of the class day and after it. They follow those before the day.

use super::walk::{BEFORE, DURING, Walk};
use super::{Look, look};
use crate::eyes::Hands::Mouse;
use barm_documents::bundle::pack;

pub(super) fn press(walk: &Walk<'_>, button: &str, then: &str) {
    walk.browser.click(button);
    walk.browser.until(&format!("return document.querySelector(\"{then}\") !== null;"));
}

/// A school's roster with invented students of period 4 and of another class.
fn class_roster() -> Vec<u8> {
    let mut users = "sourcedId,givenName,familyName\n".to_owned();
    let mut enrollments = "sourcedId,classSourcedId,userSourcedId,role\n".to_owned();
    let families = ["Alderfly", "Bo", "Van der Invented-Longname", "Quillwort", "Ñandú"];
    for number in 0..23 {
        let (family, class) = (families[number % 5], if number < 21 { "c4" } else { "c9" });
        users.push_str(&format!("s{number},Invented{number:02},{family}\n"));
        enrollments.push_str(&format!("e{number},{class},s{number},student\n"));
    }
    let manifest = "propertyName,value\noneroster.version,1.2\nfile.classes,bulk\n\
                    file.enrollments,bulk\nfile.users,bulk\n";
    let classes = "sourcedId,title,schoolSourcedId,termSourcedIds\n\
                   c4,\"Science 8, period 4\",o1,t1\nc9,Homeroom,o1,t1\n";
    pack(&[
        ("manifest.csv", manifest.as_bytes()),
        ("classes.csv", classes.as_bytes()),
        ("enrollments.csv", enrollments.as_bytes()),
        ("users.csv", users.as_bytes()),
    ])
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
        walk.open(&format!("/i/{DURING}/marks/4/2"));
        let strands = "return document.querySelectorAll('[data-strand]').length;";
        for _ in 0..walk.browser.run(strands).as_u64().expect("strands") {
            walk.browser.press("3");
        }
        walk.leave_with("n");
        walk.open(&format!("/i/{DURING}/marks"));
    }),
    look("/i/{id}/marks", "marks handed out", Mouse, |walk| {
        walk.leave_by("form:has(input[value='4']) button");
        assert!(walk.browser.text().contains("1 group of period 4"), "{}", walk.browser.text());
    }),
    look("/i/{id}/roster", "no students yet", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/roster"));
    }),
    look("/i/{id}/roster", "students of a zip that is none", Mouse, |walk| {
        walk.pick("#pick", "roster.zip", b"no zip at all");
        walk.browser.click("#look");
        walk.browser.until("return document.querySelector('#said .fault') !== null;");
    }),
    look("/i/{id}/roster", "students of a roster that is looked at", Mouse, |walk| {
        walk.pick("#pick", "roster.zip", &class_roster());
        walk.browser.click("#look");
        walk.browser.until("return document.querySelector('#take') !== null;");
    }),
    look("/i/{id}/roster", "students in groups", Mouse, |walk| {
        walk.leave_by("#take");
        walk.browser.until("return document.querySelector('.students') !== null;");
        assert!(walk.browser.text().contains("first proposal"), "{}", walk.browser.text());
        walk.browser.click("input[name=absent-1]");
        walk.set("input[name=own-2]", "300");
        walk.leave_by("form:has(.students) button");
        assert!(
            walk.browser.text().contains("Nothing is saved yet"),
            "{}",
            walk.browser.text()
        );
    }),
    look("/i/{id}/marks", "grades of students as files", Mouse, |walk| {
        walk.set("input[name=own-2]", "30");
        walk.leave_by("form:has(.students) button");
        walk.open(&format!("/i/{DURING}/marks"));
        assert!(walk.browser.text().contains("Table with names"), "{}", walk.browser.text());
    }),
    look("/i/{id}/standards", "standards", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/standards"));
    }),
    look("/i/{id}/standards", "standards that are not saved", Mouse, |walk| {
        walk.browser.run("document.querySelector('#words details').open = true;");
        walk.set("#own-0-code", "NY 7");
        walk.leave_by("button[value=save]");
        assert_ne!(
            walk.browser.run("return document.querySelector('.fault') !== null;"),
            false
        );
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
