//! Pages that groups, aides and the class see, but for the bench page.

use super::walk::{DURING, PASSPHRASE, Walk};
use super::{Look, look};
use crate::eyes::Hands::{Fingers, Mouse};

impl Walk<'_> {
    /// Writes a proposal on the planning page, which the group that joined may open.
    pub(crate) fn propose(&self, changes: &str, levels: &[&str]) {
        self.open("/plan-together?lang=en");
        self.set("#asks", "Which of these feeds yeast best?");
        self.set("#changes", changes);
        for (at, level) in levels.iter().enumerate() {
            self.set(&format!("#level-{}", at + 1), level);
        }
        self.set("#beside", "No food");
        self.set("#expects", "The first rises most.");
    }

    /// Hands it in; what is still open is asked once, and handed in all the same.
    pub(crate) fn hand_in(&self) {
        self.leave_by("button[value=hand-in]");
        let done = "return document.querySelector('p.done') !== null;";
        if self.browser.run(done) == false {
            self.leave_by("button[value=hand-in]");
        }
        self.browser.until(done);
    }

    /// Opens something of period 4 on the teacher's page.
    fn open_to_class(&self, what: &str) {
        self.open(&format!("/i/{DURING}/run/4"));
        self.browser.run("document.getElementById('faces').open = true;");
        self.browser.click(&format!("#faces button[value='open {what}']"));
        self.browser.until(&format!(
            "return document.querySelector(\"#faces button[value='close {what}']\") !== null;"
        ));
    }

    /// Hands in a claim of the group that joined.
    pub(crate) fn claim(&self, evidence: &str) {
        self.open("/claim?lang=en");
        self.browser.run(
            "const about = document.getElementById('about');
             about.selectedIndex = about.options.length - 1;",
        );
        self.browser.click("input[name=says][value=more]");
        self.set("#by", "6 mm");
        self.set("#evidence", evidence);
        self.set("#reasoning", "Yeast makes gas of the sugar in it.");
        self.leave_by("button[value=hand-in]");
        self.browser.until("return document.querySelector('p.done') !== null;");
    }
}

