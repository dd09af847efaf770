//! The aide's page.

mod page;

use super::caller::Caller;
use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use super::wall::language;
use crate::desk::room::aide::aide_view;
use axum::extract::{Query, State};
use axum::http::HeaderMap;
use axum::response::Html;
use serde::Deserialize;

/// What the address may bring.
#[derive(Deserialize)]
pub(super) struct Asked {
    /// The language; without it, what the browser asks for.
    lang: Option<String>,
    /// The station that is open.
    station: Option<String>,
}

/// The tick list of a station.
pub(super) async fn aide(
    State(web): State<Web>,
    caller: Caller,
    Query(asked): Query<Asked>,
    headers: HeaderMap,
) -> Result<Html<String>, Trouble> {
    let (room, _) = web.room_of(&caller).await?;
    let words = language(asked.lang.as_deref(), &headers);
    let view = room.read(|scene| aide_view(scene, words));
    let body = page::page(&view, room.id, asked.station.as_deref(), words);
    Ok(sheet_with(words.code(), &words.say("aide-title"), &["wall.css"], &["aide.js"], &body))
}

/// The page without a server, for tests.
#[cfg(test)]
pub(super) fn drawn(
    view: &crate::desk::room::aide::AideView,
    station: Option<&str>,
    words: &crate::desk::Catalog,
) -> maud::Markup {
    page::page(view, 1, station, words)
}
