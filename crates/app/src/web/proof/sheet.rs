//! What groups propose: handed in on their own page, or typed in from paper.

use super::class::{Call, Class, DURING_1};
use crate::desk::room::Kind;

#[tokio::test]
async fn the_teacher_types_in_a_sheet_and_it_waits_in_the_queue() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = |rest: &str| format!("/i/{}/approve{rest}", class.room.id);
    let get = |rest: &str| Call::get(&path(rest)).cookie("barm-teacher", &teacher);
    let queue = class.call(get("")).await.body;
    assert!(queue.contains("/approve/sheet?period=1&amp;group=3"), "it offers the sheet");
    let empty = class.call(get("/sheet?period=1&group=3")).await;
    assert_eq!(empty.status, 200);
    assert_eq!(class.call(get("/sheet?period=2&group=99")).await.status, 404);
    assert_eq!(class.call(get("/sheet?period=9&group=1")).await.status, 404);
    let wrote = "period=1&group=3&asks=Does+honey+beat+sugar&changes=food&level=honey\
                 &level=white+sugar&beside=No+food&bags=2&expects=honey&because=it+is+sticky";
    let look = Call::form(&class, &path("/sheet"), &format!("{wrote}&do=look"));
    let looked = class.call(look.cookie("barm-teacher", &teacher)).await;
    assert_eq!(looked.status, 200);
    assert!(looked.body.contains("Does honey beat sugar"), "what was typed stands there");
    assert!(!class.call(get("")).await.body.contains("Does honey beat sugar"));
    let hand_in = || Call::form(&class, &path("/sheet"), &format!("{wrote}&do=hand-in"));
    let handed = class.call(hand_in().cookie("barm-teacher", &teacher)).await;
    assert_eq!((handed.status.as_u16(), handed.header("location")), (303, path("").as_str()));
    let queue = class.call(get("")).await.body;
    assert!(queue.contains("Does honey beat sugar") && queue.contains("it is sticky"));
    assert!(!queue.contains("/approve/sheet?period=1&amp;group=3"), "it is handed in");
    // The group finds it on its own page; another group cannot type it.
    let token = class.group("1", 3);
    let own = class.call(Call::get("/plan-together").cookie("barm-bench", &token)).await;
    assert!(own.body.contains("Does honey beat sugar"));
    let other = class.group("1", 1);
    let foreign = class.call(hand_in().cookie("barm-bench", &other)).await;
    assert_eq!(foreign.status, 403);
}

#[tokio::test]
async fn a_group_sees_what_it_is_asked_before_its_plan_is_handed_in() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let token = class.group("1", 3);
    let path = format!("/i/{}/approve", class.room.id);
    let queue = || Call::get(&path).cookie("barm-teacher", &teacher);
    let hand_in = |wrote: &str| {
        let body = format!("{wrote}&do=hand-in");
        Call::form(&class, "/plan-together", &body).cookie("barm-bench", &token)
    };
    let empty = class.call(hand_in("asks=&changes=&bags=2")).await.body;
    assert!(empty.contains("Write first what you change"), "{empty}");
    // Two things at once.
    let unfair = "asks=Honey&changes=food&level=honey+%2B+45+%C2%B0C&level=oat+flour&bags=2\
                  &beside=No+food&expects=honey&because=so";
    let asked = class.call(hand_in(unfair)).await.body;
    assert!(asked.contains("Think about this") && asked.contains("name=\"seen\""), "{asked}");
    let none = class.call(queue()).await.body;
    assert!(none.contains("/approve/sheet?period=1&amp;group=3"), "nothing is handed in");
    let all_the_same = class.call(hand_in(&format!("{unfair}&seen=1"))).await.body;
    assert!(all_the_same.contains("It is handed in"), "{all_the_same}");
    let waits = class.call(queue()).await.body;
    assert!(!waits.contains("/approve/sheet?period=1&amp;group=3"), "it waits");
}
