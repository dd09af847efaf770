//! A group's paper planning sheet, typed in by the teacher.

use super::answer::{sent, typed};
use super::page::{self, Hand};
use crate::desk::room::proposals::{Group, Typed, hand_in, together_view};
use crate::desk::{Catalog, DeskError, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::html;
use serde::Deserialize;

/// Whose sheet.
#[derive(Deserialize)]
pub(in crate::web) struct Whose {
    period: String,
    group: u32,
}

async fn shown(
    web: &Web,
    id: i64,
    Words(w): Words,
    device: &Device,
    group: Group,
    typed: Option<Typed>,
) -> Result<Response, Trouble> {
    let view = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            must_be_there(&room, &group)?;
            let row = typed.map(|typed| typed.row(&group));
            together_view(&room, &group, row)
        })
        .await?;
    let words = Catalog::of(w.code());
    let says = html! {
        p.lead { (say!(w, "approve-sheet-lead")) }
        p { a href={ "/i/" (id) "/approve" } { (say!(w, "approve-sheet-back")) } }
    };
    let hand = Hand::Teacher(id, &says);
    let body = page::page(&view, &device.form_field(), words, &hand);
    let title = say!(w, "approve-sheet-title");
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with(words.code(), &title, &styles, &[], &body).into_response())
}

fn must_be_there(room: &crate::desk::room::Room, group: &Group) -> Result<(), DeskError> {
    let there = room.read(|scene| {
        let period = scene.plan.period(&group.0);
        period.is_some_and(|period| (1..=period.groups).contains(&group.1))
    });
    if there { Ok(()) } else { Err(DeskError::NoPeriod { name: group.0.clone() }) }
}

/// The sheet of a group, to be typed in.
pub(in crate::web) async fn sheet(
    State(web): State<Web>,
    Path(id): Path<i64>,
    words: Words,
    device: Device,
    Query(whose): Query<Whose>,
) -> Result<Response, Trouble> {
    shown(&web, id, words, &device, (whose.period, whose.group), None).await
}

/// Looks over what was typed, or puts it into the queue.
pub(in crate::web) async fn typed_in(
    State(web): State<Web>,
    Path(id): Path<i64>,
    words: Words,
    device: Device,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let period = sent(&fields, "period").unwrap_or_default().to_owned();
    let group = sent(&fields, "group").and_then(|group| group.parse().ok());
    let group: Group = (period, group.ok_or(Trouble::NotFound)?);
    let typed = typed(&fields, Catalog::of(words.0.code()));
    if sent(&fields, "do") != Some("hand-in") {
        return shown(&web, id, words, &device, group, Some(typed)).await;
    }
    web.wait(move |shelf, now| {
        let room = shelf.room(id, now)?;
        must_be_there(&room, &group)?;
        hand_in(&room, &typed.row(&group), now)
    })
    .await?;
    Ok(Redirect::to(&format!("/i/{id}/approve")).into_response())
}
