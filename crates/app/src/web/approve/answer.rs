//! What the addresses of the approval queue answer.

use super::page;
use crate::desk::DeskError;
use crate::desk::room::proposals::{
    Group, approve_view, handed_in, send_back, table_of, take_in,
};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use axum::extract::{Form, Path, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};

type Fields = Vec<(String, String)>;

async fn shown(
    web: &Web,
    id: i64,
    device: &Device,
    done: Option<String>,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| approve_view(&*shelf.room(id, now)?)).await?;
    let body = page::page(&view, &device.form_field(), done.as_deref());
    let title = format!("Approve: {}", view.title);
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with("en", &title, &styles, &["approve.js"], &body).into_response())
}

/// The queue.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
) -> Result<Response, Trouble> {
    shown(&web, id, &device, None).await
}

/// Approves, approves with one change, or sends back with one question.
pub(in crate::web) async fn act(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let of = |name: &str| {
        let found = fields.iter().find(|(field, _)| field == name);
        found.map(|(_, value)| value.trim().to_owned()).unwrap_or_default()
    };
    let group: Group = (of("period"), of("group").parse().unwrap_or_default());
    let (act, asks) = (of("do"), of("asks"));
    let (levels, beside, bags) = (of("levels"), of("beside"), of("bags"));
    let done = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let who = format!("period {}, group {}", group.0, group.1);
            if act == "return" {
                if asks.is_empty() {
                    return Ok(format!("Write one question for {who}, then send it back."));
                }
                send_back(&room, &group, &asks, now)?;
                return Ok(format!("Sent back to {who} with your question."));
            }
            let Some(own) = handed_in(&room)?.remove(&group) else {
                return Ok(format!("Nothing is there of {who}."));
            };
            let mut written = own.row.written;
            if act == "change" {
                let each = levels.split(';').map(str::trim).filter(|level| !level.is_empty());
                written.levels = each.map(str::to_owned).collect();
                written.beside = beside;
                written.bags = bags.parse().unwrap_or(written.bags);
            }
            Ok::<_, DeskError>(if take_in(&room, &written, now)? {
                format!("Approved: {who}. It is in the plan.")
            } else {
                format!(
                    "Not approved: {who} still has a fault. Change one thing or send it back."
                )
            })
        })
        .await?;
    shown(&web, id, &device, Some(done)).await
}

/// Everything that was handed in, as a table.
pub(in crate::web) async fn table(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Response, Trouble> {
    let text = web.wait(move |shelf, now| table_of(&*shelf.room(id, now)?)).await?;
    let headers = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"proposals.csv\""),
    ];
    Ok((headers, text).into_response())
}
