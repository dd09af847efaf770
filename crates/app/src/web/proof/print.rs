//! The print page, and files from it.

use super::class::{Call, Class, DURING_1};
use crate::desk::room::Kind;

#[tokio::test]
async fn what_is_chosen_goes_into_every_link_and_comes_out_as_a_file() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = |rest: &str| format!("/i/{}/print{rest}", class.room.id);
    let get = |rest: &str| Call::get(&path(rest)).cookie("barm-teacher", &teacher);
    let page = class.call(get("?paper=a4&start=4&address=https%3A%2F%2Fbarm.example")).await;
    assert_eq!(page.status, 200);
    let link = "/labels.pdf?paper=a4&amp;start=4&amp;address=https%3A%2F%2Fbarm.example";
    assert!(page.body.contains(&path(link)), "{}", page.body);
    assert!(page.body.contains("/join.pdf?"), "there is an address to show");
    assert!(!page.body.contains("/results.pdf?"), "nothing was read yet");
    let plain = class.call(get("")).await.body;
    assert!(plain.contains("/labels.pdf\"") && !plain.contains("/join.pdf"), "{plain}");

    let file = class.open(get("/test-print.pdf?paper=a4")).await;
    assert_eq!(file.status(), 200);
    assert_eq!(file.headers()["content-type"], "application/pdf");
    assert_eq!(file.headers()["content-disposition"], "inline; filename=\"test-print.pdf\"");
}

#[tokio::test]
async fn what_cannot_be_printed_is_no_file() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    for (rest, status) in [
        ("/poster.pdf", 404),
        ("/labels.exe", 404),
        ("/test-print.pdf?period=9", 404),
        ("/test-print.pdf?start=31", 400),
        ("/labels.pdf?address=barm.example", 400),
    ] {
        let call = Call::get(&format!("/i/{}/print{rest}", class.room.id));
        let answer = class.call(call.cookie("barm-teacher", &teacher)).await;
        assert_eq!(answer.status, status, "{rest}: {}", answer.body);
    }
    let page = Call::get(&format!("/i/{}/print?start=31&address=barm.example", class.room.id));
    let page = class.call(page.cookie("barm-teacher", &teacher)).await.body;
    assert!(page.contains("Write a number from 1 to 30"), "{page}");
    assert!(page.contains("That address was left out: write the whole address"), "{page}");
}
