//! What the addresses of marks answer.

use super::{list_page, one_page};
use crate::desk::room::marks::{self, MarkView, given, keep_given, mark_view, marks_view};
use crate::desk::room::proposals::Group;
use crate::desk::room::roster::grades_offered;
use crate::desk::{DeskError, Wording, say};
use crate::web::address::segment;
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use barm_domain::marks::{Basis, Given, GivenFault, Rubric};
use serde::Deserialize;

const STYLES: [&str; 3] = ["plan.css", "approve.css", "marks.css"];

/// Which period's marks are handed out.
#[derive(Deserialize)]
pub(in crate::web) struct Whose {
    period: String,
}

async fn list_shown(
    web: &Web,
    w: Wording,
    id: i64,
    device: &Device,
    done: Option<String>,
) -> Result<Response, Trouble> {
    let (view, grades) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            Ok::<_, DeskError>((marks_view(&room)?, grades_offered(&room, w, now)?))
        })
        .await?;
    let body = list_page::page(w, (&view, &grades), &device.form_field(), done.as_deref());
    let title = say!(w, "marks-title", title = &view.title);
    Ok(sheet_with(w.code(), &title, &STYLES, &[], &body).into_response())
}

/// The list of groups.
pub(in crate::web) async fn list(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    list_shown(&web, w, id, &device, None).await
}

/// Hands out a period's marks.
pub(in crate::web) async fn hand_out(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(whose): Form<Whose>,
) -> Result<Response, Trouble> {
    let done = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let period = &whose.period;
            let (count, open) = marks::hand_out(&room, period, now)?;
            let says = say!(w, "marks-handed-out", period = period, count = count);
            let open: Vec<String> = open.iter().map(ToString::to_string).collect();
            Ok::<_, DeskError>(if open.is_empty() {
                says
            } else {
                let left = say!(w, "marks-left", groups = open.join(", "), count = open.len());
                format!("{says} {left}")
            })
        })
        .await?;
    list_shown(&web, w, id, &device, Some(done)).await
}

fn shown(w: Wording, view: &MarkView, device: &Device, fault: Option<&GivenFault>) -> Response {
    let body = one_page::page(w, view, &device.form_field(), fault);
    let title = say!(w, "marks-title", title = &view.title);
    sheet_with(w.code(), &title, &STYLES, &["marks.js"], &body).into_response()
}

/// The page of one group.
pub(in crate::web) async fn one(
    State(web): State<Web>,
    Path((id, period, group)): Path<(i64, String, u32)>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let who: Group = (period, group);
    let view = web.wait(move |shelf, now| mark_view(&*shelf.room(id, now)?, w, &who)).await?;
    Ok(shown(w, &view.ok_or(Trouble::NotFound)?, &device, None))
}

/// Keeps what a group is given, and goes on to the next.
pub(in crate::web) async fn mark(
    State(web): State<Web>,
    Path((id, period, group)): Path<(i64, String, u32)>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let who: Group = (period, group);
    let own = who.clone();
    let (kept, beside, view) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let rubric = marks::rubric(&room)?;
            let before = given(&room.all_words()?).remove(&who).unwrap_or_default();
            let kept = match typed(&rubric, before.clone(), &fields) {
                Ok(new) => {
                    keep_given(&room, &who, (&before, &new), now)?;
                    Ok(wanted(&fields))
                }
                Err(fault) => Err(fault),
            };
            let beside = marks::beside(&room, &who).ok_or(Trouble::NotFound)?.2;
            // Whoever goes on does not wait for the page that is left.
            let stays = !matches!(kept, Ok(Way::Next | Way::Before));
            let view = if stays { mark_view(&room, w, &who)? } else { None };
            Ok::<_, Trouble>((kept, beside, view))
        })
        .await?;
    let to = |(period, group): &Group| format!("/i/{id}/marks/{}/{group}", segment(period));
    Ok(match kept {
        Err(fault) => shown(w, &view.ok_or(Trouble::NotFound)?, &device, Some(&fault)),
        Ok(Way::Next) => match &beside.1 {
            Some(next) => Redirect::to(&to(next)).into_response(),
            None => Redirect::to(&format!("/i/{id}/marks")).into_response(),
        },
        Ok(Way::Before) => Redirect::to(&to(beside.0.as_ref().unwrap_or(&own))).into_response(),
        Ok(Way::Stay) => shown(w, &view.ok_or(Trouble::NotFound)?, &device, None),
    })
}

/// Where to go once it is kept.
enum Way {
    Next,
    Before,
    Stay,
}

fn wanted(fields: &[(String, String)]) -> Way {
    match fields.iter().find(|(name, _)| name == "do").map(|(_, to)| to.as_str()) {
        Some("next") => Way::Next,
        Some("before") => Way::Before,
        _ => Way::Stay,
    }
}

/// What the form says: levels, remarks and what they rest on. Levels of strands that are no longer in the rubric stay.
fn typed(
    rubric: &Rubric,
    before: Given,
    fields: &[(String, String)],
) -> Result<Given, GivenFault> {
    let mut new = before;
    for strand in &rubric.strands {
        let of = |part: &str| {
            let name = format!("{part}-{}", strand.id);
            fields.iter().find(|(field, _)| *field == name).map(|(_, value)| value.trim())
        };
        // A level that is no number is none that a page of ours sends.
        let level = of("level").and_then(|level| level.parse().ok());
        new.mark(rubric, &strand.id, level)?;
        new.remark(rubric, &strand.id, of("remark").unwrap_or_default())?;
    }
    let class_data = fields.iter().any(|(name, _)| name == "class-data");
    new.basis = if class_data { Basis::ClassData } else { Basis::Own };
    Ok(new)
}
