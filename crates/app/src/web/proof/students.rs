//! A school's roster: of it only what is needed is kept, no page but the teacher's shows a name, grades go out as a
//! gradebook wants them, and all of it can be deleted.

use super::class::{Answer, Call, Class, DURING_1};
use super::forgetting::{MARK, teachers, with_mark};
use super::gradebook::{graded, unzipped};
use super::marked::bag;
use crate::desk::doors::JoinKey;
use crate::desk::room::Kind;
use crate::desk::room::kept_words::delete_due;
use crate::desk::room::roster::pack;
use barm_domain::record::{Subject, What, Who};
use jiff::SignedDuration;
use std::collections::BTreeMap;
use std::path::PathBuf;

const MANIFEST: &str = "propertyName,value\nmanifest.version,1.0\noneroster.version,1.1\n\
     file.classes,bulk\nfile.enrollments,bulk\nfile.users,bulk\n";

/// Two classes: ten students in period 1, two in another class of the school.
pub(super) fn tables(family: &str) -> BTreeMap<&'static str, Vec<u8>> {
    let mut users =
        "sourcedId,status,givenName,familyName,email,password,birthDate\n".to_owned();
    let mut enrollments =
        "sourcedId,status,classSourcedId,userSourcedId,role,endDate\n".to_owned();
    for number in 1..=12 {
        let class = if number > 10 { "other-class" } else { "class-one" };
        let family = if number > 10 { "Elsewhere" } else { family };
        users.push_str(&format!(
            "pupil-{number:02},,Given{number:02},{family},{number}@example.invalid,hunter2SECRET,2013-SECRET\n"
        ));
        enrollments.push_str(&format!("e{number},,{class},pupil-{number:02},student,\n"));
    }
    let classes = "sourcedId,status,title,classCode,schoolSourcedId,termSourcedIds\n\
                   class-one,,\"Science 8, period 1\",,school-7,term-3\n\
                   other-class,,Homeroom,,school-7,term-3\n";
    BTreeMap::from([
        ("manifest.csv", MANIFEST.into()),
        ("classes.csv", classes.into()),
        ("enrollments.csv", enrollments.into_bytes()),
        ("users.csv", users.into_bytes()),
    ])
}

pub(super) fn zip(tables: &BTreeMap<&'static str, Vec<u8>>) -> Vec<u8> {
    let files: Vec<(&str, &[u8])> =
        tables.iter().map(|(name, bytes)| (*name, bytes.as_slice())).collect();
    pack(&files)
}

pub(super) async fn sends(class: &Class, teacher: &str, what: &str, zip: &[u8]) -> Answer {
    let path = format!("/i/{}/roster/{what}", class.room.id);
    let mut call = Call::script(&path, "").header("content-type", "application/octet-stream");
    call.bytes = zip.to_vec();
    class.call(call.cookie("barm-teacher", teacher)).await
}

/// Where [`Class::of`]'s period 1 gets “Science 8, period 1”: sections stand by title, so “Homeroom” comes first.
pub(super) const CHOSEN: &str = "take?on=2027-03-09&of=1.-.-.-";

pub(super) async fn page(class: &Class, teacher: &str, path: &str) -> Answer {
    let path = format!("/i/{}{path}", class.room.id);
    class.call(Call::get(&path).cookie("barm-teacher", teacher)).await
}

/// The form of period 1 as the page has it, with some fields changed.
async fn form(class: &Class, teacher: &str, changed: &[(&str, &str)]) -> String {
    let body = page(class, teacher, "/roster").await.body;
    let stamp = body.split("name=\"stamp\" value=\"").nth(1).expect("a form");
    let stamp = stamp.split('"').next().expect("a value");
    let mut fields: BTreeMap<String, String> = BTreeMap::new();
    fields.insert("period".into(), "1".into());
    fields.insert("stamp".into(), stamp.into());
    for (at, rest) in body.split("name=\"group-").skip(1).enumerate() {
        let row = rest.split("</select>").next().expect("a field");
        let picked = row.split("<option value=\"").find(|option| option.contains(" selected"));
        let group = picked.and_then(|option| option.split('"').next()).unwrap_or_default();
        fields.insert(format!("group-{at}"), group.into());
        fields.insert(format!("own-{at}"), String::new());
        fields.insert(format!("words-{at}"), String::new());
    }
    for (name, value) in changed {
        fields.insert((*name).into(), (*value).into());
    }
    let pairs: Vec<String> =
        fields.iter().map(|(name, value)| format!("{name}={value}")).collect();
    pairs.join("&")
}

