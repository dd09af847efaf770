//! What the addresses of the plan page answer.

use super::form;
use super::page::{Around, around_form, comes_to, foreseen, page, tally};
use crate::desk::editing::{self, Editing, Foreseen, Step};
use crate::desk::room::plans::{PlanView, Saved, plan_view, save, would_keep};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Json, Path, Query, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

type Fields = Vec<(String, String)>;

/// What was sent, by name.
fn sent<'f>(fields: &'f Fields, name: &str) -> Option<&'f str> {
    fields.iter().find(|(field, _)| field == name).map(|(_, value)| value.as_str())
}

/// The text that was sent, with the fields of the form and the answers to cautions as they were
/// typed.
fn typed(fields: &Fields) -> String {
    let text = sent(fields, "text").unwrap_or_default().replace("\r\n", "\n");
    let edits: Fields = fields
        .iter()
        .filter_map(|(name, value)| Some((name.strip_prefix("f:")?.to_owned(), value.clone())))
        .collect();
    let answers: Fields = fields
        .iter()
        .filter_map(|(name, value)| Some((name.strip_prefix("a:")?.to_owned(), value.clone())))
        .collect();
    editing::answered(&editing::edited(&text, &edits), &answers)
}

fn around(device: &Device, from: u32, raw: bool, done: Option<String>) -> Around {
    let token = device.form_token().to_owned();
    Around { field: device.form_field(), token, done, kept: true, from, raw }
}

fn shown(w: Wording, status: StatusCode, view: &PlanView, around: &Around) -> Response {
    let body = page(w, view, around, None);
    let title = say!(w, "plan-title", title = &view.title);
    (status, sheet_with(w.code(), &title, &["plan.css"], &["plan.js"], &body)).into_response()
}

/// What the address may bring.
#[derive(Deserialize)]
pub(in crate::web) struct Fresh {
    /// Set where somebody comes from starting it.
    new: Option<u32>,
    /// The older version that was just gone back to.
    back: Option<u32>,
}

/// The plan as a form.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(fresh): Query<Fresh>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| plan_view(&*shelf.room(id, now)?, w, None)).await?;
    let new = fresh.new.filter(|_| view.version == 1).map(|_| say!(w, "plan-new"));
    let back = fresh.back.filter(|old| *old < view.version).map(|old| {
        say!(w, "plan-gone-back", old = old.to_string(), version = view.version.to_string())
    });
    let done = new.or(back);
    Ok(shown(w, StatusCode::OK, &view, &around(&device, view.version, false, done)))
}

/// The plan as text.
pub(in crate::web) async fn text(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| plan_view(&*shelf.room(id, now)?, w, None)).await?;
    Ok(shown(w, StatusCode::OK, &view, &around(&device, view.version, true, None)))
}

/// Saves the plan, or shows it again as it was sent with something done to it.
pub(in crate::web) async fn post(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let text = typed(&fields);
    let from = sent(&fields, "from").and_then(|from| from.parse().ok()).unwrap_or_default();
    let act = sent(&fields, "do").unwrap_or("save").to_owned();
    let swap =
        ["swap-from", "swap-to"].map(|name| sent(&fields, name).unwrap_or_default().to_owned());
    let has_form = fields.iter().any(|(name, _)| name.starts_with("f:"));
    let (view, done, kept, from, status) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let mut status = StatusCode::OK;
            let mut from = from;
            let mut kept = false;
            let (text, done) = match act.as_str() {
                "raw" | "form" => (text, None),
                "save" => {
                    let saved = save(&room, &text, from, now)?;
                    let done = told(w, &saved);
                    match saved {
                        Saved::As { version, .. } => from = version,
                        Saved::Overtaken(newest) => from = newest,
                        Saved::Faulty => status = StatusCode::UNPROCESSABLE_ENTITY,
                        Saved::Same => {}
                    }
                    kept = matches!(saved, Saved::As { .. } | Saved::Same);
                    let text = if kept { room.plan_text(from)? } else { text };
                    (text, Some(done))
                }
                "swap" => match editing::swapped(w, &text, &swap[0], &swap[1]) {
                    Ok(new) => (new, Some(say!(w, "plan-swapped"))),
                    Err(why) => (text, Some(why)),
                },
                other => match editing::reshaped(w, &text, other) {
                    Some(new) => (new, Some(say!(w, "plan-reshaped"))),
                    None => (text, None),
                },
            };
            Ok::<_, DeskError>((plan_view(&room, w, Some(text))?, done, kept, from, status))
        })
        .await?;
    let raw = match sent(&fields, "do") {
        Some("raw") => true,
        Some("form") => false,
        _ => !has_form,
    };
    let around = Around { kept, ..around(&device, from, raw, done) };
    Ok(shown(w, status, &view, &around))
}

