//! The rubric, to be put into the teacher's own words.

use super::rubric_page;
use crate::desk::room::Room;
use crate::desk::room::marks::{self, keep_rubric};
use crate::desk::{DeskError, Wording, say};
use crate::web::caller::Device;
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Response};
use barm_domain::marks::{LEVELS, Rubric, RubricFault, Strand};

fn shown(
    w: Wording,
    (id, room): (i64, &Seen),
    device: &Device,
    faults: &[RubricFault],
) -> Response {
    let about = (id, room.title.as_str(), room.kind);
    let body = rubric_page::page(w, about, &room.rubric, (&device.form_field(), faults));
    let title = say!(w, "marks-title", title = &room.title);
    let styles = ["plan.css", "approve.css", "marks.css"];
    sheet_with(w.code(), &title, &styles, &[], &body).into_response()
}

/// What the page is made from.
struct Seen {
    title: String,
    kind: crate::desk::room::Kind,
    rubric: Rubric,
}

fn seen(room: &Room, rubric: Option<Rubric>) -> Result<Seen, DeskError> {
    let title = room.read(|scene| scene.plan.title.clone());
    let rubric = match rubric {
        Some(rubric) => rubric,
        None => marks::rubric(room)?,
    };
    Ok(Seen { title, kind: room.kind, rubric })
}

/// The rubric.
pub(in crate::web) async fn rubric(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
) -> Result<Response, Trouble> {
    let room = web.wait(move |shelf, now| seen(&*shelf.room(id, now)?, None)).await?;
    Ok(shown(w, (id, &room), &device, &[]))
}

/// Keeps the rubric as it was typed, or the first one again; with faults nothing is kept and they are said.
pub(in crate::web) async fn save_rubric(
    State(web): State<Web>,
    Path(id): Path<i64>,
    device: Device,
    Words(w): Words,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let again = fields.iter().any(|(name, value)| name == "do" && value == "again");
    let (room, faults) = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            if again {
                keep_rubric(&room, None)?;
                return Ok((seen(&room, None)?, Vec::new()));
            }
            let typed = typed(&marks::rubric(&room)?, &fields);
            let faults = typed.faults();
            if faults.is_empty() {
                keep_rubric(&room, Some(&typed))?;
            }
            Ok::<_, DeskError>((seen(&room, Some(typed))?, faults))
        })
        .await?;
    Ok(shown(w, (id, &room), &device, &faults))
}

/// What the form says. A strand whose name is empty is taken out; a name in the last, empty one adds a strand.
fn typed(before: &Rubric, fields: &[(String, String)]) -> Rubric {
    let of = |name: &str| {
        let found = fields.iter().find(|(field, _)| field == name);
        found.map(|(_, value)| value.trim().to_owned()).unwrap_or_default()
    };
    let levels = std::array::from_fn(|at: usize| of(&format!("level-{at}")));
    let looks = |id: &str| -> [String; LEVELS] {
        std::array::from_fn(|at: usize| of(&format!("looks-{id}-{at}")))
    };
    let known = before.strands.iter().map(|strand| strand.id.clone());
    let mut strands: Vec<Strand> = known
        .map(|id| Strand { name: of(&format!("name-{id}")), looks: looks(&id), id })
        .filter(|strand| !strand.name.is_empty())
        .collect();
    let name = of("name-new");
    if !name.is_empty() {
        // An id that no strand has or had among those of the page.
        let free = (1..).map(|number| format!("own_{number}"));
        let taken = |id: &String| before.strands.iter().any(|strand| strand.id == *id);
        let id = free.into_iter().find(|id| !taken(id)).unwrap_or_default();
        strands.push(Strand { name, looks: looks("new"), id });
    }
    Rubric { levels, strands }
}
