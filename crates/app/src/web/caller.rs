//! Who calls, as the server knows it from the session; never from what the request says.

use axum::extract::FromRequestParts;
use axum::http::StatusCode;
use axum::http::request::Parts;
use maud::{Markup, html};
use std::net::IpAddr;

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

/// The device that calls: every request behind the guard has one.
#[derive(Debug, Clone)]
pub(super) struct Device {
    /// Its random cookie; made for this answer if it had none.
    pub(super) token: String,
    /// Its address.
    pub(super) address: Option<IpAddr>,
    /// What a form of this device must bring.
    form: String,
}

impl Device {
    pub(super) const fn new(token: String, address: Option<IpAddr>, form: String) -> Self {
        Self { token, address, form }
    }

    /// The hidden field that every form which changes something must hold.
    pub(super) fn form_field(&self) -> Markup {
        html! { input type="hidden" name=(FIELD) value=(self.form); }
    }

    /// What that field must say; also for the header of requests from scripts.
    pub(super) fn form_token(&self) -> &str {
        &self.form
    }
}

/// Name of the hidden field.
pub(super) const FIELD: &str = "form";

/// The guard puts the caller into the request; a handler that takes one is behind the guard.
impl<S: Send + Sync> FromRequestParts<S> for Caller {
    type Rejection = StatusCode;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, StatusCode> {
        parts.extensions.get::<Self>().cloned().ok_or(StatusCode::FORBIDDEN)
    }
}

impl<S: Send + Sync> FromRequestParts<S> for Device {
    type Rejection = StatusCode;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, StatusCode> {
        parts.extensions.get::<Self>().cloned().ok_or(StatusCode::FORBIDDEN)
    }
}
