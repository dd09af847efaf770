//! The sheet that every page is written on.

use super::assets::address;
use super::caller::Device;
use super::state::Web;
use axum::extract::State;
use axum::response::{Html, Redirect};
use maud::{DOCTYPE, Markup, html};

/// A page with styles and scripts of its own, by the names of the files; scripts are modules.
pub(super) fn sheet_with(
    language: &str,
    title: &str,
    styles: &[&str],
    scripts: &[&str],
    body: &Markup,
) -> Html<String> {
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
                link rel="stylesheet" href=(address("sheet.css"));
                @for style in styles {
                    link rel="stylesheet" href=(address(style));
                }
                @for script in scripts {
                    script type="module" src=(address(script)) {}
                }
            }
            body { (body) }
        }
    };
    Html(page.into_string())
}

/// The first page: on this computer the teacher's, from the network the groups'.
pub(super) async fn door(State(web): State<Web>, device: Device) -> Redirect {
    let here = device.address.is_some_and(|address| address.is_loopback());
    let near = here || web.reach.tls || web.reach.teacher_from_network;
    Redirect::to(if near { "/shelf" } else { "/join" })
}