pub(super) async fn saves(class: &Class, teacher: &str, changed: &[(&str, &str)]) -> Answer {
    let body = form(class, teacher, changed).await;
    teachers(class, teacher, &format!("/i/{}/roster", class.room.id), &body).await
}

/// A class whose period 1 has a roster with a family name.
pub(super) async fn taken(family: &str) -> (Class, String) {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let told = sends(&class, &teacher, CHOSEN, &zip(&tables(family))).await;
    assert_eq!(told.status, 200, "{}", told.body);
    (class, teacher)
}

#[tokio::test]
async fn a_roster_is_looked_at_first_and_only_the_chosen_classes_are_kept() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let folder = class.folder.path().to_owned();
    let file = zip(&tables(MARK));
    let told = sends(&class, &teacher, "look", &file).await;
    assert_eq!(told.status, 200, "{}", told.body);
    assert!(
        told.body.contains("2 classes") && told.body.contains("12 students"),
        "{}",
        told.body
    );
    // The class that ends with the name of the period is offered for it.
    assert!(
        told.body.contains("<option value=\"1\" selected>Science 8, period 1"),
        "{}",
        told.body
    );
    assert!(!told.body.contains(MARK), "no name before it is needed");
    assert_eq!(with_mark(&folder, MARK), Vec::<PathBuf>::new(), "looking keeps nothing");
    let told = sends(&class, &teacher, CHOSEN, &file).await;
    assert!(told.status == 200 && told.body.contains("data-taken"), "{}", told.body);
    assert!(!with_mark(&folder, MARK).is_empty());
    for never in ["Elsewhere", "SECRET", "example.invalid", "other-class", "pupil-11"] {
        assert_eq!(with_mark(&folder, never), Vec::<PathBuf>::new(), "{never}");
    }
    let seen = page(&class, &teacher, "/roster").await.body;
    assert!(
        seen.contains(&format!("Given10 {MARK}")) && seen.contains("first proposal"),
        "{seen}"
    );
    // No file before groups are saved, and none of a period without a roster.
    for path in ["/grades/1/grades.csv", "/grades/2/grades.csv", "/grades/9/grades.csv"] {
        assert_eq!(page(&class, &teacher, path).await.status, 404, "{path}");
    }
}

#[tokio::test]
async fn what_is_no_roster_is_refused_with_a_reason_and_changes_nothing() {
    let (class, teacher) = taken("Invented").await;
    let kept = || class.web.shelf.words_of(class.room.id);
    let before = kept();
    let with = |name: &'static str, bytes: Vec<u8>| {
        let mut tables = tables(MARK);
        tables.insert(name, bytes);
        zip(&tables)
    };
    let without = |name: &str| {
        let mut tables = tables(MARK);
        tables.remove(name);
        zip(&tables)
    };
    let wide: Vec<u8> =
        "sourcedId,givenName,familyName\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    let mut cut = zip(&tables(MARK));
    cut.truncate(cut.len() / 2);
    let cases: [(&str, Vec<u8>, &str); 9] = [
        ("nothing", Vec::new(), "zip"),
        ("no zip", b"not a zip".to_vec(), "zip"),
        ("half a zip", cut, "zip"),
        ("a bomb", with("users.csv", vec![0; 3 << 20]), "users.csv"),
        ("a way out", with("../users.csv", b"x".to_vec()), ".."),
        ("UTF-16", with("users.csv", wide), "UTF-8"),
        (
            "Latin-1",
            with("users.csv", b"sourcedId,givenName,familyName\n1,Jos\xe9,X\n".to_vec()),
            "UTF-8",
        ),
        ("no column", with("users.csv", b"sourcedId,familyName\n1,X\n".to_vec()), "givenName"),
        ("no manifest", without("manifest.csv"), "manifest.csv"),
    ];
    for (name, bytes, says) in cases {
        for what in ["look", CHOSEN] {
            let told = sends(&class, &teacher, what, &bytes).await;
            assert_eq!(told.status, 422, "{name}, {what}: {}", told.body);
            assert!(told.body.contains(says), "{name}: {}", told.body);
            assert!(told.body.contains("Nothing was kept or changed"), "{name}: {}", told.body);
        }
    }
    // A sound one with a choice that is none.
    let sound = zip(&tables(MARK));
    for (of, status) in [
        ("-.-.-.-", 422),
        ("0.0.-.-", 422),
        ("2.-.-.-", 422),
        ("1.-.-", 422),
        ("1.-.-.-.-", 422),
        ("x.-.-.-", 400),
        ("", 400),
    ] {
        let told =
            sends(&class, &teacher, &format!("take?on=2027-03-09&of={of}"), &sound).await;
        assert_eq!(told.status, status, "{of}: {}", told.body);
    }
    assert_eq!(sends(&class, &teacher, "take?on=soon&of=1.-.-.-", &sound).await.status, 400);
    let large = vec![b'x'; (8 << 20) + 1];
    assert_eq!(sends(&class, &teacher, "look", &large).await.status, 413);
    assert_eq!(kept(), before);
    assert_eq!(with_mark(class.folder.path(), MARK), Vec::<PathBuf>::new());
}

