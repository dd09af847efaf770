//! What the addresses of the print page answer.

use super::asked::Asked;
use super::page;
use crate::desk::room::Shelf;
use crate::desk::room::print::{print_view, printed};
use crate::desk::{DeskError, say};
use crate::web::address;
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, HeaderName, header};
use axum::response::{IntoResponse, Response};

/// The print page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
    Words(w): Words,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let (wish, wrong) = asked.wish();
    let view = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            Ok::<_, DeskError>(print_view(&room, w, &wish))
        })
        .await?;
    let title = say!(w, "print-title", title = &view.title);
    let here = web.lan().then(|| address::shown(&web.reach_now(), &headers));
    let body = page::page(w, &view, &asked, &wrong, here.as_deref());
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}

/// One file, made now, to look at or print. For the teacher only.
pub(in crate::web) async fn file(
    State(web): State<Web>,
    Path((id, file)): Path<(i64, String)>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let (wish, wrong) = asked.wish();
    if let Some((_, says)) = wrong.into_iter().next() {
        return Err(Trouble::Wrong(says));
    }
    let made = move |shelf: &Shelf, now| {
        let key = file.split('.').next().unwrap_or_default();
        let room = shelf.room(id, now)?;
        let sheet = printed(&room, key, &wish)?;
        let sheet = sheet.filter(|sheet| file == sheet.part.plain_name());
        Ok::<_, DeskError>(sheet.map(|sheet| (room.kind, sheet)))
    };
    let (made, sheet) = web.wait(made).await?.ok_or(Trouble::NotFound)?;
    let name = file_name(made, &sheet.name);
    let kind = match sheet.part.ending {
        "ics" => "text/calendar; charset=utf-8",
        _ => "application/pdf",
    };
    let headers: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, kind.to_owned()),
        (header::CONTENT_DISPOSITION, format!("inline; filename=\"{name}\"")),
    ];
    Ok((headers, sheet.bytes).into_response())
}
