//! Classes and years beside each other.

mod page;

use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use super::words::Words;
use crate::desk::say;
use crate::desk::shared::years_on_shelf;
use axum::extract::State;
use axum::response::{IntoResponse, Response};

/// The page.
pub(super) async fn show(State(web): State<Web>, Words(w): Words) -> Result<Response, Trouble> {
    let found = web.wait(years_on_shelf).await?;
    let body = page::page(w, &found);
    let title = say!(w, "years-title");
    Ok(sheet_with(w.code(), &title, &["plan.css"], &[], &body).into_response())
}
