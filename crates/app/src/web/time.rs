//! The time of this program, by which devices set their clocks right.

use super::state::Web;
use axum::Json;
use axum::extract::State;
use serde::Serialize;

/// The time.
#[derive(Serialize)]
pub(super) struct Now {
    /// Milliseconds since 1970, UTC.
    now_ms: i64,
    /// How many times as fast as a true clock it runs; 1 but in a rehearsal.
    speed: f64,
    /// By this another copy knows that it is one of its own.
    program: &'static str,
}

/// What `program` says.
pub(super) const OURS: &str = "barm";

/// Answers with the time. A device measures its clock against it: our time less the middle of
/// when it asked and when it was answered.
pub(super) async fn time(State(web): State<Web>) -> Json<Now> {
    let speed = web.clock.speed();
    Json(Now { now_ms: web.now().as_millisecond(), speed, program: OURS })
}
