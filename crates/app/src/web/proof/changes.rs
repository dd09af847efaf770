//! What stands before every change, and on every answer.

use super::class::{Call, Class, DURING_1, NETWORK, PASSPHRASE, plan_text};
use crate::desk::room::Kind;
use crate::web::routes::{Role, table};
use crate::web::state::Reach;

#[tokio::test]
async fn a_change_must_come_from_a_page_of_ours() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/codes/1/open", class.room.id);
    let call = || Call::form(&class, &path, "").cookie("barm-teacher", &teacher);
    assert_eq!(class.call(call()).await.status, 303, "as a browser sends it");
    let mut stale = call();
    stale.body = "form=00000000000000000000000000000000&".into();
    let mut bare = call();
    bare.body = String::new();
    let mut other_device = call();
    other_device.cookies[0].1 = "e".repeat(64);
    let mut deviceless = call();
    deviceless.cookies.remove(0);
    for (what, call) in [
        ("another site", call().header("origin", "http://evil.example")),
        ("a sandbox", call().header("origin", "null")),
        ("no origin", call().without("origin")),
        ("a cross-site fetch", call().header("sec-fetch-site", "cross-site")),
        ("a stale token", stale),
        ("no token", bare),
        ("the token of another device", other_device),
        ("no device", deviceless),
        ("a form as text", call().header("content-type", "text/plain")),
        ("a form in parts", call().header("content-type", "multipart/form-data; boundary=x")),
        ("no kind", call().without("content-type")),
    ] {
        assert_eq!(class.call(call).await.status, 403, "{what}");
    }
    let call = Call::script(&path, "{}").cookie("barm-teacher", &teacher);
    assert_eq!(class.call(call).await.status, 303, "a script of ours");
    let call = Call::script(&path, "{}").cookie("barm-teacher", &teacher).without("x-barm");
    assert_eq!(class.call(call).await.status, 403, "a script without the header");
}

#[tokio::test]
async fn too_much_is_refused() {
    let class = Class::at(DURING_1, Kind::Real);
    let body = format!("passphrase={}", "x".repeat(70_000));
    assert_eq!(class.call(Call::form(&class, "/teacher", &body)).await.status, 413);
    // No cookie, no address, no query makes it fall over.
    let call = Call::get("/bench/version").cookie("barm-bench", &"f".repeat(60_000));
    assert_eq!(class.call(call).await.status, 403);
}

#[tokio::test]
async fn a_plan_may_be_one_megabyte_long_and_not_a_byte_longer() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/plan", class.room.id);
    let plan: String = plan_text().bytes().map(|byte| format!("%{byte:02X}")).collect();
    // A remark at the end makes the plan as long as one likes.
    let call = |bytes: usize| {
        let start = format!("from=1&do=save&text={plan}%0A%23");
        let mut call = Call::form(&class, &path, &start).cookie("barm-teacher", &teacher);
        call.body.push_str(&"x".repeat(bytes - call.body.len()));
        assert_eq!(call.body.len(), bytes);
        call
    };
    let version = || class.room.read(|scene| scene.version);
    let over = class.call(call(1024 * 1024 + 1)).await;
    assert_eq!((over.status.as_u16(), version()), (413, 1));
    assert!(over.body.contains("That is more than this address takes."), "{}", over.body);
    assert_eq!(class.call(call(1024 * 1024)).await.status, 200);
    assert_eq!(version(), 2, "it is saved");
    // Nothing else takes so much: plans, files of readings, and rosters and data packages, which may be larger.
    let large: Vec<(&str, usize)> = table()
        .iter()
        .map(|route| route.rules)
        .filter(|rules| rules.most > 64 * 1024)
        .map(|rules| (rules.path, rules.most))
        .collect();
    let named = [
        ("/start/file", 1 << 20),
        ("/package/look", 8 << 20),
        ("/package/take", 8 << 20),
        ("/i/{id}/plan", 1 << 20),
        ("/i/{id}/plan/back", 1 << 20),
        ("/i/{id}/plan/forecast", 1 << 20),
        ("/i/{id}/roster/look", 8 << 20),
        ("/i/{id}/roster/take", 8 << 20),
        ("/i/{id}/enter/file/look", 1 << 20),
        ("/i/{id}/enter/file/add", 1 << 20),
    ];
    assert_eq!(large, named);
}

