//! A line to a server on this computer: HTTP/1.1 over one connection that is kept open, with
//! cookies, as a browser keeps them. It sends what pages of this program send, and nothing else.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpStream};
use std::time::Duration;

/// An answer that takes longer will not come; a page waits as long.
const PATIENCE: Duration = Duration::from_secs(20);
/// The longest answer that is read.
const MOST: u64 = 16 * 1024 * 1024;

/// A device's line to the server.
pub(crate) struct Line {
    port: u16,
    kept: Option<BufReader<TcpStream>>,
    cookies: BTreeMap<String, String>,
    /// What a form must bring, as the last page with a form said.
    form: String,
}

/// What the server said.
#[derive(Debug)]
pub(crate) struct Answer {
    /// Status.
    pub(crate) status: u16,
    /// The rest.
    pub(crate) body: String,
}

impl Line {
    /// A line to a port of this computer; opened when it is used.
    pub(crate) const fn to(port: u16) -> Self {
        Self { port, kept: None, cookies: BTreeMap::new(), form: String::new() }
    }

    /// Asks for a page.
    pub(crate) fn get(&mut self, path: &str) -> io::Result<Answer> {
        let answer = self.call("GET", path, "Accept: text/html, application/json\r\n", "")?;
        if let Some(token) = field(&answer.body) {
            self.form = token;
        }
        Ok(answer)
    }

    /// Sends a form of the page that was asked for last.
    pub(crate) fn form(&mut self, path: &str, fields: &[(&str, &str)]) -> io::Result<Answer> {
        let mut body = format!("form={}", self.form);
        for (name, value) in fields {
            let _ = write!(body, "&{name}={}", encoded(value));
        }
        let head = format!(
            "Accept: text/html\r\nContent-Type: application/x-www-form-urlencoded\r\n\
             Origin: {}\r\n",
            self.origin()
        );
        self.call("POST", path, &head, &body)
    }

    /// Sends what a script of a page sends.
    pub(crate) fn script(&mut self, path: &str, json: &str) -> io::Result<Answer> {
        let head = format!(
            "Accept: application/json\r\nContent-Type: application/json\r\nX-Barm: 1\r\n\
             Origin: {}\r\n",
            self.origin()
        );
        self.call("POST", path, &head, json)
    }

    /// Another line of the same device.
    #[allow(dead_code)]
    pub(crate) fn another(&self) -> Self {
        let Self { port, cookies, form, .. } = self;
        Self { port: *port, kept: None, cookies: cookies.clone(), form: form.clone() }
    }

    /// Its cookies, as a request holds them.
    pub(crate) fn cookies(&self) -> String {
        let all = self.cookies.iter().map(|(name, value)| format!("{name}={value}"));
        all.collect::<Vec<_>>().join("; ")
    }

    fn origin(&self) -> String {
        format!("http://localhost:{}", self.port)
    }

    fn call(&mut self, method: &str, path: &str, head: &str, body: &str) -> io::Result<Answer> {
        let mut request =
            format!("{method} {path} HTTP/1.1\r\nHost: localhost:{}\r\n", self.port);
        request.push_str(head);
        if !self.cookies.is_empty() {
            let _ = write!(request, "Cookie: {}\r\n", self.cookies());
        }
        if method != "GET" {
            let _ = write!(request, "Content-Length: {}\r\n", body.len());
        }
        request.push_str("\r\n");
        request.push_str(body);
        // A kept connection may have been closed in the meantime. What is sent twice counts once:
        // entries and forms have keys.
        if let Some(kept) = self.kept.take()
            && let Ok(answer) = self.said(kept, &request)
        {
            return Ok(answer);
        }
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, self.port));
        let stream = TcpStream::connect_timeout(&address, PATIENCE)?;
        stream.set_read_timeout(Some(PATIENCE))?;
        stream.set_write_timeout(Some(PATIENCE))?;
        stream.set_nodelay(true)?;
        self.said(BufReader::new(stream), &request)
    }

    fn said(&mut self, mut stream: BufReader<TcpStream>, request: &str) -> io::Result<Answer> {
        stream.get_mut().write_all(request.as_bytes())?;
        let first = line(&mut stream)?;
        let status = first.split(' ').nth(1).and_then(|status| status.parse().ok());
        let status = status.ok_or_else(|| wrong("no status"))?;
        let (mut length, mut chunked, mut close) = (0, false, false);
        loop {
            let header = line(&mut stream)?;
            let Some((name, value)) = header.split_once(':') else { break };
            let value = value.trim();
            match name.to_ascii_lowercase().as_str() {
                "content-length" => length = value.parse().map_err(|_| wrong("no length"))?,
                "transfer-encoding" => chunked = value.eq_ignore_ascii_case("chunked"),
                "connection" => close = value.eq_ignore_ascii_case("close"),
                "set-cookie" => self.keep_cookie(value),
                _ => {}
            }
        }
        let body = if chunked { chunks(&mut stream)? } else { exactly(&mut stream, length)? };
        if !close {
            self.kept = Some(stream);
        }
        let body = String::from_utf8(body).map_err(|_| wrong("no text"))?;
        Ok(Answer { status, body })
    }

    fn keep_cookie(&mut self, line: &str) {
        let pair = line.split(';').next().and_then(|pair| pair.split_once('='));
        if let Some((name, value)) = pair {
            self.cookies.insert(name.to_owned(), value.to_owned());
        }
    }
}

