//! Cards of groups with a square for cameras, and ways back to where one was.

use super::class::{Call, Class, DURING_1, NETWORK};
use crate::desk::room::Kind;

#[tokio::test]
async fn every_group_has_a_card_with_its_code_and_its_square() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/run/1/codes", class.room.id);
    let page = class.call(Call::get(&path).cookie("barm-teacher", &teacher)).await.body;
    let codes = class.codes("1");
    // One for everybody, then one a group.
    assert_eq!(page.matches("class=\"qr\"").count(), 1 + codes.groups.len());
    for (_, code) in &codes.groups {
        assert!(page.contains(code.as_str()), "{code}");
    }
}

#[tokio::test]
async fn a_cards_address_fills_in_the_group_and_lets_nobody_in() {
    let class = Class::at(DURING_1, Kind::Real);
    let code = class.codes("1").groups[0].1.clone();
    let answer = class.call(Call::get(&format!("/join?group={code}")).from(NETWORK)).await;
    assert_eq!(answer.status, 200);
    assert!(answer.body.contains(&format!("value=\"{code}\"")), "it is filled in");
    assert!(!answer.body.contains("id=\"label-said\""), "a card is no label of a bag");
    assert!(answer.body.contains(&format!("lang=es&amp;group={code}")), "in both languages");
    let bare = class.call(Call::get(&format!("/bench?group={code}")).from(NETWORK)).await;
    assert_eq!(bare.status, 403);
}

#[tokio::test]
async fn whoever_puts_a_device_out_stays_on_the_page_of_the_period() {
    let class = Class::at(DURING_1, Kind::Real);
    let (teacher, _group) = (class.teacher(), class.group("1", 2));
    let run = format!("/i/{}/run/1", class.room.id);
    let page = class.call(Call::get(&run).cookie("barm-teacher", &teacher)).await.body;
    let form = page.split("/devices/out\"").nth(1).expect("a device that is in");
    let form = form.split("</form>").next().unwrap_or_default();
    assert!(form.contains("name=\"period\" value=\"1\""), "{form}");
    let joined = class.web.shelf.doors.joined(class.room.id, class.web.now());
    let body = format!("device={}&period=1", joined[0].name);
    let call = Call::form(&class, &format!("/i/{}/devices/out", class.room.id), &body);
    let answer = class.call(call.cookie("barm-teacher", &teacher)).await;
    assert_eq!((answer.status.as_u16(), answer.header("location")), (303, run.as_str()));
}

#[tokio::test]
async fn what_goes_wrong_is_told_in_the_language_of_the_browser() {
    let class = Class::at(DURING_1, Kind::Real);
    for (language, title) in
        [("es-MX,es;q=0.9", "Esa página no existe"), ("en", "no such page")]
    {
        let call = Call::get("/nowhere").from(NETWORK).header("accept-language", language);
        let answer = class.call(call).await;
        assert_eq!(answer.status, 404);
        assert!(answer.body.contains(title), "{language}: {}", answer.body);
        assert!(answer.header("content-type").starts_with("text/html"));
    }
    let refused = class.call(Call::get("/bench/version").header("accept-language", "es")).await;
    assert_eq!(refused.body, "Esta página no es para ustedes.");
}

#[tokio::test]
async fn a_group_that_comes_before_its_day_is_led_to_its_plan_and_on_the_day_to_its_bags() {
    for (moment, page) in [("2027-03-08T15:00:00Z", "/plan-together"), (DURING_1, "/bench")] {
        let class = Class::at(moment, Kind::Real);
        let codes = class.codes("1");
        class.web.shelf.doors.open_codes(&class.room, "1", class.web.now());
        let body = format!("period={}&group={}", codes.period, codes.groups[0].1);
        let answer = class.call(Call::form(&class, "/join", &body).from(NETWORK)).await;
        assert_eq!(
            (answer.status.as_u16(), answer.header("location")),
            (303, page),
            "{moment}"
        );
    }
}
