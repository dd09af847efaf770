//! The frame of the bench page; its script draws the rest from what it is given here.

use crate::desk::Catalog;
use crate::web::assets::address;
use axum::response::Html;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use serde_json::{Map, Value, json};

/// Scripts of the page, in the order in which they are asked for; the first asks for the others.
pub(super) const SCRIPTS: [&str; 14] = [
    "bench.js",
    "bench-page.js",
    "bench-ask.js",
    "bench-rest.js",
    "bench-draw.js",
    "bench-look.js",
    "bench-curve.js",
    "bench-words.js",
    "bench-clock.js",
    "bench-fold.js",
    "bench-slip.js",
    "bench-store.js",
    "bench-send.js",
    "bench-key.js",
];

/// Styles of the page. Fonts are a cut of their own, so that the first visit is light.
pub(in crate::web) const STYLES: [&str; 4] =
    ["bench-fonts.css", "tokens.css", "base.css", "bench.css"];

/// Texts that the scripts use.
const SPOKEN: [&str; 8] =
    ["language-", "state-", "odd-", "bench-", "guard-", "step-", "thing-", "who-"];

/// The page in a language, with what stands for the group.
pub(super) fn page(words: &Catalog, told: &Value) -> Html<String> {
    let own = Map::from_iter([(words.code().to_owned(), spoken(words))]);
    let given = json!({ "words": own, "languages": languages(), "scene": told });
    let page = html! {
        (DOCTYPE)
        html lang=(words.code()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { "Barm" }
                @for style in STYLES {
                    link rel="stylesheet" href=(address(style));
                }
                script type="module" src=(address(SCRIPTS[0])) {}
                @for script in &SCRIPTS[1..] {
                    link rel="modulepreload" href=(address(script));
                }
                link rel="modulepreload" href=(address("bench-carry.js"));
            }
            body { (island(&given)) (frame(words)) }
        }
    };
    Html(page.into_string())
}

/// The parts that the script fills, in reading order.
fn frame(words: &Catalog) -> Markup {
    html! {
        div.bench {
            header.bhead #head {}
            main {
                noscript { p.away { (words.say("bench-no-script")) } }
                div #notes {}
                div #clock {}
                div.turn #tabs role="group" {}
                div.bgrid {
                    div.bcol {
                        div #steps {}
                        div #two {}
                        div #pour {}
                        div #ask {}
                        div.rule #odd {}
                    }
                    div.bcol {
                        div.rule #opened {}
                        div.rule #curve {}
                        div.rule #guess {}
                        div.rule #wrote {}
                        div.rule #after {}
                        div.rule #device {}
                    }
                }
            }
        }
    }
}

/// Data for the script. It is no script itself, so nothing of it is ever run; and it cannot end
/// its own element, because no `<` is left in it.
fn island(given: &Value) -> Markup {
    let text = given.to_string().replace('<', "\\u003c");
    html! { script type="application/json" id="given" { (PreEscaped(text)) } }
}

/// Addresses of all files of the page in every language, so that it can be opened again without
/// the server.
pub(in crate::web) fn files() -> Vec<String> {
    let faces = ["BarmSans-Regular", "BarmSans-Semibold", "BarmSerif-Medium"];
    let faces = faces.map(|face| format!("{face}-bench.woff2"));
    let scripts = SCRIPTS.iter().copied().chain(["bench-carry.js"]);
    let fixed = STYLES.iter().copied().chain(scripts).map(str::to_owned);
    let words = Catalog::all().map(words_of);
    fixed.chain(faces).chain(words).map(|name| address(&name)).collect()
}

/// What the page says in a language, with open places as `{name}`.
fn spoken(words: &Catalog) -> Value {
    let keys = words.keys().iter();
    let spoken = keys.filter(|key| SPOKEN.iter().any(|start| key.starts_with(start)));
    spoken.map(|key| (key.clone(), words.pattern(key).into())).collect::<Map<_, _>>().into()
}

/// Every language: its code, its own name, and where its words lie for the page to fetch.
fn languages() -> Value {
    let one = |words: &Catalog| {
        json!([words.code(), words.say("language-name"), address(&words_of(words))])
    };
    Catalog::all().map(one).collect()
}

fn words_of(words: &Catalog) -> String {
    format!("bench-words-{}.json", words.code())
}

/// The words of each language as a file, by its name.
pub(in crate::web) fn word_files() -> Vec<(String, Vec<u8>)> {
    let all = Catalog::all();
    all.map(|words| (words_of(words), spoken(words).to_string().into_bytes())).collect()
}