fn line(stream: &mut impl BufRead) -> io::Result<String> {
    let mut line = String::new();
    if stream.take(64 * 1024).read_line(&mut line)? == 0 || !line.ends_with('\n') {
        return Err(io::ErrorKind::UnexpectedEof.into());
    }
    Ok(line.trim_end().to_owned())
}

fn exactly(stream: &mut impl BufRead, length: u64) -> io::Result<Vec<u8>> {
    let mut body = Vec::new();
    stream.take(length.min(MOST)).read_to_end(&mut body)?;
    if body.len() as u64 == length {
        Ok(body)
    } else {
        Err(io::ErrorKind::UnexpectedEof.into())
    }
}

/// A body in chunks (RFC 9112, section 7.1).
fn chunks(stream: &mut impl BufRead) -> io::Result<Vec<u8>> {
    let mut body = Vec::new();
    loop {
        let head = line(stream)?;
        let size = head.split(';').next().unwrap_or_default();
        let size = u64::from_str_radix(size.trim(), 16).map_err(|_| wrong("no chunk"))?;
        if size + body.len() as u64 > MOST {
            return Err(wrong("too long"));
        }
        body.extend(exactly(stream, size)?);
        line(stream)?;
        if size == 0 {
            return Ok(body);
        }
    }
}

fn wrong(why: &str) -> io::Error {
    io::Error::new(io::ErrorKind::InvalidData, format!("not an answer of this program: {why}"))
}

/// The hidden field of the first form of a page.
fn field(page: &str) -> Option<String> {
    let (_, rest) = page.split_once("name=\"form\" value=\"")?;
    Some(rest.split('"').next()?.to_owned())
}

/// A value as forms write it.
fn encoded(value: &str) -> String {
    let mut written = String::new();
    for byte in value.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._".contains(&byte) {
            written.push(char::from(byte));
        } else {
            let _ = write!(written, "%{byte:02X}");
        }
    }
    written
}

#[cfg(test)]
mod tests {
    use super::{chunks, encoded, exactly, field};

    #[test]
    fn bodies_are_read_whole_or_not_at_all() {
        let mut whole = &b"4\r\nWiki\r\n5;x=y\r\npedia\r\n0\r\n\r\nrest"[..];
        assert_eq!(chunks(&mut whole).expect("a body"), b"Wikipedia");
        assert_eq!(whole, b"rest");
        assert!(chunks(&mut &b"4\r\nWi"[..]).is_err());
        assert!(chunks(&mut &b"zz\r\n"[..]).is_err());
        assert_eq!(exactly(&mut &b"abcd"[..], 3).expect("a body"), b"abc");
        assert!(exactly(&mut &b"ab"[..], 3).is_err());
    }

    #[test]
    fn forms_are_found_and_written_as_browsers_do() {
        let page = "<input type=\"hidden\" name=\"form\" value=\"ab12\"><input name=\"x\">";
        assert_eq!(field(page).as_deref(), Some("ab12"));
        assert_eq!(field("<p>nothing</p>"), None);
        assert_eq!(encoded("odd P1-02B-6 é&"), "odd%20P1-02B-6%20%C3%A9%26");
    }
}
