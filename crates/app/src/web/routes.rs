//! The one table of addresses: method, path, who may call it, what it shows.

use super::state::Web;
use super::{assets, guard, page};
use axum::Router;
use axum::handler::Handler;
use axum::http::Method;
use axum::routing::{MethodFilter, MethodRouter, on};

/// A part that a caller can have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) enum Role {
    /// Everybody, joined or not.
    Anyone,
    /// The teacher.
    Teacher,
    /// A group.
    Group,
    /// The wall page.
    Wall,
    /// The teacher's walk-round tablet.
    Round,
    /// An aide.
    Aide,
}

/// One address.
pub(super) struct Route {
    /// Method.
    pub(super) method: Method,
    /// Path, as the router writes it.
    pub(super) path: &'static str,
    /// Who may call it.
    pub(super) who: &'static [Role],
    answer: MethodRouter<Web>,
}

/// An address that is read.
pub(super) fn get<H, T>(path: &'static str, who: &'static [Role], handler: H) -> Route
where
    H: Handler<T, Web>,
    T: 'static,
{
    Route { method: Method::GET, path, who, answer: on(MethodFilter::GET, handler) }
}

/// An address that changes something.
pub(super) fn post<H, T>(path: &'static str, who: &'static [Role], handler: H) -> Route
where
    H: Handler<T, Web>,
    T: 'static,
{
    Route { method: Method::POST, path, who, answer: on(MethodFilter::POST, handler) }
}

const ANYONE: &[Role] = &[Role::Anyone];

/// Every address of the program.
pub(super) fn table() -> Vec<Route> {
    vec![get("/", ANYONE, page::door), get("/a/{version}/{name}", ANYONE, assets::asset)]
}

/// The router, made of the table and of nothing else.
pub(super) fn router(web: &Web) -> Router {
    let mut router = Router::new();
    for route in table() {
        let layer =
            axum::middleware::from_fn_with_state((web.clone(), route.who), guard::guard);
        router = router.route(route.path, route.answer.layer(layer));
    }
    router.with_state(web.clone())
}
