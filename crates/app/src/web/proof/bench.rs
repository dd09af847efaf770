//! What a group's device sends and is told.

use super::class::{Call, Class, DURING_1};
use crate::desk::doors::Part;
use crate::desk::room::Kind;
use crate::web::cookies;
use barm_domain::record::{Subject, What, Who};
use serde_json::{Value, json};

fn key(number: u32) -> String {
    format!("01900000-0000-7000-8000-{number:012x}")
}

/// Code of the first bag of a group of period 1.
fn bag(class: &Class, group: u32) -> String {
    class.room.read(|scene| {
        let own = scene.plan.bags.iter().find(|bag| bag.period == "1" && bag.group == group);
        own.expect("a bag").code.clone()
    })
}

async fn send(class: &Class, token: &str, entries: &Value) -> Value {
    let body = json!({ "entries": entries }).to_string();
    let call = Call::script("/bench/entries", &body);
    let answer = class.call(call.cookie(cookies::name(Part::Group), token)).await;
    assert_eq!(answer.status, 200, "{}", answer.body);
    serde_json::from_str(&answer.body).expect("JSON")
}

async fn state(class: &Class, token: &str) -> Value {
    let call = Call::get("/bench/state").cookie(cookies::name(Part::Group), token);
    serde_json::from_str(&class.call(call).await.body).expect("JSON")
}

#[tokio::test]
async fn what_a_group_sends_is_on_record_once_and_in_its_page() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (bag, now) = (bag(&class, 3), class.web.now().as_millisecond());
    let entries = json!([
        { "key": key(1), "bag": bag, "what": "sealed", "plan": 1, "at": now - 2, "offset": 0 },
        // A device that runs an hour behind, and knows it.
        { "key": key(2), "bag": bag, "what": "zero", "mm": 4, "at": now - 3_600_000,
          "offset": 3_600_000 },
        { "key": key(3), "bag": bag, "what": "odd", "odd": "leak", "at": now, "offset": 0 },
    ]);
    for _ in 0..2 {
        let said = send(&class, &token, &entries).await;
        assert_eq!(said["saved"], json!([key(1), key(2), key(3)]));
        assert_eq!(said["refused"], json!([]));
    }
    let told = state(&class, &token).await;
    let own = &told["bags"][0];
    assert_eq!(own["code"], json!(bag));
    assert_eq!(own["zero"]["mm"], json!(4.0));
    assert_eq!(own["zero"]["at_ms"], json!(now));
    assert_eq!(own["odd"], json!([[now, "leak", key(3)]]));
    assert_eq!(told["keys"].as_array().map(Vec::len), Some(3));
    let count = class.room.read(|scene| {
        let subject = Subject::Bag(bag.parse().expect("a code"));
        scene.ledger.entries_of(&subject).len()
    });
    assert_eq!(count, 3);
}

#[tokio::test]
async fn a_group_writes_about_its_own_bags_and_nothing_else() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (own, other) = (bag(&class, 3), bag(&class, 4));
    let now = class.web.now().as_millisecond();
    let wrong = [
        json!({ "key": key(1), "bag": other, "what": "zero", "mm": 4, "at": now }),
        json!({ "key": key(2), "bag": own, "what": "set-aside", "at": now }),
        json!({ "key": key(3), "bag": own, "what": "reading", "mm": 251, "at": now }),
        json!({ "key": key(4), "bag": own, "what": "reading", "mm": -1, "at": now }),
        json!({ "key": key(5), "bag": own, "what": "sealed", "plan": 2, "at": now }),
        json!({ "key": key(6), "bag": own, "what": "odd", "odd": "gone", "at": now }),
        json!({ "key": key(7), "bag": null, "what": "zero", "mm": 4, "at": now }),
        json!({ "key": key(8), "bag": null, "what": "guess", "expects": [[other, 9]], "at": now }),
        json!({ "key": "no key", "bag": own, "what": "zero", "mm": 4, "at": now }),
    ];
    for entry in wrong {
        let said = send(&class, &token, &json!([entry])).await;
        assert_eq!(said["refused"], json!([entry["key"]]), "{entry}");
        assert_eq!(said["saved"], json!([]), "{entry}");
    }
}

