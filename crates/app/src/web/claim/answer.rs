//! What the claim page answers.

use super::{home_page, page};
use crate::desk::Catalog;
use crate::desk::room::claims::{TypedClaim, claim_view, home_view, review};
use crate::web::caller::Device;
use crate::web::group::{Own, Spoken};
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use axum::extract::{Form, State};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Redirect, Response};
use barm_domain::claim::MOST_CHARACTERS;

/// What was sent, field by field.
type Fields = Vec<(String, String)>;

async fn shown(
    web: &Web,
    Own(id, group): Own,
    device: &Device,
    words: &'static Catalog,
    typed: Option<(TypedClaim, bool)>,
) -> Result<Response, Trouble> {
    let view = web
        .wait(move |shelf, now| claim_view(&*shelf.room(id, now)?, &group, typed, now))
        .await?;
    let body = page::page(&view, &device.form_field(), words);
    let title = words.say("claim-title");
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with(words.code(), &title, &styles, &[], &body).into_response())
}

/// The claim page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    own: Own,
    device: Device,
    Spoken(words): Spoken,
) -> Result<Response, Trouble> {
    shown(&web, own, &device, words, None).await
}

/// What the group takes home.
pub(in crate::web) async fn home(
    State(web): State<Web>,
    Own(id, group): Own,
    Spoken(words): Spoken,
) -> Result<Response, Trouble> {
    let view =
        web.wait(move |shelf, now| home_view(&*shelf.room(id, now)?, &group, words)).await?;
    let body = home_page::page(&view, words);
    let styles = ["plan.css", "approve.css"];
    let title = words.say("home-title");
    Ok(sheet_with(words.code(), &title, &styles, &[], &body).into_response())
}

/// Looks over what the group typed, or hands it in.
pub(in crate::web) async fn post(
    State(web): State<Web>,
    own: Own,
    device: Device,
    Spoken(words): Spoken,
    headers: HeaderMap,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    // Each is looked over, and handed in it is kept: as much work as twenty entries.
    web.may_write(&headers, 20)?;
    let (question, treatment) = sent(&fields, "about").split_once('/').unwrap_or_default();
    let typed = TypedClaim {
        question: question.to_owned(),
        treatment: treatment.to_owned(),
        says: short(&fields, "says"),
        by: short(&fields, "by"),
        evidence: long(&fields, "evidence"),
        reasoning: long(&fields, "reasoning"),
    };
    let hands_in = sent(&fields, "do") == "hand-in";
    shown(&web, own, &device, words, Some((typed, hands_in))).await
}

/// Keeps what the group wrote of a claim that it read.
pub(in crate::web) async fn read(
    State(web): State<Web>,
    Own(id, group): Own,
    Spoken(words): Spoken,
    headers: HeaderMap,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    web.may_write(&headers, 20)?;
    let place = sent(&fields, "place").parse().map_err(|_| Trouble::NotFound)?;
    let (convinces, asks) = (long(&fields, "convinces"), long(&fields, "asks"));
    let there = web
        .wait(move |shelf, now| {
            review(&*shelf.room(id, now)?, &group, place, (&convinces, &asks), now)
        })
        .await?;
    if !there {
        return Err(Trouble::NotFound);
    }
    Ok(Redirect::to(&format!("/claim?lang={}#others", words.code())).into_response())
}

fn sent<'f>(fields: &'f [(String, String)], name: &str) -> &'f str {
    let found = fields.iter().find(|(field, _)| field == name);
    found.map_or("", |(_, value)| value.trim())
}

fn short(fields: &[(String, String)], name: &str) -> String {
    sent(fields, name).chars().take(80).collect()
}

/// One character more than there may be, so that what is too long is said and not cut.
fn long(fields: &[(String, String)], name: &str) -> String {
    sent(fields, name).replace("\r\n", "\n").chars().take(MOST_CHARACTERS + 1).collect()
}
