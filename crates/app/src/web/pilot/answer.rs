//! What the addresses of the pilot page answer.

use super::page::{Around, page};
use crate::desk::room::pilot::{
    Change, Faults, Looked, PilotView, Saved, TypedSheet, change_lots, go_back, keep_file,
    look_at_file, pilot_view, put_away, save_parts,
};
use crate::desk::room::{Room, Shelf};
use crate::desk::{self, DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::head::file_name;
use crate::web::page::sheet_with;
use crate::web::prepare::{Paper, pdf};
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, Query, State};
use axum::http::{HeaderName, StatusCode, header};
use axum::response::{IntoResponse, Response};
use barm_domain::pilot::Part;
use jiff::Timestamp;
use std::sync::Arc;

type Fields = Vec<(String, String)>;

fn sent<'f>(fields: &'f Fields, name: &str) -> &'f str {
    fields.iter().find(|(field, _)| field == name).map_or("", |(_, value)| value.as_str())
}

/// The page as it is kept.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let view = web
        .wait(move |shelf, now| {
            pilot_view(&shelf.room(id, now)?, w, None, &Faults::default(), now)
        })
        .await?;
    Ok(shown(w, StatusCode::OK, &device, &view, &Done::default()))
}

/// What came of a request.
#[derive(Default)]
struct Done {
    says: Option<String>,
    faults: Faults,
    /// A file that was looked at, and what it would teach.
    looked: Option<(String, Looked)>,
}

fn shown(
    w: Wording,
    status: StatusCode,
    device: &Device,
    view: &PilotView,
    done: &Done,
) -> Response {
    let around = Around {
        field: device.form_field(),
        done: done.says.as_deref(),
        rest: &done.faults.rest,
        looked: done.looked.as_ref(),
    };
    let title = say!(w, "pilot-title", title = &view.title);
    let body = page(w, view, &around);
    let styles = ["plan.css", "pilot.css"];
    let scripts = ["start.js", "pilot.js"];
    (status, sheet_with(w.code(), &title, &styles, &scripts, &body)).into_response()
}

/// Does what a button says; what was typed and is not kept stands there again.
pub(in crate::web) async fn post(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Fields>,
) -> Result<Response, Trouble> {
    let (view, done, status) = web
        .wait(move |shelf: &Shelf, now| {
            let room = shelf.room(id, now)?;
            let mut typed = TypedSheet::default();
            for (name, text) in &fields {
                typed.set(name, text);
            }
            let (done, kept, status) = act(&room, w, &fields, &typed, now)?;
            // What was kept is shown as it is kept; all else as it was typed.
            for part in kept {
                typed = typed.with(part, &room.kept_sheet());
            }
            let view = pilot_view(&room, w, Some(&typed), &done.faults, now)?;
            Ok::<_, DeskError>((view, done, status))
        })
        .await?;
    Ok(shown(w, status, &device, &view, &done))
}

/// What came of a button, and which parts of the sheet are now to be shown as they are kept.
fn act(
    room: &Arc<Room>,
    w: Wording,
    fields: &Fields,
    typed: &TypedSheet,
    now: Timestamp,
) -> Result<(Done, Vec<Part>, StatusCode), DeskError> {
    let from = sent(fields, "from").parse().unwrap_or_default();
    let file = sent(fields, "file").replace("\r\n", "\n");
    let asked = sent(fields, "do");
    let (act, of) = asked.split_once(' ').unwrap_or((asked, ""));
    let place = || of.parse().unwrap_or(usize::MAX);
    let all = || Part::ALL.to_vec();
    let (saved, done, kept) = match act {
        "look" => {
            let looked = Some((file.clone(), look_at_file(room, &file, now)?));
            return Ok((Done { looked, ..Done::default() }, Vec::new(), StatusCode::OK));
        }
        "keep" => (keep_file(room, &file, from, now)?, String::new(), all()),
        "away" => (put_away(room, from, now)?, say!(w, "pilot-put-away"), all()),
        "choose" => {
            let saved = change_lots(room, place(), Change::Choose, from, now)?;
            (saved, say!(w, "pilot-lots-changed"), Vec::new())
        }
        "leave" => {
            let saved = change_lots(room, place(), Change::LeaveOut, from, now)?;
            (saved, say!(w, "pilot-lots-changed"), Vec::new())
        }
        "out" => {
            let saved = change_lots(room, place(), Change::TakeOut, from, now)?;
            (saved, say!(w, "pilot-lot-out"), all())
        }
        "back" => {
            let version = of.parse().unwrap_or_default();
            (go_back(room, version, from, now)?, say!(w, "pilot-gone-back"), all())
        }
        _ => {
            let one = Part::ALL.into_iter().find(|part| part.word() == of);
            let parts = one.map_or_else(all, |part| vec![part]);
            let saved = save_parts(room, typed, &parts, from, now)?;
            (saved, say!(w, "pilot-cleared"), parts)
        }
    };
    let says = |says| Done { says: Some(says), ..Done::default() };
    let ok = StatusCode::OK;
    Ok(match saved {
        Saved::As(learned) if learned.is_empty() => (says(done), kept, ok),
        Saved::As(learned) => (says(say!(w, "pilot-saved", learned = learned)), kept, ok),
        Saved::Same => (says(say!(w, "pilot-same")), kept, ok),
        Saved::Nothing => (says(say!(w, "pilot-nothing")), Vec::new(), ok),
        Saved::Overtaken => {
            (says(say!(w, "pilot-overtaken")), Vec::new(), StatusCode::CONFLICT)
        }
        Saved::Faulty(faults) => {
            let says = Some(say!(w, "pilot-faulty"));
            let done = Done { says, faults, looked: None };
            (done, Vec::new(), StatusCode::UNPROCESSABLE_ENTITY)
        }
    })
}

/// The sheet to fill in by hand, as a PDF.
pub(in crate::web) async fn paper(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(paper): Query<Paper>,
) -> Result<Response, Trouble> {
    let made = move |shelf: &Shelf, now| {
        let room = shelf.room(id, now)?;
        let plan = room.read(|scene| scene.newest.clone());
        let pilot = desk::pilot(&plan)?;
        Ok::<_, DeskError>((room.kind, desk::pilot_pdf(&plan, &pilot, paper.size())?))
    };
    Ok(pdf("pilot", web.wait(made).await?))
}

/// An empty file of readings.
pub(in crate::web) async fn blank(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Response, Trouble> {
    let (kind, text) = web
        .wait(move |shelf: &Shelf, now| {
            let room = shelf.room(id, now)?;
            let plan = room.read(|scene| scene.newest.clone());
            Ok::<_, DeskError>((room.kind, desk::blank_readings(&desk::pilot(&plan)?)))
        })
        .await?;
    let name = file_name(kind, "pilot.csv");
    let headers: [(HeaderName, String); 2] = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
    ];
    Ok((headers, text).into_response())
}
