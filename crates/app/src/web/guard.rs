//! What stands before every handler: who is it, and may they?

use super::caller::Caller;
use super::routes::Role;
use super::state::Web;
use axum::extract::{Request, State};
use axum::http::StatusCode;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// Lets a request through to its handler if the caller has one of the roles.
pub(super) async fn guard(
    State((_web, who)): State<(Web, &'static [Role])>,
    mut request: Request,
    next: Next,
) -> Response {
    if !who.contains(&Role::Anyone) {
        return StatusCode::FORBIDDEN.into_response();
    }
    request.extensions_mut().insert(Caller::Anyone);
    next.run(request).await
}
