//! Classes and years beside each other.

mod lots;
mod page;

use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use super::words::Words;
use crate::desk::room::Shelf;
use crate::desk::shared::{lots_on_shelf, years_on_shelf};
use crate::desk::{DeskError, say};
use axum::extract::State;
use axum::response::{IntoResponse, Response};

/// The page.
pub(super) async fn show(State(web): State<Web>, Words(w): Words) -> Result<Response, Trouble> {
    let both = |shelf: &Shelf, now| {
        Ok::<_, DeskError>((years_on_shelf(shelf, now)?, lots_on_shelf(shelf, now)?))
    };
    let (found, lots) = web.wait(both).await?;
    let body = page::page(w, &found, &lots);
    let title = say!(w, "years-title");
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}
