//! Editing the plan changes nothing of what was sealed, on any page.

use super::class::{Answer, Call, Class, DURING_1};
use crate::desk::Wording;
use crate::desk::editing::swapped;
use crate::desk::rehearse::done_before;
use crate::desk::room::Kind;
use crate::desk::room::results::{ResultsView, results_view};
use jiff::SignedDuration;

/// The evening of the invented day: all four periods were read.
struct Evening {
    class: Class,
    teacher: String,
    /// Sessions of two groups of period 1, which last until the day ends.
    groups: [(usize, String); 2],
}

/// A bag as its bag page, its group's page and the paper page show it.
#[derive(Debug, PartialEq)]
struct Shown {
    bag: (axum::http::StatusCode, Vec<bool>),
    bench: serde_json::Value,
    sheet: Vec<bool>,
}

impl Evening {
    fn new() -> Self {
        let class = Class::at(DURING_1, Kind::Real);
        let groups = [3, 8].map(|group| (group, class.group("1", group)));
        class.later(SignedDuration::from_hours(7));
        done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
            .expect("on record");
        let teacher = class.teacher();
        Self { class, teacher, groups }
    }

    /// The results page, once what was foretold is there: it is worked out in the background.
    fn results(&self) -> ResultsView {
        let foreseen = || {
            self.class.room.foresee();
            let view = results_view(&self.class.room).expect("results");
            let mut curves = view.questions.iter().filter_map(|one| one.curves.as_ref());
            let working = curves.any(|curves| curves.working);
            (!working).then_some(view)
        };
        (0..100).find_map(|_| foreseen()).expect("a forecast")
    }

    async fn get(&self, path: &str) -> Answer {
        self.class.call(Call::get(path).cookie("barm-teacher", &self.teacher)).await
    }

    /// What pages say of the first bag of a group.
    async fn shown(&self, code: &str, group: usize, treatment: &str) -> Shown {
        let id = self.class.room.id;
        let says =
            |answer: &Answer| [treatment, code].map(|say| answer.body.contains(say)).to_vec();
        let bag = self.get(&format!("/i/{id}/run/1/bag/{code}")).await;
        let sheet = self.get(&format!("/i/{id}/enter/1/{group}")).await;
        let cookie = crate::web::cookies::name(crate::desk::doors::Part::Group);
        let token = self.groups.iter().find(|(of, _)| *of == group).map(|(_, token)| token);
        let call = Call::get("/bench/state").cookie(cookie, token.expect("joined"));
        let state = self.class.call(call).await;
        let state: serde_json::Value = serde_json::from_str(&state.body).expect("a state");
        let bags = state["bags"].as_array().expect("bags");
        let own = bags.iter().find(|bag| bag["code"] == code);
        Shown {
            bag: (bag.status, says(&bag)),
            bench: own.expect("still theirs").clone(),
            sheet: says(&sheet),
        }
    }

    /// Saves a text as the plan page does.
    async fn save(&self, text: &str) -> Answer {
        let from = self.class.room.read(|scene| scene.version);
        let encoded: String = text.bytes().map(|byte| format!("%{byte:02X}")).collect();
        let body = format!("from={from}&do=save&text={encoded}");
        let path = format!("/i/{}/plan", self.class.room.id);
        let call = Call::form(&self.class, &path, &body).cookie("barm-teacher", &self.teacher);
        self.class.call(call).await
    }

    fn text(&self) -> String {
        let version = self.class.room.read(|scene| scene.version);
        self.class.room.plan_text(version).expect("a text")
    }

    /// The code and treatment of the first bag of a group.
    fn first(&self, group: u32) -> (String, String) {
        self.class.room.read(|scene| {
            let own = scene.plan.bags.iter().find(|b| b.period == "1" && b.group == group);
            let own = own.expect("a bag");
            (own.code.clone(), own.treatment.clone())
        })
    }
}

