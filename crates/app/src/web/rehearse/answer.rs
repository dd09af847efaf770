//! What the addresses of the rehearsal page answer.

use super::page::{self, View};
use crate::desk::rehearse::{Beside, Wish};
use crate::desk::room::Kind;
use crate::desk::{DeskError, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::Json;
use axum::extract::{Form, Path, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use serde::{Deserialize, Serialize};
use std::time::Duration;

/// How a rehearsal is asked to be.
#[derive(Deserialize)]
pub(in crate::web) struct Sent {
    period: String,
    speed: f64,
    class: u64,
}

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
    device: Device,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    let playing = web.practice.playing().filter(|playing| playing.beside.of == id);
    let view = View::of(&room, playing, &headers, web.now());
    let title = say!(w, "rehearse-title", title = &view.title);
    let body = page::page(w, &view, &device.form_field());
    Ok(sheet_with(w.code(), &title, &["plan.css"], &["live.js"], &body).into_response())
}

/// Sets one up in place of the one before.
pub(in crate::web) async fn set_up(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
    Form(sent): Form<Sent>,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    if room.kind == Kind::Rehearsal {
        return Err(Trouble::Wrong(say!(w, "rehearse-of-a-rehearsal")));
    }
    web.practice.stop().await;
    web.practice.forget();
    let made = web
        .wait(move |shelf, _| {
            let wish = Wish {
                period: Some(&sent.period),
                seed: sent.class,
                speed: sent.speed,
                kind: Kind::Rehearsal,
            };
            let mut tries = 50;
            loop {
                match Beside::of(&room, &shelf.folder, wish) {
                    // A page of the one before may still be closing.
                    Err(error) if error.is_in_use() && tries > 0 => {
                        tries -= 1;
                        std::thread::sleep(Duration::from_millis(100));
                    }
                    made => return made,
                }
            }
        })
        .await;
    let beside = match made {
        Ok(beside) => beside,
        Err(DeskError::Plan(_)) => return Err(Trouble::Wrong(say!(w, "rehearse-not-yet"))),
        Err(error) => return Err(error.into()),
    };
    web.practice.begin(beside, web.stopping.clone())?;
    Ok(Redirect::to(&format!("/i/{id}/rehearse")).into_response())
}

/// Stops it.
pub(in crate::web) async fn stop(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Response, Trouble> {
    web.practice.stop().await;
    Ok(Redirect::to(&format!("/i/{id}/rehearse")).into_response())
}

/// How far it has come.
#[derive(Serialize)]
pub(in crate::web) struct SoFar {
    done: usize,
    over: bool,
}

/// Says how far it has come, so that the page knows when to look again.
pub(in crate::web) async fn so_far(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Response, Trouble> {
    let playing = web.practice.playing().filter(|playing| playing.beside.of == id);
    let Some(playing) = playing else { return Ok(StatusCode::NO_CONTENT.into_response()) };
    let over = playing.beside.went(|_| ()).is_some();
    let (done, _) = playing.beside.so_far();
    Ok(Json(SoFar { done, over }).into_response())
}
