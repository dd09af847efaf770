//! The bench page of a group, what it says of itself, and what it sends.

mod amounts;
mod opened;
mod page;
mod sent;
mod told;

pub(super) use page::{STYLES, files, word_files};

use super::caller::Caller;
use super::state::Web;
use super::trouble::Trouble;
use super::wall::{Asked, language};
use crate::desk::room::bench::{bench_view, keep_reasons, take};
use axum::Json;
use axum::extract::{Query, State};
use axum::http::HeaderMap;
use axum::response::Html;
use sent::Sent;
use serde_json::{Value, json};

/// The page.
pub(super) async fn bench(
    State(web): State<Web>,
    caller: Caller,
    Query(asked): Query<Asked>,
    headers: HeaderMap,
) -> Result<Html<String>, Trouble> {
    let told = told_to(&web, &caller).await?;
    Ok(page::page(language(asked.lang.as_deref(), &headers), &told))
}

/// What stands for the group.
pub(super) async fn state(
    State(web): State<Web>,
    caller: Caller,
) -> Result<Json<Value>, Trouble> {
    Ok(Json(told_to(&web, &caller).await?))
}

/// Takes what a device sends; answers when it is on disk.
pub(super) async fn entries(
    State(web): State<Web>,
    caller: Caller,
    headers: HeaderMap,
    Json(sent): Json<Sent>,
) -> Result<Json<Value>, Trouble> {
    let (period, group) = group_of(&caller)?;
    web.may_write(&headers, sent.len())?;
    let (room, _) = web.room_of(&caller).await?;
    let now = web.now();
    let typed = sent.typed();
    let taken = room.read(|scene| take(scene, period, group, &typed, now));
    if !taken.reasons.is_empty() {
        let (id, reasons) = (room.id, taken.reasons);
        web.wait(move |shelf, _| keep_reasons(shelf, id, &reasons)).await?;
    }
    let mut saved: Vec<String> = taken.known.iter().map(ToString::to_string).collect();
    if !taken.entries.is_empty() {
        let receipts = room.enter(taken.entries).await?;
        saved.extend(receipts.iter().map(|receipt| receipt.key.to_string()));
    }
    let now_ms = web.now().as_millisecond();
    Ok(Json(
        json!({ "saved": saved, "refused": taken.refused, "now_ms": now_ms, "speed": web.clock.speed() }),
    ))
}

async fn told_to(web: &Web, caller: &Caller) -> Result<Value, Trouble> {
    let (period, group) = group_of(caller)?;
    let (room, _) = web.room_of(caller).await?;
    let now = web.now();
    let view = room.read(|scene| bench_view(scene, period, group, now));
    Ok(told::told(&view.ok_or(Trouble::NotFound)?, now, web.clock.speed()))
}

fn group_of(caller: &Caller) -> Result<(&str, u32), Trouble> {
    match caller {
        Caller::Group { period, group, .. } => Ok((period, *group)),
        _ => Err(Trouble::NotYours),
    }
}
