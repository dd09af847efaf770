//! Coming in: passphrase, codes, sessions.

use super::class::{Call, Class, DURING_1, DURING_2, HERE, NETWORK, PASSPHRASE};
use crate::desk::doors::{From, JoinKey, NotJoined, Part};
use crate::desk::room::{Kind, Shelf};
use crate::web::cookies;
use jiff::SignedDuration;

fn sent(class: &Class, period: &str, group: &str) -> Call {
    Call::form(class, "/join", &format!("period={period}&group={group}")).from(NETWORK)
}

#[tokio::test]
async fn a_group_comes_in_with_its_two_codes_or_with_a_label() {
    let class = Class::at(DURING_1, Kind::Real);
    let codes = class.codes("1");
    let bag = class.room.read(|scene| {
        let own = scene.plan.bags.iter().find(|bag| bag.period == "1" && bag.group == 3);
        own.expect("group 3 has a bag").code.clone()
    });
    let small = codes.period.to_lowercase();
    let plain = bag.to_lowercase().replace('-', "+");
    for group in [codes.groups[2].1.as_str(), &bag, &plain] {
        let answer = class.call(sent(&class, &small, group)).await;
        assert_eq!(answer.status, 303, "{group}: {}", answer.body);
        assert_eq!(answer.header("location"), "/bench");
        let token = answer.cookie(Part::Group).expect("a session");
        let seat = class.web.shelf.doors.who(Part::Group, &token, class.web.now());
        let seat = seat.expect("it holds");
        assert_eq!((seat.period.as_deref(), seat.group), (Some("1"), Some(3)));
    }
}

#[tokio::test]
async fn wrong_period_and_wrong_group_get_the_very_same_answer() {
    let class = Class::at(DURING_1, Kind::Real);
    let (one, two) = (class.codes("1"), class.codes("2"));
    let right = &one.groups[0].1;
    let teachers_bench = class.room.read(|scene| {
        let own = scene.plan.bags.iter().find(|bag| bag.period == "1" && bag.group == 0);
        own.expect("controls").code.clone()
    });
    let mut bodies = Vec::new();
    for (period, group) in [
        ("AAAAA", right.as_str()),
        (&two.period, &two.groups[0].1),
        (&two.period, right),
        (&one.period, &two.groups[0].1),
        (&one.period, &one.period),
        (&one.wall, right),
        (right, &one.period),
        (&one.period, &teachers_bench),
        (&one.period, ""),
        ("", ""),
    ] {
        let mut call = sent(&class, period, group);
        // Each from a device of its own, so that none is slowed.
        call.from = Some(HERE);
        let answer = class.call(call).await;
        assert_eq!(answer.status, 403, "{period} {group}");
        assert!(answer.cookie(Part::Group).is_none());
        bodies.push(answer.body.replace(group, "").replace(" value=\"\"", ""));
        class.web.shelf.doors.forget_tries();
    }
    bodies.dedup();
    assert_eq!(bodies.len(), 1, "{bodies:#?}");
}

#[tokio::test]
async fn a_code_works_in_its_own_period_only() {
    for (now, open) in [
        ("2027-03-09T14:59:00Z", &[][..]),
        ("2027-03-09T15:01:00Z", &["1"]),
        (DURING_1, &["1"]),
        // Between the periods: the one is over, the other has not begun.
        ("2027-03-09T15:57:00Z", &["1", "2"]),
        (DURING_2, &["2"]),
        // The day before at the same hour.
        ("2027-03-08T15:30:00Z", &[]),
    ] {
        let class = Class::at(now, Kind::Real);
        for period in ["1", "2", "4", "6"] {
            let codes = class.codes(period);
            let answer = class.call(sent(&class, &codes.period, &codes.groups[0].1)).await;
            let expected = if open.contains(&period) { 303 } else { 403 };
            assert_eq!(answer.status, expected, "period {period} at {now}");
        }
    }
}

#[tokio::test]
async fn the_teacher_can_open_a_period_out_of_hours() {
    let class = Class::at("2027-03-05T20:00:00Z", Kind::Real);
    let teacher = class.teacher();
    let codes = class.codes("2");
    assert_eq!(class.call(sent(&class, &codes.period, &codes.groups[0].1)).await.status, 403);
    let path = format!("/i/{}/codes/2/open", class.room.id);
    let call = Call::form(&class, &path, "").cookie("barm-teacher", &teacher);
    assert_eq!(class.call(call).await.status, 303);
    assert_eq!(class.call(sent(&class, &codes.period, &codes.groups[0].1)).await.status, 303);
}