#[tokio::test]
async fn groups_are_saved_whole_or_not_at_all() {
    let (class, teacher) = taken("Invented").await;
    let kept = || class.web.shelf.words_of(class.room.id).len();
    let before = kept();
    for (changed, says) in [
        (("group-0", "9"), "no group 9"),
        (("group-0", "two"), "no group 0"),
        (("own-3", "33"), "0 to 32"),
        (("own-3", "NaN"), "is no mark"),
        (("words-3", "only+words"), "are not kept"),
    ] {
        let told = saves(&class, &teacher, &[changed]).await;
        assert_eq!(told.status, 422, "{changed:?}");
        assert!(
            told.body.contains(says) && told.body.contains("Nothing is saved yet"),
            "{}",
            told.body
        );
        assert_eq!(kept(), before, "{changed:?}");
    }
    // What was typed stands there again.
    let told = saves(&class, &teacher, &[("own-3", "33"), ("words-3", "Kept+here")]).await;
    assert!(told.body.contains("value=\"33\"") && told.body.contains("value=\"Kept here\""));
    let told = saves(&class, &teacher, &[("absent-4", "1"), ("group-5", "")]).await;
    assert!(told.status == 200 && told.body.contains("Period 1 is saved"), "{}", told.body);
    assert_eq!(kept(), before + 1);
    // Saved again without a change, nothing is added.
    let same = saves(&class, &teacher, &[("absent-4", "1")]).await;
    assert_eq!((same.status.as_u16(), kept()), (200, before + 1));
    // A page that was open when a newer roster came saves nothing.
    let stale = form(&class, &teacher, &[("group-0", "8")]).await;
    let mut newer = tables("Invented");
    let users = String::from_utf8(newer["users.csv"].clone()).expect("text");
    newer.insert("users.csv", users.replace("Given01", "Anew").into_bytes());
    assert_eq!(sends(&class, &teacher, CHOSEN, &zip(&newer)).await.status, 200);
    let path = format!("/i/{}/roster", class.room.id);
    let told = teachers(&class, &teacher, &path, &stale).await;
    assert!(told.status == 409 && told.body.contains("Nothing was saved"), "{}", told.body);
    // The newer list took the place of the older one, and everybody kept the group.
    assert_eq!(with_mark(class.folder.path(), "Given01"), Vec::<PathBuf>::new());
    assert!(told.body.contains("Anew Invented") && !told.body.contains("first proposal"));
    let groups = form(&class, &teacher, &[]).await;
    assert!(groups.contains("group-5=&") && groups.contains("group-9=8"), "{groups}");
}

#[tokio::test]
async fn no_page_of_the_class_and_nothing_that_is_given_away_holds_a_name_or_an_id() {
    let (class, teacher) = graded(MARK).await;
    let teachers_page = page(&class, &teacher, "/marks/1/1").await.body;
    assert!(teachers_page.contains(&format!("Given02 {MARK} (absent)")), "{teachers_page}");
    // Marks that are handed out are the group's, and say nothing of who is in it.
    let handed =
        teachers(&class, &teacher, &format!("/i/{}/marks", class.room.id), "period=1").await;
    assert!(handed.body.contains("2 groups of period 1"), "{}", handed.body);
    let bag = bag(&class, "1", 1);
    let who = || Who::Group { period: "1".into(), group: 1 };
    class.note(Subject::Bag(bag), who(), What::Zero { height_mm: 20.0 });
    class.note(Subject::Bag(bag), who(), What::Reading { planned: Some(4), height_mm: 31.0 });
    let codes = class.codes("1");
    let (wall, round) =
        (class.joined(JoinKey::Page(&codes.wall)), class.joined(JoinKey::Page(&codes.round)));
    let aide = class.joined(JoinKey::Page(&codes.aide));
    let mut told = Vec::new();
    for group in 1..=8 {
        let token = class.group("1", group);
        for path in ["/bench", "/bench/state", "/claim", "/plan-together"] {
            told.push(class.call(Call::get(path).cookie("barm-bench", &token)).await);
        }
    }
    for (path, cookie, token) in [
        ("/wall", "barm-wall", &wall),
        ("/round", "barm-round", &round),
        ("/aide", "barm-aide", &aide),
    ] {
        told.push(class.call(Call::get(path).cookie(cookie, token)).await);
    }
    for path in ["/results", "/data.csv", "/proposals.csv", "/plan.toml", "/claims", "/names"] {
        told.push(page(&class, &teacher, path).await);
    }
    told.push(class.call(Call::get("/kept").cookie("barm-teacher", &teacher)).await);
    assert!(told.iter().all(|answer| answer.status == 200));
    let package = page(&class, &teacher, "/data.zip").await;
    let mut texts: Vec<String> = unzipped(&package.bytes).into_values().collect();
    texts.extend(told.iter().map(|answer| format!("{:?} {}", answer.headers, answer.body)));
    for text in texts {
        for word in [MARK, "Given0", "pupil-", "class-one", "Led the talk"] {
            assert!(!text.contains(word), "{word}: {text}");
        }
    }
}

