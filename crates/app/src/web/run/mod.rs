//! The teacher's page of one period.

mod bag;
mod codes;
mod lists;
mod meter;
mod page;
mod tools;

use super::address::{self, segment};
use super::caller::Device;
use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use super::words::Words;
use crate::desk::doors;
use crate::desk::room::Room;
use crate::desk::room::run::{Act, ActError, Fields, bag_page, run_view, the_period};
use crate::desk::{Wording, say};
use axum::Form;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{Html, IntoResponse, Redirect, Response};
use barm_domain::code::BagCode;
use barm_domain::record::Key;
use page::Around;
use serde::Deserialize;
use std::sync::Arc;
pub(super) use tools::lent_word;

const STYLES: &[&str] = &["run.css"];
const SCRIPTS: &[&str] = &["run.js"];

/// What the address may bring.
#[derive(Deserialize)]
pub(super) struct Asked {
    /// The entry made last.
    did: Option<String>,
    /// A bag to write for.
    bag: Option<String>,
}

impl Asked {
    fn did(&self) -> Option<Key> {
        self.did.as_deref()?.parse().ok()
    }
}

/// The run page of the period that it is time for.
pub(super) async fn any(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Redirect, Trouble> {
    let room = web.room(id).await?;
    let now = web.now();
    let period = room.read(|scene| the_period(scene, now)).ok_or(Trouble::NotFound)?;
    Ok(Redirect::to(&format!("/i/{id}/run/{}", segment(&period))))
}

/// The run page.
pub(super) async fn run(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    Query(asked): Query<Asked>,
    device: Device,
    Words(w): Words,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    room.foresee();
    shown(&web, w, (&device, &headers), &room, &period, &asked, None).await
}

/// Does what a button or a form of the run page says.
pub(super) async fn act(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    device: Device,
    Words(w): Words,
    headers: HeaderMap,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    match done(&web, &room, &period, &fields).await? {
        Ok(did) => Ok(Redirect::to(&format!("/i/{id}/run/{}?did={did}", segment(&period)))
            .into_response()),
        Err(error) => {
            let bag = fields.get("bag").cloned();
            let asked = Asked { did: None, bag };
            shown(&web, w, (&device, &headers), &room, &period, &asked, Some(error.says(w)))
                .await
        }
    }
}

/// The page of one bag.
pub(super) async fn one_bag(
    State(web): State<Web>,
    Path((id, period, code)): Path<(i64, String, String)>,
    Query(asked): Query<Asked>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    room.foresee();
    bag_shown(&web, w, &device, &room, (&period, &code, asked.did()), None)
}

/// Does something with one bag.
pub(super) async fn act_on_bag(
    State(web): State<Web>,
    Path((id, period, code)): Path<(i64, String, String)>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    match done(&web, &room, &period, &fields).await? {
        Ok(did) => {
            let to =
                format!("/i/{id}/run/{}/bag/{}?did={did}", segment(&period), segment(&code));
            Ok(Redirect::to(&to).into_response())
        }
        Err(error) => {
            bag_shown(&web, w, &device, &room, (&period, &code, None), Some(error.says(w)))
        }
    }
}

/// The codes of a period in large print, to show or to print.
pub(super) async fn codes(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    Words(w): Words,
    device: Device,
    headers: HeaderMap,
) -> Result<Html<String>, Trouble> {
    let room = web.room(id).await?;
    let joining = joining(&web, &room, &period, &headers).await?;
    let body = codes::print(w, id, &period, &joining, &device.form_field());
    Ok(sheet_with(w.code(), &say!(w, "codes-title", period = &period), STYLES, &[], &body))
}

/// Puts what was asked for on record; gives the key of its first entry.
async fn done(
    web: &Web,
    room: &Arc<Room>,
    period: &str,
    fields: &Fields,
) -> Result<Result<Key, ActError>, Trouble> {
    let act = match Act::read(fields, period) {
        Ok(act) => act,
        Err(error) => return Ok(Err(error)),
    };
    let sent = fields.get("key").and_then(|key| key.parse::<Key>().ok());
    let now = web.now();
    let key = match sent {
        Some(key) => key,
        None => doors::key(now)?,
    };
    let entries = room.read(|scene| {
        let planned = scene.plan.period(period)?;
        Some(act.entries(scene, planned, key, now))
    });
    match entries.ok_or(Trouble::NotFound)? {
        Ok(entries) => {
            room.enter(entries).await?;
            Ok(Ok(key))
        }
        Err(error) => Ok(Err(error)),
    }
}

async fn shown(
    web: &Web,
    w: Wording,
    from: (&Device, &HeaderMap),
    room: &Arc<Room>,
    period: &str,
    asked: &Asked,
    fault: Option<String>,
) -> Result<Response, Trouble> {
    let now = web.now();
    let view = room.read(|scene| run_view(scene, w, period, asked.did(), now));
    let view = view.ok_or(Trouble::NotFound)?;
    let joining = joining(web, room, period, from.1).await?;
    let status =
        if fault.is_some() { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    let around = Around {
        field: from.0.form_field(),
        key: doors::key(now)?.to_string(),
        fault,
        picked: asked.bag.as_ref().map(|bag| bag.chars().take(12).collect()),
        joining: codes::devices(w, room.id, period, &joining, &from.0.form_field()),
    };
    let body = page::page(w, &view, &around);
    let page =
        sheet_with(w.code(), &say!(w, "run-title", period = period), STYLES, SCRIPTS, &body);
    Ok((status, page).into_response())
}

fn bag_shown(
    web: &Web,
    w: Wording,
    device: &Device,
    room: &Arc<Room>,
    (period, code, did): (&str, &str, Option<Key>),
    fault: Option<String>,
) -> Result<Response, Trouble> {
    let now = web.now();
    let code: BagCode = code.parse().map_err(|_| Trouble::NotFound)?;
    let view = room
        .read(|scene| bag_page(scene, w, period, code, did, now))
        .ok_or(Trouble::NotFound)?;
    let status =
        if fault.is_some() { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    let around = Around {
        field: device.form_field(),
        key: doors::key(now)?.to_string(),
        fault,
        picked: None,
        joining: maud::html! {},
    };
    let body = bag::page(w, &view, &around);
    let page = sheet_with(
        w.code(),
        &say!(w, "bag-title", bag = &view.bag.bag.name),
        STYLES,
        SCRIPTS,
        &body,
    );
    Ok((status, page).into_response())
}

/// The codes of a period and who came in with them.
async fn joining(
    web: &Web,
    room: &Arc<Room>,
    period: &str,
    headers: &HeaderMap,
) -> Result<codes::Joining, Trouble> {
    let (own, name) = (room.clone(), period.to_owned());
    let codes = web.wait(move |shelf, now| shelf.doors.codes(&own, &name, now)).await?;
    let now = web.now();
    let doors = &web.shelf.doors;
    let until = doors.codes_work_until(room, period, now);
    let local = |at| room.read(|scene| crate::desk::room::run::local_time(scene, period, at));
    let joined = doors.joined(room.id, now).into_iter();
    let own = joined.filter(|one| one.seat.period.as_deref().is_none_or(|of| of == period));
    Ok(codes::Joining {
        codes,
        works_until: until.map(local),
        devices: own.map(|one| (local(one.since), local(one.seen), one)).collect(),
        lan: web.lan(),
        address: address::shown(&web.reach_now(), headers),
    })
}

#[cfg(test)]
pub(super) use drawn::{bag_drawn, drawn};

/// Pages without a server, for tests.
#[cfg(test)]
mod drawn {
    use super::page::Around;
    use super::{bag, page};
    use crate::desk::Wording;
    use crate::desk::room::run::{BagPage, RunView};
    use maud::{Markup, html};

    fn around() -> Around {
        Around {
            field: html! {},
            key: "0190000000007000800000000000002a".to_owned(),
            fault: None,
            picked: None,
            joining: html! { p { "Class code " b.code { "K7MP4" } "." } },
        }
    }

    pub(in crate::web) fn drawn(view: &RunView) -> Markup {
        page::page(Wording::english(), view, &around())
    }

    pub(in crate::web) fn bag_drawn(view: &BagPage) -> Markup {
        bag::page(Wording::english(), view, &around())
    }
}