/// Editing in all ways that were seen to lose bags, one after the other.
#[tokio::test]
async fn edits_after_the_day_change_no_page_of_what_was_sealed() {
    let day = Evening::new();
    let before = day.results();
    assert!(before.bags > 80, "{}", before.bags);
    let id = day.class.room.id;
    let (of_three, of_eight) = (day.first(3), day.first(8));
    let three = day.shown(&of_three.0, 3, &of_three.1).await;
    let eight = day.shown(&of_eight.0, 8, &of_eight.1).await;
    assert_eq!(three.bag, (axum::http::StatusCode::OK, vec![true, true]));
    assert_eq!(three.sheet, [true, true]);
    assert!(three.bench["readings"].as_array().is_some_and(|all| all.len() > 4));

    // Another food, class-wide.
    let text =
        swapped(Wording::english(), &day.text(), "maple syrup", "honey").expect("swapped");
    let saved = day.save(&text).await;
    assert!(saved.body.contains("stay as they were sealed"), "{}", saved.body);
    assert_eq!(day.results(), before);

    // One group fewer in period 1.
    let at = day.text().find("groups = 8").expect("eight groups");
    let mut fewer = day.text();
    fewer.replace_range(at..at + "groups = 8".len(), "groups = 7");
    let saved = day.save(&fewer).await;
    assert!(saved.body.contains("stay as they were sealed"), "{}", saved.body);
    assert_eq!(day.shown(&of_eight.0, 8, &of_eight.1).await, eight);

    // A proposal of a group whose bags were read.
    let plan_together = "asks=Does+warm+water+help&changes=water+temperature&level=20+C&level=30+C\
                         &level=40+C&keeps=honey+%2B+0.6+g&beside=20+C&bags=2&expects=&because=";
    let sheet = format!("period=1&group=3&{plan_together}&do=hand-in&seen=yes");
    let call = Call::form(&day.class, &format!("/i/{id}/approve/sheet"), &sheet);
    let answer = day.class.call(call.cookie("barm-teacher", &day.teacher)).await;
    assert_eq!(answer.status, 303, "{}", answer.body);
    let queue = day.get(&format!("/i/{id}/approve")).await;
    assert!(queue.body.contains("leave the new bag list, but keep"), "{}", queue.body);
    let call =
        Call::form(&day.class, &format!("/i/{id}/approve"), "do=approve&period=1&group=3");
    let done = day.class.call(call.cookie("barm-teacher", &day.teacher)).await;
    assert!(
        done.body.contains("Approved") && done.body.contains("stay as they were sealed"),
        "{}",
        done.body
    );
    let listed =
        day.class.room.read(|scene| scene.newest.bags.iter().any(|bag| bag.code == of_three.0));
    assert!(!listed, "the newest list does not have it");
    assert_eq!(day.shown(&of_three.0, 3, &of_three.1).await, three);

    // Its question stands in the plan in words of ours, not of the group.
    let asked = day.class.room.read(|scene| {
        scene.newest.questions.iter().map(|own| own.asks.clone()).collect::<Vec<String>>()
    });
    let worded = "What difference does the temperature of the water make: 20 C, 30 C or 40 C?";
    assert!(asked.iter().any(|asks| asks == worded), "{asked:?}");

    // All of it together: every answer to every question of the day, letter for letter.
    let after = day.results();
    assert_eq!(after.bags, before.bags, "no reading vanishes");
    for (old, new) in before.questions.iter().zip(&after.questions) {
        assert_eq!((&old.asks, &old.notes), (&new.asks, &new.notes));
        // What is new on the list, and was not made, comes on top.
        for verdict in &old.verdicts {
            assert!(new.verdicts.contains(verdict), "{verdict:?}: {:?}", new.verdicts);
        }
    }
    // Opened again, from what is on disk.
    let room = day.class.web.shelf.replay_anew(id, day.class.web.now());
    assert_eq!(room, day.class.room.read(|scene| scene.plan.clone()));
}