#[tokio::test]
async fn what_a_group_types_is_taken_up_to_its_limit_and_not_beyond() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (own, now) = (bag(&class, 3), class.web.now().as_millisecond());
    let of = |what: Value| {
        let mut entry = json!({ "bag": own, "at": now });
        entry.as_object_mut().expect("fields").extend(what.as_object().expect("more").clone());
        entry
    };
    let reading =
        |mm: f64, planned: u32| of(json!({ "what": "reading", "mm": mm, "planned": planned }));
    let guess = |mm: f64| of(json!({ "bag": null, "what": "guess", "expects": [[own, mm]] }));
    let water = |celsius: f64| of(json!({ "what": "made", "celsius": celsius }));
    let rows = [
        (guess(-0.1), false),
        (guess(0.0), true),
        (guess(250.0), true),
        (guess(250.1), false),
        (water(-0.1), false),
        (water(0.0), true),
        (water(100.0), true),
        (water(100.1), false),
        (reading(-0.1, 4), false),
        (reading(0.0, 4), true),
        (reading(250.0, 24 * 60), true),
        (reading(250.1, 4), false),
        (reading(250.0, 24 * 60 + 1), false),
        (of(json!({ "what": "reading" })), false),
        (of(json!({ "what": "sealed", "plan": 0 })), false),
        (of(json!({ "what": "sealed", "plan": 1 })), true),
    ];
    for (number, (mut entry, taken)) in (1..).zip(rows) {
        entry["key"] = json!(key(number));
        let said = send(&class, &token, &json!([entry])).await;
        let (saved, refused) = (json!([entry["key"]]), json!([]));
        let expected = if taken { (&saved, &refused) } else { (&refused, &saved) };
        assert_eq!((&said["saved"], &said["refused"]), expected, "{entry}");
    }
    // Of a reason that is too long the beginning is kept.
    let mut entry = guess(9.0);
    (entry["key"], entry["because"]) = (json!(key(900)), json!("é".repeat(501)));
    entry["words"] = json!("0123456789abcdef0123456789abcdef");
    assert_eq!(send(&class, &token, &json!([entry])).await["saved"], json!([key(900)]));
    let words = "0123456789abcdef0123456789abcdef".parse().expect("a key");
    let words = class.web.shelf.words(words).expect("read");
    assert_eq!(words, Some("é".repeat(500)));
}

#[tokio::test]
async fn what_no_page_has_a_field_for_is_not_read() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (own, now) = (bag(&class, 3), class.web.now());
    let long_ago = now.as_millisecond() - 1000;
    let entry = json!({
        "key": key(1), "bag": own, "what": "zero", "mm": 4, "at": long_ago, "who": "teacher",
        "role": "teacher", "period": "2", "group": 4, "subject": "investigation",
        "arrived": long_ago, "measured": 0, "investigation": 2, "rule": "leak",
    });
    let body = json!({ "entries": [entry], "period": "2", "group": 4, "role": "teacher" });
    let call = Call::script("/bench/entries?period=2&group=4&role=teacher", &body.to_string());
    let answer = class.call(call.cookie(cookies::name(Part::Group), &token)).await;
    assert_eq!(answer.status, 200, "{}", answer.body);
    let subject = Subject::Bag(own.parse().expect("a code"));
    let there = class.room.read(|scene| scene.ledger.entries_of(&subject).to_vec());
    let [zero] = &there[..] else { panic!("{there:?}") };
    assert_eq!(zero.who, Who::Group { period: "1".into(), group: 3 });
    assert_eq!(zero.what, What::Zero { height_mm: 4.0 });
    assert_eq!((zero.arrived, zero.measured.as_millisecond()), (now, long_ago));
}

