//! The wall page.

mod band;
mod found;
mod page;
mod verdicts;

pub(super) use band::band;
pub(super) use verdicts::{verdicts, waiting};

use super::address;
use super::caller::Caller;
use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use crate::desk::Catalog;
use crate::desk::room::talk::hung;
use crate::desk::room::wall::wall_view;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, header};
use axum::response::Html;
use serde::Deserialize;

/// What the address may bring.
#[derive(Deserialize)]
pub(super) struct Asked {
    /// The language; without it, what the browser asks for.
    pub(super) lang: Option<String>,
}

/// The texts in the language that an address or a browser asks for.
pub(super) fn language(asked: Option<&str>, headers: &HeaderMap) -> &'static Catalog {
    let accepted = headers.get(header::ACCEPT_LANGUAGE).and_then(|value| value.to_str().ok());
    match asked {
        Some(code) => Catalog::of(code),
        None => Catalog::accepted(accepted.unwrap_or_default()),
    }
}

/// The wall page of the period that its code belongs to.
pub(super) async fn wall(
    State(web): State<Web>,
    caller: Caller,
    Query(asked): Query<Asked>,
    headers: HeaderMap,
) -> Result<Html<String>, Trouble> {
    let Caller::Wall { period, .. } = &caller else { return Err(Trouble::NotYours) };
    let (room, _) = web.room_of(&caller).await?;
    let now = web.now();
    let view = room.read(|scene| wall_view(scene, period, now)).ok_or(Trouble::NotFound)?;
    let doors = &web.shelf.doors;
    let works = doors.codes_work_until(&room, period, now).is_some();
    let code = if works && view.hour.is_early() {
        let (own, name) = (room.clone(), period.clone());
        Some(web.wait(move |shelf, now| shelf.doors.codes(&own, &name, now)).await?.period)
    } else {
        None
    };
    let (own, name) = (room.clone(), period.clone());
    let hung = web.wait(move |_, _| hung(&own, &name)).await?;
    let reach = web.reach_now();
    let address = address::shown(&reach, &headers);
    let far = reach.lan && !address::is_here(&address);
    let join = page::HowToJoin { address, far, code };
    let words = language(asked.lang.as_deref(), &headers);
    let title = words.say_with("wall-period", &[("period", period)]);
    let asked = hung.and_then(|hung| hung.said(words));
    let body = page::page(&view, Some(&join), asked.as_ref(), words);
    Ok(sheet_with(words.code(), &title, &["wall.css"], &["live.js"], &body))
}

/// The page without a server, for tests.
#[cfg(test)]
pub(super) fn drawn(
    view: &crate::desk::room::wall::WallView,
    words: &'static Catalog,
) -> maud::Markup {
    let (address, code) = ("http://192.168.1.20:8420".to_owned(), Some("K7MP4".to_owned()));
    page::page(view, Some(&page::HowToJoin { address, far: true, code }), None, words)
}