#[tokio::test]
async fn every_answer_carries_the_headers() {
    let class = Class::at(DURING_1, Kind::Real);
    for path in ["/", "/join", "/teacher", "/nowhere", "/shelf", "/time", "/bench/version"] {
        let answer = class.call(Call::get(path)).await;
        let policy = answer.header("content-security-policy");
        for part in [
            "default-src 'none'",
            "script-src 'self'",
            "frame-ancestors 'none'",
            "base-uri 'none'",
            "object-src 'none'",
            "form-action 'self'",
        ] {
            assert!(policy.contains(part), "{path}: {policy}");
        }
        assert!(!policy.contains("unsafe"), "{policy}");
        assert_eq!(answer.header("x-content-type-options"), "nosniff", "{path}");
        assert_eq!(answer.header("referrer-policy"), "same-origin", "{path}");
        assert_eq!(answer.header("cache-control"), "no-store", "{path}");
        assert_eq!(answer.header("access-control-allow-origin"), "", "{path}");
        if !answer.body.is_empty() {
            let kind = answer.header("content-type");
            let right = kind.contains("charset=utf-8") || kind == "application/json";
            assert!(right, "{path}: {kind}");
        }
        for line in answer.headers.get_all("set-cookie") {
            let line = line.to_str().expect("text");
            assert!(line.contains("HttpOnly") && line.contains("SameSite=Strict"), "{line}");
        }
    }
}

#[tokio::test]
async fn another_host_is_misdirected_whatever_it_asks_for() {
    let class = Class::at(DURING_1, Kind::Real);
    for path in ["/", "/join", "/time", "/nowhere", "/shelf"] {
        for call in
            [Call::get(path).header("host", "rebound.example"), Call::get(path).without("host")]
        {
            let answer = class.call(call).await;
            assert_eq!(answer.status, 421, "{path}");
            assert!(answer.body.contains("does not answer to that name"), "{}", answer.body);
        }
    }
}

#[tokio::test]
async fn cookies_are_secure_where_connections_are_encrypted() {
    for tls in [false, true] {
        let reach = Reach { lan: true, tls, ..Reach::default() };
        let class = Class::reached(DURING_1, Kind::Real, reach);
        let answer = class.call(Call::get("/join")).await;
        let line = answer.header("set-cookie");
        assert_eq!(line.contains("; Secure"), tls, "{line}");
    }
}

#[tokio::test]
async fn pages_for_the_teacher_answer_on_this_computer_only() {
    let secret = |reach: Reach| async move {
        let class = Class::reached(DURING_1, Kind::Real, reach);
        let teacher = class.teacher();
        let mut open = 0;
        for route in table() {
            let rules = route.rules;
            let teachers = rules.who.iter().all(|role| *role == Role::Teacher);
            if !(teachers || rules.path.starts_with("/teacher")) {
                continue;
            }
            let path = rules.path.replace("{id}", "1").replace("{period}", "1");
            let mut call = Call::get(&path).cookie("barm-teacher", &teacher);
            call.method = route.method.clone();
            let answer = class.open(call.from(NETWORK)).await;
            open += usize::from(answer.status() != 403);
            // Whose address is not known comes from the network.
            let mut call = Call::get(&path).cookie("barm-teacher", &teacher);
            (call.method, call.from) = (route.method, None);
            open += usize::from(class.open(call).await.status() != 403);
        }
        open
    };
    assert_eq!(secret(Reach { lan: true, ..Reach::default() }).await, 0);
    assert_eq!(secret(Reach::default()).await, 0);
    for risked in [
        Reach { lan: true, tls: true, ..Reach::default() },
        Reach { lan: true, teacher_from_network: true, ..Reach::default() },
    ] {
        let class = Class::reached(DURING_1, Kind::Real, risked);
        let teacher = class.teacher();
        let call = Call::get("/shelf").cookie("barm-teacher", &teacher).from(NETWORK);
        assert_eq!(class.call(call).await.status, 200, "allowed on purpose");
    }
}

#[tokio::test]
async fn without_lan_nothing_answers_from_the_network() {
    let class = Class::reached(DURING_1, Kind::Real, Reach::default());
    for route in table() {
        let mut call = Call::get(route.rules.path).from(NETWORK);
        call.method = route.method;
        assert_eq!(class.open(call).await.status(), 403, "{}", route.rules.path);
    }
}

#[tokio::test]
async fn reading_changes_nothing_and_wrong_methods_are_refused() {
    for route in table() {
        assert!(["GET", "POST"].contains(&route.method.as_str()), "{}", route.rules.path);
    }
    let class = Class::at(DURING_1, Kind::Real);
    for method in ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"] {
        let mut call = Call::get("/join");
        call.method = method.parse().expect("a method");
        assert_eq!(class.call(call).await.status, 405, "{method}");
    }
}

