//! A colleague's data package: looked at first, then kept as an investigation that the library knows; what is refused
//! changes nothing.

use super::class::{Answer, Call, Class, DURING_1, plan_text};
use super::gradebook::unzipped;
use crate::desk::rehearse::done_before;
use crate::desk::room::Kind;
use crate::desk::room::roster::pack;
use jiff::SignedDuration;
use std::collections::BTreeMap;

/// The package of the invented day, measured or made up.
async fn package(made_up: bool) -> BTreeMap<String, String> {
    let text = if made_up {
        plan_text()
    } else {
        plan_text().replacen("invented = true", "invented = false", 1)
    };
    let class = Class::of(&text, DURING_1, Kind::Real);
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    let path = format!("/i/{}/data.zip?license=ODC-By-1.0&grade=yes", class.room.id);
    let given = class.call(Call::get(&path).cookie("barm-teacher", &class.teacher())).await;
    assert_eq!(given.status, 200);
    unzipped(&given.bytes)
}

fn zip(files: &BTreeMap<String, String>) -> Vec<u8> {
    let files: Vec<(&str, &[u8])> =
        files.iter().map(|(name, text)| (name.as_str(), text.as_bytes())).collect();
    pack(&files)
}

async fn sends(class: &Class, teacher: &str, what: &str, zip: &[u8]) -> Answer {
    let mut call = Call::script(&format!("/package/{what}"), "")
        .header("content-type", "application/octet-stream");
    call.bytes = zip.to_vec();
    class.call(call.cookie("barm-teacher", teacher)).await
}

async fn page(class: &Class, teacher: &str, path: &str) -> Answer {
    class.call(Call::get(path).cookie("barm-teacher", teacher)).await
}

/// A class that begins two days after the invented one, with a record of its own.
fn school() -> (Class, String) {
    let class = Class::at("2027-03-11T15:30:00Z", Kind::Real);
    let teacher = class.teacher();
    (class, teacher)
}

const KEEP: &str = "take?file=theirs.zip&title=From%20a%20neighbor&day=2027-03-09";

#[tokio::test]
async fn a_package_becomes_an_investigation_that_gives_away_the_same_again() {
    let files = package(false).await;
    let (class, teacher) = school();
    let told = sends(&class, &teacher, "look?file=C%3A%5Ctheirs.zip", &zip(&files)).await;
    assert_eq!(told.status, 200, "{}", told.body);
    for says in [
        "value=\"Shared data: theirs\"",
        "Open Data Commons Attribution License 1.0",
        "A class of grade 8",
        "4 periods",
        "value=\"2027-03-10\"",
        "1 bag was set aside",
    ] {
        assert!(told.body.contains(says), "{says}: {}", told.body);
    }
    let bags = files["bags.csv"].lines().count() - 1;
    let heights = files["readings.csv"].lines().count() - 1;
    let both = format!("{bags} bags with {heights} heights");
    assert!(told.body.contains(&both), "{both}: {}", told.body);
    assert_eq!(
        class.web.shelf.investigations().expect("a list").len(),
        1,
        "looking keeps nothing"
    );
    let kept = sends(&class, &teacher, KEEP, &zip(&files)).await;
    assert_eq!(kept.status, 200, "{}", kept.body);
    let id = class.web.shelf.investigations().expect("a list").last().expect("it").id;
    assert!(kept.body.contains(&format!("data-taken=\"/i/{id}/results\"")), "{}", kept.body);
    // Nothing of it is refused, and every bag and height is as it came.
    let room = class.web.shelf.room(id, class.web.now()).expect("a room");
    room.read(|scene| assert!(scene.standing().refused.is_empty()));
    let path = format!("/i/{id}/data.zip?license=ODC-By-1.0&grade=yes");
    let again = unzipped(&page(&class, &teacher, &path).await.bytes);
    for name in
        ["treatments.csv", "ingredients.csv", "bags.csv", "readings.csv", "set-aside.csv"]
    {
        assert_eq!(again[name], files[name], "{name}");
    }
    // Shelf, search, years and its own pages know it.
    let shelf = page(&class, &teacher, "/shelf").await.body;
    assert!(shelf.contains("From a neighbor") && shelf.contains("all periods done"), "{shelf}");
    let found = page(&class, &teacher, "/shelf?find=neighbor").await.body;
    assert!(
        found.contains("From a neighbor") && !found.contains("breakfast-cupboard"),
        "{found}"
    );
    let found = page(&class, &teacher, "/shelf?find=ODC-By").await.body;
    assert!(found.contains("License: ODC-By-1.0"), "{found}");
    let years = page(&class, &teacher, "/years").await.body;
    assert!(years.contains("2027-03-09, From a neighbor"), "{years}");
    for part in ["plan", "results", "bags", "run/1", "prepare"] {
        let got = page(&class, &teacher, &format!("/i/{id}/{part}")).await;
        assert_eq!(got.status, 200, "{part}: {}", got.body);
    }
}