#[tokio::test]
async fn the_lists_go_with_one_action_and_marks_stay() {
    let (class, teacher) = graded(MARK).await;
    let _ = teachers(&class, &teacher, "/backups", "do=make").await;
    let path = format!("/i/{}/roster", class.room.id);
    let before = with_mark(class.folder.path(), MARK);
    assert!(before.len() >= 2, "the record and its backup: {before:?}");
    let unsure = teachers(&class, &teacher, &path, "do=away").await;
    assert_eq!((unsure.status.as_u16(), with_mark(class.folder.path(), MARK)), (303, before));
    assert_eq!(teachers(&class, &teacher, &path, "do=away&sure=yes").await.status, 303);
    for gone in [MARK, "pupil-0", "Led the talk", "class-one"] {
        assert_eq!(with_mark(class.folder.path(), gone), Vec::<PathBuf>::new(), "{gone}");
    }
    let list = page(&class, &teacher, "/marks").await.body;
    assert!(list.contains("24 of 32") && list.contains("No roster with groups yet"), "{list}");
    let folder = class.close();
    assert_eq!(with_mark(folder.path(), MARK), Vec::<PathBuf>::new());
}

#[tokio::test]
async fn what_is_kept_about_students_is_said_and_goes_with_all_words_and_by_itself() {
    let (class, teacher) = graded(MARK).await;
    let id = class.room.id;
    let kept = || class.call(Call::get("/kept").cookie("barm-teacher", &teacher));
    let told = kept().await.body;
    assert!(told.contains("Students of a roster") && told.contains("whether absent"), "{told}");
    let names = page(&class, &teacher, "/names").await.body;
    assert!(names.contains("1 list of a class with names"), "{names}");
    assert!(names.contains("1 list of who is in which group"), "{names}");
    let found = teachers(&class, &teacher, "/kept", &format!("name={MARK}")).await.body;
    assert!(found.contains("record.sqlite"), "{found}");
    let _ = teachers(&class, &teacher, "/backups", "do=make").await;
    assert_eq!(teachers(&class, &teacher, "/kept", "sure=yes").await.status, 303);
    let told = kept().await.body;
    assert!(told.contains("None of it stands anywhere"), "{told}");
    for gone in [MARK, "pupil-0", "Given0", "Led the talk"] {
        assert_eq!(with_mark(class.folder.path(), gone), Vec::<PathBuf>::new(), "{gone}");
    }
    // A month after the last school day it goes without anybody's hand.
    assert_eq!(sends(&class, &teacher, CHOSEN, &zip(&tables(MARK))).await.status, 200);
    assert_eq!(saves(&class, &teacher, &[]).await.status, 200);
    assert!(!with_mark(class.folder.path(), MARK).is_empty());
    class.later(SignedDuration::from_hours(24 * 31));
    let done = delete_due(&class.web.shelf, class.web.now()).expect("done");
    assert_eq!(done.len(), 1);
    let (of, deleted) = &done[0];
    assert!(*of == id && deleted.by_itself && deleted.left == 0, "{deleted:?}");
    let looked = deleted.looked.as_ref().expect("looked");
    assert!(looked.found.is_empty() && looked.unread.is_empty(), "{looked:?}");
    for gone in [MARK, "pupil-0", "Given0"] {
        assert_eq!(with_mark(class.folder.path(), gone), Vec::<PathBuf>::new(), "{gone}");
    }
}
