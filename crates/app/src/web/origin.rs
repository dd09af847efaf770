//! Whether a request that changes something comes from a page of ours.

use super::host::named;
use axum::http::{HeaderMap, header};

/// A header that only scripts of our own pages can send; other sites would have to ask first, and
/// are never answered.
pub(super) const FROM_SCRIPT: &str = "x-barm";

/// Whether browser and request say that it comes from a page of ours. Silence is a no.
pub(super) fn from_us(headers: &HeaderMap, tls: bool) -> bool {
    let site = headers.get("sec-fetch-site").map(|site| site.as_bytes() == b"same-origin");
    let origin = headers.get(header::ORIGIN).map(|origin| {
        let scheme = if tls { "https" } else { "http" };
        named(headers).is_some_and(|host| {
            origin
                .to_str()
                .is_ok_and(|origin| origin.eq_ignore_ascii_case(&format!("{scheme}://{host}")))
        })
    });
    match (site, origin) {
        (None, None) => false,
        (site, origin) => site.unwrap_or(true) && origin.unwrap_or(true),
    }
}

/// Whether the body is a form as browsers send it without a script.
pub(super) fn is_form(headers: &HeaderMap) -> bool {
    let kind = headers.get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok());
    let kind = kind.and_then(|kind| kind.split(';').next()).unwrap_or_default();
    kind.trim().eq_ignore_ascii_case("application/x-www-form-urlencoded")
}

#[cfg(test)]
mod tests {
    use super::from_us;
    use axum::http::HeaderMap;

    fn heard(with: &[(&'static str, &'static str)], tls: bool) -> bool {
        let mut headers = HeaderMap::new();
        headers.insert("host", "localhost:8420".parse().expect("a value"));
        for (name, value) in with {
            headers.insert(*name, value.parse().expect("a value"));
        }
        from_us(&headers, tls)
    }

    #[test]
    fn only_pages_of_our_own_change_anything() {
        assert!(heard(&[("origin", "http://localhost:8420")], false));
        assert!(heard(&[("sec-fetch-site", "same-origin")], false));
        assert!(heard(&[("origin", "https://localhost:8420")], true));
        for wrong in [
            &[][..],
            &[("origin", "null")],
            &[("origin", "http://localhost:8421")],
            &[("origin", "https://localhost:8420")],
            &[("origin", "http://evil.example")],
            &[("sec-fetch-site", "cross-site")],
            &[("sec-fetch-site", "same-site")],
            &[("sec-fetch-site", "none")],
            &[("sec-fetch-site", "cross-site"), ("origin", "http://localhost:8420")],
            &[("sec-fetch-site", "same-origin"), ("origin", "http://evil.example")],
        ] {
            assert!(!heard(wrong, false), "{wrong:?}");
        }
    }
}
