//! What goes wrong, in a plain sentence; what is behind it goes into the log only.

use super::page::sheet_with;
use crate::desk::DeskError;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use maud::html;

/// Why a handler could not do what it was asked.
#[derive(Debug)]
pub(super) enum Trouble {
    /// There is no such thing.
    NotFound,
    /// It is not for this caller.
    NotYours,
    /// What was sent cannot be used; what is wrong with it, in a sentence.
    Wrong(String),
    /// The desk could not do it.
    Desk(DeskError),
}

impl From<DeskError> for Trouble {
    fn from(error: DeskError) -> Self {
        match error {
            DeskError::NoInvestigation { .. } | DeskError::NoPeriod { .. } => Self::NotFound,
            DeskError::NotTheirs => Self::NotYours,
            DeskError::Weak(weak) => Self::Wrong(DeskError::Weak(weak).to_string()),
            error => Self::Desk(error),
        }
    }
}

/// What the log is to say of an answer.
#[derive(Debug, Clone)]
pub(super) struct ForTheLog(pub(super) String);

/// The pattern of the address that answered.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pattern(pub(super) &'static str);

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        match self {
            Self::NotFound => not_found(),
            Self::NotYours => plain(StatusCode::FORBIDDEN, "This page is not for you."),
            Self::Wrong(says) => told(StatusCode::BAD_REQUEST, "That cannot be used", &says),
            Self::Desk(error) => {
                let mut answer = if error.is_full() {
                    told(
                        StatusCode::INSUFFICIENT_STORAGE,
                        "The disk is full",
                        "The disk of the teacher's computer is full, so this was not kept there. \
                         What was saved before is safe. Devices keep what is typed and send it \
                         again once some space is free.",
                    )
                } else {
                    told(
                        StatusCode::INTERNAL_SERVER_ERROR,
                        "That did not work",
                        "The program could not do that. What was saved before is safe. Try \
                         again; if it happens again, the file barm.log in the data folder says \
                         why.",
                    )
                };
                answer.extensions_mut().insert(ForTheLog(whole(&error)));
                answer
            }
        }
    }
}

/// An error with its causes.
fn whole(error: &dyn std::error::Error) -> String {
    let mut says = error.to_string();
    let mut cause = error.source();
    while let Some(inner) = cause {
        says = format!("{says}: {inner}");
        cause = inner.source();
    }
    says
}

/// A page that says one thing.
pub(super) fn told(status: StatusCode, title: &str, says: &str) -> Response {
    let body = html! {
        main.quietpage.door {
            h1 { (title) }
            p { (says) }
            div.btns { a.btn href="/" { "To the first page" } }
        }
    };
    (status, sheet_with("en", title, &["door.css"], &[], &body)).into_response()
}

/// A sentence for what is not a page.
pub(super) fn plain(status: StatusCode, says: &'static str) -> Response {
    let mut answer = (status, says).into_response();
    answer.extensions_mut().insert(Ours);
    answer
}

/// A plain sentence in place of what the framework says of a path, a query or a body that it
/// cannot read, which names types of ours.
pub(super) fn in_our_words(answer: Response) -> Response {
    let unread = matches!(answer.status().as_u16(), 400 | 415 | 422);
    let kind = answer.headers().get(header::CONTENT_TYPE);
    let text = kind.is_some_and(|kind| kind.as_bytes().starts_with(b"text/plain"));
    if !(unread && text) || answer.extensions().get::<Ours>().is_some() {
        return answer;
    }
    told(
        StatusCode::BAD_REQUEST,
        "That cannot be read",
        "Something in the address or in what was sent is missing or is not what belongs there. \
         Open the page again.",
    )
}

/// Marks a sentence as our own.
#[derive(Debug, Clone, Copy)]
struct Ours;

/// The page for an address that is none.
pub(super) fn not_found() -> Response {
    told(
        StatusCode::NOT_FOUND,
        "There is no such page",
        "Nothing lies at this address. Check it, or begin at the first page.",
    )
}

/// The answer to a method that an address does not know.
pub(super) async fn wrong_method() -> Response {
    plain(StatusCode::METHOD_NOT_ALLOWED, "This address does not answer to that.")
}

/// The answer to an address that is none.
pub(super) async fn nowhere() -> Response {
    not_found()
}