#[tokio::test]
async fn one_child_who_guesses_is_slowed_and_the_others_are_not() {
    let class = Class::at(DURING_1, Kind::Real);
    let codes = class.codes("1");
    let guess = |device: char| {
        let device = device.to_string().repeat(64);
        let token = class.web.shelf.doors.form_token(&device);
        let mut call = sent(&class, &codes.period, "AAAAA");
        call.body = format!("form={token}&period={}&group=AAAAA", codes.period);
        call.cookies = vec![(cookies::DEVICE.into(), device)];
        call
    };
    let mut slowed = false;
    for _ in 0..20 {
        slowed |= class.call(guess('a')).await.status == 429;
    }
    assert!(slowed, "twenty wrong codes from one device");
    assert_eq!(class.call(guess('b')).await.status, 403, "another device may still be wrong");
    let right = sent(&class, &codes.period, &codes.groups[0].1);
    assert_eq!(class.call(right).await.status, 303, "and another may still be right");
}

/// A guess from a device that nobody has seen before.
fn from_a_new_device(class: &Class, number: usize, period: &str, group: &str) -> Call {
    let device = format!("{number:064x}");
    let token = class.web.shelf.doors.form_token(&device);
    let mut call = sent(class, period, group);
    call.body = format!("form={token}&period={period}&group={group}");
    call.cookies = vec![(cookies::DEVICE.into(), device)];
    call
}

#[tokio::test]
async fn whoever_invents_a_device_for_each_guess_locks_nobody_out() {
    let class = Class::at(DURING_1, Kind::Real);
    let codes = class.codes("1");
    for number in 0..62 {
        let guess = from_a_new_device(&class, number, &codes.period, "AAAAA");
        assert_eq!(class.call(guess).await.status, 403, "{number}");
    }
    let right =
        |number| from_a_new_device(&class, number, &codes.period, &codes.groups[number % 8].1);
    for child in 1000..1030 {
        assert_eq!(class.call(right(child)).await.status, 303, "child {child} is right");
    }
    // One that was wrong itself, and only that one, waits.
    for _ in 0..10 {
        class.call(from_a_new_device(&class, 7, &codes.period, "AAAAA")).await;
    }
    assert_eq!(class.call(right(7)).await.status, 429);
    assert_eq!(class.call(right(8)).await.status, 303);
}

#[tokio::test]
async fn in_a_flood_codes_are_judged_one_after_the_other_with_a_pause() {
    let class = Class::at(DURING_1, Kind::Real);
    let codes = class.codes("1");
    let doors = &class.web.shelf.doors;
    let judge = |number: usize, group: &str| {
        let device = format!("device {number}");
        let key = JoinKey::Group { period: &codes.period, group };
        class.web.shelf.join(&From { device: &device }, key, class.web.now())
    };
    let floods: Vec<bool> = (0..62)
        .map(|number| match judge(number, "AAAAA") {
            Err(NotJoined::Wrong { flood }) => flood,
            Err(other) => panic!("{other}"),
            Ok(_) => panic!("let in with {number}"),
        })
        .collect();
    assert_eq!(floods.iter().position(|flood| *flood), Some(60), "sixty at one code");
    assert!(judge(100, &codes.groups[0].1).is_ok());
    // While one is judged, or has its pause, the next is not: the call makes no headway.
    let turn = doors.turn().await;
    let next = class.call(from_a_new_device(&class, 200, &codes.period, "AAAAA"));
    tokio::pin!(next);
    for _ in 0..100 {
        tokio::select! {
            biased;
            answer = &mut next => panic!("judged out of turn: {}", answer.status),
            () = tokio::task::yield_now() => {}
        }
    }
    drop(turn);
    assert_eq!(next.await.status, 403);
    // Codes that are none of ours fill no list; they count for all together.
    let wrong = |number: usize| {
        let device = format!("other {number}");
        let code = format!("NONE{number}");
        let at = class.web.now();
        class.web.shelf.join(&From { device: &device }, JoinKey::Page(&code), at)
    };
    let flood = (0..400)
        .map(wrong)
        .position(|answer| matches!(answer, Err(NotJoined::Wrong { flood: true })));
    assert!(flood.is_some_and(|at| at > 300), "{flood:?}");
}

