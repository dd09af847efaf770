//! What the addresses for a school's roster answer: looked at first, then the chosen classes are taken.

use super::told;
use crate::desk::room::roster::{look_at_roster, take_roster};
use crate::desk::say;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::body::Bytes;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use jiff::civil::Date;
use serde::Deserialize;

/// Says what a roster offers, and keeps nothing of it.
pub(in crate::web) async fn look(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Words(w): Words,
    bytes: Bytes,
) -> Result<Response, Trouble> {
    let looked =
        web.wait(move |shelf, now| look_at_roster(&*shelf.room(id, now)?, &bytes, now)).await?;
    Ok(match looked {
        Ok(offer) => Html(told::offer(w, &offer).into_string()).into_response(),
        Err(why) => refused(Html(told::refused(w, &why).into_string())),
    })
}

/// Which classes are taken, by their places.
#[derive(Deserialize)]
pub(in crate::web) struct Chosen {
    /// The day as of which the roster was looked at.
    on: String,
    /// A place for each period of the plan, or `-`, parted by dots.
    of: String,
}

/// Keeps the students of the chosen classes; answers when they are on disk.
pub(in crate::web) async fn take(
    State(web): State<Web>,
    Path(id): Path<i64>,
    Query(chosen): Query<Chosen>,
    Words(w): Words,
    bytes: Bytes,
) -> Result<Response, Trouble> {
    let wrong = || Trouble::Wrong(say!(w, "roster-not-chosen"));
    let on: Date = chosen.on.parse().map_err(|_| wrong())?;
    let place = |part: &str| match part {
        "-" => Ok(None),
        part => part.parse().map(Some).map_err(|_| wrong()),
    };
    let of = chosen.of.split('.').map(place).collect::<Result<Vec<Option<usize>>, _>>()?;
    let taken = web
        .wait(move |shelf, now| take_roster(&*shelf.room(id, now)?, &bytes, (on, &of), now))
        .await?;
    Ok(match taken {
        Ok(count) => Html(told::taken(w, id, count).into_string()).into_response(),
        Err(why) => refused(Html(told::refused(w, &why).into_string())),
    })
}

fn refused(says: Html<String>) -> Response {
    (StatusCode::UNPROCESSABLE_ENTITY, says).into_response()
}
