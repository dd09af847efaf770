//! The address that people type to reach this program.

use super::state::Reach;
use axum::http::{HeaderMap, header};

/// What to type on another device: the way the page itself was reached, or, if that was on this
/// computer, its first address in the network.
pub(super) fn shown(reach: &Reach, headers: &HeaderMap) -> String {
    let host =
        headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    let scheme = if reach.tls { "https://" } else { "http://" };
    let (name, port) = match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) => {
            (name, format!(":{port}"))
        }
        _ => (host, String::new()),
    };
    let here = is_this_computer(name);
    let other =
        reach.addresses.iter().find(|address| address.is_ipv4() && !address.is_loopback());
    match other.filter(|_| here && reach.lan) {
        Some(address) => format!("{scheme}{address}{port}"),
        None => format!("{scheme}{name}{port}"),
    }
}

/// Whether an address, as [`shown`] gives it, leads other devices to themselves.
pub(super) fn is_here(address: &str) -> bool {
    let name = address.split_once("://").map_or(address, |(_, rest)| rest);
    let name = name.rsplit_once(':').map_or(name, |(name, _)| name);
    is_this_computer(name)
}

fn is_this_computer(name: &str) -> bool {
    matches!(name, "localhost" | "127.0.0.1" | "[::1]")
}

/// A name as it stands in a path or a query (RFC 3986, section 2.3): periods may be called
/// anything.
pub(super) fn segment(name: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~".contains(&byte);
    let bytes = name.bytes();
    bytes
        .map(
            |byte| {
                if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }
            },
        )
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{Reach, is_here, segment, shown};
    use axum::extract::Query;
    use axum::http::{HeaderMap, HeaderValue, Uri};

    fn from(host: &str, lan: bool) -> String {
        let mut headers = HeaderMap::new();
        headers.insert("host", host.parse().expect("a value"));
        let addresses = ["127.0.0.1", "fe80::1", "192.168.1.20"];
        let addresses = addresses.map(|one| one.parse().expect("an address")).to_vec();
        shown(&Reach { lan, addresses, ..Reach::default() }, &headers)
    }

    #[test]
    fn any_name_of_a_period_stands_in_a_path() {
        assert_eq!(segment("3B"), "3B");
        assert_eq!(segment("Año 3/B?"), "A%C3%B1o%203%2FB%3F");
    }

    #[test]
    fn no_name_of_a_period_leads_out_of_its_place() {
        for name in [
            "../../shelf",
            "/\\evil.example",
            "1?did=x&id=2#y",
            "1%2F..%2F2",
            "a+b=c;d@e:80",
            "1\r\nset-cookie: a=b",
            "\"><script>alert(1)</script>",
            "\0\u{7f}\u{202e}\u{1f9ea}",
            "",
        ] {
            let part = segment(name);
            let uri: Uri = format!("/i/1/run/{part}/codes?of={part}").parse().expect("one");
            let parts: Vec<&str> = uri.path().split('/').collect();
            assert_eq!(parts, ["", "i", "1", "run", &part, "codes"], "{name}");
            assert!(HeaderValue::from_str(&part).is_ok(), "{name} ends no header");
            let Query(back) = Query::<Vec<(String, String)>>::try_from_uri(&uri).expect("one");
            assert_eq!(back, [("of".to_owned(), name.to_owned())], "it comes back whole");
        }
    }

    #[test]
    fn another_device_is_never_sent_to_itself_where_there_is_a_network() {
        assert_eq!(from("localhost:8420", true), "http://192.168.1.20:8420");
        assert_eq!(from("[::1]:8420", true), "http://192.168.1.20:8420");
        assert_eq!(from("room12.example:8420", true), "http://room12.example:8420");
        assert_eq!(from("localhost:8420", false), "http://localhost:8420");
        assert!(is_here("http://localhost:8420") && is_here("https://[::1]:8420"));
        assert!(is_here("http://127.0.0.1:8420") && is_here("http://localhost"));
        assert!(!is_here("http://192.168.1.20:8420") && !is_here("http://room12.example"));
    }
}
