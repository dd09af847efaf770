//! Who calls, as the server knows it from the session; never from what the request says.

use axum::extract::FromRequestParts;
use axum::http::StatusCode;
use axum::http::request::Parts;

/// The part in which somebody calls.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Caller {
    /// Nobody in particular.
    Anyone,
    /// The teacher.
    Teacher,
    /// A group of a period, from a device that joined.
    Group {
        /// Key of the investigation.
        investigation: i64,
        /// Name of the period.
        period: String,
        /// Number within the period.
        group: u32,
    },
    /// The wall page of a period.
    Wall {
        /// Key of the investigation.
        investigation: i64,
        /// Name of the period.
        period: String,
    },
    /// The teacher's walk-round tablet in a period.
    Round {
        /// Key of the investigation.
        investigation: i64,
        /// Name of the period.
        period: String,
    },
    /// An aide at a station.
    Aide {
        /// Key of the investigation.
        investigation: i64,
    },
}

/// The guard puts the caller into the request; a handler that takes one is behind the guard.
impl<S: Send + Sync> FromRequestParts<S> for Caller {
    type Rejection = StatusCode;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, StatusCode> {
        parts.extensions.get::<Self>().cloned().ok_or(StatusCode::FORBIDDEN)
    }
}
