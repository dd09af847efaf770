//! Words with a shape: states, marks, icons and clocks that pages share.

use super::words::lay;
use crate::desk::Wording;
use crate::desk::room::hour::clock;
use jiff::Timestamp;
use maud::{Markup, PreEscaped, html};

/// A sign of a state, drawn in a box of 16; always beside its word.
fn sign(path: &'static str, width: &str) -> Markup {
    html! {
        svg viewBox="0 0 16 16" aria-hidden="true" fill="none" stroke="currentColor"
            stroke-width=(width) stroke-linejoin="round" { (PreEscaped(path)) }
    }
}

/// To be read now.
pub(super) fn due(word: &str) -> Markup {
    let arrow = r#"<path d="M4 2.5l8.5 5.5-8.5 5.5z" fill="currentColor"/>"#;
    html! { span.st.due { (sign(arrow, "1.6")) (word) } }
}

/// Late; what stands beside the word counts up.
pub(super) fn late(word: &Markup) -> Markup {
    html! { span.st.late { (sign(r#"<path d="M3 2v12M8 2v12M13 2v12"/>"#, "2.6")) span { (word) } } }
}

/// Late, counting up, in the teacher's words.
pub(super) fn late_since(w: Wording, at: Timestamp, now: Timestamp) -> Markup {
    late(&lay!(w, "state-late-since", time = since(at, now)))
}

/// Doubtful.
pub(super) fn doubt(word: &str) -> Markup {
    let mark = concat!(
        r#"<path d="M5 5.5c0-4.5 6.5-4 6 0-.3 2-3 2-3 4.7" stroke-width="2"/>"#,
        r#"<circle cx="8" cy="13.3" r="1.3" fill="currentColor" stroke="none"/>"#
    );
    html! { span.st.doubt { (sign(mark, "1.6")) (word) } }
}

/// Away or set aside.
pub(super) fn away(word: &str) -> Markup {
    let cut = r#"<path d="M2 8h3M11 8h3M8 3.5l-1.5 3M9.5 9.5l-1.5 3"/>"#;
    html! { span.st.away { (sign(cut, "2")) (word) } }
}

/// Done and on disk.
pub(super) fn done(word: &str) -> Markup {
    html! { span.st.saved { (sign(r#"<path d="M2.5 8.5l3.8 4 7.2-9"/>"#, "2")) (word) } }
}

/// Working with numbers that were lent: an arrow into a box.
pub(super) fn lent(word: &str) -> Markup {
    let arrow = r#"<path d="M6.5 3H2.5v10h4M14 8H5.8M8.8 5L5.8 8l3 3"/>"#;
    html! { span.st.lent { (sign(arrow, "1.8")) (word) } }
}

/// A clock that counts down to a moment; the page's script keeps it going.
pub(super) fn until(at: Timestamp, now: Timestamp) -> Markup {
    let left = at.duration_since(now).as_secs_f64().max(0.0).round() as u64;
    html! { time datetime=(moment(at)) data-to=(at.as_millisecond()) { (clock(left)) } }
}

/// A clock that counts up from a moment.
pub(super) fn since(at: Timestamp, now: Timestamp) -> Markup {
    let gone = now.duration_since(at).as_secs_f64().max(0.0) as u64;
    html! { time datetime=(moment(at)) data-since=(at.as_millisecond()) { (clock(gone)) } }
}

/// A moment as machines read it; minutes and seconds that run are no form of it.
fn moment(at: Timestamp) -> String {
    at.strftime("%Y-%m-%dT%H:%M:%SZ").to_string()
}

/// An icon of 24 units, beside its word.
pub(super) fn icon(name: &str, size: u32) -> Markup {
    let path = match name {
        "hand-off" => HAND_OFF,
        "ruler" => RULER,
        "card" => CARD,
        _ => "",
    };
    html! {
        svg.ic width=(size) height=(size) viewBox="0 0 24 24" aria-hidden="true" fill="none"
            stroke="currentColor" stroke-width="1.75" stroke-linejoin="round"
            stroke-linecap="round" { (PreEscaped(path)) }
    }
}

const HAND_OFF: &str = concat!(
    r#"<path d="M7.5 13.5v-7a1.5 1.5 0 0 1 3 0v-1.7a1.5 1.5 0 0 1 3 0v1.7a1.5 1.5 0 0 1 3 0v2"#,
    r#"a1.4 1.4 0 0 1 2.8 0v6c0 4-2.4 6.5-6 6.5-2.8 0-4.3-1-5.7-3.2l-3-4.6c-.8-1.3.9-2.5 2-1.4z"/>"#,
    r#"<path d="M10.5 6.5v4.5M13.5 6.5v4.5M16.5 8.5v3" stroke-width="1.2"/>"#,
    r#"<path d="M2.8 2.8l18.4 18.4" stroke-width="2.4"/>"#
);
const RULER: &str = concat!(
    r#"<path d="M8 2.8h8.5v18.2h-8.5z"/>"#,
    r#"<path d="M8 6h4M8 9h2.5M8 12h4M8 15h2.5M8 18h4"/><path d="M3 21h18"/>"#
);
const CARD: &str = concat!(
    r#"<path d="M2.5 9.5h19v2.3h-19z"/>"#,
    r#"<path d="M4.5 21c-1.7-2.5-1.7-6.6 0-9.2M19.5 21c1.7-2.5 1.7-6.6 0-9.2"/>"#,
    r#"<path d="M2.5 21h19"/><path d="M12 6.5v-4M10 4.3l2-1.9 2 1.9"/>"#
);
