//! What the addresses of the results page answer.

use super::page;
use crate::desk::room::Shelf;
use crate::desk::room::results::{ResultsView, day_shown, results_pdf, results_view};
use crate::desk::{DeskError, say};
use crate::web::page::sheet_with;
use crate::web::prepare::{Paper, pdf};
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Response};

/// The results page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let made = move |shelf: &Shelf, now| {
        let room = shelf.room(id, now)?;
        let day = day_shown(&room);
        Ok::<_, DeskError>(ResultsView { day, ..results_view(&room)? })
    };
    let view = web.wait(made).await?;
    let title = say!(w, "results-title", title = &view.title);
    let body = page::page(w, &view);
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}

/// The report, made now.
pub(in crate::web) async fn report(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(paper): Query<Paper>,
) -> Result<Response, Trouble> {
    let made = move |shelf: &Shelf, now| {
        let room = shelf.room(id, now)?;
        Ok::<_, DeskError>((room.kind, results_pdf(&room, paper.size())?))
    };
    Ok(pdf("results", web.wait(made).await?))
}
