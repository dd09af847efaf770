//! Event streams: they say that what a page shows has changed, and never what.

use super::caller::Caller;
use super::cookies;
use super::state::Web;
use super::trouble::Trouble;
use crate::desk::doors::Part;
use crate::desk::room::{Room, Scope};
use axum::Json;
use axum::extract::{Path, State};
use axum::http::HeaderMap;
use axum::response::sse::{Event, KeepAlive, Sse};
use serde::Serialize;
use std::convert::Infallible;
use std::sync::Arc;
use std::time::Duration;
use tokio::sync::mpsc;
use tokio::time::{Instant, sleep_until};
use tokio_stream::wrappers::ReceiverStream;

type Stream =
    Sse<axum::response::sse::KeepAliveStream<ReceiverStream<Result<Event, Infallible>>>>;

/// Changes within this time are told as one.
const AT_MOST_EVERY: Duration = Duration::from_millis(250);
/// The same for the teacher's own pages, of which few are open: a slip that is seen at once can be
/// mended.
const TEACHER_AT_MOST_EVERY: Duration = Duration::from_millis(100);
/// A sign of life, as an event that scripts hear, so that a dead connection is noticed at both
/// ends.
const ALIVE_EVERY: Duration = Duration::from_secs(20);

/// The number of what a page shows.
#[derive(Serialize)]
pub(super) struct Version {
    version: u64,
}

/// The stream of a page that somebody joined.
pub(super) async fn joined(
    State(web): State<Web>,
    caller: Caller,
    headers: HeaderMap,
) -> Result<Stream, Trouble> {
    let (room, scope) = web.room_of(&caller).await?;
    let part = match scope {
        Scope::Teacher => Part::Teacher,
        Scope::Group { .. } => Part::Group,
        Scope::Wall(_) => Part::Wall,
        Scope::Round(_) => Part::Round,
        Scope::Aide => Part::Aide,
    };
    let token = cookies::read(&headers, cookies::name(part)).ok_or(Trouble::NotYours)?;
    Ok(stream(&web, &room, scope, part, token.to_owned()))
}

/// The stream of the teacher's pages of an investigation.
pub(super) async fn teacher(
    State(web): State<Web>,
    Path(id): Path<i64>,
    headers: HeaderMap,
) -> Result<Stream, Trouble> {
    let room = web.room(id).await?;
    let part = Part::Teacher;
    let token = cookies::read(&headers, cookies::name(part)).ok_or(Trouble::NotYours)?;
    Ok(stream(&web, &room, Scope::Teacher, part, token.to_owned()))
}

/// The number of what a page shows, for those who cannot hold a stream.
pub(super) async fn version(
    State(web): State<Web>,
    caller: Caller,
) -> Result<Json<Version>, Trouble> {
    let (room, scope) = web.room_of(&caller).await?;
    Ok(Json(Version { version: room.number(scope) }))
}

/// The number of what the teacher's pages show.
pub(super) async fn teacher_version(
    State(web): State<Web>,
    Path(id): Path<i64>,
) -> Result<Json<Version>, Trouble> {
    let room = web.room(id).await?;
    Ok(Json(Version { version: room.number(Scope::Teacher) }))
}

/// One small task for each stream. It sleeps until something changes, the session ends, the
/// server stops or nobody listens any more.
fn stream(web: &Web, room: &Arc<Room>, scope: Scope, part: Part, token: String) -> Stream {
    let (tell, told) = mpsc::channel(1);
    let every = match scope {
        Scope::Teacher => TEACHER_AT_MOST_EVERY,
        _ => AT_MOST_EVERY,
    };
    let mut changed = room.changed(scope);
    let mut ended = web.shelf.doors.ended();
    let mut stopping = web.stopping.clone();
    changed.mark_changed();
    let web = web.clone();
    tokio::spawn(async move {
        let mut next = Instant::now();
        loop {
            tokio::select! {
                () = tell.closed() => return,
                () = async { drop(stopping.wait_for(|stop| *stop).await) } => return,
                heard = ended.changed() => {
                    if heard.is_err() || web.caller(part, &token).is_none() {
                        return;
                    }
                }
                heard = async {
                    sleep_until(next).await;
                    changed.changed().await
                } => {
                    if heard.is_err() || web.caller(part, &token).is_none() {
                        return;
                    }
                    let number = *changed.borrow_and_update();
                    let event = Event::default().event("changed").data(number.to_string());
                    if tell.send(Ok(event)).await.is_err() {
                        return;
                    }
                    next = Instant::now() + every;
                }
            }
        }
    });
    let sign = Event::default().event("alive").data("yes");
    let alive = KeepAlive::new().interval(ALIVE_EVERY).event(sign);
    Sse::new(ReceiverStream::new(told)).keep_alive(alive)
}
