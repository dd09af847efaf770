//! The teacher's door: the first passphrase, signing in, signing out.

use super::caller::{Caller, Device};
use super::cookies;
use super::head::lead;
use super::page::sheet_with;
use super::state::Web;
use super::trouble::Trouble;
use super::words::{Words, lay};
use crate::desk::doors::{NotSignedIn, Part, Token, bucket};
use crate::desk::room::Kind;
use crate::desk::{DeskError, Wording, say};
use axum::Form;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;

/// What the form of signing in holds.
#[derive(Deserialize)]
pub(super) struct Passphrase {
    passphrase: String,
    #[serde(default)]
    next: String,
}

/// What is behind the door, once a passphrase was chosen.
#[derive(Clone, Copy)]
struct Door<'a> {
    /// Where it goes on.
    next: &'a str,
    /// Whether a rehearsal is, with a passphrase of its own.
    rehearsal: bool,
}

/// Where somebody wanted to go.
#[derive(Deserialize)]
pub(super) struct Wanted {
    #[serde(default)]
    next: String,
}

/// The address of the door for somebody who wanted to go to a page.
pub(super) fn door(wanted: &str) -> String {
    if onward(wanted) == wanted {
        format!("/teacher?next={wanted}")
    } else {
        "/teacher".to_owned()
    }
}

/// Where it goes on after the door: a page of an investigation, which is on this server whatever
/// somebody wrote into the address; else the shelf.
fn onward(wanted: &str) -> &str {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"/-._~%".contains(&byte);
    let ours = wanted.starts_with("/i/") && !wanted.contains("//") && wanted.bytes().all(plain);
    if ours { wanted } else { "/shelf" }
}

/// What the form of a new passphrase holds.
#[derive(Deserialize)]
pub(super) struct Chosen {
    passphrase: String,
    again: String,
}

/// The page of signing in; the first time, of choosing a passphrase.
pub(super) async fn ask(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    Query(wanted): Query<Wanted>,
) -> Result<Response, Trouble> {
    let (chosen, rehearsal) = web
        .wait(|shelf, _| {
            let all = shelf.investigations()?;
            let rehearsal = all.iter().any(|one| one.kind == Kind::Rehearsal);
            Ok::<_, DeskError>((shelf.doors.has_passphrase()?, rehearsal))
        })
        .await?;
    let door = Door { next: &wanted.next, rehearsal };
    Ok(shown(w, StatusCode::OK, chosen.then_some(door), &device, None))
}

/// Lets the teacher in.
pub(super) async fn sign_in(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    headers: HeaderMap,
    Form(sent): Form<Passphrase>,
) -> Result<Response, Trouble> {
    let address = bucket(device.address);
    let Passphrase { passphrase, next } = sent;
    let result =
        web.wait(move |shelf, now| shelf.doors.sign_in(&passphrase, &address, now)).await;
    match result {
        Ok((token, failed)) => {
            web.log
                .write(web.now(), &format!("teacher signed in; {failed} wrong tries before"));
            signed_in(&web, &headers, &token, onward(&next)).await
        }
        Err(NotSignedIn::Desk(error)) => Err(error.into()),
        Err(refused) => {
            let says = sentence(&refused.to_string());
            let status = match refused {
                NotSignedIn::Wait(_) => StatusCode::TOO_MANY_REQUESTS,
                _ => StatusCode::UNAUTHORIZED,
            };
            let door = Door { next: onward(&next), rehearsal: false };
            Ok(shown(w, status, Some(door), &device, Some(&says)))
        }
    }
}