#[tokio::test]
async fn the_log_tells_what_was_refused_and_no_secret() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.group("1", 1);
    let code = class.codes("1").period;
    for path in ["/shelf", "/i/1/version"] {
        let _ = class.call(Call::get(path).cookie("barm-bench", &token)).await;
    }
    let call = Call::form(&class, "/join", &format!("period={code}&group=WRONG"));
    let _ = class.call(call).await;
    let log = std::fs::read_to_string(class.folder.path().join("barm.log")).expect("a log");
    assert!(log.contains("403 GET /i/{id}/version"), "{log}");
    assert!(log.contains("403 POST /join"), "{log}");
    assert!(log.starts_with("2027-03-09T15:30:00"), "{log}");
    for secret in [&token, &code, "WRONG"] {
        assert!(!log.contains(secret), "{log}");
    }
}

#[tokio::test]
async fn the_log_counts_wrong_passphrases_at_the_next_right_one() {
    let class = Class::at(DURING_1, Kind::Real);
    let _ = class.teacher();
    let sent = |passphrase: &str| {
        let body = format!("passphrase={}", passphrase.replace(' ', "+"));
        class.call(Call::form(&class, "/teacher", &body))
    };
    for _ in 0..3 {
        assert_eq!(sent("four words of YOURS").await.status, 401);
    }
    assert_eq!(sent(PASSPHRASE).await.status, 303);
    assert_eq!(sent(PASSPHRASE).await.status, 303);
    let log = std::fs::read_to_string(class.folder.path().join("barm.log")).expect("a log");
    let told: Vec<&str> = log.lines().filter(|line| line.contains("signed in")).collect();
    let [first, second] = told[..] else { panic!("{log}") };
    assert_eq!(first, "2027-03-09T15:30:00.000Z teacher signed in; 3 wrong tries before");
    assert!(second.ends_with("signed in; 0 wrong tries before"), "counted once: {second}");
    for secret in [PASSPHRASE, "YOURS"] {
        assert!(!log.contains(secret), "{log}");
    }
}

#[tokio::test]
async fn what_cannot_be_read_is_said_in_our_words() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let path = format!("/i/{}/codes/1/renew", class.room.id);
    for call in [
        Call::get("/i/abc/version").cookie("barm-teacher", &teacher),
        Call::form(&class, &path, "nothing=here").cookie("barm-teacher", &teacher),
        Call::form(&class, &path, "what=crown").cookie("barm-teacher", &teacher),
        Call::script(&path, "{").cookie("barm-teacher", &teacher),
        Call::form(&class, "/teacher", "passphrase=%zz%"),
    ] {
        let path = call.path.clone();
        let answer = class.call(call).await;
        assert!(answer.status.is_client_error(), "{path}: {}", answer.status);
        assert_eq!(answer.header("content-type"), "text/html; charset=utf-8", "{path}");
        for inside in ["i64", "deserialize", "missing field", "parse", "invalid type"] {
            assert!(!answer.body.contains(inside), "{path}: {}", answer.body);
        }
    }
    let gone = class.call(Call::get("/i/999/version").cookie("barm-teacher", &teacher)).await;
    assert_eq!(gone.status, 404);
}

#[tokio::test]
async fn a_group_cannot_write_about_others_whatever_the_handler_lets_through() {
    use barm_domain::record::{Entry, Key, Lent, Subject, What, Who};
    let class = Class::at(DURING_1, Kind::Real);
    let bag = |period: &str, group: u32| {
        let code = class.room.read(|scene| {
            let bags = &scene.plan.bags;
            let own = bags.iter().find(|bag| bag.period == period && bag.group == group);
            own.expect("a bag").code.parse().expect("a code")
        });
        Subject::Bag(code)
    };
    let zero = || What::Zero { height_mm: 20.0 };
    let group = |group| Subject::Group { period: "1".into(), group };
    let own = [(bag("1", 1), zero()), (group(1), What::Here { students: 3 })];
    let others = [
        (bag("1", 2), zero()),
        (bag("2", 1), zero()),
        (bag("1", 0), zero()),
        (bag("1", 1), What::SetAside { rule: "leak".into() }),
        (bag("1", 1), What::TakenBack),
        (group(2), What::Here { students: 3 }),
        (group(1), What::StandIn(Lent::ClassData)),
        (group(1), What::TakenBack),
        (Subject::Period("1".into()), What::Ended),
        (Subject::Investigation, What::PlanSaved { version: 9 }),
    ];
    let mut key = 900;
    let mut enter = |(subject, what)| {
        key += 1;
        let now = class.web.now();
        let who = Who::Group { period: "1".into(), group: 1 };
        let key = Key::new(9, key);
        let entry = Entry { key, subject, what, measured: now, arrived: now, who };
        class.room.enter_and_wait(&[entry]).is_ok()
    };
    for entry in own {
        assert!(enter(entry.clone()), "{entry:?}");
    }
    for entry in others {
        assert!(!enter(entry.clone()), "{entry:?}");
    }
}
