//! What the addresses of the page of claims answer.

use super::page;
use crate::desk::room::claims::{claims_view, close_peers, open_peers};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;

/// What is to be done in which period.
#[derive(Deserialize)]
pub(in crate::web) struct Asked {
    period: String,
    #[serde(rename = "do")]
    act: String,
}

async fn shown(
    web: &Web,
    w: Wording,
    id: i64,
    device: &Device,
    done: Option<String>,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| claims_view(&*shelf.room(id, now)?, w)).await?;
    let body = page::page(w, &view, &device.form_field(), done.as_deref());
    let title = say!(w, "claims-title", title = &view.title);
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with(w.code(), &title, &styles, &[], &body).into_response())
}

/// The claims.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    shown(&web, w, id, &device, None).await
}

/// Lets the groups of a period read each other's claims, or takes them back.
pub(in crate::web) async fn act(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(asked): Form<Asked>,
) -> Result<Response, Trouble> {
    let done = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let period = &asked.period;
            if room.read(|scene| scene.plan.period(period).is_none()) {
                return Err(DeskError::NoPeriod { name: period.clone() });
            }
            if asked.act == "close" {
                close_peers(&room, period)?;
                return Ok(say!(w, "claims-closed", period = period));
            }
            Ok(match open_peers(&room, period)? {
                count @ (0 | 1) => say!(w, "claims-too-few", period = period, count = count),
                count => say!(w, "claims-opened", period = period, count = count),
            })
        })
        .await?;
    shown(&web, w, id, &device, Some(done)).await
}
