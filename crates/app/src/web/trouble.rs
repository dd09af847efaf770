//! What goes wrong, in a plain sentence; what is behind it goes into the log only.
//!
//! Anybody may meet these sentences, so they stand in the catalog of students. An answer carries
//! which of them it is, and [`spoken`] writes it in the language of the one who asked.

use super::page::sheet_with;
use crate::desk::{Catalog, DeskError};
use axum::body::Body;
use axum::http::{HeaderValue, StatusCode, header};
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
    /// More was sent than anybody types; seconds to wait.
    TooMuch(u32),
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

/// What an answer is to say, by the keys of the catalog.
#[derive(Debug, Clone)]
enum ToSay {
    /// A page: its title and its sentence.
    Page(&'static str, &'static str),
    /// A page whose sentence is made already.
    Made(&'static str, String),
    /// A sentence for what is not a page.
    Line(&'static str),
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        match self {
            Self::NotFound => not_found(),
            Self::NotYours => plain(StatusCode::FORBIDDEN, "trouble-not-yours"),
            Self::Wrong(says) => {
                bare(StatusCode::BAD_REQUEST, ToSay::Made("trouble-wrong", says))
            }
            Self::TooMuch(seconds) => {
                let says = ToSay::Page("trouble-too-much", "trouble-too-much-says");
                let mut answer = bare(StatusCode::TOO_MANY_REQUESTS, says);
                answer.headers_mut().insert(header::RETRY_AFTER, seconds.into());
                answer
            }
            Self::Desk(error) => {
                let says = if error.is_full() {
                    ToSay::Page("trouble-full", "trouble-full-says")
                } else {
                    ToSay::Page("trouble-failed", "trouble-failed-says")
                };
                let status = if error.is_full() {
                    StatusCode::INSUFFICIENT_STORAGE
                } else {
                    StatusCode::INTERNAL_SERVER_ERROR
                };
                let mut answer = bare(status, says);
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

/// An answer without its words.
fn bare(status: StatusCode, says: ToSay) -> Response {
    let mut answer = status.into_response();
    answer.extensions_mut().insert(says);
    answer
}

/// A sentence for what is not a page, by its key.
pub(super) fn plain(status: StatusCode, key: &'static str) -> Response {
    bare(status, ToSay::Line(key))
}

/// The page for an address that is none.
pub(super) fn not_found() -> Response {
    bare(StatusCode::NOT_FOUND, ToSay::Page("trouble-nowhere", "trouble-nowhere-says"))
}

/// The answer to a method that an address does not know.
pub(super) async fn wrong_method() -> Response {
    plain(StatusCode::METHOD_NOT_ALLOWED, "trouble-method")
}

/// The answer to an address that is none.
pub(super) async fn nowhere() -> Response {
    not_found()
}

/// A plain sentence in place of what the framework says of a path, a query or a body that it
/// cannot read, which names types of ours.
pub(super) fn in_our_words(answer: Response) -> Response {
    let unread = matches!(answer.status().as_u16(), 400 | 415 | 422);
    let kind = answer.headers().get(header::CONTENT_TYPE);
    let text = kind.is_some_and(|kind| kind.as_bytes().starts_with(b"text/plain"));
    if !(unread && text) {
        return answer;
    }
    bare(StatusCode::BAD_REQUEST, ToSay::Page("trouble-unread", "trouble-unread-says"))
}

/// Writes an answer's words in a language, if it has none yet.
pub(super) fn spoken(mut answer: Response, words: &Catalog) -> Response {
    let Some(says) = answer.extensions_mut().remove::<ToSay>() else { return answer };
    let (kind, body) = match says {
        ToSay::Page(title, says) => (HTML, page(title, &words.say(says), words)),
        ToSay::Made(title, says) => (HTML, page(title, &says, words)),
        ToSay::Line(key) => (TEXT, words.say(key)),
    };
    answer.headers_mut().insert(header::CONTENT_TYPE, HeaderValue::from_static(kind));
    answer.headers_mut().remove(header::CONTENT_LENGTH);
    *answer.body_mut() = Body::from(body);
    answer
}

const HTML: &str = "text/html; charset=utf-8";
const TEXT: &str = "text/plain; charset=utf-8";

/// A page that says one thing.
fn page(title: &str, says: &str, words: &Catalog) -> String {
    let title = words.say(title);
    let body = html! {
        main.quietpage.door {
            h1 { (title) }
            p { (says) }
            div.btns { a.btn href="/" { (words.say("trouble-first")) } }
        }
    };
    sheet_with(words.code(), &title, &["door.css"], &[], &body).0
}

#[cfg(test)]
mod tests {
    use super::{Trouble, spoken};
    use crate::desk::Catalog;
    use axum::body::to_bytes;
    use axum::http::header;
    use axum::response::IntoResponse;

    async fn said(trouble: Trouble, language: &str) -> (String, String) {
        let answer = spoken(trouble.into_response(), Catalog::of(language));
        let kind = answer.headers()[header::CONTENT_TYPE].to_str().expect("text").to_owned();
        let body = to_bytes(answer.into_body(), 100_000).await.expect("a body");
        (kind, String::from_utf8(body.to_vec()).expect("text"))
    }

    #[tokio::test]
    async fn trouble_is_told_in_the_language_of_the_one_who_asked() {
        let (kind, english) = said(Trouble::NotFound, "en").await;
        assert!(kind.starts_with("text/html") && english.contains("There is no such page"));
        let (_, spanish) = said(Trouble::NotFound, "es").await;
        assert!(spanish.contains("lang=\"es\"") && !spanish.contains("There is no such page"));
        let (kind, line) = said(Trouble::NotYours, "es").await;
        assert!(kind.starts_with("text/plain") && !line.is_empty() && !line.contains('<'));
    }

    #[tokio::test]
    async fn what_somebody_typed_is_no_markup() {
        let (_, page) = said(Trouble::Wrong("<b> is wrong.".to_owned()), "en").await;
        assert!(page.contains("&lt;b&gt; is wrong."), "{page}");
    }
}
