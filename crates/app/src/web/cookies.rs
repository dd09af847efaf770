//! Cookies: one for each part, one for the device.

use crate::desk::doors::{Part, Token};
use axum::http::{HeaderMap, HeaderValue, header};
use jiff::Timestamp;

/// The cookie of a device, which says nothing but that it is the same device.
pub(super) const DEVICE: &str = "barm-device";
/// A device is remembered so long (s).
const REMEMBERED: i64 = 60 * 24 * 3600;
/// A token has so many digits.
const DIGITS: usize = 64;

/// The cookie of a part.
pub(super) const fn name(part: Part) -> &'static str {
    match part {
        Part::Teacher => "barm-teacher",
        Part::Group => "barm-bench",
        Part::Wall => "barm-wall",
        Part::Round => "barm-round",
        Part::Aide => "barm-aide",
    }
}

/// A token from a request's cookies.
pub(super) fn read<'h>(headers: &'h HeaderMap, name: &str) -> Option<&'h str> {
    let lines = headers.get_all(header::COOKIE).iter().filter_map(|line| line.to_str().ok());
    let pairs = lines.flat_map(|line| line.split(';'));
    let mut values = pairs.filter_map(|pair| {
        let (known, value) = pair.trim().split_once('=')?;
        (known == name).then_some(value)
    });
    let value = values.next()?;
    let right = value.len() == DIGITS && value.bytes().all(|byte| byte.is_ascii_hexdigit());
    right.then_some(value)
}

/// A cookie that holds a token until a moment.
pub(super) fn set(
    name: &str,
    token: &str,
    now: Timestamp,
    ends: Timestamp,
    secure: bool,
) -> HeaderValue {
    let seconds = ends.duration_since(now).as_secs().max(0);
    line(name, token, seconds, secure)
}

/// A device's cookie.
pub(super) fn set_device(token: &Token, secure: bool) -> HeaderValue {
    line(DEVICE, token.as_str(), REMEMBERED, secure)
}

/// A cookie that takes one away.
pub(super) fn clear(name: &str, secure: bool) -> HeaderValue {
    line(name, "", 0, secure)
}

fn line(name: &str, value: &str, seconds: i64, secure: bool) -> HeaderValue {
    let secure = if secure { "; Secure" } else { "" };
    let line =
        format!("{name}={value}; Path=/; Max-Age={seconds}; HttpOnly; SameSite=Strict{secure}");
    // Made of names and hexadecimal digits only.
    HeaderValue::try_from(line).unwrap_or_else(|_| HeaderValue::from_static(""))
}