#[tokio::test]
async fn a_session_ends_with_sign_out_with_the_day_and_with_the_teachers_tap() {
    let class = Class::at(DURING_1, Kind::Real);
    let asks =
        |token: &str| Call::get("/bench/version").from(NETWORK).cookie("barm-bench", token);
    let (one, two, three) = (class.group("1", 1), class.group("1", 2), class.group("1", 3));
    assert_eq!(class.call(asks(&one)).await.status, 200);
    let leave = Call::form(&class, "/bench/leave", "").from(NETWORK).cookie("barm-bench", &one);
    assert_eq!(class.call(leave).await.status, 303);
    assert_eq!(class.call(asks(&one)).await.status, 403, "signed out");

    let teacher = class.teacher();
    let joined = class.web.shelf.doors.joined(class.room.id, class.web.now());
    let second = joined.iter().find(|joined| joined.seat.group == Some(2)).expect("it is in");
    let path = format!("/i/{}/devices/out", class.room.id);
    let call = Call::form(&class, &path, &format!("device={}", second.name));
    assert_eq!(class.call(call.cookie("barm-teacher", &teacher)).await.status, 303);
    assert_eq!(class.call(asks(&two)).await.status, 403, "put out");
    assert_eq!(class.call(asks(&three)).await.status, 200, "not meant");

    class.later(SignedDuration::from_hours(16));
    assert_eq!(class.call(asks(&three)).await.status, 403, "the day is over");
}

#[tokio::test]
async fn another_code_puts_out_who_came_in_with_the_old_one() {
    let class = Class::at(DURING_1, Kind::Real);
    let (old, token) = (class.codes("1").period, class.group("1", 1));
    let teacher = class.teacher();
    let path = format!("/i/{}/codes/1/renew", class.room.id);
    let call = Call::form(&class, &path, "what=period").cookie("barm-teacher", &teacher);
    assert_eq!(class.call(call).await.status, 303);
    assert_ne!(class.codes("1").period, old);
    let call = Call::get("/bench/version").cookie("barm-bench", &token);
    assert_eq!(class.call(call).await.status, 403);
}

#[tokio::test]
async fn there_is_no_passphrase_at_first_and_only_this_computer_can_choose_one() {
    let class = Class::at(DURING_1, Kind::Real);
    let call = Call::form(&class, "/teacher", "passphrase=admin");
    assert_eq!(class.call(call).await.status, 401, "no account before one is made");
    let body = "passphrase=four+words+of+mine&again=four+words+of+mine";
    let call = Call::form(&class, "/teacher/first", body).from(NETWORK);
    assert_eq!(class.call(call).await.status, 403, "from the network");
    let weak = Call::form(&class, "/teacher/first", "passphrase=short&again=short");
    assert_eq!(class.call(weak).await.status, 400, "too short");
    let answer = class.call(Call::form(&class, "/teacher/first", body)).await;
    assert_eq!((answer.status.as_u16(), answer.header("location")), (303, "/shelf"));
    let token = answer.cookie(Part::Teacher).expect("a session");
    let shelf = Call::get("/shelf").cookie("barm-teacher", &token);
    assert_eq!(class.call(shelf).await.status, 200);
    let other = "passphrase=another+one+for+me&again=another+one+for+me";
    let answer = class.call(Call::form(&class, "/teacher/first", other)).await;
    assert!(answer.cookie(Part::Teacher).is_none(), "there is one already");
}

#[tokio::test]
async fn signing_in_gives_a_new_token_and_slows_down_who_is_wrong() {
    let class = Class::at(DURING_1, Kind::Real);
    let first = class.teacher();
    let body = format!("passphrase={}", PASSPHRASE.replace(' ', "+"));
    let answer =
        class.call(Call::form(&class, "/teacher", &body).cookie("barm-teacher", &first));
    let second = answer.await.cookie(Part::Teacher).expect("a session");
    assert_ne!(first, second);
    let shelf = |token: &str| Call::get("/shelf").cookie("barm-teacher", token);
    assert_eq!(class.call(shelf(&first)).await.status, 403, "the old one is over");
    assert_eq!(class.call(shelf(&second)).await.status, 200);
    let wrong = || Call::form(&class, "/teacher", "passphrase=four+words+of+yours");
    let mut statuses = Vec::new();
    for _ in 0..6 {
        statuses.push(class.call(wrong()).await.status.as_u16());
    }
    assert_eq!(statuses, [401, 401, 401, 401, 401, 429]);
    let answer = class.call(Call::form(&class, "/teacher", &body)).await;
    assert_eq!(answer.status, 429, "even the right one waits");
    class.later(SignedDuration::from_mins(10));
    assert_eq!(class.call(Call::form(&class, "/teacher", &body)).await.status, 303);
    class.later(SignedDuration::from_hours(13));
    assert_eq!(class.call(shelf(&second)).await.status, 403, "twelve hours are over");
}