#[tokio::test]
async fn what_nobody_measured_stays_marked() {
    let (class, teacher) = school();
    let files = package(true).await;
    let told = sends(&class, &teacher, "look?file=theirs.zip", &zip(&files)).await;
    assert!(told.body.contains("no class made these bags"), "{}", told.body);
    assert_eq!(sends(&class, &teacher, KEEP, &zip(&files)).await.status, 200);
    let all = class.web.shelf.investigations().expect("a list");
    assert_eq!(all.last().expect("it").kind, Kind::Invented);
    // The invented school of the program is another one.
    let made =
        class.call(Call::form(&class, "/start/invented", "").cookie("barm-teacher", &teacher));
    assert_eq!(made.await.status, 303);
    assert_eq!(class.web.shelf.investigations().expect("a list").len(), 3);
}

#[tokio::test]
async fn a_package_that_is_refused_changes_nothing_and_says_why() {
    let files = package(false).await;
    let (class, teacher) = school();
    let with = |name: &str, bytes: &[u8]| {
        let mut all: Vec<(&str, &[u8])> =
            files.iter().map(|(name, text)| (name.as_str(), text.as_bytes())).collect();
        all.retain(|(own, _)| *own != name);
        all.push((name, bytes));
        pack(&all)
    };
    let without = |name: &str| {
        let mut files = files.clone();
        files.remove(name);
        zip(&files)
    };
    let told = &files["datapackage.json"];
    let newer = told.replacen("\"format\": 1", "\"format\": 2", 1);
    let outside = told.replacen("\"bags.csv\"", "\"../../plan.toml\"", 1);
    assert!(newer != *told && outside != *told, "{told}");
    let mut cut = zip(&files);
    cut.truncate(cut.len() / 2);
    let wide: Vec<u8> = files["bags.csv"].encode_utf16().flat_map(u16::to_le_bytes).collect();
    let latin = files["bags.csv"].replacen("bag,", "b\u{e9}g,", 1);
    let latin: Vec<u8> = latin.chars().map(|letter| letter as u32 as u8).collect();
    let row = files["readings.csv"].lines().nth(1).expect("a row");
    let (before, _) = row.rsplit_once(',').expect("cells");
    let high = files["readings.csv"].replacen(row, &format!("{before},400000"), 1);
    let cases: [(&str, Vec<u8>, &str); 14] = [
        ("nothing", Vec::new(), "zip"),
        ("no zip", b"not a zip".to_vec(), "zip"),
        ("half a zip", cut, "zip"),
        ("a newer layout", with("datapackage.json", newer.as_bytes()), "newer program"),
        ("a bomb", with("bags.csv", &vec![0; 3 << 20]), "bags.csv"),
        ("a way out", with("../plan.toml", b"x"), ".."),
        ("a place on the computer", with("/etc/plan.toml", b"x"), "leads out"),
        ("a named way out", with("datapackage.json", outside.as_bytes()), "plan.toml"),
        ("UTF-16", with("bags.csv", &wide), "UTF-8"),
        ("Latin-1", with("bags.csv", &latin), "UTF-8"),
        ("no JSON", with("datapackage.json", b"{"), "JSON"),
        ("no descriptor", without("datapackage.json"), "datapackage.json"),
        ("no table", without("bags.csv"), "bags.csv"),
        ("no height of any card", with("readings.csv", high.as_bytes()), "400000"),
    ];
    for (name, bytes, says) in cases {
        for what in ["look?file=theirs.zip", KEEP] {
            let told = sends(&class, &teacher, what, &bytes).await;
            assert_eq!(told.status, 422, "{name}, {what}: {}", told.body);
            assert!(told.body.contains(says), "{name}: {}", told.body);
            assert!(told.body.contains("Nothing was kept or changed"), "{name}: {}", told.body);
        }
    }
    // A sound one under a day that is not over, or no day, or no name.
    let sound = zip(&files);
    for (what, says) in [
        ("take?title=Theirs&day=2027-03-11", "day that is over"),
        ("take?title=Theirs&day=soon", "day that is over"),
        ("take?title=%20&day=2027-03-09", "name"),
    ] {
        let told = sends(&class, &teacher, what, &sound).await;
        assert_eq!(told.status, 422, "{what}: {}", told.body);
        assert!(told.body.contains(says), "{what}: {}", told.body);
    }
    let large = vec![b'x'; (8 << 20) + 1];
    assert_eq!(sends(&class, &teacher, KEEP, &large).await.status, 413);
    // Without a session, and from a page of somebody else's.
    assert_eq!(sends(&class, "nobody", KEEP, &sound).await.status, 403);
    let mut foreign = Call::script(&format!("/package/{KEEP}"), "").without("x-barm");
    foreign.bytes = sound;
    assert_eq!(class.call(foreign.cookie("barm-teacher", &teacher)).await.status, 403);
    assert_eq!(class.web.shelf.investigations().expect("a list").len(), 1);
}

#[tokio::test]
async fn nothing_is_taken_where_a_rehearsal_lies() {
    let class = Class::at(DURING_1, Kind::Rehearsal);
    let teacher = class.teacher();
    let files = package(false).await;
    assert_eq!(page(&class, &teacher, "/package").await.status, 400);
    let kept = "take?title=Theirs&day=2027-03-01";
    assert_eq!(sends(&class, &teacher, kept, &zip(&files)).await.status, 400);
    assert_eq!(class.web.shelf.investigations().expect("a list").len(), 1);
}
