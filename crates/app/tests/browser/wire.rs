//! The little of HTTP that a driver of browsers on this computer needs.

use serde_json::Value;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

/// Asks `127.0.0.1:port` and gives the JSON of the answer; nothing if nobody answers for longer than
/// any script in a page may take.
pub(crate) fn ask(port: u16, method: &str, path: &str, body: Option<&Value>) -> Option<Value> {
    let mut stream = TcpStream::connect(("127.0.0.1", port)).ok()?;
    stream.set_read_timeout(Some(Duration::from_secs(240))).ok()?;
    let body = body.map(ToString::to_string).unwrap_or_default();
    let request = format!(
        "{method} {path} HTTP/1.1\r\nhost: 127.0.0.1:{port}\r\nconnection: close\r\n\
         content-type: application/json\r\ncontent-length: {}\r\n\r\n{body}",
        body.len()
    );
    stream.write_all(request.as_bytes()).ok()?;
    let mut answer = Vec::new();
    let mut piece = [0; 16 * 1024];
    loop {
        // Some drivers keep the line open although they were asked not to.
        if whole(&answer) {
            break;
        }
        match stream.read(&mut piece) {
            Ok(0) | Err(_) => break,
            Ok(read) => answer.extend_from_slice(&piece[..read]),
        }
    }
    let (_, body) = split(&answer)?;
    serde_json::from_slice(body).ok()
}

fn split(answer: &[u8]) -> Option<(&str, &[u8])> {
    let at = answer.windows(4).position(|four| four == b"\r\n\r\n")?;
    Some((std::str::from_utf8(&answer[..at]).ok()?, &answer[at + 4..]))
}

fn whole(answer: &[u8]) -> bool {
    let Some((head, body)) = split(answer) else { return false };
    let length = head.lines().find_map(|line| {
        let (name, value) = line.split_once(':')?;
        name.eq_ignore_ascii_case("content-length")
            .then(|| value.trim().parse::<usize>().ok())?
    });
    length.is_some_and(|length| body.len() >= length)
}