#[tokio::test]
async fn a_device_that_sends_more_than_anybody_types_waits_and_nobody_else_does() {
    let class = Class::at(DURING_1, Kind::Real);
    let (one, other) = (class.group("1", 3), class.group("1", 3));
    let (bag, now) = (bag(&class, 3), class.web.now().as_millisecond());
    let odd = |number: u32| json!({ "key": key(number), "bag": bag, "what": "odd", "odd": "bumped", "at": now });
    // What the devices of a group keep in a whole day with the server gone, at once.
    let day: Vec<Value> = (0..360).map(odd).collect();
    for part in day.chunks(40) {
        let said = send(&class, &one, &json!(part)).await;
        assert_eq!(said["saved"].as_array().map(Vec::len), Some(40));
    }
    let sends = |token: &str, entries: &[Value]| {
        let body = json!({ "entries": entries }).to_string();
        class.call(
            Call::script("/bench/entries", &body).cookie(cookies::name(Part::Group), token),
        )
    };
    let mut slowed = None;
    for turn in 0..12 {
        let again = sends(&one, &day[..360]).await;
        if again.status == 429 {
            slowed = Some((turn, again));
            break;
        }
        assert_eq!(again.status, 200);
    }
    let (turn, answer) = slowed.expect("it is slowed");
    assert!(turn >= 4, "five whole days at once are let through");
    assert!(answer.header("retry-after").parse::<u32>().is_ok_and(|wait| wait <= 60));
    assert_eq!(sends(&one, &[]).await.status, 429, "nothing at all counts too");
    assert_eq!(sends(&one, &[odd(900)]).await.status, 429);
    // So does the planning page, by the same session.
    let proposal = Call::form(&class, "/plan-together", "do=look");
    let proposal = proposal.cookie(cookies::name(Part::Group), &one);
    assert_eq!(class.call(proposal).await.status, 429);
    assert_eq!(sends(&other, &[odd(901)]).await.status, 200, "its neighbor in the same group");
    // What was refused was not kept, and is taken when it comes again.
    let at = |number: u32| {
        class.room.read(|scene| {
            let subject = Subject::Bag(bag.parse().expect("a code"));
            let entries = scene.ledger.entries_of(&subject);
            entries
                .iter()
                .filter(|entry| {
                    entry.key.to_string().replace('-', "") == key(number).replace('-', "")
                })
                .count()
        })
    };
    assert_eq!((at(900), at(901)), (0, 1));
    class.later(jiff::SignedDuration::from_secs(60));
    assert_eq!(sends(&one, &[odd(900)]).await.status, 200);
    assert_eq!((at(0), at(900)), (1, 1), "each once");
}

#[tokio::test]
async fn a_group_writes_how_warm_its_water_was_and_takes_back_its_own_tap_only() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (own, now) = (bag(&class, 3), class.web.now().as_millisecond());
    let entries = json!([
        { "key": key(1), "bag": own, "what": "made", "celsius": 41.5, "at": now - 9 },
        { "key": key(2), "bag": own, "what": "odd", "odd": "foam", "at": now - 8 },
        { "key": key(3), "bag": own, "what": "odd-back", "of": key(2), "at": now - 7 },
        { "key": key(4), "bag": own, "what": "made", "celsius": 141.5, "at": now - 6 },
        { "key": key(5), "bag": own, "what": "made", "at": now - 5 },
    ]);
    let said = send(&class, &token, &entries).await;
    assert_eq!(said["saved"], json!([key(1), key(2), key(3)]));
    assert_eq!(said["refused"], json!([key(4), key(5)]));
    let bag = &state(&class, &token).await["bags"][0];
    assert_eq!((&bag["poured"], &bag["odd"]), (&json!(41.5), &json!([])));
    // What the teacher tapped is shown, without a way to take it back, and stays when it is tried.
    let subject = Subject::Bag(own.parse().expect("a code"));
    let foam = class.note(subject, Who::Teacher, What::Odd(barm_domain::record::Odd::Foam));
    let try_it = json!([
        { "key": key(6), "bag": own, "what": "odd-back", "of": foam.to_string(), "at": now },
    ]);
    send(&class, &token, &try_it).await;
    let told = state(&class, &token).await;
    let odd = told["bags"][0]["odd"].as_array().expect("a list").clone();
    assert_eq!(odd.len(), 1, "{odd:?}");
    assert_eq!((&odd[0][1], &odd[0][2]), (&json!("foam"), &Value::Null));
    assert_eq!(told["refused"], json!([key(6)]));
    // After the period nothing is taken back any more.
    let tap = json!([{ "key": key(7), "bag": own, "what": "odd", "odd": "leak", "at": now }]);
    send(&class, &token, &tap).await;
    class.note(Subject::Period("1".into()), Who::Teacher, What::Ended);
    class.later(jiff::SignedDuration::from_secs(5));
    let at = class.web.now().as_millisecond();
    let late =
        json!([{ "key": key(8), "bag": own, "what": "odd-back", "of": key(7), "at": at }]);
    assert_eq!(send(&class, &token, &late).await["refused"], json!([key(8)]));
}

