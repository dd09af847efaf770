//! What the addresses of the prepare page answer.

use super::page;
use crate::desk::room::{Kind, prepare};
use crate::desk::{self, DeskError, Size, say};
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderName, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;

/// The prepare page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            room.foresee();
            Ok::<_, DeskError>(prepare::prepare_view(&room))
        })
        .await?;
    let title = say!(w, "prepare-title", title = &view.title);
    let body = page::page(w, &view);
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}

/// Which paper.
#[derive(Deserialize)]
pub(in crate::web) struct Paper {
    paper: Option<String>,
}

impl Paper {
    /// Its size.
    pub(in crate::web) fn size(&self) -> Size {
        if self.paper.as_deref() == Some("a4") { Size::A4 } else { Size::Letter }
    }
}

/// A PDF to look at or print.
pub(in crate::web) fn pdf(name: &str, (kind, bytes): (Kind, Vec<u8>)) -> Response {
    let name = file_name(kind, name);
    let headers: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, "application/pdf".to_owned()),
        (header::CONTENT_DISPOSITION, format!("inline; filename=\"{name}.pdf\"")),
    ];
    (headers, bytes).into_response()
}

/// The prep sheet, made now.
pub(in crate::web) async fn prep_pdf(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(paper): Query<Paper>,
) -> Result<Response, Trouble> {
    let made = move |shelf: &desk::room::Shelf, now| {
        let room = shelf.room(id, now)?;
        Ok::<_, DeskError>((room.kind, prepare::prep_pdf(&room, paper.size())?))
    };
    Ok(pdf("prep", web.wait(made).await?))
}

/// The forecast, made now. For the teacher only.
pub(in crate::web) async fn forecast_pdf(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(paper): Query<Paper>,
) -> Result<Response, Trouble> {
    let made = move |shelf: &desk::room::Shelf, now| {
        let room = shelf.room(id, now)?;
        Ok::<_, DeskError>((room.kind, prepare::forecast_pdf(&room, paper.size())?))
    };
    Ok(pdf("forecast", web.wait(made).await?))
}
