//! A teacher practices from her own pages, beside the record.

use crate::line::Line;
use crate::school::{Serving, count};
use serde_json::Value;
use std::time::Duration;

const PASSPHRASE: &str = "three bags rise by the window";

fn between<'t>(text: &'t str, from: &str, to: &str) -> Option<&'t str> {
    let (_, rest) = text.split_once(from)?;
    Some(rest.split_once(to)?.0)
}

/// Signs in, choosing the passphrase where none was chosen yet.
fn teacher(port: u16, passphrase: &str) -> Line {
    let mut line = Line::to(port);
    let first = line.get("/teacher").expect("a page").body.contains("/teacher/first");
    let sent = if first {
        let fields = [("passphrase", passphrase), ("again", passphrase)];
        line.form("/teacher/first", &fields)
    } else {
        line.form("/teacher", &[("passphrase", passphrase)])
    };
    assert_eq!(sent.expect("an answer").status, 303);
    line
}

#[test]
fn a_rehearsal_from_the_pages_runs_beside_the_record_and_says_how_it_went() {
    let folder = tempfile::tempdir().expect("a folder");
    let serving = Serving::start(folder.path());
    let mut line = teacher(serving.port, PASSPHRASE);
    line.get("/start").expect("a page");
    assert_eq!(line.form("/start/invented", &[]).expect("an answer").status, 303);
    let ask = |line: &mut Line| line.get("/i/1/rehearse").expect("a page").body;
    assert!(!ask(&mut line).contains("/rehearse/stop"), "none runs");
    let before = line.get("/i/1/version").expect("a number").body;

    for class in 1..=count(1, 2, 3) {
        let fields = [("period", "2"), ("speed", "1200"), ("class", &class.to_string())];
        let set_up = line.form("/i/1/rehearse", &fields).expect("an answer");
        let log = std::fs::read_to_string(folder.path().join("barm.log")).unwrap_or_default();
        assert_eq!(set_up.status, 303, "{log}");
        let page = ask(&mut line);
        let passphrase = between(&page, "this time: <b class=\"code\">", "<").expect("one");
        let address = between(&page, "class=\"btn main\" href=\"", "\"").expect("where it is");
        // Another name than that of the record's pages, so that no cookie meets another.
        let place = address.strip_prefix("http://127.0.0.1:").expect("on this computer");
        let (port, path) = place.split_once('/').expect("a port and a path");
        let (port, path) = (port.parse().expect("a port"), format!("/{path}"));
        let mut there = teacher(port, passphrase);
        let run = there.get(&path).expect("its run page");
        assert!(run.body.contains("Nothing here counts"), "it is marked");
        let key = format!("0192f3c0-0000-7000-8000-{class:012}").replace('-', "");
        let began = there.form(&path, &[("do", "begin"), ("key", &key)]).expect("an answer");
        assert_eq!(began.status, 303, "{}", began.body);
        let mut patience = 1200;
        loop {
            let state = line.get("/i/1/rehearse/state").expect("an answer").body;
            let state: Value = serde_json::from_str(&state).expect("JSON");
            if state["over"] == true {
                assert!(state["done"].as_u64().expect("a count") > 50, "{state}");
                break;
            }
            patience -= 1;
            assert!(patience > 0, "it never ends: {state}");
            std::thread::sleep(Duration::from_millis(100));
        }
        let page = ask(&mut line);
        assert!(page.contains(" saved, 0 refused."), "{page}");
        assert!(page.contains("What went wrong") || page.contains("Nothing went wrong"));
    }
    assert_eq!(line.form("/i/1/rehearse/stop", &[]).expect("an answer").status, 303);
    assert!(!ask(&mut line).contains("/rehearse/stop"), "none runs");
    // Nothing of it came into the record.
    assert_eq!(line.get("/i/1/version").expect("a number").body, before);
    drop(serving);
    let there = folder.path().join("rehearsal").join("record.sqlite");
    assert!(there.is_file(), "it lies in a folder of its own");
}
