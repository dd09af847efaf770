//! What the page looks like where somebody comes in with codes.

use super::assets::address;
use super::bench;
use super::head::lead;
use crate::desk::Catalog;
use axum::response::Html;
use maud::{DOCTYPE, Markup, html};

/// Why somebody was not let in. Nobody is told which of two codes was wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum NotIn {
    /// The codes do not belong together, or not to this hour.
    Wrong,
    /// Too many wrong codes; seconds to wait.
    Wait(u32),
}

/// What the page shows.
pub(super) struct JoinPage<'a> {
    /// The language.
    pub(super) words: &'static Catalog,
    /// The code of a bag that a label brought, or what was typed for the group.
    pub(super) group: &'a str,
    /// Whether that came from a label.
    pub(super) from_label: bool,
    /// Why it did not work.
    pub(super) not_in: Option<NotIn>,
    /// What every form of this device must hold.
    pub(super) form_field: Markup,
}

/// The page.
pub(super) fn join_page(join: &JoinPage<'_>) -> Html<String> {
    let words = join.words;
    let title = words.say("join-title");
    let page = html! {
        (DOCTYPE)
        html lang=(words.code()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) " · Barm" }
                @for style in bench::STYLES {
                    link rel="stylesheet" href=(address(style));
                }
                script type="module" src=(address("join.js")) {}
            }
            body { (sheet(join, &title)) }
        }
    };
    Html(page.into_string())
}

fn sheet(join: &JoinPage<'_>, title: &str) -> Markup {
    let words = join.words;
    html! {
        div.join {
            header.bhead {
                h1 { (title) }
                (languages(join))
            }
            main {
                (lead(&words.say("join-lead")))
                @if let Some(not_in) = join.not_in {
                    p #fault role="alert" { (says(words, not_in)) }
                }
                div.guard #carry hidden {
                    p { b { (counted(words, "bench-carry")) } " " (words.say("bench-carry-lead")) }
                    div.btns {
                        button.btn #carry-take type="button" { (words.say("bench-carry-take")) }
                        button.btn #carry-leave type="button" { (words.say("bench-carry-leave")) }
                    }
                }
                p.away #brings hidden { (counted(words, "join-brings")) }
                (codes(join))
                (other_pages(join))
            }
        }
    }
}

fn codes(join: &JoinPage<'_>) -> Markup {
    let words = join.words;
    let bad = join.not_in.is_some();
    let fault = bad.then_some("fault");
    html! {
        form method="post" action="/join" {
            (join.form_field)
            input type="hidden" name="lang" value=(words.code());
            @if join.from_label {
                div.labelled #label-said {
                    span.code { (words.say_with("join-bag", &[("bag", join.group)])) }
                    button.btn.quiet #not-mine type="button" { (words.say("join-bag-wrong")) }
                }
            }
            div.fr {
                label for="period" { (words.say("join-period")) }
                span.fld.wide.bad[bad] {
                    input #period name="period" required autocomplete="off"
                        autocapitalize="characters" spellcheck="false" maxlength="16"
                        aria-describedby=[fault.or(Some("period-hint"))];
                }
                p.soft.small #period-hint { (words.say("join-period-hint")) }
            }
            div.fr {
                label for="group" { (words.say("join-group")) }
                span.fld.wide.bad[bad] {
                    input #group name="group" value=(join.group) required autocomplete="off"
                        autocapitalize="characters" spellcheck="false" maxlength="16"
                        aria-describedby=[fault.or(Some("group-hint"))];
                }
                p.soft.small #group-hint { (words.say("join-group-hint")) }
            }
            button.btn.main type="submit" { (words.say("join-go")) }
        }
    }
}

/// Pages that are opened with a code of their own.
fn other_pages(join: &JoinPage<'_>) -> Markup {
    let words = join.words;
    html! {
        details.other {
            summary { (words.say("join-page")) }
            form method="post" action="/join/page" {
                (join.form_field)
                input type="hidden" name="lang" value=(words.code());
                label for="code" { (words.say("join-page-code")) }
                span.fld.wide {
                    input #code name="code" required autocomplete="off"
                        autocapitalize="characters" spellcheck="false" maxlength="16";
                }
                button.btn type="submit" { (words.say("join-page-go")) }
            }
        }
    }
}

fn languages(join: &JoinPage<'_>) -> Markup {
    let label = join.words.say("language-choose");
    html! {
        nav.tongues aria-label=(label) {
            @for other in Catalog::all() {
                @let here = other.code() == join.words.code();
                a.tongue href={ "/join?lang=" (other.code()) (brought(join)) } lang=(other.code())
                    hreflang=(other.code()) aria-current=[here.then_some("true")]
                    { (other.say("language-name")) }
            }
        }
    }
}

/// What a label or a card brought in the address, so that another language does not lose it. Codes
/// are made of letters, digits and dashes; of anything else nothing is left.
fn brought(join: &JoinPage<'_>) -> String {
    let plain = |c: &char| c.is_ascii_alphanumeric() || *c == '-';
    let code: String = join.group.chars().filter(plain).collect();
    let name = if join.from_label { "bag" } else { "group" };
    // What was typed and did not fit is no address to keep.
    if code.is_empty() || join.not_in.is_some() {
        return String::new();
    }
    format!("&{name}={code}")
}

fn says(words: &Catalog, not_in: NotIn) -> String {
    match not_in {
        NotIn::Wrong => words.say("join-fault"),
        NotIn::Wait(seconds) => {
            words.say_with("join-wait", &[("seconds", &seconds.to_string())])
        }
    }
}

/// A text with a count that the script fills in.
fn counted(words: &Catalog, key: &str) -> Markup {
    let text = words.say_with(key, &[("count", "\u{0}")]);
    let (before, after) = text.split_once('\u{0}').unwrap_or((&text, ""));
    html! { (before) span data-count {} (after) }
}
