//! What the page of students answers.

use super::page;
use crate::desk::room::roster::{
    PeriodList, RosterView, SavedList, TypedRow, put_away, roster_view, save_list,
};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use serde::Deserialize;

type Fields = Vec<(String, String)>;

/// What the address may bring: what was done.
#[derive(Deserialize)]
pub(in crate::web) struct Did {
    did: Option<String>,
}

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(did): Query<Did>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let said = match did.did.as_deref() {
        Some("taken") => Some(say!(w, "roster-taken")),
        Some("away") => Some(say!(w, "roster-away-done")),
        Some("unsure") => Some(say!(w, "people-unsure")),
        _ => None,
    };
    let view = web.wait(move |shelf, now| roster_view(&*shelf.room(id, now)?, w)).await?;
    Ok(shown(w, StatusCode::OK, &device, &view, &Around { said, ..Around::default() }))
}

/// What is said beside the lists.
#[derive(Default)]
pub(super) struct Around {
    /// What was done.
    pub(super) said: Option<String>,
    /// Period of the form that was not saved, with place of the student and what is wrong.
    pub(super) faults: Option<(String, Vec<(usize, String)>)>,
}

fn shown(
    w: Wording,
    status: StatusCode,
    device: &Device,
    view: &RosterView,
    around: &Around,
) -> Response {
    let body = page::page(w, view, &device.form_field(), around);
    let title = say!(w, "roster-title", title = &view.title);
    let styles = ["plan.css", "roster.css"];
    (status, sheet_with(w.code(), &title, &styles, &["look-first.js"], &body)).into_response()
}

/// Saves who is in which group of a period, or deletes all lists of students.
pub(in crate::web) async fn save(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let of = |name: &str| {
        let found = fields.iter().find(|(field, _)| field == name);
        found.map_or("", |(_, value)| value.as_str())
    };
    if of("do") == "away" {
        if of("sure").is_empty() {
            let to = format!("/i/{id}/roster?did=unsure#away");
            return Ok(Redirect::to(&to).into_response());
        }
        let gone = web.wait(move |shelf, now| put_away(&*shelf.room(id, now)?)).await?;
        let says =
            format!("lists of students of investigation {id} were deleted: {gone} texts");
        web.log.write(web.now(), &says);
        return Ok(Redirect::to(&format!("/i/{id}/roster?did=away")).into_response());
    }
    let period = of("period").to_owned();
    let stamp = of("stamp").parse().unwrap_or(-1);
    let typed = rows(&fields);
    let own = period.clone();
    let (saved, view, typed) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let saved = save_list(&room, (&own, stamp), &typed, now)?;
            Ok::<_, DeskError>((saved, roster_view(&room, w)?, typed))
        })
        .await?;
    Ok(match saved {
        SavedList::Kept => {
            let said = Some(say!(w, "roster-saved", period = &period));
            shown(w, StatusCode::OK, &device, &view, &Around { said, ..Around::default() })
        }
        SavedList::Newer => {
            let said = Some(say!(w, "roster-newer"));
            let around = Around { said, ..Around::default() };
            shown(w, StatusCode::CONFLICT, &device, &view, &around)
        }
        SavedList::Faults(faults) => {
            let view = as_typed(view, &period, &typed);
            let around = Around { said: None, faults: Some((period, faults)) };
            shown(w, StatusCode::UNPROCESSABLE_ENTITY, &device, &view, &around)
        }
    })
}

/// The rows of the form, as many as it has groups for.
fn rows(fields: &Fields) -> Vec<TypedRow> {
    let count = fields.iter().filter(|(name, _)| name.starts_with("group-")).count();
    let mut rows = vec![TypedRow::default(); count];
    for (name, value) in fields {
        let Some((part, at)) = name.split_once('-') else { continue };
        let Some(row) = at.parse().ok().and_then(|at: usize| rows.get_mut(at)) else {
            continue;
        };
        match part {
            "group" => row.group.clone_from(value),
            "absent" => row.absent = true,
            "own" => row.own.clone_from(value),
            "words" => row.words.clone_from(value),
            _ => {}
        }
    }
    rows
}

/// The page with what was typed and not saved.
fn as_typed(mut view: RosterView, period: &str, typed: &[TypedRow]) -> RosterView {
    let list = view.periods.iter_mut().find(|one| one.name == period);
    let Some(PeriodList { rows, .. }) = list else { return view };
    for (row, typed) in rows.iter_mut().zip(typed) {
        row.place.group = typed.group.trim().parse().ok();
        row.place.absent = typed.absent;
        row.own.clone_from(&typed.own);
        row.words.clone_from(&typed.words);
    }
    view
}
