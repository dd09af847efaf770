//! What the addresses of the page to talk from answer.

use super::page;
use crate::desk::room::talk::{hang, hung, take_down, talk_view};
use crate::desk::{Catalog, DeskError, Wording, say};
use crate::web::address::segment;
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use serde::Deserialize;

/// In whose words prompts are shown.
#[derive(Deserialize)]
pub(in crate::web) struct Heard {
    students: Option<String>,
}

/// What is to be hung up; without a key, what hangs there is taken down.
#[derive(Deserialize)]
pub(in crate::web) struct Asked {
    key: Option<String>,
}

async fn shown(
    web: &Web,
    w: Wording,
    (id, period, students): (i64, String, Option<String>),
    device: &Device,
    done: Option<String>,
) -> Result<Response, Trouble> {
    let words = Catalog::of(students.as_deref().unwrap_or("en"));
    let view =
        web.wait(move |shelf, now| talk_view(&*shelf.room(id, now)?, &period, words)).await?;
    let body = page::page(w, words, &view, &device.form_field(), done.as_deref());
    let title = say!(w, "talk-title", title = &view.title);
    Ok(sheet_with(w.code(), &title, &["plan.css", "approve.css"], &[], &body).into_response())
}

/// To the page of the first period.
pub(in crate::web) async fn first(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Redirect, Trouble> {
    let room = web.room(id).await?;
    let first = room.read(|scene| scene.plan.periods.first().map(|one| one.name.clone()));
    let first = first.ok_or(Trouble::NotFound)?;
    Ok(Redirect::to(&format!("/i/{id}/talk/{}", segment(&first))))
}

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    Query(heard): Query<Heard>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    shown(&web, w, (id, period, heard.students), &device, None).await
}

/// Hangs a prompt on the wall, or takes it down.
pub(in crate::web) async fn act(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    Query(heard): Query<Heard>,
    device: Device,
    Words(w): Words,
    Form(asked): Form<Asked>,
) -> Result<Response, Trouble> {
    let of = period.clone();
    let words = Catalog::of(heard.students.as_deref().unwrap_or("en"));
    let done = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            Ok::<_, DeskError>(match &asked.key {
                None => {
                    take_down(&room, &of)?;
                    say!(w, "talk-taken-down", period = &of)
                }
                Some(key) if hang(&room, &of, key)? => {
                    let hung = hung(&room, &of)?.and_then(|hung| hung.said(words));
                    let asks = hung.map_or_else(String::new, |hung| hung.asks);
                    say!(w, "talk-hung", period = &of, asks = asks)
                }
                Some(_) => say!(w, "talk-gone"),
            })
        })
        .await?;
    shown(&web, w, (id, period, heard.students), &device, Some(done)).await
}
