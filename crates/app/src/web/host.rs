//! Which names this program answers to, so that no other site can borrow a browser's way to it.

use super::state::{Reach, Web};
use super::trouble::plain;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::middleware::Next;
use axum::response::Response;
use std::net::IpAddr;

/// Refuses what is addressed to another host.
pub(super) async fn host(State(web): State<Web>, request: Request, next: Next) -> Response {
    // Addresses that it had at the start answer for nearly all; others came when it was opened.
    let known = |host| ours(&web.reach, host) || ours(&web.reach_now(), host);
    if named(request.headers()).is_some_and(known) {
        return next.run(request).await;
    }
    plain(StatusCode::MISDIRECTED_REQUEST, "trouble-name")
}

/// The host that a request is addressed to; `None` if there are several or none.
pub(super) fn named(headers: &HeaderMap) -> Option<&str> {
    let mut hosts = headers.get_all(header::HOST).iter();
    let host = hosts.next()?.to_str().ok()?;
    hosts.next().is_none().then_some(host)
}

fn ours(reach: &Reach, host: &str) -> bool {
    let name = without_port(host);
    if let Some(six) = name.strip_prefix('[').and_then(|name| name.strip_suffix(']')) {
        return six.parse().is_ok_and(|address: IpAddr| own(reach, address));
    }
    if let Ok(address) = name.parse::<IpAddr>() {
        return address.is_ipv4() && own(reach, address);
    }
    let name = name.trim_end_matches('.');
    name.eq_ignore_ascii_case("localhost")
        || reach.names.iter().any(|known| known.eq_ignore_ascii_case(name))
}

fn own(reach: &Reach, address: IpAddr) -> bool {
    address.is_loopback() || reach.addresses.contains(&address)
}

fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        // A colon within brackets belongs to an address.
        Some((name, port)) if port.bytes().all(|byte| byte.is_ascii_digit()) => name,
        _ => host,
    }
}

#[cfg(test)]
mod tests {
    use super::ours;
    use crate::web::state::Reach;

    #[test]
    fn only_own_names_are_answered_to() {
        let reach = Reach {
            names: vec!["barm.school.example".into()],
            addresses: vec!["192.168.7.20".parse().expect("an address")],
            ..Reach::default()
        };
        for host in [
            "localhost",
            "LOCALHOST:8420",
            "localhost.",
            "127.0.0.1:8420",
            "[::1]:8420",
            "[::1]",
            "192.168.7.20:80",
            "barm.school.example",
            "Barm.School.Example:8420",
        ] {
            assert!(ours(&reach, host), "{host}");
        }
        for host in [
            "",
            "evil.example",
            "localhost.evil.example",
            "evil.example:localhost",
            "192.168.7.21",
            "127.0.0.1.evil.example",
            "::1",
            "[::1",
            "[192.168.7.20.evil]",
            "localhost:8420:1",
            "localhost@evil.example",
        ] {
            assert!(!ours(&reach, host), "{host}");
        }
    }
}