#[tokio::test]
async fn only_hashes_of_tokens_and_passphrase_lie_on_disk() {
    let class = Class::at(DURING_1, Kind::Real);
    let tokens = [class.teacher(), class.group("1", 1)];
    let mut read = 0;
    for file in std::fs::read_dir(class.folder.path()).expect("the folder") {
        let path = file.expect("a file").path();
        let bytes = std::fs::read(&path).expect("readable");
        let holds = |text: &str| bytes.windows(text.len()).any(|part| part == text.as_bytes());
        for secret in tokens.iter().map(String::as_str).chain([PASSPHRASE]) {
            assert!(!holds(secret), "{}", path.display());
        }
        read += usize::from(holds("$argon2id$"));
    }
    assert!(read > 0, "the hash of the passphrase is one of Argon2id");
}

#[tokio::test]
async fn a_page_code_works_on_its_day_only() {
    for (now, wall, aide) in [
        (DURING_2, 303, 303),
        ("2027-03-08T20:00:00Z", 403, 303),
        ("2027-03-07T20:00:00Z", 403, 403),
        ("2027-03-10T20:00:00Z", 403, 403),
    ] {
        let class = Class::at(now, Kind::Real);
        let codes = class.codes("1");
        for (code, expected) in [(&codes.wall, wall), (&codes.round, wall), (&codes.aide, aide)]
        {
            let call = Call::form(&class, "/join/page", &format!("code={code}")).from(NETWORK);
            assert_eq!(class.call(call).await.status, expected, "{now}");
        }
        // A code of a group opens no page.
        let call = Call::form(&class, "/join/page", &format!("code={}", codes.period));
        assert_eq!(class.call(call).await.status, 403);
    }
}

#[tokio::test]
async fn in_a_rehearsal_codes_work_until_the_period_is_ended() {
    use barm_domain::record::{Subject, What, Who};
    let class = Class::at("2027-02-01T03:00:00Z", Kind::Rehearsal);
    let codes = class.codes("4");
    let join = || sent(&class, &codes.period, &codes.groups[0].1);
    assert_eq!(class.call(join()).await.status, 303);
    class.note(Subject::Period("4".into()), Who::Teacher, What::Began);
    assert_eq!(class.call(join()).await.status, 303);
    class.note(Subject::Period("4".into()), Who::Teacher, What::Ended);
    assert_eq!(class.call(join()).await.status, 303, "a few minutes more");
    class.later(SignedDuration::from_mins(16));
    assert_eq!(class.call(join()).await.status, 403);
}

#[tokio::test]
async fn whoever_is_in_stays_in_when_the_program_starts_anew() {
    let class = Class::at(DURING_1, Kind::Real);
    let (token, codes) = (class.group("1", 1), class.codes("1"));
    let (now, id) = (class.web.now(), class.room.id);
    let form = class.web.shelf.doors.form_token("device");
    let out = class.group("1", 2);
    class.web.shelf.doors.leave(&out).expect("signed out");
    let folder = class.close();
    let shelf = Shelf::open(folder.path(), now).expect("nobody holds it");
    let seat = shelf.doors.who(Part::Group, &token, now).expect("it holds");
    assert_eq!((seat.investigation, seat.group), (Some(id), Some(1)));
    assert!(shelf.doors.who(Part::Group, &out, now).is_none(), "out is out");
    assert!(shelf.doors.who(Part::Teacher, &token, now).is_none(), "in one part only");
    let room = shelf.room(id, now).expect("it is there");
    assert_eq!(shelf.doors.codes(&room, "1", now).expect("codes"), codes);
    assert_eq!(shelf.doors.form_token("device"), form, "an open form can still be sent");
}

#[tokio::test]
async fn the_door_leads_on_to_the_page_that_was_asked_for_and_nowhere_else() {
    let class = Class::at(DURING_1, Kind::Real);
    let _ = class.teacher();
    let asked = class.call(Call::get("/i/1/run/1").header("accept", "text/html")).await;
    assert_eq!(asked.header("location"), "/teacher?next=/i/1/run/1");
    let page = class.call(Call::get("/teacher?next=/i/1/run/1")).await.body;
    assert!(page.contains("value=\"/i/1/run/1\""), "{page}");
    for (next, to) in [
        ("/i/1/run/1", "/i/1/run/1"),
        ("", "/shelf"),
        ("https://evil.example/i/", "/shelf"),
        ("//evil.example/i/1", "/shelf"),
        ("/i/..//evil.example", "/shelf"),
        ("/i/1/run/1%0d%0aset-cookie:x", "/shelf"),
        ("/i/\\evil.example", "/shelf"),
    ] {
        let body = format!("passphrase={}&next={next}", PASSPHRASE.replace(' ', "+"));
        let answer = class.call(Call::form(&class, "/teacher", &body)).await;
        assert_eq!((answer.status.as_u16(), answer.header("location")), (303, to), "{next}");
    }
}