fn told(w: Wording, saved: &Saved) -> String {
    match saved {
        Saved::As { version, new, gone, keep } => {
            let version = version.to_string();
            let says = match (new, gone) {
                (0, 0) => say!(w, "plan-saved", version = version),
                _ => say!(w, "plan-saved-bags", version = version, new = *new, gone = *gone),
            };
            match keep {
                0 => says,
                keep => format!("{says} {}", say!(w, "plan-keep", count = *keep)),
            }
        }
        Saved::Same => say!(w, "plan-same"),
        Saved::Faulty => say!(w, "plan-not-saved"),
        Saved::Overtaken(newest) => {
            say!(w, "plan-overtaken", version = newest.to_string())
        }
    }
}

/// Goes back to an older version, as a new one.
pub(in crate::web) async fn back(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let version: u32 =
        sent(&fields, "version").and_then(|v| v.parse().ok()).unwrap_or_default();
    web.wait(move |shelf, now| {
        let room = shelf.room(id, now)?;
        let text = room.plan_text(version)?;
        save(&room, &text, room.read(|scene| scene.version), now)
    })
    .await?;
    Ok(Redirect::to(&format!("/i/{id}/plan?back={version}")).into_response())
}

/// The newest version as a file.
pub(in crate::web) async fn download(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Response, Trouble> {
    let (kind, text) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let text = room.plan_text(room.read(|scene| scene.version))?;
            Ok::<_, DeskError>((room.kind, text))
        })
        .await?;
    let mut headers = HeaderMap::new();
    let toml = HeaderValue::from_static("application/toml; charset=utf-8");
    headers.insert(header::CONTENT_TYPE, toml);
    let name = format!("attachment; filename=\"{}\"", file_name(kind, "plan.toml"));
    headers.extend(name.parse().ok().map(|name| (header::CONTENT_DISPOSITION, name)));
    Ok((headers, text).into_response())
}

/// What the script asks after each key.
#[derive(Deserialize)]
pub(in crate::web) struct Asked {
    number: u64,
    step: String,
    focus: String,
    text: String,
    fields: Vec<(String, String)>,
}

/// What it is told.
#[derive(Serialize)]
pub(in crate::web) struct Told {
    /// The number of what was asked: an answer to an older question is dropped.
    number: u64,
    /// What is said beside each field, as markup; empty where nothing is. Not with the first line,
    /// which must come at once.
    said: Option<BTreeMap<String, String>>,
    around: Option<String>,
    tally: Option<String>,
    forecast: Option<String>,
    verdicts: Option<String>,
}

/// Looks ahead for what is typed.
pub(in crate::web) async fn forecast(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
    Json(asked): Json<Asked>,
) -> Result<Json<Told>, Trouble> {
    let told = web
        .wait(move |shelf, now| {
            let step = match asked.step.as_str() {
                "line" => Step::Line,
                "band" => Step::Band,
                _ => Step::All,
            };
            let text = editing::edited(&asked.text, &asked.fields);
            let room = shelf.room(id, now)?;
            let lots = room.read(|scene| scene.newest.known.clone());
            let seen = editing::foresee(w, &text, &lots, &asked.focus, step);
            let editing = (step != Step::Line).then(|| Editing::open(w, &text, &lots));
            let keep = editing.as_ref().map(|editing| would_keep(&room, editing));
            let keep = keep.unwrap_or_default();
            Ok::<_, DeskError>(tell(w, asked.number, editing.as_ref(), keep, &seen))
        })
        .await?;
    Ok(Json(told))
}

fn tell(
    w: Wording,
    number: u64,
    editing: Option<&Editing>,
    keep: usize,
    seen: &Foreseen,
) -> Told {
    let charted = !seen.charts.is_empty() || seen.trouble.is_some();
    // What an older text came to must not stand beside what is wrong with this one.
    let nothing = seen.trouble.as_ref().map(|_| String::new());
    Told {
        number,
        said: editing.map(|editing| beside_fields(w, editing, seen)),
        around: editing.map(|editing| around_form(w, editing).into_string()),
        tally: editing
            .map(|editing| tally(w, editing.faults + seen.faults(), keep).into_string()),
        forecast: charted.then(|| foreseen(w, seen).into_string()),
        verdicts: seen.verdicts.is_some().then(|| comes_to(w, seen).into_string()).or(nothing),
    }
}

/// What is said beside each field; what rests on the forecast, too.
fn beside_fields(w: Wording, editing: &Editing, seen: &Foreseen) -> BTreeMap<String, String> {
    let mut said = BTreeMap::new();
    let names: Vec<String> = editing.fields().map(|field| field.name.clone()).collect();
    for field in editing.fields() {
        said.insert(field.name.clone(), form::all(w, &field.said).into_string());
    }
    for late in &seen.late {
        let place = late.at.as_deref().and_then(|at| editing::place(&names, at));
        if let Some(here) = place.and_then(|place| said.get_mut(place)) {
            here.push_str(&form::said_here(w, late).into_string());
        }
    }
    said
}
