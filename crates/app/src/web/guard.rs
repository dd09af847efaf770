//! What stands before every handler: who is it, from where, and may they?
//!
//! Everything here fails closed: what is not known is not allowed.

use super::caller::{Caller, Device, FIELD};
use super::cookies;
use super::origin::{FROM_SCRIPT, from_us, is_form};
use super::routes::{Role, Rules};
use super::sign_in;
use super::state::Web;
use super::trouble::{Pattern, Trouble, in_our_words, plain};
use crate::desk::doors::{Token, same};
use axum::body::{Body, to_bytes};
use axum::extract::{ConnectInfo, Request, State};
use axum::http::{HeaderMap, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use std::net::{IpAddr, SocketAddr};

/// Lets a request through to its handler if the rules of its address say so.
pub(super) async fn guard(
    State((web, rules)): State<(Web, Rules)>,
    request: Request,
    next: Next,
) -> Response {
    let mut answer = guarded(&web, rules, request, next).await;
    answer.extensions_mut().insert(Pattern(rules.path));
    answer
}

async fn guarded(web: &Web, rules: Rules, request: Request, next: Next) -> Response {
    let peer = request.extensions().get::<ConnectInfo<SocketAddr>>();
    let address = peer.map(|peer| peer.0.ip().to_canonical());
    if !reachable(web, rules, address) {
        return plain(StatusCode::FORBIDDEN, FAR);
    }
    let Some(caller) = caller(web, rules.who, request.headers()) else {
        return wrong_role(rules.who, &request);
    };
    let known = cookies::read(request.headers(), cookies::DEVICE).map(str::to_owned);
    let (token, fresh) = match known {
        Some(token) => (token, None),
        None => match Token::new() {
            Ok(token) => (token.as_str().to_owned(), Some(token)),
            Err(error) => return Trouble::from(error).into_response(),
        },
    };
    let form = web.shelf.doors.form_token(&token);
    let changes = !matches!(*request.method(), Method::GET | Method::HEAD);
    let mut request = if changes {
        // A device without a cookie has seen no form of ours.
        match checked(web, rules, request, &form).await {
            Ok(request) => request,
            Err(refused) => return refused,
        }
    } else {
        request
    };
    request.extensions_mut().insert(caller);
    request.extensions_mut().insert(Device::new(token, address, form));
    let mut answer = in_our_words(next.run(request).await);
    if let Some(fresh) = fresh.filter(|_| !rules.plain_file) {
        let line = cookies::set_device(&fresh, web.reach.tls);
        answer.headers_mut().append(header::SET_COOKIE, line);
    }
    answer
}

const FAR: &str = "trouble-far";
const FOREIGN: &str = "trouble-foreign";
const STALE: &str = "trouble-stale";
const LARGE: &str = "trouble-large";

/// Whether an address may be called from there.
fn reachable(web: &Web, rules: Rules, from: Option<IpAddr>) -> bool {
    if from.is_some_and(|from| from.is_loopback()) {
        return true;
    }
    let reach = &web.reach;
    // Somebody who comes from nowhere comes from the network.
    web.lan() && (!rules.near || reach.tls || reach.teacher_from_network)
}

/// The first of the roles that the cookies prove.
fn caller(web: &Web, who: &[Role], headers: &HeaderMap) -> Option<Caller> {
    let by_cookie = who.iter().filter_map(|role| role.part()).find_map(|part| {
        let token = cookies::read(headers, cookies::name(part))?;
        web.caller(part, token)
    });
    by_cookie.or_else(|| who.contains(&Role::Anyone).then_some(Caller::Anyone))
}

/// Sends a browser to where one can come in; tells everything else that it may not.
fn wrong_role(who: &[Role], request: &Request) -> Response {
    let accepts = request.headers().get(header::ACCEPT).and_then(|kinds| kinds.to_str().ok());
    let page = accepts.is_some_and(|kinds| kinds.contains("text/html"));
    if request.method() == Method::GET && page {
        let to = if who == [Role::Teacher] {
            sign_in::door(request.uri().path())
        } else {
            "/join".to_owned()
        };
        return Redirect::to(&to).into_response();
    }
    Trouble::NotYours.into_response()
}

/// The request with its body, if it comes from a page of ours and is not too large.
async fn checked(
    web: &Web,
    rules: Rules,
    request: Request,
    form: &str,
) -> Result<Request, Response> {
    let headers = request.headers();
    if !from_us(headers, web.reach.tls) {
        return Err(plain(StatusCode::FORBIDDEN, FOREIGN));
    }
    let by_form = is_form(headers);
    if !by_form && !headers.contains_key(FROM_SCRIPT) {
        return Err(plain(StatusCode::FORBIDDEN, FOREIGN));
    }
    let (parts, body) = request.into_parts();
    let body = to_bytes(body, rules.most).await;
    let body = body.map_err(|_| plain(StatusCode::PAYLOAD_TOO_LARGE, LARGE))?;
    if by_form && !field(&body).is_some_and(|token| same(&token, form)) {
        return Err(plain(StatusCode::FORBIDDEN, STALE));
    }
    Ok(Request::from_parts(parts, Body::from(body)))
}

/// The token of a form. It is made of hexadecimal digits, so nothing of it is ever encoded.
fn field(body: &[u8]) -> Option<String> {
    let text = std::str::from_utf8(body).ok()?;
    let mut pairs = text.split('&').filter_map(|pair| pair.split_once('='));
    pairs.find(|(name, _)| *name == FIELD).map(|(_, value)| value.to_owned())
}
