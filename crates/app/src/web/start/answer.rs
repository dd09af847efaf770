//! What the addresses of shelf and start answer.

use super::page;
use crate::desk::start::{self, Typed};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use axum::extract::{Form, Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use barm_domain::ready::Ready;
use maud::Markup;

type Fields = Vec<(String, String)>;

fn shown(status: StatusCode, title: &str, body: &Markup) -> Response {
    (status, sheet_with("en", title, &["plan.css"], &["start.js"], body)).into_response()
}

/// All investigations.
pub(in crate::web) async fn shelf(
    State(web): State<Web>,
    device: Device,
) -> Result<Response, Trouble> {
    let lines = web.wait(start::on_shelf).await?;
    Ok(shown(StatusCode::OK, "Shelf", &page::shelf(&lines, &device.form_field())))
}

/// The ways to start.
pub(in crate::web) async fn lessons(device: Device) -> Response {
    shown(StatusCode::OK, "Start", &page::lessons(&device.form_field(), None))
}

fn named(name: &str) -> Result<Ready, Trouble> {
    Ready::named(name).map_err(|_| Trouble::NotFound)
}

/// The six questions of a ready plan.
pub(in crate::web) async fn lesson(
    Path(name): Path<String>,
    device: Device,
) -> Result<Response, Trouble> {
    let ready = named(&name)?;
    let body = page::six(ready, &Typed::default(), None, &device.form_field());
    Ok(shown(StatusCode::OK, ready.title(), &body))
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
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let ready = named(&name)?;
    let typed = typed(&fields);
    match start::written(ready, &typed) {
        Ok(text) => {
            let id = web.wait(move |shelf, now| start::begin(shelf, &text, now)).await?;
            Ok(Redirect::to(&format!("/i/{id}/plan")).into_response())
        }
        Err(not) => {
            let body = page::six(ready, &typed, Some(&not), &device.form_field());
            Ok(shown(StatusCode::UNPROCESSABLE_ENTITY, ready.title(), &body))
        }
    }
}

/// Opens a plan that somebody brings. It is judged by what is in it, not by its name.
pub(in crate::web) async fn file(
    State(web): State<Web>,
    device: Device,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let text = fields.into_iter().find(|(name, _)| name == "text").map(|(_, text)| text);
    let text = text.unwrap_or_default().replace("\r\n", "\n");
    let wrong: Vec<String> = if text.trim().is_empty() {
        vec!["There is nothing in it.".to_owned()]
    } else {
        let mistakes = start::look_at(text.as_bytes());
        let said = mistakes.iter().take(12);
        said.map(|one| format!("Line {}: {}; {}.", one.line, one.what, one.fix)).collect()
    };
    if wrong.is_empty() {
        let id = web.wait(move |shelf, now| start::begin(shelf, &text, now)).await?;
        return Ok(Redirect::to(&format!("/i/{id}/plan")).into_response());
    }
    let body = page::lessons(&device.form_field(), Some((&text, &wrong)));
    Ok(shown(StatusCode::UNPROCESSABLE_ENTITY, "Start", &body))
}

/// The invented school.
pub(in crate::web) async fn invented(State(web): State<Web>) -> Result<Response, Trouble> {
    let id = web.wait(start::invented).await?;
    Ok(Redirect::to(&format!("/i/{id}/plan")).into_response())
}
