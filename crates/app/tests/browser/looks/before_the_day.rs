//! The teacher's pages up to the class day.

use super::walk::{BEFORE, DURING, PASSPHRASE};
use super::{Look, look};
use crate::eyes::Hands::Mouse;

pub(super) const LOOKS: &[Look] = &[
    look("/teacher", "first passphrase", Mouse, |walk| {
        walk.browser.open(&walk.bare.at("/teacher"));
    }),
    look("/teacher", "a passphrase too short", Mouse, |walk| walk.choose("yeast")),
    look("/shelf", "shelf with nothing on it", Mouse, |walk| {
        walk.choose(PASSPHRASE);
        assert_eq!(walk.path(), "/shelf");
    }),
    look("/teacher", "sign in", Mouse, |walk| {
        walk.open("/teacher");
        walk.choose(PASSPHRASE);
        walk.open("/teacher/passphrase");
        walk.leave_by("form[action='/teacher/leave'] button");
        assert_eq!(walk.path(), "/teacher");
    }),
    look("/teacher", "a wrong passphrase", Mouse, |walk| {
        walk.set("#passphrase", "another one of theirs");
        walk.leave_by("form button");
    }),
    look("/shelf", "shelf", Mouse, |walk| {
        walk.set("#passphrase", PASSPHRASE);
        walk.leave_by("form button");
        assert_eq!(walk.path(), "/shelf");
    }),
    look("/teacher/passphrase", "sign out", Mouse, |walk| walk.open("/teacher/passphrase")),
    look("/start", "ready plans", Mouse, |walk| walk.open("/start")),
    look("/start", "a file that cannot be opened", Mouse, |walk| {
        walk.set("#brought", "title = \"A plan\"\nwater = 3\n");
        walk.leave_by("form[data-opener] button");
    }),
    look("/start/ready/{name}", "six questions", Mouse, |walk| {
        walk.open("/start");
        walk.leave_by("ul.lessons a.btn");
    }),
    look("/start/ready/{name}", "a wrong answer", Mouse, |walk| {
        walk.set("#date", "2027-03-09");
        walk.set("#water", "very hot");
        walk.leave_by("main form button[type=submit]");
    }),
    look("/i/{id}/plan", "plan", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/plan"));
        walk.browser.until("return document.documentElement.dataset.foreseen !== undefined;");
    }),
    look("/i/{id}/plan", "plan with faults", Mouse, |walk| {
        walk.set("[name='f:base.water_temperature']", "70 °C");
        walk.set("[name='f:base.water']", "three");
        walk.browser.until("return document.querySelector('[data-said] .fault') !== null;");
        walk.leave_by("div.bar button[value=save]");
    }),
    look("/i/{id}/plan/text", "plan as text", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/plan/text"));
    }),
    look("/i/{id}/pilot", "pilot", Mouse, |walk| walk.open(&format!("/i/{BEFORE}/pilot"))),
    look("/i/{id}/pilot", "pilot with faults", Mouse, |walk| {
        walk.set("#spoon-0", "heavy");
        walk.set("#room", "warm");
        walk.set("#syringe-1", "far too high");
        walk.leave_by("button.btn[value='save']");
        assert!(walk.browser.text().contains("Not saved"));
    }),
    look("/i/{id}/pilot", "pilot with a file", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/pilot"));
        walk.set("#brought", "yeast lot,jar\nspoon,mass (g)\n1,3.1\n2,3.3\n3,3.2\n");
        walk.leave_by("button[value='look']");
        assert!(walk.browser.text().contains("What it would teach"));
    }),
    look("/i/{id}/pilot", "pilot with what was learned", Mouse, |walk| {
        walk.leave_by("button[value='keep']");
        let done = "return document.querySelector('#learned [data-working]') === null;";
        walk.browser.until(done);
    }),
    look("/i/{id}/print", "print", Mouse, |walk| walk.open(&format!("/i/{BEFORE}/print"))),
    look("/i/{id}/print", "print with a wrong address", Mouse, |walk| {
        walk.set("#address", "barm.example");
        walk.set("#start", "99");
        walk.leave_by("main form button[type=submit]");
    }),
    look("/i/{id}/prepare", "prepare", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/prepare"));
    }),
    look("/i/{id}/rehearse", "rehearse", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/rehearse"));
    }),
    look("/i/{id}/approve/sheet", "a planning sheet from paper", Mouse, |walk| {
        walk.open(&format!("/i/{BEFORE}/approve/sheet?period=4&group=3"));
    }),
    look("/i/{id}/approve", "nothing to approve", Mouse, |walk| {
        walk.open(&format!("/i/{DURING}/approve"));
    }),
    look("/i/{id}/approve", "approve", Mouse, |walk| {
        let (period, groups, _) = &walk.codes.before;
        let proposals =
            [("food", ["Oat flour", "Mashed banana"]), ("food", ["Maple syrup", "Honey"])];
        for (code, (changes, levels)) in groups.iter().zip(proposals) {
            walk.join(period, code);
            walk.propose(changes, &levels);
            walk.hand_in();
        }
        walk.open(&format!("/i/{BEFORE}/approve"));
        assert!(walk.browser.text().contains("Which of these feeds yeast best?"));
    }),
    look("/i/{id}/approve", "approved", Mouse, |walk| {
        walk.leave_by("[data-proposal] button[value=approve]:not([disabled])");
    }),
    look("(nowhere)", "no such page", Mouse, |walk| walk.open("/bread")),
    look("(nowhere)", "no such page, es", Mouse, |walk| {
        let spoken = |language: &str| {
            let headers = serde_json::json!({ "headers": { "Accept-Language": language } });
            walk.browser.special("Network.enable", &serde_json::json!({}));
            walk.browser.special("Network.setExtraHTTPHeaders", &headers);
        };
        spoken("es");
        walk.open("/bread");
        assert_eq!(walk.browser.run("return document.documentElement.lang;"), "es");
        spoken("en");
    }),
];
