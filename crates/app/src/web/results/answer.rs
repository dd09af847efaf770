//! What the addresses of the results page answer.

use super::page;
use crate::desk::room::results::{ResultsView, day_shown, results_pdf, results_view};
use crate::desk::room::shared::parcel;
use crate::desk::room::{Kind, Shelf};
use crate::desk::shared::{Licence, Parcel, Said};
use crate::desk::{DeskError, say};
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::prepare::{Paper, pdf};
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderName, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;

/// The results page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let made = move |shelf: &Shelf, now| {
        let room = shelf.room(id, now)?;
        room.foresee();
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

/// What the teacher says of data that are given away.
#[derive(Deserialize)]
pub(in crate::web) struct Sharing {
    license: Option<String>,
    grade: Option<String>,
}

impl Sharing {
    fn said(&self) -> Said {
        let licence = self.license.as_deref().and_then(Licence::of).unwrap_or_default();
        Said { licence, grade: self.grade.is_some(), made_up: false }
    }
}

/// The data package, made now.
pub(in crate::web) async fn package(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(sharing): Query<Sharing>,
) -> Result<Response, Trouble> {
    given(&web, id, &sharing, "application/zip", "data.zip", Parcel::zip).await
}

/// The same as one plain table, made now.
pub(in crate::web) async fn table(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(sharing): Query<Sharing>,
) -> Result<Response, Trouble> {
    given(&web, id, &sharing, "text/csv; charset=utf-8", "data.csv", Parcel::table).await
}

async fn given(
    web: &Web,
    id: i64,
    sharing: &Sharing,
    kind_of_file: &str,
    name: &str,
    packed: fn(&Parcel) -> Vec<u8>,
) -> Result<Response, Trouble> {
    let said = sharing.said();
    let made: Option<(Kind, Vec<u8>)> = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            match parcel(&room, said) {
                Ok(parcel) => Ok(Some((room.kind, packed(&parcel)))),
                Err(DeskError::NothingToShare) => Ok(None),
                Err(error) => Err(error),
            }
        })
        .await?;
    let Some((kind, bytes)) = made else { return Err(Trouble::NotFound) };
    let name = file_name(kind, name);
    let headers: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, kind_of_file.to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((headers, bytes).into_response())
}
