//! What the addresses of shelf and start answer.

use super::page;
use crate::desk::room::library;
use crate::desk::start::{self, Typed};
use crate::desk::{Wording, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use barm_domain::ready::Ready;
use maud::Markup;
use serde::Deserialize;

type Fields = Vec<(String, String)>;

fn shown(status: StatusCode, w: Wording, title: &str, body: &Markup) -> Response {
    (status, sheet_with(w.code(), title, &["plan.css"], &["start.js"], body)).into_response()
}

/// What is looked for on the shelf.
#[derive(Deserialize, Default)]
#[serde(default)]
pub(in crate::web) struct Find {
    find: String,
}

/// Whose plan is used again, from which day on.
#[derive(Deserialize)]
pub(in crate::web) struct Again {
    id: i64,
    day: String,
}

/// Puts a plan on the shelf once more, with other days.
pub(in crate::web) async fn again(
    State(web): State<Web>,
    Words(w): Words,
    Form(again): Form<Again>,
) -> Result<Response, Trouble> {
    not_in_a_rehearsal(&web, w).await?;
    let no_day = || Trouble::Wrong(say!(w, "start-no-day"));
    let day = again.day.trim().parse().map_err(|_| no_day())?;
    let made =
        web.wait(move |shelf, now| library::use_again(shelf, again.id, day, now)).await?;
    let id = made.ok_or_else(no_day)?;
    Ok(Redirect::to(&format!("/i/{id}/plan")).into_response())
}

/// All investigations, or those that are looked for.
pub(in crate::web) async fn shelf(
    State(web): State<Web>,
    Query(find): Query<Find>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web.wait(move |shelf, now| start::on_shelf(shelf, w, &find.find, now)).await?;
    if view.counting {
        let web = web.clone();
        tokio::spawn(async move {
            if let Err(error) = web.wait(start::count_rest).await {
                web.log.write(web.now(), &format!("the shelf could not be counted: {error}"));
            }
        });
    }
    let body = page::shelf(w, &view, &device.form_field());
    Ok(shown(StatusCode::OK, w, &say!(w, "shelf-title"), &body))
}

/// The ways to start.
pub(in crate::web) async fn lessons(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    not_in_a_rehearsal(&web, w).await?;
    let body = page::lessons(w, &device.form_field(), None);
    Ok(shown(StatusCode::OK, w, &say!(w, "start-title"), &body))
}

/// Where a rehearsal lies, nothing else is started: its clock is not the day's, and its folder is
/// used again by the next.
pub(in crate::web) async fn not_in_a_rehearsal(web: &Web, w: Wording) -> Result<(), Trouble> {
    if web.wait(|shelf, _| start::of_a_rehearsal(shelf)).await? {
        return Err(Trouble::Wrong(say!(w, "start-in-a-rehearsal")));
    }
    Ok(())
}

fn named(name: &str) -> Result<Ready, Trouble> {
    Ready::named(name).map_err(|_| Trouble::NotFound)
}

/// The six questions of a ready plan.
pub(in crate::web) async fn lesson(
    State(web): State<Web>,
    Path(name): Path<String>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let ready = named(&name)?;
    not_in_a_rehearsal(&web, w).await?;
    let body = page::six(w, ready, &Typed::default(), None, &device.form_field());
    Ok(shown(StatusCode::OK, w, ready.title(), &body))
}

fn typed(fields: &Fields) -> Typed {
    let of = |name: &str| {
        let found = fields.iter().find(|(field, _)| field == name);
        found.map(|(_, value)| value.clone()).unwrap_or_default()
    };
    let foods = fields.iter().filter(|(field, _)| field == "food");
    Typed {
        date: of("date"),
        start: of("start"),
        zone: of("zone"),
        altitude: of("altitude"),
        periods: of("periods"),
        groups: of("groups"),
        students: of("students"),
        cupboard: foods.map(|(_, value)| value.clone()).collect(),
        bag: of("bag"),
        water: of("water"),
        length: of("length"),
    }
}

/// Makes an investigation of a ready plan.
pub(in crate::web) async fn made(
    State(web): State<Web>,
    Path(name): Path<String>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let ready = named(&name)?;
    not_in_a_rehearsal(&web, w).await?;
    let typed = typed(&fields);
    match start::written(w, ready, &typed) {
        Ok(text) => {
            let id = web.wait(move |shelf, now| start::begin(shelf, &text, now)).await?;
            Ok(Redirect::to(&format!("/i/{id}/plan?new=1")).into_response())
        }
        Err(not) => {
            let body = page::six(w, ready, &typed, Some(&not), &device.form_field());
            Ok(shown(StatusCode::UNPROCESSABLE_ENTITY, w, ready.title(), &body))
        }
    }
}

/// Opens a plan that somebody brings. It is judged by what is in it, not by its name.
pub(in crate::web) async fn file(
    State(web): State<Web>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    not_in_a_rehearsal(&web, w).await?;
    let text = fields.into_iter().find(|(name, _)| name == "text").map(|(_, text)| text);
    let text = text.unwrap_or_default().replace("\r\n", "\n");
    let wrong = start::look_at(w, &text);
    if wrong.is_empty() {
        let id = web.wait(move |shelf, now| start::begin(shelf, &text, now)).await?;
        return Ok(Redirect::to(&format!("/i/{id}/plan?new=1")).into_response());
    }
    let body = page::lessons(w, &device.form_field(), Some((&text, &wrong)));
    Ok(shown(StatusCode::UNPROCESSABLE_ENTITY, w, &say!(w, "start-title"), &body))
}

/// The invented school.
pub(in crate::web) async fn invented(
    State(web): State<Web>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    not_in_a_rehearsal(&web, w).await?;
    let id = web.wait(start::invented).await?;
    Ok(Redirect::to(&format!("/i/{id}/plan")).into_response())
}
