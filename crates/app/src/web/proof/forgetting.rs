//! A name planted in every field into which people type is gone from every byte after one action.

use super::class::{Answer, Call, Class, DURING_1};
use crate::desk::doors::Part;
use crate::desk::room::Kind;
use crate::desk::room::backups::export;
use crate::desk::room::kept_words::{delete_due, words_view};
use crate::web::cookies;
use jiff::SignedDuration;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};

/// Stands in every planted text and nowhere else.
pub(super) const MARK: &str = "Zwitschermaschine";

/// Every file below a folder that holds a mark.
pub(super) fn with_mark(folder: &Path, mark: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("a file").path();
        if path.is_dir() {
            found.extend(with_mark(&path, mark));
        } else {
            let bytes = fs::read(&path).expect("its bytes");
            if bytes.windows(mark.len()).any(|window| window == mark.as_bytes()) {
                found.push(path);
            }
        }
    }
    found
}

pub(super) async fn teachers(class: &Class, teacher: &str, path: &str, body: &str) -> Answer {
    class.call(Call::form(class, path, body).cookie("barm-teacher", teacher)).await
}

/// Types the mark wherever somebody can type.
async fn plant(class: &Class, teacher: &str) {
    let id = class.room.id;
    let group = class.group("1", 3);
    let cookie = cookies::name(Part::Group);
    let bag = class.room.read(|scene| {
        let own = scene.plan.bags.iter().find(|bag| bag.period == "1" && bag.group == 3);
        own.expect("a bag").code.clone()
    });
    // A group: its guess with a reason, and every text of its planning page.
    let now = class.web.now().as_millisecond();
    let entries = json!({ "entries": [{
        "key": "01900000-0000-7000-8000-00000000000a", "what": "guess", "at": now, "offset": 0,
        "expects": [[bag, 12.0]], "because": format!("{MARK} says so"), "words": "ab".repeat(16),
    }] });
    let call = Call::script("/bench/entries", &entries.to_string()).cookie(cookie, &group);
    assert_eq!(class.call(call).await.status, 200);
    let fields = ["asks", "changes", "level", "keeps", "beside", "bags", "expects", "because"];
    let typed: Vec<String> =
        fields.iter().map(|field| format!("{field}={MARK}+{field}")).collect();
    let body = format!("{}&do=hand-in&seen=yes", typed.join("&"));
    let call = Call::form(class, "/plan-together", &body).cookie(cookie, &group);
    assert_eq!(class.call(call).await.status, 200);
    // A proposal that is approved: what the bags are made of goes into the plan, and no word of it.
    let proposed = format!(
        "period=1&group=5&asks={MARK}&changes=water+temperature&level=20+C&level=30+C&\
         keeps=maple+syrup+%2B+0.6+g&beside=20+C&bags=2&expects={MARK}&because={MARK}&\
         do=hand-in&seen=yes"
    );
    let sheet = format!("/i/{id}/approve/sheet");
    assert_eq!(teachers(class, teacher, &sheet, &proposed).await.status, 303);
    let versions = class.room.read(|scene| scene.version);
    let queue = format!("/i/{id}/approve");
    let done = teachers(class, teacher, &queue, "do=approve&period=1&group=5").await;
    assert_eq!(class.room.read(|scene| scene.version), versions + 1, "approved: {}", done.body);
    // Somebody at the door.
    for body in [format!("period={MARK}&group={MARK}"), format!("period={MARK}")] {
        let _ = class.call(Call::form(class, "/join", &body)).await;
    }
    let _ = class.call(Call::form(class, "/join/page", &format!("code={MARK}"))).await;
    let _ = class.call(Call::form(class, "/teacher", &format!("passphrase={MARK}"))).await;
    // The teacher: an answer to the group, and every text of run page, bag page and paper page.
    let body = format!("period=1&group=4&{body}");
    let sheet = format!("/i/{id}/approve/sheet");
    assert_eq!(teachers(class, teacher, &sheet, &body).await.status, 303);
    let answer = format!("do=return&period=1&group=3&asks={MARK}");
    let _ = teachers(class, teacher, &format!("/i/{id}/approve"), &answer).await;
    let run = format!("/i/{id}/run/1");
    let one = format!("{run}/bag/{bag}");
    for (path, body) in [
        (&run, format!("do=write&bag={MARK}&mm=12")),
        (&run, format!("do=write&bag=3A&mm={MARK}")),
        (&run, format!("do={MARK}")),
        (&run, format!("do=jug&celsius={MARK}&jug=1")),
        (&run, format!("do=meter&bag=3A&percent={MARK}")),
        (&one, format!("do=set-aside+{bag}&rule={MARK}")),
        (&one, format!("do=set-right+{bag}&treatment={MARK}&group=3")),
    ] {
        let _ = teachers(class, teacher, path, &body).await;
    }
    let cells = json!({
        "cells": [{ "key": "01900000-0000-7000-8000-00000000000b", "bag": bag, "minute": 0,
                    "text": MARK }],
        "zeros": [{ "bag": bag, "text": MARK }],
    });
    let call = Call::script(&format!("/i/{id}/enter/1/3"), &cells.to_string());
    assert_eq!(class.call(call.cookie("barm-teacher", teacher)).await.status, 200);
    let file =
        format!("bag,minute,height,set aside,note\n{bag},0,4,{MARK},{MARK} dropped it\n");
    let path = format!("/i/{id}/enter/file/add?key=01900000-0000-7000-8000-00000000000c");
    let call = Call::script(&path, &file).header("content-type", "application/octet-stream");
    assert_eq!(class.call(call.cookie("barm-teacher", teacher)).await.status, 200);
    let _ = class.call(Call::get(&format!("/i/{id}/run/1?bag={MARK}"))).await;
    // Forms that are refused: the start of a plan, the day of deletion, a file that is no plan.
    for (path, body) in [
        (
            "/start/ready/which-food".to_owned(),
            format!("date={MARK}&zone={MARK}&altitude={MARK}"),
        ),
        ("/start/file".to_owned(), format!("text={MARK}")),
        (format!("/i/{id}/names/day"), format!("day={MARK}")),
        (format!("/i/{id}/plan"), format!("do=save&from=1&text={MARK}")),
    ] {
        let answer = teachers(class, teacher, &path, &body).await;
        assert!(answer.status != 404, "{path}");
    }
}

