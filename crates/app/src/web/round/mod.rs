//! The teacher's walk-round page.

mod page;

use super::caller::Caller;
use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use super::words::Words;
use crate::desk::room::round::round_view;
use crate::desk::say;
use axum::extract::State;
use axum::response::Html;

/// The walk-round page of the period that its code belongs to.
pub(super) async fn round(
    State(web): State<Web>,
    caller: Caller,
    Words(w): Words,
) -> Result<Html<String>, Trouble> {
    let Caller::Round { period, .. } = &caller else { return Err(Trouble::NotYours) };
    let (room, _) = web.room_of(&caller).await?;
    let now = web.now();
    let view = room.read(|scene| round_view(scene, w, period, now)).ok_or(Trouble::NotFound)?;
    let title = say!(w, "round-title", period = period);
    Ok(sheet_with(w.code(), &title, &["wall.css"], &["live.js"], &page::page(w, &view)))
}

/// The page without a server, for tests.
#[cfg(test)]
pub(super) fn drawn(
    w: crate::desk::Wording,
    view: &crate::desk::room::round::RoundView,
) -> maud::Markup {
    page::page(w, view)
}
