//! What the planning page answers.

use super::page::{self, Hand};
use crate::desk::Catalog;
use crate::desk::room::proposals::{HANDED_MOST, Typed, hand_in, together_view};
use crate::web::caller::Device;
use crate::web::group::{Own, Spoken};
use crate::web::page::sheet_with;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use axum::extract::{Form, State};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};

async fn shown(
    web: &Web,
    Own(id, group): Own,
    device: &Device,
    words: &'static Catalog,
    typed: Option<Typed>,
    (hands_in, seen): (bool, bool),
) -> Result<Response, Trouble> {
    let view = web
        .wait(move |shelf, now| {
            let room = shelf.room(id, now)?;
            let row = typed.map(|typed| typed.row(&group));
            let view = together_view(&room, &group, row.clone())?;
            match row.filter(|_| hands_in && view.may_be_handed_in(seen)) {
                Some(row) => {
                    hand_in(&room, &row, now)?;
                    together_view(&room, &group, None)
                }
                None => Ok(view),
            }
        })
        .await?;
    let body = page::page(&view, &device.form_field(), words, &Hand::Its);
    let title = words.say("together-title");
    let styles = ["plan.css", "approve.css"];
    Ok(sheet_with(words.code(), &title, &styles, &[], &body).into_response())
}

/// The planning page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    own: Own,
    device: Device,
    Spoken(words): Spoken,
) -> Result<Response, Trouble> {
    shown(&web, own, &device, words, None, (false, false)).await
}

/// Looks over what the group typed, or hands it in.
pub(in crate::web) async fn post(
    State(web): State<Web>,
    own: Own,
    device: Device,
    Spoken(words): Spoken,
    headers: HeaderMap,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    // Each is looked over, and handed in it is kept: as much work as twenty entries.
    web.may_write(&headers, 20)?;
    let typed = typed(&fields, words);
    let hands_in = sent(&fields, "do") == Some("hand-in");
    // The group has read the questions, and hands it in all the same.
    let seen = sent(&fields, "seen").is_some();
    let how = (hands_in, seen);
    shown(&web, own, &device, words, Some(typed), how).await
}

/// What was sent under a name.
pub(super) fn sent<'f>(fields: &'f [(String, String)], name: &str) -> Option<&'f str> {
    fields.iter().find(|(field, _)| field == name).map(|(_, value)| value.trim())
}

/// What the form says.
pub(super) fn typed(fields: &[(String, String)], words: &Catalog) -> Typed {
    let of = |name: &str| {
        let text = sent(fields, name).unwrap_or_default();
        text.chars().take(HANDED_MOST).collect::<String>()
    };
    let levels = fields.iter().filter(|(field, _)| field == "level");
    Typed {
        asks: of("asks"),
        changes: of("changes"),
        levels: levels
            .map(|(_, level)| {
                words.plan_words(level.trim()).chars().take(HANDED_MOST).collect()
            })
            .filter(|level: &String| !level.is_empty())
            .collect(),
        keeps: words.plan_words(&of("keeps")),
        beside: words.plan_words(&of("beside")),
        bags: of("bags"),
        expects: of("expects"),
        because: of("because"),
    }
}