/// Keeps the first passphrase and lets the teacher in.
pub(super) async fn first(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    headers: HeaderMap,
    Form(sent): Form<Chosen>,
) -> Result<Response, Trouble> {
    // Also where the teacher's pages answer from the network: whoever is first owns the record.
    if !device.address.is_some_and(|address| address.is_loopback()) {
        return Err(Trouble::NotYours);
    }
    if sent.passphrase != sent.again {
        let says = say!(w, "door-not-same");
        return Ok(shown(w, StatusCode::BAD_REQUEST, None, &device, Some(&says)));
    }
    let address = bucket(device.address);
    let result = web
        .wait(move |shelf, now| -> Result<_, NotSignedIn> {
            let kept = shelf.doors.first_passphrase(&sent.passphrase)?;
            if !kept {
                return Ok(None);
            }
            Ok(Some(shelf.doors.sign_in(&sent.passphrase, &address, now)?))
        })
        .await;
    match result {
        Ok(Some((token, _))) => {
            web.log.write(web.now(), "the first passphrase was chosen");
            signed_in(&web, &headers, &token, "/shelf").await
        }
        Ok(None) => Ok(Redirect::to("/teacher").into_response()),
        Err(NotSignedIn::Desk(DeskError::Weak(weak))) => {
            let says = sentence(&DeskError::Weak(weak).to_string());
            Ok(shown(w, StatusCode::BAD_REQUEST, None, &device, Some(&says)))
        }
        Err(NotSignedIn::Desk(error)) => Err(error.into()),
        Err(_) => Ok(Redirect::to("/teacher").into_response()),
    }
}

/// The page of signing out and of another passphrase.
pub(super) async fn out_page(device: Device, Words(w): Words) -> Response {
    shown_out(w, StatusCode::OK, &device, None)
}

/// Keeps another passphrase; everybody who is signed in as the teacher must sign in anew.
pub(super) async fn change(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    Form(sent): Form<Chosen>,
) -> Result<Response, Trouble> {
    let says = if sent.passphrase == sent.again {
        let kept = web.wait(move |shelf, _| shelf.doors.new_passphrase(&sent.passphrase)).await;
        match kept {
            Ok(()) => None,
            Err(DeskError::Weak(weak)) => Some(sentence(&DeskError::Weak(weak).to_string())),
            Err(error) => return Err(error.into()),
        }
    } else {
        Some(say!(w, "door-not-changed"))
    };
    if let Some(says) = says {
        return Ok(shown_out(w, StatusCode::BAD_REQUEST, &device, Some(&says)));
    }
    web.log.write(web.now(), "the passphrase was changed");
    Ok(out(&web, "/teacher"))
}

/// Ends the session.
pub(super) async fn leave(
    State(web): State<Web>,
    _caller: Caller,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    end(&web, &headers).await?;
    Ok(out(&web, "/teacher"))
}

async fn end(web: &Web, headers: &HeaderMap) -> Result<(), Trouble> {
    let token = cookies::read(headers, cookies::name(Part::Teacher)).map(str::to_owned);
    if let Some(token) = token {
        web.wait(move |shelf, _| shelf.doors.leave(&token)).await?;
    }
    Ok(())
}

fn out(web: &Web, to: &str) -> Response {
    let cookie = cookies::clear(cookies::name(Part::Teacher), web.reach.tls);
    ([(header::SET_COOKIE, cookie)], Redirect::to(to)).into_response()
}

async fn signed_in(
    web: &Web,
    headers: &HeaderMap,
    token: &Token,
    to: &str,
) -> Result<Response, Trouble> {
    // The session of before ends with a new one.
    end(web, headers).await?;
    let now = web.now();
    let ends = web.shelf.doors.who(Part::Teacher, token.as_str(), now);
    let ends = ends.map_or(now, |seat| seat.ends);
    let name = cookies::name(Part::Teacher);
    let cookie = cookies::set(name, token.as_str(), now, ends, web.reach.tls);
    Ok(([(header::SET_COOKIE, cookie)], Redirect::to(to)).into_response())
}

fn shown(
    w: Wording,
    status: StatusCode,
    chosen: Option<Door<'_>>,
    device: &Device,
    says: Option<&str>,
) -> Response {
    let body = match chosen {
        Some(door) => known(w, device, says, door),
        None => choose(w, device, says),
    };
    let title = if chosen.is_some() { say!(w, "door-sign-in") } else { say!(w, "door-choose") };
    (status, sheet_with(w.code(), &title, &["door.css"], &[], &body)).into_response()
}