/// What the teacher writes into the plan stays, and the page says so before anybody counts on it.
#[tokio::test]
async fn what_stands_in_the_plan_stays_in_the_record_and_its_backups_alone_and_the_page_says_so()
 {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let (id, folder) = (class.room.id, class.folder.path().to_owned());
    let text = class.room.read(|scene| scene.version);
    let text = class.room.plan_text(text).expect("a text");
    let title = text.lines().find(|line| line.starts_with("title = ")).expect("a title");
    let text = text.replacen(title, &format!("title = \"{MARK}\""), 1);
    let text = text.replace(super::class::ANSWERED, MARK);
    let text = text.replace("Otters", MARK);
    assert!(text.matches(MARK).count() >= 3, "title, answer and label");
    let encoded: String = text.bytes().map(|byte| format!("%{byte:02X}")).collect();
    let body = format!("from=1&do=save&text={encoded}");
    let saved = teachers(&class, &teacher, &format!("/i/{id}/plan"), &body).await;
    assert_eq!(class.room.read(|scene| scene.plan.title.clone()), MARK, "{}", saved.body);
    let _ = teachers(&class, &teacher, "/backups", "do=make").await;
    let _ = teachers(&class, &teacher, &format!("/i/{id}/names/delete"), "sure=yes").await;
    let page = Call::get(&format!("/i/{id}/names")).cookie("barm-teacher", &teacher);
    let page = class.call(page).await.body;
    assert!(page.contains("Every version that you saved is kept"), "{page}");
    let kept = with_mark(&folder, MARK);
    assert!(!kept.is_empty());
    for path in kept {
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        let record = name.starts_with("record.sqlite");
        assert!(record || path.starts_with(folder.join("backups")), "{}", path.display());
    }
}

#[tokio::test]
async fn a_name_planted_in_every_field_is_gone_after_one_action() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let (id, folder) = (class.room.id, class.folder.path().to_owned());
    plant(&class, &teacher).await;
    let made = teachers(&class, &teacher, "/backups", "do=make").await;
    assert_eq!(made.status, 200, "{}", made.body);
    let before = with_mark(&folder, MARK);
    assert!(before.iter().any(|path| path.starts_with(folder.join("backups"))), "{before:?}");
    assert!(before.len() >= 2, "the search finds what is there: {before:?}");
    // The page says how much and never what.
    let page = Call::get(&format!("/i/{id}/names")).cookie("barm-teacher", &teacher);
    let page = class.call(page).await.body;
    assert!(page.contains("1 reason for a guess") && page.contains("3 proposals"), "{page}");
    assert!(page.contains("2 answers to proposals"), "{page}");
    assert!(!page.contains(MARK));
    // Nothing goes before the teacher is sure.
    let path = format!("/i/{id}/names/delete");
    let _ = teachers(&class, &teacher, &path, "").await;
    assert_eq!(with_mark(&folder, MARK), before);
    assert_eq!(teachers(&class, &teacher, &path, "sure=yes").await.status, 303);
    assert_eq!(with_mark(&folder, MARK), Vec::<PathBuf>::new());
    let page = Call::get(&format!("/i/{id}/names")).cookie("barm-teacher", &teacher);
    let page = class.call(page).await.body;
    assert!(page.contains("none is left") && page.contains("gone from 1 backup"), "{page}");
    assert!(page.contains("None of it stands anywhere"), "{page}");
    // Nothing of it is in an export, and the heights still are.
    let text = tempfile::tempdir().expect("a folder");
    export(&class.web.shelf, &text.path().join("out")).expect("written");
    assert!(with_mark(text.path(), MARK).is_empty());
    let entries = text.path().join(format!("out/investigation-{id}/entries.jsonl"));
    assert!(fs::read_to_string(entries).expect("text").contains("guess"));
    // Also once everything is closed.
    let folder = class.close();
    assert_eq!(with_mark(folder.path(), MARK), Vec::<PathBuf>::new());
}

