//! Coming in with codes, and going out again.

use super::caller::{Caller, Device};
use super::cookies;
use super::page::sheet;
use super::state::Web;
use super::trouble::Trouble;
use crate::desk::doors::{From, JoinKey, NotJoined, Part};
use axum::Form;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use maud::html;
use serde::Deserialize;

/// What the address of a label brings: the code of a bag, and nothing else.
#[derive(Deserialize)]
pub(super) struct Label {
    bag: Option<String>,
}

/// What a group types.
#[derive(Deserialize)]
pub(super) struct GroupCodes {
    period: String,
    group: String,
}

/// What somebody types who opens a page.
#[derive(Deserialize)]
pub(super) struct PageCode {
    code: String,
}

/// The page that asks for codes.
pub(super) async fn ask(device: Device, Query(label): Query<Label>) -> Response {
    let bag: String = label.bag.unwrap_or_default().chars().take(12).collect();
    shown(StatusCode::OK, &device, &bag, None)
}

/// Lets a group in.
pub(super) async fn group(
    State(web): State<Web>,
    device: Device,
    headers: HeaderMap,
    Form(sent): Form<GroupCodes>,
) -> Result<Response, Trouble> {
    let group = sent.group.clone();
    let (token, address) = (device.token.clone(), device.address);
    let result = web.wait(move |shelf, now| {
        let from = From { device: &token, address };
        shelf.join(&from, JoinKey::Group { period: &sent.period, group: &sent.group }, now)
    });
    answer(&web, &headers, &device, &group, result.await).await
}

/// Opens the wall page, the walk-round page or an aide's.
pub(super) async fn page(
    State(web): State<Web>,
    device: Device,
    headers: HeaderMap,
    Form(sent): Form<PageCode>,
) -> Result<Response, Trouble> {
    let (token, address) = (device.token.clone(), device.address);
    let result = web.wait(move |shelf, now| {
        shelf.join(&From { device: &token, address }, JoinKey::Page(&sent.code), now)
    });
    answer(&web, &headers, &device, "", result.await).await
}

/// Ends the session of the one who calls.
pub(super) async fn leave(
    State(web): State<Web>,
    caller: Caller,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let part = match caller {
        Caller::Group { .. } => Part::Group,
        Caller::Wall { .. } => Part::Wall,
        Caller::Round { .. } => Part::Round,
        Caller::Aide { .. } => Part::Aide,
        Caller::Teacher | Caller::Anyone => return Err(Trouble::NotYours),
    };
    end(&web, &headers, part).await?;
    let cookie = cookies::clear(cookies::name(part), web.reach.tls);
    Ok(([(header::SET_COOKIE, cookie)], Redirect::to("/join")).into_response())
}

async fn end(web: &Web, headers: &HeaderMap, part: Part) -> Result<(), Trouble> {
    let token = cookies::read(headers, cookies::name(part)).map(str::to_owned);
    if let Some(token) = token {
        web.wait(move |shelf, _| shelf.doors.leave(&token)).await?;
    }
    Ok(())
}

async fn answer(
    web: &Web,
    headers: &HeaderMap,
    device: &Device,
    group: &str,
    result: Result<(crate::desk::doors::Token, crate::desk::doors::Seat), NotJoined>,
) -> Result<Response, Trouble> {
    match result {
        Ok((token, seat)) => {
            // The session of before ends with a new one.
            end(web, headers, seat.part).await?;
            let name = cookies::name(seat.part);
            let cookie =
                cookies::set(name, token.as_str(), web.now(), seat.ends, web.reach.tls);
            let to = match seat.part {
                Part::Group => "/bench",
                Part::Wall => "/wall",
                Part::Round => "/round",
                Part::Aide => "/aide",
                Part::Teacher => "/shelf",
            };
            Ok(([(header::SET_COOKIE, cookie)], Redirect::to(to)).into_response())
        }
        Err(NotJoined::Desk(error)) => Err(error.into()),
        Err(NotJoined::Wait(seconds)) => {
            let says = format!("There were too many wrong codes. Wait {seconds} seconds.");
            Ok(shown(StatusCode::TOO_MANY_REQUESTS, device, group, Some(&says)))
        }
        Err(NotJoined::Wrong) => {
            let says =
                "These codes do not open anything now. Read them again, or ask your teacher.";
            Ok(shown(StatusCode::FORBIDDEN, device, group, Some(says)))
        }
    }
}

fn shown(status: StatusCode, device: &Device, group: &str, says: Option<&str>) -> Response {
    let body = html! {
        main.quietpage {
            h1 { "Join" }
            @if let Some(says) = says { p.warn role="alert" { (says) } }
            form method="post" action="/join" {
                (device.form_field())
                label for="period" { "Period code" }
                input id="period" name="period" required autocomplete="off"
                    autocapitalize="characters" spellcheck="false" maxlength="16";
                label for="group" { "Group code" }
                input id="group" name="group" value=(group) required autocomplete="off"
                    autocapitalize="characters" spellcheck="false" maxlength="16";
                button type="submit" { "Join" }
            }
            h2 { "Wall, walk-round, aide" }
            form method="post" action="/join/page" {
                (device.form_field())
                label for="code" { "Page code" }
                input id="code" name="code" required autocomplete="off"
                    autocapitalize="characters" spellcheck="false" maxlength="16";
                button type="submit" { "Open the page" }
            }
        }
    };
    (status, sheet("en", "Join", &body)).into_response()
}
