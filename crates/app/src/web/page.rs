//! The sheet that every page is written on.

use super::assets::address;
use axum::response::Html;
use maud::{DOCTYPE, Markup, html};

/// A page: its language, its title, and what stands on it.
pub(super) fn sheet(language: &str, title: &str, body: &Markup) -> Html<String> {
    let page = html! {
        (DOCTYPE)
        html lang=(language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) " · Barm" }
                link rel="stylesheet" href=(address("fonts.css"));
                link rel="stylesheet" href=(address("tokens.css"));
                link rel="stylesheet" href=(address("base.css"));
            }
            body { (body) }
        }
    };
    Html(page.into_string())
}

/// The first page.
pub(super) async fn door() -> Html<String> {
    let body = html! {
        main.quietpage { h1 { "Barm" } }
    };
    sheet("en", "Welcome", &body)
}
