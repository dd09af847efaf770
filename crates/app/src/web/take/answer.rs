//! What the addresses for a colleague's package answer: what is in it, and that it is kept.

use super::{page, told};
use crate::desk::room::Shelf;
use crate::desk::shared::{Package, Taken, put_on_shelf};
use crate::desk::{DeskError, Wording, say};
use crate::web::page::sheet_with;
use crate::web::start::not_in_a_rehearsal;
use crate::web::state::Web;
use crate::web::trouble::Trouble;
use crate::web::words::Words;
use axum::body::Bytes;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use serde::Deserialize;

/// The page.
pub(in crate::web) async fn show(
    State(web): State<Web>,
    Words(w): Words,
) -> Result<Response, Trouble> {
    not_in_a_rehearsal(&web, w).await?;
    let title = say!(w, "take-title");
    let body = page::page(w);
    Ok(sheet_with(w.code(), &title, &["plan.css"], &["look-first.js"], &body).into_response())
}

/// What the page sends beside the package.
#[derive(Deserialize, Default)]
#[serde(default)]
pub(in crate::web) struct Sent {
    /// What the file was called.
    file: String,
    /// What to call the investigation.
    title: Option<String>,
    /// The day to write down.
    day: Option<String>,
}

/// Why nothing came of a package.
#[derive(Debug)]
pub(super) enum NotTaken {
    /// It was refused, or what it holds makes no plan.
    Package(DeskError),
    /// No day that is over was chosen.
    Day,
    /// It was given no title.
    Title,
}

/// The last day that is over wherever the class was, to the day.
fn yesterday(now: Timestamp) -> Date {
    let today = now.to_zoned_datetime(TimeZone::UTC).date();
    today.yesterday().unwrap_or(today)
}

fn taken(sent: &Sent, bytes: &[u8], now: Timestamp) -> Result<Taken, NotTaken> {
    let day = match &sent.day {
        Some(day) => day.trim().parse().map_err(|_| NotTaken::Day)?,
        None => yesterday(now),
    };
    if day > yesterday(now) {
        return Err(NotTaken::Day);
    }
    let title = sent.title.as_deref().map(str::trim);
    if title == Some("") {
        return Err(NotTaken::Title);
    }
    let package = Package::sent(&sent.file, bytes);
    package.and_then(|package| Taken::of(package, title, day)).map_err(NotTaken::Package)
}

/// Says what is in a package, and keeps nothing of it.
pub(in crate::web) async fn look(
    State(web): State<Web>,
    Query(sent): Query<Sent>,
    Words(w): Words,
    bytes: Bytes,
) -> Result<Response, Trouble> {
    let looked = web
        .wait(move |_, now| Ok::<_, Trouble>(taken(&sent, &bytes, now).map_err(Box::new)))
        .await?;
    Ok(match looked {
        Ok(taken) => Html(told::offer(w, &taken).into_string()).into_response(),
        Err(why) => refused(w, &why),
    })
}

/// Keeps a package as an investigation of its own; answers when it is on disk.
pub(in crate::web) async fn keep(
    State(web): State<Web>,
    Query(sent): Query<Sent>,
    Words(w): Words,
    bytes: Bytes,
) -> Result<Response, Trouble> {
    not_in_a_rehearsal(&web, w).await?;
    let kept = move |shelf: &Shelf, now: Timestamp| {
        let taken = match taken(&sent, &bytes, now) {
            Ok(taken) => taken,
            Err(why) => return Ok(Err(Box::new(why))),
        };
        Ok::<_, Trouble>(Ok(put_on_shelf(shelf, &taken, now)?))
    };
    Ok(match web.wait(kept).await? {
        Ok(id) => Html(told::kept(w, id).into_string()).into_response(),
        Err(why) => refused(w, &why),
    })
}

fn refused(w: Wording, why: &NotTaken) -> Response {
    let says = Html(told::refused(w, why).into_string());
    (StatusCode::UNPROCESSABLE_ENTITY, says).into_response()
}
