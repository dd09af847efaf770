//! Prompts on the wall: one at a time, on the wall of its own period, in the language of whoever looks.

use super::class::{Call, Class, DURING_1};
use crate::desk::doors::JoinKey;
use crate::desk::room::Kind;

async fn wall(class: &Class, token: &str, path: &str) -> String {
    class.call(Call::get(path).cookie("barm-wall", token)).await.body
}

async fn as_teacher(class: &Class, token: &str, body: Option<&str>) -> String {
    let path = format!("/i/{}/talk/1", class.room.id);
    let call = match body {
        Some(body) => Call::form(class, &path, body),
        None => Call::get(&path),
    };
    class.call(call.cookie("barm-teacher", token)).await.body
}

#[tokio::test]
async fn a_prompt_hangs_on_the_wall_of_its_period_until_it_is_taken_down() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let [own, other] = ["1", "2"].map(|period| {
        let codes = class.codes(period);
        class.joined(JoinKey::Page(&codes.wall))
    });
    const ASKS: &str = "What one thing would you change next?";
    let page = as_teacher(&class, &teacher, None).await;
    assert!(page.contains(ASKS) && page.contains("No bag of this period has been read"));
    // What is in a bag is for the teacher first.
    assert!(page.contains("Yeast takes in at once"), "{page}");
    assert!(!wall(&class, &own, "/wall").await.contains(ASKS), "nothing hangs by itself");
    let hung = as_teacher(&class, &teacher, Some("key=period%2Fnext")).await;
    assert!(hung.contains("On the wall of period 1"), "{hung}");
    assert!(wall(&class, &own, "/wall?lang=en").await.contains(ASKS));
    let spanish = wall(&class, &own, "/wall?lang=es").await;
    assert!(spanish.contains("¿Qué cosa cambiarían ahora?"), "{spanish}");
    assert!(!wall(&class, &other, "/wall?lang=en").await.contains(ASKS), "another period’s");
    // A prompt that the bags do not call for changes nothing.
    let gone = as_teacher(&class, &teacher, Some("key=period%2Fclear%2FHoney")).await;
    assert!(gone.contains("no longer call for that question"), "{gone}");
    assert!(wall(&class, &own, "/wall?lang=en").await.contains(ASKS));
    let down = as_teacher(&class, &teacher, Some("")).await;
    assert!(down.contains("shows no question now"), "{down}");
    assert!(!wall(&class, &own, "/wall?lang=en").await.contains(ASKS));
}