#[tokio::test]
async fn a_key_that_says_something_else_is_not_acknowledged() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (bag, now) = (bag(&class, 3), class.web.now().as_millisecond());
    let zero = |mm| json!([{ "key": key(1), "bag": bag, "what": "zero", "mm": mm, "at": now }]);
    assert_eq!(send(&class, &token, &zero(4)).await["saved"], json!([key(1)]));
    assert_eq!(send(&class, &token, &zero(5)).await["refused"], json!([key(1)]));
}

#[tokio::test]
async fn a_reason_lies_apart_from_the_record() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    let (bag, now) = (bag(&class, 3), class.web.now().as_millisecond());
    let guess = json!([{
        "key": key(1), "bag": null, "what": "guess", "expects": [[bag, 9.5]], "at": now,
        "because": "Sugar feeds yeast.", "words": "0123456789abcdef0123456789abcdef",
    }]);
    assert_eq!(send(&class, &token, &guess).await["saved"], json!([key(1)]));
    let group = Subject::Group { period: "1".into(), group: 3 };
    let entry = class.room.read(|scene| scene.ledger.entries_of(&group)[0].clone());
    assert_eq!(entry.who, Who::Group { period: "1".into(), group: 3 });
    let What::Guess { because, .. } = entry.what else { panic!("{entry:?}") };
    let words = class.web.shelf.words(because.expect("a reason")).expect("read");
    assert_eq!(words.as_deref(), Some("Sugar feeds yeast."));
}

#[tokio::test]
async fn what_the_page_is_given_cannot_end_its_own_element() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 3);
    for (language, title) in [("en", "Keep this page open"), ("es", "No cierren esta página")]
    {
        let call = Call::get("/bench").cookie(cookies::name(Part::Group), &token);
        let answer = class.call(call.header("accept-language", language)).await;
        assert_eq!(answer.status, 200);
        assert!(answer.body.contains(&format!("<html lang=\"{language}\">")));
        let (_, rest) = answer.body.split_once("id=\"given\">").expect("what it is given");
        let (given, _) = rest.split_once("</script>").expect("its end");
        assert!(!given.contains('<'));
        assert!(given.contains(title));
        let given: Value = serde_json::from_str(given).expect("JSON");
        assert_eq!(given["scene"]["group"], json!(3));
    }
}

#[tokio::test]
async fn a_group_is_told_of_the_solution_and_never_of_the_powder() {
    let class = Class::at(DURING_1, Kind::Real);
    let group = class.room.read(|scene| {
        let with = scene.plan.bags.iter().find(|bag| {
            bag.period == "1" && bag.group > 0 && bag.treatment.contains("glucoamylase")
        });
        with.expect("a bag with the enzyme").group
    });
    let token = class.group("1", group as usize);
    let told = state(&class, &token).await.to_string();
    assert!(told.contains("glucoamylase solution"), "{told}");
    assert!(told.contains("solución de glucoamilasa"), "{told}");
    assert!(!told.contains("powder") && !told.contains("polvo\""), "{told}");
}