pub(super) const LOOKS: &[Look] = &[
    look("/join", "join", Fingers, |walk| walk.open("/join?lang=en")),
    look("/join", "join, es", Fingers, |walk| walk.open("/join?lang=es")),
    look("/join", "join by a label", Fingers, |walk| walk.open("/join?lang=es&bag=P4-02A-Y")),
    look("/join", "join with a wrong code", Fingers, |walk| {
        walk.set("#period", "XXXX9");
        walk.leave_by("form[action='/join'] button[type=submit]");
    }),
    look("/join", "join with a wrong code, in the other language", Fingers, |walk| {
        let was = walk.browser.run("return document.documentElement.lang;");
        let other = if was == "es" { "en" } else { "es" };
        walk.open(&format!("/join?lang={other}"));
        walk.set("#period", "XXXX9");
        walk.set("#group", "XXXX9");
        walk.leave_by("form[action='/join'] button[type=submit]");
        assert_eq!(walk.browser.run("return document.documentElement.lang;"), other);
        assert_eq!(walk.browser.run("return document.getElementById('fault') !== null;"), true);
    }),
    look("/plan-together", "plan together", Fingers, |walk| {
        let (period, groups, _) = &walk.codes.before;
        walk.join(period, &groups[0]);
        walk.open("/plan-together?lang=en");
    }),
    look("/plan-together", "plan together, es", Fingers, |walk| {
        walk.open("/plan-together?lang=es");
    }),
    look("/plan-together", "plan together with questions", Fingers, |walk| {
        walk.propose("food", &["Honey"]);
        walk.leave_by("button[value=look]");
        walk.browser.until("return document.querySelector('.think') !== null;");
    }),
    look("/plan-together", "plan together with questions, es", Fingers, |walk| {
        walk.open("/plan-together?lang=es");
        walk.leave_by("button[value=look]");
        walk.browser.until("return document.querySelector('.think') !== null;");
    }),
    look("/plan-together", "plan together handed in", Fingers, |walk| {
        walk.propose("food", &["Oat flour", "Mashed banana"]);
        walk.hand_in();
    }),
    look("/plan-together", "plan together handed in, es", Fingers, |walk| {
        walk.open("/plan-together?lang=es");
        walk.browser.until("return document.querySelector('p.done') !== null;");
    }),
    look("/claim", "claim", Fingers, |walk| {
        let (period, group, _) = &walk.codes.during;
        walk.join(period, group);
        walk.open("/claim?lang=en");
    }),
    look("/claim", "claim to be mended, es", Fingers, |walk| {
        walk.open("/claim?lang=es");
        walk.set("#by", "mucho");
        walk.leave_by("button[value=hand-in]");
        walk.browser.until("return document.querySelector('.think') !== null;");
    }),
    look("/claim", "claim handed in", Fingers, |walk| {
        walk.claim("Bag A rose 19 mm in 20 min, the bag with no food 2 mm.");
    }),
    look("/claim/home", "to take home", Fingers, |walk| walk.open("/claim/home?lang=en")),
    look("/claim/home", "to take home, es", Fingers, |walk| walk.open("/claim/home?lang=es")),
    look("/aide", "aide", Fingers, |walk| {
        walk.come_in(&walk.codes.aide, "/aide");
        walk.open("/aide?lang=en");
    }),
    look("/aide", "aide at a station", Fingers, |walk| {
        walk.leave_by("nav.stations a:last-child");
    }),
    look("/aide", "aide at a station, es", Fingers, |walk| {
        walk.open("/aide?lang=es&station=vent");
    }),
    look("/round", "walk-round", Fingers, |walk| {
        walk.come_in(&walk.codes.round, "/round");
        walk.until_it_holds("/round", "[data-part=wrong] li");
    }),
    look("/wall", "wall before the bell", Mouse, |walk| {
        walk.come_in(&walk.codes.before.2, "/wall");
        walk.open("/wall?lang=en");
    }),
    look("/wall", "wall before the bell, es", Mouse, |walk| walk.open("/wall?lang=es")),
    look("/wall", "wall", Mouse, |walk| {
        walk.come_in(&walk.codes.during.2, "/wall");
        walk.open("/wall?lang=en");
    }),
    look("/wall", "wall, es", Mouse, |walk| walk.open("/wall?lang=es")),
    look("/wall", "wall with curves, es", Mouse, |walk| {
        let curves = "return document.querySelector('svg.chart') !== null;";
        assert_eq!(walk.browser.run(curves), false, "nothing is shown before it is opened");
        let wall = walk.browser.here();
        walk.browser.turn_to(&walk.browser.window());
        walk.open("/teacher");
        walk.choose(PASSPHRASE);
        walk.open_to_class("period-curves wall");
        walk.browser.close();
        walk.browser.turn_to(&wall);
        // It hears of it by itself.
        walk.browser.until(curves);
    }),
    look("/wall", "wall with curves", Mouse, |walk| walk.open("/wall?lang=en")),
    look("/wall", "wall with what was foretold", Mouse, |walk| {
        let band = "return document.body.innerText.includes('bags were foretold');";
        assert_eq!(walk.browser.run(band), false, "nothing of it is shown before it is opened");
        let wall = walk.browser.here();
        walk.browser.turn_to(&walk.browser.window());
        walk.open_to_class("forecast wall");
        walk.browser.close();
        walk.browser.turn_to(&wall);
        walk.browser.until(band);
    }),
    look("/wall", "wall with a question", Mouse, |walk| {
        let wall = walk.browser.here();
        walk.browser.turn_to(&walk.browser.window());
        walk.open(&format!("/i/{DURING}/talk/4"));
        walk.leave_by(".talk button");
        walk.browser.close();
        walk.browser.turn_to(&wall);
        walk.browser.until("return document.querySelector('.question') !== null;");
    }),
    look("/wall", "wall with what the class found", Mouse, |walk| {
        let found = "return document.querySelector('.found') !== null;";
        assert_eq!(walk.browser.run(found), false, "nothing is shown before it is opened");
        let wall = walk.browser.here();
        walk.browser.turn_to(&walk.browser.window());
        walk.open_to_class("results wall");
        walk.browser.close();
        walk.browser.turn_to(&wall);
        walk.browser.until(found);
    }),
    look("/wall", "wall with what the class found, es", Mouse, |walk| {
        walk.open("/wall?lang=es");
    }),
];
