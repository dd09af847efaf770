//! What stands on every answer, and what of it is written down.

use super::state::Web;
use super::trouble::{ForTheLog, Pattern, spoken};
use super::wall::language;
use axum::extract::{Request, State};
use axum::http::{HeaderName, HeaderValue, header};
use axum::middleware::Next;
use axum::response::Response;

/// Nothing inline, nothing from elsewhere.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; \
     img-src 'self' data:; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; \
     base-uri 'none'; object-src 'none'";

/// With `no-referrer`, browsers send `Origin: null` with forms, and the check of the origin
/// would have nothing to look at; `same-origin` tells other sites just as little.
const EVERY: [(HeaderName, &str); 5] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
];

/// Puts the headers on, and writes down what was refused and what went wrong.
pub(super) async fn headers(State(web): State<Web>, request: Request, next: Next) -> Response {
    let method = request.method().clone();
    let words = language(None, request.headers());
    let mut answer = spoken(next.run(request).await, words);
    let status = answer.status();
    let why = answer.extensions().get::<ForTheLog>().cloned();
    let refused = matches!(status.as_u16(), 401 | 403 | 413 | 421 | 429);
    if why.is_some() || status.is_server_error() || refused {
        // The pattern of the path, never the path: nobody's code or name stands in a pattern.
        let path = answer.extensions().get::<Pattern>().map_or("(no page)", |path| path.0);
        let why = why.map(|why| why.0).unwrap_or_default();
        web.log.write(web.now(), &format!("{} {method} {path} {why}", status.as_u16()));
    }
    let headers = answer.headers_mut();
    for (name, value) in EVERY {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}
