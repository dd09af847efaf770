//! What the addresses of the approval queue answer.

use super::page;
use crate::desk::room::proposals::{
    Group, approve_view, handed_in, send_back, table_of, take_in,
};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};

type Fields = Vec<(String, String)>;

async fn shown(
    web: &Web,
    w: Wording,
    id: i64,
    device: &Device,
    done: Option<String>,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| approve_view(&*shelf.room(id, now)?, w)).await?;
    let body = page::page(w, &view, &device.form_field(), done.as_deref());
    let title = say!(w, "approve-title", title = &view.title);
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with(w.code(), &title, &styles, &["approve.js"], &body).into_response())
}

/// The queue.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    shown(&web, w, id, &device, None).await
}

/// Approves, approves with one change, or sends back with one question.
pub(in crate::web) async fn act(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let of = |name: &str| {
        let found = fields.iter().find(|(field, _)| field == name);
        found.map(|(_, value)| value.trim().to_owned()).unwrap_or_default()
    };
    let group: Group = (of("period"), of("group").parse().unwrap_or_default());
    let (act, asks) = (of("do"), of("asks"));
    let (levels, beside, bags) = (of("levels"), of("beside"), of("bags"));
    let worded = of("worded");
    let done = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let who = say!(w, "approve-who", period = &group.0, group = group.1.to_string());
            if act == "return" {
                if asks.is_empty() {
                    return Ok(say!(w, "approve-no-question", who = who));
                }
                send_back(&room, &group, &asks, now)?;
                return Ok(say!(w, "approve-sent-back", who = who));
            }
            let Some(own) = handed_in(&room.all_words()?).remove(&group) else {
                return Ok(say!(w, "approve-nothing-of", who = who));
            };
            let mut written = own.row.written;
            let worded = (act == "change").then_some(worded.as_str());
            if act == "change" {
                let each = levels.split(';').map(str::trim).filter(|level| !level.is_empty());
                written.levels = each.map(str::to_owned).collect();
                written.beside = beside;
                written.bags = bags.parse().unwrap_or(written.bags);
            }
            Ok::<_, DeskError>(match take_in(&room, &written, worded, now)? {
                Some(0) => say!(w, "approve-done", who = who),
                Some(keep) => {
                    let says = say!(w, "approve-done", who = who);
                    format!("{says} {}", say!(w, "plan-keep", count = keep))
                }
                None => say!(w, "approve-not-done", who = who),
            })
        })
        .await?;
    shown(&web, w, id, &device, Some(done)).await
}

/// Everything that was handed in, as a table.
pub(in crate::web) async fn table(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Response, Trouble> {
    let (kind, text) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            Ok::<_, DeskError>((room.kind, table_of(&room)?))
        })
        .await?;
    let name = file_name(kind, "proposals.csv");
    let headers = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((headers, text).into_response())
}
