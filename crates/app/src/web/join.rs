//! Coming in with codes, and going out again.

use super::caller::{Caller, Device};
use super::cookies;
use super::join_page::{JoinPage, NotIn, join_page};
use super::state::Web;
use super::trouble::Trouble;
use super::wall::language;
use crate::desk::doors::{FLOOD_PAUSE, From, JoinKey, NotJoined, Part, Seat, Token};
use crate::desk::room::Shelf;
use crate::desk::room::proposals::plans_first;
use crate::desk::{Catalog, DeskError};
use axum::Form;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use jiff::Timestamp;
use serde::Deserialize;

/// Who came in, and the token of the session.
type Joining = (Token, Seat);

/// What an address brings: from a label the code of a bag, from a group's card its code. Neither
/// lets anybody in without the class code.
#[derive(Deserialize)]
pub(super) struct Label {
    bag: Option<String>,
    group: Option<String>,
    lang: Option<String>,
}

/// What a group types.
#[derive(Deserialize)]
pub(super) struct GroupCodes {
    period: String,
    group: String,
    lang: Option<String>,
}

/// What somebody types who opens a page.
#[derive(Deserialize)]
pub(super) struct PageCode {
    code: String,
    lang: Option<String>,
}

/// The page that asks for codes.
pub(super) async fn ask(
    device: Device,
    headers: HeaderMap,
    Query(label): Query<Label>,
) -> Response {
    let from_label = label.bag.as_ref().is_some_and(|bag| !bag.is_empty());
    let brought = label.bag.filter(|_| from_label).or(label.group).unwrap_or_default();
    let brought: String = brought.chars().take(12).collect();
    let words = language(label.lang.as_deref(), &headers);
    let form_field = device.form_field();
    let page = JoinPage { words, group: &brought, from_label, not_in: None, form_field };
    join_page(&page).into_response()
}

/// Lets a group in.
pub(super) async fn group(
    State(web): State<Web>,
    device: Device,
    headers: HeaderMap,
    Form(sent): Form<GroupCodes>,
) -> Result<Response, Trouble> {
    let token = device.token.clone();
    let words = language(sent.lang.as_deref(), &headers);
    let typed = sent.group.clone();
    let result = judged(&web, move |shelf, now| {
        let key = JoinKey::Group { period: &sent.period, group: &sent.group };
        shelf.join(&From { device: &token }, key, now)
    });
    answer(&web, &headers, &device, words, &typed, result.await).await
}

/// Opens the wall page, the walk-round page or an aide's.
pub(super) async fn page(
    State(web): State<Web>,
    device: Device,
    headers: HeaderMap,
    Form(sent): Form<PageCode>,
) -> Result<Response, Trouble> {
    let token = device.token.clone();
    let words = language(sent.lang.as_deref(), &headers);
    let result = judged(&web, move |shelf, now| {
        shelf.join(&From { device: &token }, JoinKey::Page(&sent.code), now)
    });
    answer(&web, &headers, &device, words, "", result.await).await
}

/// Judges codes when it is their turn. In a flood of wrong ones the next are judged a while after
/// wrong ones, whether or not whoever sent those still waits for an answer.
async fn judged(
    web: &Web,
    judge: impl FnOnce(&Shelf, Timestamp) -> Result<Joining, NotJoined> + Send + 'static,
) -> Result<Joining, NotJoined> {
    let turn = web.shelf.doors.turn().await;
    let web = web.clone();
    let judged = tokio::spawn(async move {
        let result = web.wait(judge).await;
        if matches!(result, Err(NotJoined::Wrong { flood: true })) {
            tokio::time::sleep(FLOOD_PAUSE).await;
        }
        drop(turn);
        result
    });
    judged.await.unwrap_or_else(|_| Err(DeskError::Stopped.into()))
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
    words: &'static Catalog,
    group: &str,
    result: Result<Joining, NotJoined>,
) -> Result<Response, Trouble> {
    match result {
        Ok((token, seat)) => {
            // The session of before ends with a new one.
            end(web, headers, seat.part).await?;
            let name = cookies::name(seat.part);
            let cookie =
                cookies::set(name, token.as_str(), web.now(), seat.ends, web.reach.tls);
            let now = web.now();
            let plans = match (seat.investigation, seat.period.as_deref(), seat.group) {
                (Some(id), Some(period), Some(group)) => {
                    web.room(id).await?.read(|scene| plans_first(scene, period, group, now))
                }
                _ => false,
            };
            let page = match seat.part {
                Part::Group if plans => "/plan-together",
                Part::Group => "/bench",
                Part::Wall => "/wall",
                Part::Round => "/round",
                Part::Aide => "/aide",
                Part::Teacher => "/shelf",
            };
            let by_itself = language(None, headers).code() == words.code();
            let to = if by_itself || matches!(seat.part, Part::Round | Part::Teacher) {
                page.to_owned()
            } else {
                format!("{page}?lang={}", words.code())
            };
            Ok(([(header::SET_COOKIE, cookie)], Redirect::to(&to)).into_response())
        }
        Err(NotJoined::Desk(error)) => Err(error.into()),
        Err(NotJoined::Wait(seconds)) => {
            let status = StatusCode::TOO_MANY_REQUESTS;
            Ok(not_in(status, device, words, group, NotIn::Wait(seconds)))
        }
        Err(NotJoined::Wrong { .. }) => {
            Ok(not_in(StatusCode::FORBIDDEN, device, words, group, NotIn::Wrong))
        }
    }
}

fn not_in(
    status: StatusCode,
    device: &Device,
    words: &'static Catalog,
    group: &str,
    why: NotIn,
) -> Response {
    let form_field = device.form_field();
    let page = JoinPage { words, group, from_label: false, not_in: Some(why), form_field };
    (status, join_page(&page)).into_response()
}
