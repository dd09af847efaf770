//! Styles, fonts and scripts: part of the program, so that no page asks anybody else.

use super::state::Web;
use axum::extract::{Path, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A file that pages use.
struct Asset {
    name: &'static str,
    kind: &'static str,
    bytes: &'static [u8],
}

const STYLE: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";
const WORDS_KIND: &str = "application/json; charset=utf-8";
const FONT: &str = "font/woff2";

macro_rules! asset {
    ($name:literal, $kind:expr) => {
        Asset { name: $name, kind: $kind, bytes: include_bytes!(concat!("assets/", $name)) }
    };
}

static ASSETS: &[Asset] = &[
    asset!("tokens.css", STYLE),
    asset!("fonts.css", STYLE),
    asset!("base.css", STYLE),
    asset!("sheet.css", STYLE),
    asset!("door.css", STYLE),
    asset!("roster.css", STYLE),
    asset!("look-first.js", SCRIPT),
    asset!("run.css", STYLE),
    asset!("wall.css", STYLE),
    asset!("plan.css", STYLE),
    asset!("plan.js", SCRIPT),
    asset!("pilot.css", STYLE),
    asset!("pilot.js", SCRIPT),
    asset!("approve.css", STYLE),
    asset!("approve.js", SCRIPT),
    asset!("marks.css", STYLE),
    asset!("marks.js", SCRIPT),
    asset!("enter.css", STYLE),
    asset!("enter.js", SCRIPT),
    asset!("enter-again.js", SCRIPT),
    asset!("enter-file.js", SCRIPT),
    asset!("enter-grid.js", SCRIPT),
    asset!("enter-store.js", SCRIPT),
    asset!("standards.css", STYLE),
    asset!("start.js", SCRIPT),
    asset!("live.js", SCRIPT),
    asset!("run.js", SCRIPT),
    asset!("aide.js", SCRIPT),
    asset!("bench-fonts.css", STYLE),
    asset!("bench.css", STYLE),
    asset!("bench.js", SCRIPT),
    asset!("bench-ask.js", SCRIPT),
    asset!("bench-carry.js", SCRIPT),
    asset!("bench-clock.js", SCRIPT),
    asset!("bench-curve.js", SCRIPT),
    asset!("bench-draw.js", SCRIPT),
    asset!("bench-fold.js", SCRIPT),
    asset!("bench-key.js", SCRIPT),
    asset!("bench-look.js", SCRIPT),
    asset!("bench-page.js", SCRIPT),
    asset!("bench-rest.js", SCRIPT),
    asset!("bench-send.js", SCRIPT),
    asset!("bench-slip.js", SCRIPT),
    asset!("bench-store.js", SCRIPT),
    asset!("bench-words.js", SCRIPT),
    asset!("join.js", SCRIPT),
    asset!("BarmSans-Regular-bench.woff2", FONT),
    asset!("BarmSans-Semibold-bench.woff2", FONT),
    asset!("BarmSerif-Medium-bench.woff2", FONT),
    asset!("BarmSans-Regular-core.woff2", FONT),
    asset!("BarmSans-Semibold-core.woff2", FONT),
    asset!("BarmSerif-Medium-core.woff2", FONT),
    asset!("BarmSans-Regular-full.woff2", FONT),
    asset!("BarmSans-Semibold-full.woff2", FONT),
    asset!("BarmSerif-Medium-full.woff2", FONT),
    asset!("BarmSerif-Italic-full.woff2", FONT),
    asset!("BarmSerif-Italic-core.woff2", FONT),
];

/// Twelve digits that change when any file does, so that a browser may keep what it has for ever.
static VERSION: LazyLock<String> = LazyLock::new(|| {
    let mut hash = Sha256::new();
    for asset in ASSETS {
        hash.update(asset.name.as_bytes());
        hash.update(asset.bytes);
    }
    for (name, bytes) in &*WORDS {
        hash.update(name);
        hash.update(bytes);
    }
    hash.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect()
});

/// The words of the bench page, which are fetched in another language when somebody asks for it.
static WORDS: LazyLock<BTreeMap<String, Vec<u8>>> =
    LazyLock::new(|| super::bench::word_files().into_iter().collect());

/// The address of a file.
pub(super) fn address(name: &str) -> String {
    format!("/a/{}/{name}", *VERSION)
}

/// Scripts and styles as they go out: without comments and indents, which are for those who read
/// the source. A comment of ours fills its lines or, as `/** a type */`, stands before a value; in
/// a style it may stand anywhere within a line.
static LEAN: LazyLock<BTreeMap<&'static str, Vec<u8>>> = LazyLock::new(|| {
    let texts = ASSETS.iter().filter(|asset| asset.kind != FONT);
    let lean = |asset: &Asset| {
        let within = if asset.kind == STYLE { "/*" } else { "/** " };
        lean(&String::from_utf8_lossy(asset.bytes), within)
    };
    texts.map(|asset| (asset.name, lean(asset))).collect()
});

