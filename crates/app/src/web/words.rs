//! The teacher's words on a page: in the language that the browser asks for, and with markup in
//! their open places.

use crate::desk::Wording;
use crate::desk::wording::Filling;
use axum::extract::FromRequestParts;
use axum::http::header;
use axum::http::request::Parts;
use maud::{Markup, Render, html};
use std::convert::Infallible;

/// The teacher's words in the language that this request asks for.
pub(super) struct Words(pub(super) Wording);

impl<S: Send + Sync> FromRequestParts<S> for Words {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        let asked = parts.headers.get(header::ACCEPT_LANGUAGE);
        let asked = asked.and_then(|value| value.to_str().ok());
        Ok(Self(Wording::accepted(asked.unwrap_or_default())))
    }
}

/// Stands in a text before and after the number of a piece; no keyboard and no font has it.
const EDGE: char = '\u{e000}';

/// A text with pieces of markup in its open places; [`lay!`] writes the call.
pub(super) fn laid(
    w: Wording,
    key: &str,
    pieces: &[(&str, Markup)],
    counts: &[(&str, Filling)],
) -> Markup {
    let places = (0..)
        .zip(pieces)
        .map(|(at, (name, _)): (usize, _)| (*name, Filling::Text(format!("{EDGE}{at}{EDGE}"))));
    let values: Vec<(&str, Filling)> = places.chain(counts.iter().cloned()).collect();
    let text = w.fill(key, &values);
    html! {
        @for (at, part) in text.split(EDGE).enumerate() {
            // Every other part is the number of a piece.
            @match part.parse::<usize>().ok().filter(|_| at % 2 == 1).and_then(|at| pieces.get(at)) {
                Some((_, piece)) => (piece),
                None => (part),
            }
        }
    }
}

/// One piece as markup.
pub(super) fn piece(what: impl Render) -> Markup {
    html! { (what) }
}

/// A text of the teacher's with markup in its open places:
/// `lay!(w, "run-next", name = html! { b { (name) } })`. What follows a semicolon is filled in as
/// [`say!`](crate::desk::say) does, so that a language can choose its plural by it.
macro_rules! lay {
    ($words:expr, $key:literal, $($name:ident = $piece:expr),+ $(,)?) => {
        $crate::web::words::laid(
            $words,
            $key,
            &[$((stringify!($name), $crate::web::words::piece($piece))),+],
            &[],
        )
    };
    ($words:expr, $key:literal, $($name:ident = $piece:expr),+ ; $($count:ident = $value:expr),+) => {
        $crate::web::words::laid(
            $words,
            $key,
            &[$((stringify!($name), $crate::web::words::piece($piece))),+],
            &[$((stringify!($count), $crate::desk::wording::Filling::from($value))),+],
        )
    };
}
pub(super) use lay;

#[cfg(test)]
mod tests {
    use crate::desk::Wording;
    use maud::html;

    #[test]
    fn markup_stands_where_the_text_wants_it_and_words_are_no_markup() {
        let w = Wording::english();
        let laid = lay!(w, "shelf-rehearsal", stands = html! { b { "<3>" } }).into_string();
        assert_eq!(laid, "Rehearsal, <b>&lt;3&gt;</b>");
        let plain = lay!(w, "shelf-rehearsal", stands = "<3>").into_string();
        assert_eq!(plain, "Rehearsal, &lt;3&gt;");
    }
}