fn known(w: Wording, device: &Device, says: Option<&str>, door: Door<'_>) -> Markup {
    html! {
        main.quietpage.door {
            p.lead {
                (lay!(w, "door-for", page = html! {
                    a href="/join" { (say!(w, "door-join-page")) }
                }))
            }
            h1 { (say!(w, "door-sign-in")) }
            @if door.rehearsal { p { (say!(w, "door-rehearsal")) } }
            (fault(says))
            form method="post" action="/teacher" {
                (device.form_field())
                input type="hidden" name="next" value=(door.next);
                label for="passphrase" { (say!(w, "door-passphrase")) }
                span.fld {
                    input id="passphrase" name="passphrase" type="password" required
                        autocomplete="current-password" autofocus;
                }
                div.btns { button.btn.main type="submit" { (say!(w, "door-sign-in")) } }
            }
            p.small.soft {
                (lay!(w, "door-lost", command = html! { code { "barm passphrase" } }))
            }
        }
    }
}

fn choose(w: Wording, device: &Device, says: Option<&str>) -> Markup {
    html! {
        main.quietpage.door {
            (lead(&say!(w, "door-here")))
            h1 { (say!(w, "door-set-up")) }
            ol.steps {
                li { div {
                    h2 { (say!(w, "door-choose")) }
                    p { (say!(w, "door-four-words")) }
                    (fault(says))
                    form method="post" action="/teacher/first" {
                        (device.form_field())
                        (twice(w))
                        div.btns { button.btn.main type="submit" { (say!(w, "door-set")) } }
                    }
                    p.small.soft { (lay!(w, "door-lost-first", command = html! { code { "barm passphrase" } })) }
                } }
                li { div {
                    h2 { (say!(w, "door-then")) }
                    p { (say!(w, "door-then-says")) }
                } }
                li { div {
                    h2 { (say!(w, "door-day")) }
                    p { (say!(w, "door-day-says")) }
                } }
            }
        }
    }
}

fn shown_out(w: Wording, status: StatusCode, device: &Device, says: Option<&str>) -> Response {
    let body = html! {
        main.quietpage.door {
            p.soft { a href="/shelf" { (say!(w, "door-back")) } }
            h1 { (say!(w, "door-sign-out")) }
            (lead(&say!(w, "door-out-says")))
            form method="post" action="/teacher/leave" {
                (device.form_field())
                div.btns { button.btn.main type="submit" { (say!(w, "door-sign-out")) } }
            }
            h2 { (say!(w, "door-another")) }
            p { (say!(w, "door-another-says")) }
            (fault(says))
            form method="post" action="/teacher/passphrase" {
                (device.form_field())
                (twice(w))
                div.btns { button.btn type="submit" { (say!(w, "door-change")) } }
            }
        }
    };
    (status, sheet_with(w.code(), &say!(w, "door-sign-out"), &["door.css"], &[], &body))
        .into_response()
}

/// The fields of a new passphrase.
fn twice(w: Wording) -> Markup {
    html! {
        label for="passphrase" { (say!(w, "door-passphrase")) }
        span.fld {
            input id="passphrase" name="passphrase" type="password" required
                autocomplete="new-password";
        }
        label for="again" { (say!(w, "door-again")) }
        span.fld {
            input id="again" name="again" type="password" required autocomplete="new-password";
        }
    }
}

fn fault(says: Option<&str>) -> Markup {
    html! { @if let Some(says) = says { div.fault role="alert" { p { (says) } } } }
}

/// With a capital letter and a period.
fn sentence(says: &str) -> String {
    let mut letters = says.chars();
    let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
    format!("{}{}.", first.unwrap_or_default(), letters.as_str())
}