/// Leaves out comments; within a line they begin with `start`.
fn lean(text: &str, start: &str) -> Vec<u8> {
    let mut goes_on = false;
    let mut out = String::with_capacity(text.len());
    for line in text.lines() {
        let mut line = line.trim().to_owned();
        if goes_on {
            goes_on = !line.ends_with("*/");
            continue;
        }
        if line.starts_with("/*") && !line.contains("*/") {
            goes_on = true;
            continue;
        }
        let alone = line.starts_with("/*") && line.find("*/") == Some(line.len() - 2);
        if alone || line.starts_with("//") {
            continue;
        }
        while let Some((from, to)) = line.find(start).and_then(|from| {
            let end = line[from..].find("*/")?;
            Some((from, from + end + 2))
        }) {
            line.replace_range(from..to, "");
        }
        if !line.is_empty() {
            out.push_str(line.trim());
            out.push('\n');
        }
    }
    out.into_bytes()
}

/// Answers with a file.
pub(super) async fn asset(Path((_version, name)): Path<(String, String)>) -> Response {
    if let Some(words) = WORDS.get(&name) {
        return kept(WORDS_KIND, words).into_response();
    }
    let Some(asset) = ASSETS.iter().find(|asset| asset.name == name) else {
        return StatusCode::NOT_FOUND.into_response();
    };
    let bytes = LEAN.get(name.as_str()).map_or(asset.bytes, Vec::as_slice);
    kept(asset.kind, bytes).into_response()
}

/// The worker that opens the bench page again without the server; only where connections are
/// encrypted, as browsers want it. It lies at the root, because it may serve what lies beside it
/// and below, and is asked for anew each time.
pub(super) async fn worker(State(web): State<Web>) -> Response {
    if !web.reach.tls {
        return StatusCode::NOT_FOUND.into_response();
    }
    let files = serde_json::json!(super::bench::files());
    let mut text = format!("const VERSION = \"{}\";\nconst FILES = {files};\n", *VERSION);
    text.push_str(&String::from_utf8_lossy(&WORKER));
    ([(header::CONTENT_TYPE, SCRIPT)], text).into_response()
}

/// The worker without what only readers of its source need.
static WORKER: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let source = include_str!("assets/bench-worker.js");
    // The program writes these two itself.
    let own = ["var VERSION;", "var FILES;"];
    let text: Vec<&str> = source.lines().filter(|line| !own.contains(line)).collect();
    lean(&text.join("\n"), "/** ")
});

/// Bytes that a browser may keep for ever: their address changes when they do.
fn kept(kind: &'static str, bytes: &'static [u8]) -> impl IntoResponse {
    let keep = "public, max-age=31536000, immutable";
    ([(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, keep)], bytes)
}

#[cfg(test)]
mod tests {
    use super::{ASSETS, FONT, LEAN, SCRIPT, WORDS, lean};

    #[test]
    fn only_comments_and_indents_are_left_out() {
        let script = "// @ts-check\n/** Says.\n * @param {string} a\n */\n  export const x = \
                      /** @type {any} */ (\"a // b\");\n\n  /* one */\n/** two */\nlet y;\n";
        let said = String::from_utf8(lean(script, "/** ")).expect("text");
        assert_eq!(said, "export const x =  (\"a // b\");\nlet y;\n");
        let style = "/* one\n   two */\n* { color: red; } /* three */\n/* four */ b { c: d }\n";
        let said = String::from_utf8(lean(style, "/*")).expect("text");
        assert_eq!(said, "* { color: red; }\nb { c: d }\n");
    }

    #[test]
    fn every_script_and_style_has_something_left() {
        for asset in ASSETS.iter().filter(|asset| asset.kind != FONT) {
            assert!(LEAN[asset.name].len() > 40, "{}", asset.name);
        }
    }

    #[test]
    fn every_file_of_the_bench_page_is_one_that_is_served() {
        let all = crate::web::bench::files();
        assert!(all.len() > 20);
        for address in all {
            let name = address.rsplit('/').next().expect("a name");
            let served = ASSETS.iter().any(|asset| asset.name == name);
            assert!(served || WORDS.contains_key(name), "{address}");
        }
    }

    /// An indent within such a text would be part of it.
    #[test]
    fn no_text_of_a_script_runs_over_several_lines() {
        for asset in ASSETS.iter().filter(|asset| asset.kind == SCRIPT) {
            for line in String::from_utf8_lossy(asset.bytes).lines() {
                let ticks = line.matches('`').count();
                assert!(ticks.is_multiple_of(2), "{}: {line}", asset.name);
            }
        }
    }
}
