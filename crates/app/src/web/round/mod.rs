//! The teacher's walk-round page.

mod page;

use super::caller::Caller;
use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use crate::desk::room::round::round_view;
use axum::extract::State;
use axum::response::Html;

/// The walk-round page of the period that its code belongs to.
pub(super) async fn round(
    State(web): State<Web>,
    caller: Caller,
) -> Result<Html<String>, Trouble> {
    let Caller::Round { period, .. } = &caller else { return Err(Trouble::NotYours) };
    let (room, _) = web.room_of(&caller).await?;
    let now = web.now();
    let view = room.read(|scene| round_view(scene, period, now)).ok_or(Trouble::NotFound)?;
    let title = format!("Period {period}: walk-round");
    Ok(sheet_with("en", &title, &["wall.css"], &["live.js"], &page::page(&view)))
}

/// The page without a server, for tests.
#[cfg(test)]
pub(super) fn drawn(view: &crate::desk::room::round::RoundView) -> maud::Markup {
    page::page(view)
}
