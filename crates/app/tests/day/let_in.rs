//! The teacher started the program for this computer only, and lets other devices in later.

use crate::line::Line;
use crate::program;
use crate::school::Serving;
use std::io::{Read, Write};
use std::net::{IpAddr, TcpStream, UdpSocket};

/// This computer's address in its network, without asking anybody: a socket that would send there
/// (192.0.2.1 is for documentation, RFC 5737) has it. Nothing is sent.
fn own_address() -> Option<IpAddr> {
    let socket = UdpSocket::bind("0.0.0.0:0").ok()?;
    socket.connect("192.0.2.1:9").ok()?;
    let own = socket.local_addr().ok()?.ip();
    (!own.is_loopback() && !own.is_unspecified()).then_some(own)
}

/// The status of a page asked for at an address; nothing if nobody answers there.
fn status(at: IpAddr, port: u16, path: &str) -> Option<u16> {
    let mut stream = TcpStream::connect((at, port)).ok()?;
    let head = format!("GET {path} HTTP/1.1\r\nHost: {at}:{port}\r\nConnection: close\r\n\r\n");
    stream.write_all(head.as_bytes()).ok()?;
    let mut said = String::new();
    stream.read_to_string(&mut said).ok()?;
    said.split(' ').nth(1)?.parse().ok()
}

#[test]
fn other_devices_are_let_in_at_a_button_and_see_no_page_of_the_teachers() {
    let Some(own) = own_address() else {
        return program::skip("letting devices in", "this computer is in no network");
    };
    let folder = tempfile::tempdir().expect("a folder");
    let serving = Serving::start(folder.path());
    let mut line = Line::to(serving.port);
    line.get("/teacher").expect("a page");
    let passphrase = "three bags rise by the window";
    let chosen = [("passphrase", passphrase), ("again", passphrase)];
    assert_eq!(line.form("/teacher/first", &chosen).expect("an answer").status, 303);
    line.get("/start").expect("a page");
    assert_eq!(line.form("/start/invented", &[]).expect("an answer").status, 303);
    assert_eq!(status(own, serving.port, "/join"), None, "nobody answers there yet");
    for _ in 0..2 {
        line.get("/i/1/run/1/codes").expect("a page");
        let told = line.form("/i/1/run/1/codes/let-in", &[]).expect("an answer");
        assert_eq!(told.status, 303, "{}", told.body);
    }
    assert_eq!(status(own, serving.port, "/join"), Some(200));
    for path in ["/shelf", "/teacher", "/i/1/plan", "/i/1/run/1"] {
        assert_eq!(status(own, serving.port, path), Some(403), "{path}");
    }
    let codes = line.get("/i/1/run/1/codes").expect("a page").body;
    assert!(codes.contains(&format!("http://{own}:{}/join", serving.port)), "{codes}");
}
