//! Styles, fonts and scripts: part of the program, so that no page asks anybody else.

use axum::extract::Path;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};
use std::sync::LazyLock;

/// A file that pages use.
struct Asset {
    name: &'static str,
    kind: &'static str,
    bytes: &'static [u8],
}

const STYLE: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";
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
    asset!("door.css", STYLE),
    asset!("run.css", STYLE),
    asset!("wall.css", STYLE),
    asset!("live.js", SCRIPT),
    asset!("run.js", SCRIPT),
    asset!("aide.js", SCRIPT),
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
    hash.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect()
});

/// The address of a file.
pub(super) fn address(name: &str) -> String {
    format!("/a/{}/{name}", *VERSION)
}

/// Answers with a file.
pub(super) async fn asset(Path((_version, name)): Path<(String, String)>) -> Response {
    let Some(asset) = ASSETS.iter().find(|asset| asset.name == name) else {
        return StatusCode::NOT_FOUND.into_response();
    };
    let headers = [
        (header::CONTENT_TYPE, asset.kind),
        (header::CACHE_CONTROL, "public, max-age=31536000, immutable"),
    ];
    (headers, asset.bytes).into_response()
}