#[tokio::test]
async fn one_page_says_what_is_kept_about_whom_finds_a_name_and_deletes_all_of_it() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let folder = class.folder.path().to_owned();
    plant(&class, &teacher).await;
    let _ = teachers(&class, &teacher, "/backups", "do=make").await;
    let page = || class.call(Call::get("/kept").cookie("barm-teacher", &teacher));
    let told = page().await.body;
    for part in
        ["Students", "Groups, as numbers", "Never kept", "6 texts", "goes on 2027-04-08"]
    {
        assert!(told.contains(part), "{part}: {told}");
    }
    // A name is found in every file in which it stands, and the page does not repeat it.
    let look = format!("name={}", MARK.to_uppercase());
    let found = teachers(&class, &teacher, "/kept", &look).await;
    assert_eq!(found.status, 200);
    assert!(!found.body.to_lowercase().contains(&MARK.to_lowercase()), "{}", found.body);
    for path in with_mark(&folder, MARK) {
        assert!(found.body.contains(&path.display().to_string()), "{}", path.display());
    }
    // Nothing goes before the teacher is sure; then all of it.
    let unsure = teachers(&class, &teacher, "/kept", "").await;
    assert_eq!(unsure.status, 303);
    assert!(!with_mark(&folder, MARK).is_empty());
    assert_eq!(teachers(&class, &teacher, "/kept", "sure=yes").await.status, 303);
    assert_eq!(with_mark(&folder, MARK), Vec::<PathBuf>::new());
    let told = page().await.body;
    assert!(
        told.contains("None of it stands anywhere") && !told.contains("form.opener"),
        "{told}"
    );
    let found = teachers(&class, &teacher, "/kept", &look).await.body;
    assert!(!found.contains("The same letters still stand"), "{found}");
}

#[tokio::test]
async fn a_backup_that_cannot_be_reached_is_named_with_its_date() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let id = class.room.id;
    plant(&class, &teacher).await;
    let _ = teachers(&class, &teacher, "/backups", "do=make").await;
    let backups = class.folder.path().join("backups");
    let file = fs::read_dir(&backups).expect("a folder").next().expect("one").expect("a file");
    let aside = class.folder.path().join("carried-home");
    fs::rename(file.path(), &aside).expect("carried away");
    let _ = teachers(&class, &teacher, &format!("/i/{id}/names/delete"), "sure=yes").await;
    let page = Call::get(&format!("/i/{id}/names")).cookie("barm-teacher", &teacher);
    let page = class.call(page).await.body;
    let path = file.path().display().to_string();
    assert!(page.contains("Not reached") && page.contains(&path), "{page}");
    assert!(page.contains("2027-03-09 15:30 UTC"), "{page}");
    // Brought back, it is cleaned with the next deletion.
    fs::rename(&aside, file.path()).expect("brought back");
    let _ = teachers(&class, &teacher, &format!("/i/{id}/names/delete"), "sure=yes").await;
    assert_eq!(with_mark(class.folder.path(), MARK), Vec::<PathBuf>::new());
}

#[tokio::test]
async fn words_go_by_themselves_thirty_days_after_the_last_school_day() {
    let class = Class::at(DURING_1, Kind::Real);
    let teacher = class.teacher();
    let id = class.room.id;
    plant(&class, &teacher).await;
    let shelf = class.web.shelf.clone();
    let view =
        |class: &Class| words_view(&class.web.shelf, id, class.web.now()).expect("a view");
    let (last, due) = (view(&class).last_day.expect("a day"), view(&class).due.expect("a day"));
    assert_eq!((due.to_string(), view(&class).chosen), ("2027-04-08".to_owned(), false));
    assert_eq!(last.to_string(), "2027-03-09");
    class.later(SignedDuration::from_hours(24 * 29));
    assert!(delete_due(&shelf, class.web.now()).expect("looked").is_empty());
    class.later(SignedDuration::from_hours(24));
    let done = delete_due(&shelf, class.web.now()).expect("done");
    assert_eq!(done.len(), 1);
    let deleted = &done[0].1;
    assert!(done[0].0 == id && deleted.by_itself && deleted.words >= 2 && deleted.left == 0);
    assert_eq!(with_mark(class.folder.path(), MARK), Vec::<PathBuf>::new());
    assert!(delete_due(&shelf, class.web.now()).expect("looked").is_empty(), "once");
    // Another day, and back to the rule; whoever was signed in a month ago is not any more.
    let teacher = class.teacher();
    let path = format!("/i/{id}/names/day");
    let _ = teachers(&class, &teacher, &path, "day=2027-06-01").await;
    assert_eq!(view(&class).due.expect("a day").to_string(), "2027-06-01");
    let _ = teachers(&class, &teacher, &path, "day=soon").await;
    assert_eq!(view(&class).due.expect("a day").to_string(), "2027-06-01");
    let _ = teachers(&class, &teacher, &path, "do=rule").await;
    assert_eq!(view(&class).due.expect("a day").to_string(), "2027-04-08");
}
