//! What the addresses of the page of another round answer.

use super::page::{self, AgainView, Both};
use crate::desk::room::again::{both, take_next};
use crate::desk::room::{Room, Shelf};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use barm_domain::round_two::By;
use jiff::Timestamp;
use serde::Deserialize;
use std::sync::Arc;

/// What the address may bring.
#[derive(Deserialize, Default)]
#[serde(default)]
pub(in crate::web) struct Asked {
    by: String,
    with: Option<i64>,
}

/// What is to be done: propose, or take the proposal of a rank.
#[derive(Deserialize)]
pub(in crate::web) struct Wish {
    #[serde(default)]
    by: String,
    take: Option<usize>,
}

/// Ways to rank that the page offers, each with its word in addresses.
pub(super) const BY: [(&str, By); 3] = [
    ("clear-per-bag", By::ClearPerBag),
    ("clear-per-dollar", By::ClearPerDollar),
    ("narrower-per-bag", By::ShrinksPerBag),
];

fn by(word: &str) -> By {
    BY.into_iter().find(|(known, _)| *known == word).map_or(By::ClearPerBag, |(_, by)| by)
}

fn view(
    shelf: &Shelf,
    room: &Arc<Room>,
    asked: &Asked,
    now: Timestamp,
) -> Result<AgainView, DeskError> {
    let plan = room.read(|scene| scene.plan.clone());
    let others = shelf.investigations()?.into_iter().filter(|one| one.id != room.id);
    let others: Vec<(i64, String)> = others.map(|one| (one.id, one.title)).collect();
    let both = match asked.with.filter(|with| others.iter().any(|(id, _)| id == with)) {
        None => None,
        Some(with) => Some(match both(room, &*shelf.room(with, now)?) {
            Ok(pooled) => (with, Both::There(Box::new(pooled))),
            Err(DeskError::Pooled(why)) => (with, Both::Not(why.to_string())),
            Err(error) => return Err(error),
        }),
    };
    let by = by(&asked.by);
    // What the day teaches takes longest; it is begun while the page is read.
    room.day();
    Ok(AgainView { id: room.id, kind: room.kind, plan, by, look: room.next(by), others, both })
}

async fn shown(
    web: &Web,
    w: Wording,
    (id, asked): (i64, Asked),
    device: &Device,
    said: Option<String>,
) -> Result<Response, Trouble> {
    let seen = move |shelf: &Shelf, now| view(shelf, &shelf.room(id, now)?, &asked, now);
    let view = web.wait(seen).await?;
    let title = say!(w, "again-title", title = &view.plan.title);
    let now = web.now().as_millisecond();
    let body = page::page(w, &view, now, &device.form_field(), said.as_deref());
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with(w.code(), &title, &styles, &["live.js"], &body).into_response())
}

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    shown(&web, w, (id, asked), &device, None).await
}

/// Begins to propose, or makes the plan of a proposal.
pub(in crate::web) async fn act(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(wish): Form<Wish>,
) -> Result<Response, Trouble> {
    let by = by(&wish.by);
    let Some(rank) = wish.take else {
        web.room(id).await?.begin_next(by);
        let to = format!("/i/{id}/again?by={}", word(by));
        return Ok(Redirect::to(&to).into_response());
    };
    let taken = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            match take_next(shelf, &room, by, rank, now) {
                Err(DeskError::NoProposal { .. }) => Ok(None),
                other => other,
            }
        })
        .await?;
    match taken {
        Some(new) => Ok(Redirect::to(&format!("/i/{new}/plan")).into_response()),
        None => {
            let asked = Asked { by: wish.by, with: None };
            shown(&web, w, (id, asked), &device, Some(say!(w, "again-gone"))).await
        }
    }
}

/// The word of a way to rank.
pub(super) fn word(by: By) -> &'static str {
    BY.into_iter().find(|(_, known)| *known == by).map_or(BY[0].0, |(word, _)| word)
}
