//! What no class read lies apart from what one read, and says everywhere what it is.

use super::class::{Answer, Call, Class, DURING_1, plan_text};
use crate::desk::DeskError;
use crate::desk::room::Kind;
use barm_domain::record::Key;
use std::fs::File;
use std::io::Write;
use std::process::Command;

async fn as_teacher(class: &Class, token: &str, call: Call) -> Answer {
    class.call(call.cookie("barm-teacher", token)).await
}

#[tokio::test]
async fn nothing_else_is_started_where_a_rehearsal_lies() {
    let class = Class::at(DURING_1, Kind::Rehearsal);
    let teacher = class.teacher();
    let shelf = as_teacher(&class, &teacher, Call::get("/shelf")).await;
    assert_eq!(shelf.status, 200);
    assert!(!shelf.body.contains("href=\"/start"), "{}", shelf.body);
    assert!(!shelf.body.contains("action=\"/start"), "{}", shelf.body);
    assert!(shelf.body.contains("class=\"madeup\""), "it is marked");
    for path in ["/start", "/start/ready/which-food"] {
        let answer = as_teacher(&class, &teacher, Call::get(path)).await;
        assert_eq!(answer.status, 400, "{path}");
        assert!(answer.body.contains("your own shelf"), "{}", answer.body);
    }
    let plan: String = url_encoded(&plan_text());
    for (path, body) in [
        ("/start/file", format!("text={plan}")),
        ("/start/invented", String::new()),
        ("/start/ready/which-food", "date=2027-03-09".into()),
    ] {
        let answer = as_teacher(&class, &teacher, Call::form(&class, path, &body)).await;
        assert_eq!(answer.status, 400, "{path}: {}", answer.body);
    }
    let kinds: Vec<Kind> =
        class.web.shelf.investigations().expect("a list").iter().map(|one| one.kind).collect();
    assert_eq!(kinds, [Kind::Rehearsal]);
}

fn url_encoded(text: &str) -> String {
    text.bytes().map(|byte| format!("%{byte:02X}")).collect()
}

#[test]
fn the_shelf_itself_keeps_them_apart_both_ways() {
    for (there, other) in [(Kind::Rehearsal, Kind::Real), (Kind::Real, Kind::Rehearsal)] {
        let class = Class::at(DURING_1, there);
        let begun = class.web.shelf.begin(&plan_text(), other, Key::new(9, 9), class.web.now());
        assert!(
            matches!(
                (&begun, there),
                (Err(DeskError::OfARehearsal { .. }), Kind::Rehearsal)
                    | (Err(DeskError::NotForRehearsal { .. }), Kind::Real)
            ),
            "{there:?} beside {other:?}"
        );
        assert_eq!(class.web.shelf.investigations().expect("a list").len(), 1);
    }
}

/// What stands in a PDF, by poppler; nothing where that is not installed.
fn text_of(bytes: &[u8]) -> Option<String> {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("file.pdf");
    std::fs::write(&path, bytes).expect("written");
    let said = Command::new("pdftotext").arg("-raw").arg(&path).arg("-").output();
    match said {
        Ok(said) => Some(String::from_utf8_lossy(&said.stdout).into_owned()),
        Err(_) => {
            // Where `./test` collects what it did not look at.
            if let Some(list) = std::env::var_os("BARM_SKIPS") {
                let line = "what files of a rehearsal say: poppler is not installed\n";
                let list = File::options().append(true).create(true).open(list);
                let told = list.and_then(|mut list| list.write_all(line.as_bytes()));
                told.expect("the list of what was skipped");
            }
            None
        }
    }
}

#[tokio::test]
async fn files_of_a_rehearsal_say_so_in_their_names() {
    for (kind, mark) in [(Kind::Rehearsal, "rehearsal-"), (Kind::Real, "")] {
        let class = Class::at(DURING_1, kind);
        let teacher = class.teacher();
        let id = class.room.id;
        for (path, name) in [
            ("plan.toml", "plan.toml"),
            ("proposals.csv", "proposals.csv"),
            ("prep.pdf", "prep.pdf"),
            ("forecast.pdf", "forecast.pdf"),
            ("results.pdf", "results.pdf"),
            ("print/join.pdf?address=https%3A%2F%2Fbarm.example", "join.pdf"),
        ] {
            let call = Call::get(&format!("/i/{id}/{path}"));
            let answer = as_teacher(&class, &teacher, call).await;
            assert_eq!(answer.status, 200, "{path}");
            let called = answer.header("content-disposition");
            assert!(called.ends_with(&format!("filename=\"{mark}{name}\"")), "{called}");
            if let Some(text) = path.ends_with(".pdf").then(|| text_of(&answer.bytes)).flatten()
            {
                let says = text.contains("Rehearsal: no reading here is real");
                assert_eq!(says, kind == Kind::Rehearsal, "{path}");
            }
            if path == "proposals.csv" {
                assert_eq!(answer.body.contains(",made up"), kind == Kind::Rehearsal);
            }
        }
    }
}
