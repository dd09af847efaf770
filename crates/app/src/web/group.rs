//! What the pages of a group come with: whose they are, and in which language.

use super::caller::Caller;
use super::trouble::Trouble;
use super::wall::language;
use crate::desk::Catalog;
use crate::desk::room::proposals::Group;
use axum::extract::{FromRequestParts, Query};
use axum::http::request::Parts;
use serde::Deserialize;
use std::convert::Infallible;

/// The group that calls, with the number of its investigation.
pub(super) struct Own(pub(super) i64, pub(super) Group);

impl<S: Send + Sync> FromRequestParts<S> for Own {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Trouble> {
        match parts.extensions.get() {
            Some(Caller::Group { investigation, period, group }) => {
                Ok(Self(*investigation, (period.clone(), *group)))
            }
            _ => Err(Trouble::NotYours),
        }
    }
}

/// The words of students, in the language that was chosen on the page, or that the browser asks for.
pub(super) struct Spoken(pub(super) &'static Catalog);

/// The language that was chosen on the page.
#[derive(Deserialize)]
struct Chosen {
    lang: Option<String>,
}

impl<S: Send + Sync> FromRequestParts<S> for Spoken {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        let chosen = Query::<Chosen>::try_from_uri(&parts.uri).ok();
        let chosen = chosen.and_then(|Query(chosen)| chosen.lang);
        Ok(Self(language(chosen.as_deref(), &parts.headers)))
    }
}
