//! What the addresses for words and backups answer.

use super::page;
use crate::desk::room::backups::{self, Copied};
use crate::desk::room::kept_words::{choose_day, delete_words, words_view};
use crate::desk::{DeskError, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::Form;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use serde::Deserialize;
use std::path::PathBuf;

/// What the address may bring: what was done.
#[derive(Deserialize)]
pub(in crate::web) struct Did {
    did: Option<String>,
}

/// What is kept in words.
pub(in crate::web) async fn words(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(did): Query<Did>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| words_view(shelf, id, now)).await?;
    let said = match did.did.as_deref() {
        Some("unsure") => Some(say!(w, "kept-delete-unsure")),
        Some("no-day") => Some(say!(w, "kept-day-wrong")),
        Some("day") => Some(say!(w, "kept-day-set")),
        _ => None,
    };
    let title = say!(w, "kept-title", title = &view.title);
    let body = page::words(w, &view, said.as_deref(), &device.form_field());
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}

/// Whether the teacher is sure.
#[derive(Deserialize)]
pub(in crate::web) struct Sure {
    sure: Option<String>,
}

/// Deletes all words of an investigation.
pub(in crate::web) async fn delete(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Form(sure): Form<Sure>,
) -> Result<Redirect, Trouble> {
    if sure.sure.is_none() {
        return Ok(Redirect::to(&format!("/i/{id}/names?did=unsure#delete")));
    }
    let deleted = web.wait(move |shelf, now| delete_words(shelf, id, false, now)).await?;
    web.log.write(web.now(), &deleted.in_the_log(id));
    Ok(Redirect::to(&format!("/i/{id}/names#proof")))
}

/// The day on which words go by themselves.
#[derive(Deserialize)]
pub(in crate::web) struct Day {
    day: Option<String>,
    #[serde(rename = "do")]
    act: Option<String>,
}

/// Sets that day, or goes back to the rule.
pub(in crate::web) async fn day(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Form(sent): Form<Day>,
) -> Result<Redirect, Trouble> {
    let chosen = match sent.act.as_deref() {
        Some("rule") => None,
        _ => match sent.day.as_deref().unwrap_or_default().trim().parse() {
            Ok(day) => Some(day),
            Err(_) => return Ok(Redirect::to(&format!("/i/{id}/names?did=no-day#day"))),
        },
    };
    web.wait(move |shelf, now| {
        shelf.room(id, now)?;
        choose_day(shelf, id, chosen)
    })
    .await?;
    Ok(Redirect::to(&format!("/i/{id}/names?did=day#day")))
}

/// The backups.
pub(in crate::web) async fn backups(
    State(web): State<Web>,
    device: Device,
    words: Words,
) -> Result<Response, Trouble> {
    backups_shown(&web, &device, words, StatusCode::OK, None).await
}

/// What is to be done with backups.
#[derive(Deserialize)]
pub(in crate::web) struct Wish {
    #[serde(rename = "do")]
    act: String,
    path: Option<PathBuf>,
}

/// Makes a backup, reads one through again, or takes one off the list.
pub(in crate::web) async fn backup(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    Form(wish): Form<Wish>,
) -> Result<Response, Trouble> {
    let path = wish.path.clone().unwrap_or_default();
    let act = wish.act.clone();
    let done: Result<Option<Copied>, DeskError> = web
        .wait(move |shelf, now| match act.as_str() {
            "make" => backups::make_backup(shelf, None, now).map(Some),
            "check" => backups::check_backup(shelf, &path, now).map(Some),
            _ => backups::drop_backup(shelf, &path).map(|()| None),
        })
        .await;
    let (status, says) = match done {
        Ok(Some(copied)) => {
            let path = copied.path.display().to_string();
            let entries = copied.entries;
            let says = if wish.act == "make" {
                say!(w, "backups-made", path = path, entries = entries)
            } else {
                say!(w, "backups-checked", path = path, entries = entries)
            };
            (StatusCode::OK, says)
        }
        Ok(None) => {
            let path = wish.path.unwrap_or_default().display().to_string();
            (StatusCode::OK, say!(w, "backups-dropped", path = path))
        }
        Err(error) => (
            StatusCode::UNPROCESSABLE_ENTITY,
            say!(w, "backups-failed", why = error.to_string()),
        ),
    };
    backups_shown(&web, &device, Words(w), status, Some(says)).await
}

async fn backups_shown(
    web: &Web,
    device: &Device,
    Words(w): Words,
    status: StatusCode,
    says: Option<String>,
) -> Result<Response, Trouble> {
    let (lines, folder) = web
        .wait(|shelf, now| {
            Ok::<_, DeskError>((backups::backups(shelf, now)?, shelf.folder.clone()))
        })
        .await?;
    let body = page::backups(w, &lines, &folder, says.as_deref(), &device.form_field());
    let title = say!(w, "backups-title");
    Ok((status, sheet_with(w.code(), &title, &["plan.css"], &[], &body)).into_response())
}
