//! What the teacher does about codes and devices that joined.

use super::address::segment;
use super::state::Web;
use super::trouble::Trouble;
use super::words::Words;
use crate::desk::doors::{CodeRow, Part};
use crate::desk::say;
use axum::Form;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use serde::Deserialize;

/// Which device.
#[derive(Deserialize)]
pub(super) struct Which {
    device: String,
    /// The period whose page the teacher looks at.
    period: Option<String>,
}

/// Which code is to be another from now on.
#[derive(Deserialize)]
pub(super) struct Renewed {
    /// `period`, `group`, `wall`, `round` or `aide`.
    what: String,
    /// The group's number.
    group: Option<u32>,
}

/// Puts a device out.
pub(super) async fn put_out(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Form(which): Form<Which>,
) -> Result<Response, Trouble> {
    let device = which.device;
    let out = web.wait(move |shelf, _| shelf.doors.put_out(id, &device)).await?;
    if out {
        web.log.write(web.now(), "a device was put out");
    }
    Ok(back(id, which.period.as_deref()))
}

/// Lets the codes of a period work until the end of the day, whatever the hour.
pub(super) async fn open_codes(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    let there = room.read(|scene| scene.plan.periods.iter().any(|one| one.name == period));
    if !there {
        return Err(Trouble::NotFound);
    }
    web.shelf.doors.open_codes(&room, &period, web.now());
    Ok(back(id, Some(&period)))
}

/// Takes that back.
pub(super) async fn close_codes(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    web.shelf.doors.close_codes(&room, &period);
    Ok(back(id, Some(&period)))
}

/// Makes another code; whoever came in with the old one is put out.
pub(super) async fn renew_codes(
    State(web): State<Web>,
    Path((id, period)): Path<(i64, String)>,
    Words(w): Words,
    Form(renewed): Form<Renewed>,
) -> Result<Response, Trouble> {
    let room = web.room(id).await?;
    let of = period.clone();
    web.wait(move |shelf, now| -> Result<(), Trouble> {
        let period = of;
        // Only for a period that the plan has.
        shelf.doors.codes(&room, &period, now)?;
        let row = match (renewed.what.as_str(), renewed.group) {
            ("period", _) => CodeRow::Period(&period),
            ("group", Some(group)) => CodeRow::Group(&period, group),
            ("wall", _) => CodeRow::Page(Part::Wall, &period),
            ("round", _) => CodeRow::Page(Part::Round, &period),
            ("aide", _) => CodeRow::Aide,
            _ => return Err(Trouble::Wrong(say!(w, "codes-none-such"))),
        };
        shelf.doors.renew(&room, row, now)?;
        Ok(())
    })
    .await?;
    Ok(back(id, Some(&period)))
}

/// To the page of a period, or to all of them.
fn back(id: i64, period: Option<&str>) -> Response {
    let to = match period {
        Some(period) => format!("/i/{id}/run/{}", segment(period)),
        None => "/shelf".to_owned(),
    };
    Redirect::to(&to).into_response()
}
