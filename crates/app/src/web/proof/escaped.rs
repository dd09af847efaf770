//! Names that are markup stay words on every page, and in every part that a script puts in.

use super::class::{Call, Class, DURING_1, plan_text};
use super::secrets::filled;
use crate::desk::doors::Part;
use crate::desk::rehearse::done_before;
use crate::desk::room::Kind;
use crate::web::cookies;
use crate::web::routes::{Role, table};
use axum::http::Method;
use barm_domain::record::{Audience, Face, Subject, What, Who};
use jiff::SignedDuration;
use serde_json::{Value, json};

/// Markup that would do something if a page took it as such, and how it stands where it is text.
const NAME: &str = "<img src=x onerror=alert(1)>";
const AS_TEXT: &str = "&lt;img src=x onerror=alert(1)&gt;";

/// The invented plan with that as its title, a treatment and what a question asks.
fn hostile() -> String {
    let text = plan_text().replace("\"Nonfat dry milk + lactase\"", &format!("\"{NAME}\""));
    let named = |line: &str| match line.split_once(" = ") {
        Some((key @ ("title" | "asks"), _)) => format!("{key} = \"{NAME}\""),
        _ => line.to_owned(),
    };
    text.lines().map(named).collect::<Vec<String>>().join("\n")
}

#[tokio::test]
async fn a_name_that_is_markup_is_a_word_on_every_page() {
    let class = Class::of(&hostile(), DURING_1, Kind::Real);
    // Group 6 makes that treatment.
    let group = class.group("1", 6);
    class.later(SignedDuration::from_hours(7));
    done_before(&class.room, "none of them", include_bytes!("../../demo/readings.csv"))
        .expect("on record");
    for face in [Face::PeriodCurves, Face::Results] {
        let to = Audience::Groups { period: "1".into() };
        class.note(Subject::Investigation, Who::Teacher, What::Opened { face, to });
    }
    let teacher = class.teacher();
    let (mut pages, mut shown) = (0, 0);
    for route in table().iter().filter(|route| route.method == Method::GET) {
        let path = route.rules.path;
        // Prints are no markup.
        let paper = [".pdf", "{file}"].iter().any(|end| path.ends_with(end));
        if path.ends_with("/events") || paper || route.rules.plain_file {
            continue;
        }
        let (cookie, token) = if route.rules.who.contains(&Role::Teacher) {
            (cookies::name(Part::Teacher), &teacher)
        } else {
            (cookies::name(Part::Group), &group)
        };
        let call = Call::get(&filled(&class, path, ("1", 6))).cookie(cookie, token);
        let answer = class.call(call).await;
        if answer.header("content-type").starts_with("text/html") {
            assert!(!answer.body.contains("<img"), "{path}: {}", answer.body);
            pages += 1;
            shown += usize::from(answer.body.contains(AS_TEXT));
        }
    }
    assert!(pages > 15 && shown > 5, "{shown} of {pages} pages show the name");
}

#[tokio::test]
async fn a_part_that_a_script_puts_in_is_escaped() {
    let class = Class::of(&hostile(), DURING_1, Kind::Real);
    let teacher = class.teacher();
    let id = class.room.id;
    let ask = |path: String, body: Value| {
        let call = Call::script(&path, &body.to_string()).cookie("barm-teacher", &teacher);
        class.call(call)
    };
    // A plan whose slips quote what was typed, and one without.
    let slip = hostile().replacen("food = \"", &format!("food = \"{NAME}"), 1);
    let mut all = String::new();
    for (text, step) in [(slip, "band"), (hostile(), "band")] {
        let body =
            json!({ "number": 1, "focus": "", "text": text, "fields": [], "step": step });
        let told = ask(format!("/i/{id}/plan/forecast"), body).await;
        let told: Value = serde_json::from_str(&told.body).expect("JSON");
        for part in ["around", "tally", "forecast", "verdicts"] {
            all.push_str(told[part].as_str().unwrap_or_default());
        }
        for said in told["said"].as_object().expect("said").values() {
            all.push_str(said.as_str().expect("markup"));
        }
    }
    let code = filled(&class, "{bag}", ("1", 6));
    let key = "01900000-0000-7000-8000-000000000001";
    let cells = json!({
        "cells": [{ "key": key, "bag": code, "minute": 4, "text": NAME }],
        "zeros": [{ "bag": code, "text": NAME }],
    });
    let told = ask(format!("/i/{id}/enter/1/6/look"), cells).await;
    let told: Value = serde_json::from_str(&told.body).expect("JSON");
    let grid = told["said"].as_str().expect("markup");
    for (what, all) in [("the plan's parts", all.as_str()), ("beneath the grid", grid)] {
        assert!(all.contains(AS_TEXT), "{what}: {all}");
        assert!(!all.contains("<img"), "{what}: {all}");
    }
}
