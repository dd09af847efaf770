//! What the addresses of the page of every bag answer.

use super::page;
use crate::desk::room::Shelf;
use crate::desk::room::every_bag::{
    EveryBagView, Quantity, Wanted, curves_table, every_bag_view,
};
use crate::desk::{DeskError, say};
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderName, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;

/// What the address may bring.
#[derive(Deserialize)]
#[serde(default)]
pub(in crate::web) struct Asked {
    period: String,
    show: String,
}

impl Default for Asked {
    fn default() -> Self {
        Self { period: String::new(), show: Quantity::Rise.word().to_owned() }
    }
}

async fn seen(web: &Web, id: i64, asked: Asked) -> Result<EveryBagView, Trouble> {
    let period = Some(asked.period).filter(|name| !name.is_empty());
    let wanted = Wanted { period, quantity: Quantity::of(&asked.show) };
    let view = move |shelf: &Shelf, now| {
        let room = shelf.room(id, now)?;
        room.foresee();
        every_bag_view(&room, wanted)
    };
    Ok(web.wait(view).await?)
}

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = seen(&web, id, asked).await?;
    let title = say!(w, "bags-title", title = &view.title);
    let body = page::page(w, &view);
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}

/// The dots as a picture.
pub(in crate::web) async fn picture(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let view = seen(&web, id, asked).await?;
    let Some([wide, _]) = view.dots else { return Err(Trouble::NotFound) };
    let name = file_name(view.kind, &format!("bags-{}.svg", view.wanted.quantity.word()));
    let headers: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, "image/svg+xml".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((headers, wide).into_response())
}

/// Averages and what was foretold of them, as a table.
pub(in crate::web) async fn table(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let period = Some(asked.period).filter(|name| !name.is_empty());
    let made = move |shelf: &Shelf, now| {
        let room = shelf.room(id, now)?;
        room.foresee();
        Ok::<_, DeskError>((room.kind, curves_table(&room, period.as_deref())?))
    };
    let (kind, Some(bytes)) = web.wait(made).await? else { return Err(Trouble::NotFound) };
    let name = file_name(kind, "curves.csv");
    let headers: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((headers, bytes).into_response())
}
