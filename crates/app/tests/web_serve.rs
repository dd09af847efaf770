//! `barm serve` as a person runs it: a real process, a real port, a real folder.

mod program;
mod serving;

use serving::Server;
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::time::Duration;

#[test]
#[cfg(unix)]
fn it_answers_and_stops_when_told_with_a_stream_open() {
    let home = tempfile::tempdir().expect("a folder");
    let server = Server::start(home.path(), &["--port", "0"]);
    assert!(server.ask("GET /join HTTP/1.1").starts_with("HTTP/1.1 200"));
    assert!(server.ask("GET /time HTTP/1.1").contains("\"now_ms\":"));
    // A connection that is left open keeps nothing up.
    let _idle = TcpStream::connect((Ipv4Addr::LOCALHOST, server.port)).expect("open");
    let rest = server.stop();
    assert!(rest.contains("Everything that was entered is on disk"), "{rest}");
    let log = std::fs::read_to_string(home.path().join("barm.log")).expect("a log");
    assert!(log.trim_end().ends_with("stopped"), "{log}");
    assert!(!home.path().join("barm.address").exists());
}

#[test]
fn a_second_copy_on_the_same_folder_names_the_first() {
    let home = tempfile::tempdir().expect("a folder");
    let server = Server::start(home.path(), &["--port", "0"]);
    let data = home.path().to_str().expect("a plain name");
    let (out, err) =
        program::run(home.path(), &["serve", "--port", "0", "--data", data]).ended(2);
    assert!(out.contains(&format!("http://localhost:{}", server.port)), "{out}");
    assert!(err.contains("another copy of this program"), "{err}");
    let (_, err) = program::run(home.path(), &["passphrase", "--data", data]).ended(2);
    assert!(err.contains("another copy of this program"), "{err}");
}

#[test]
fn a_port_that_is_taken_is_said_and_the_next_is_used() {
    let taken = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).expect("a port");
    let port = taken.local_addr().expect("an address").port();
    let home = tempfile::tempdir().expect("a folder");
    let server = Server::start(home.path(), &["--port", &port.to_string()]);
    assert_ne!(server.port, port);
    let says = format!("Port {port} is taken by another program");
    assert!(server.said.contains(&says), "{}", server.said);
}

#[test]
fn with_lan_it_says_where_groups_join() {
    let home = tempfile::tempdir().expect("a folder");
    let server =
        Server::start(home.path(), &["--port", "0", "--lan", "--name", "barm.example"]);
    let says = format!("Groups join at http://barm.example:{}/join", server.port);
    assert!(server.said.contains(&says), "{}", server.said);
    assert!(server.said.contains('█') || server.said.contains('▀'), "{}", server.said);
    for way in ["one phone", "keeps devices apart", "hotspot", "one device", "on paper"] {
        assert!(server.said.contains(way), "{way}: {}", server.said);
    }
    let answer = server.ask("GET /join HTTP/1.1\r\nX: y");
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
}

#[test]
fn its_own_certificate_is_made_once_and_its_key_is_private() {
    let home = tempfile::tempdir().expect("a folder");
    drop(Server::start(home.path(), &["--port", "0", "--tls"]));
    let first = std::fs::read(home.path().join("certificate.pem")).expect("a certificate");
    drop(Server::start(home.path(), &["--port", "0", "--tls"]));
    assert_eq!(std::fs::read(home.path().join("certificate.pem")).expect("it"), first);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let key = std::fs::metadata(home.path().join("key.pem")).expect("a key");
        assert_eq!(key.permissions().mode() & 0o077, 0, "nobody else reads it");
    }
}

#[test]
fn a_certificate_that_is_none_is_said_before_anything_is_served() {
    let home = tempfile::tempdir().expect("a folder");
    let file = home.path().join("x.pem");
    std::fs::write(&file, "no certificate").expect("written");
    let (data, file) =
        (home.path().join("data"), file.to_str().expect("a plain name").to_owned());
    let data = data.to_str().expect("a plain name");
    let arguments = ["serve", "--port", "0", "--data", data, "--tls", "--certificate", &file];
    let arguments: Vec<&str> = arguments.into_iter().chain(["--key", &file]).collect();
    let (out, err) = program::run(home.path(), &arguments).ended(2);
    assert_eq!(out, "");
    assert!(err.starts_with("barm: the certificate cannot be used: "), "{err}");
    let gone = ["serve", "--data", data, "--tls", "--certificate", "gone", "--key", "gone"];
    let (_, err) = program::run(home.path(), &gone).ended(2);
    assert!(err.starts_with("barm: cannot read gone"), "{err}");
}

#[test]
fn the_passphrase_can_be_made_anew_at_the_computer() {
    let home = tempfile::tempdir().expect("a folder");
    let data = home.path().to_str().expect("a plain name");
    let (first, _) = program::run(home.path(), &["passphrase", "--data", data]).ended(0);
    let (second, _) = program::run(home.path(), &["passphrase", "--data", data]).ended(0);
    assert_ne!(first, second, "it is random");
    assert!(first.contains("shown only now"), "{first}");
}

#[test]
fn a_file_in_place_of_the_folder_is_one_sentence_and_a_hint() {
    let home = tempfile::tempdir().expect("a folder");
    let file = home.path().join("taken");
    std::fs::write(&file, "something else").expect("written");
    let file = file.to_str().expect("a plain name");
    let (_, err) =
        program::run(home.path(), &["serve", "--port", "0", "--data", file]).ended(2);
    assert!(err.starts_with("barm: "), "{err}");
    assert!(err.lines().count() <= 3, "{err}");
}

#[test]
#[cfg(target_os = "linux")]
fn without_a_command_it_opens_in_a_folder_of_the_persons_own() {
    let home = tempfile::tempdir().expect("a folder");
    // A browser that only writes down what it was asked to open.
    let browser = home.path().join("xdg-open");
    let asked = home.path().join("asked");
    let script =
        format!("#!/bin/sh\necho \"$1\" > {}.new && mv {0}.new {0}\n", asked.display());
    std::fs::write(&browser, script).expect("written");
    std::fs::set_permissions(&browser, std::os::unix::fs::PermissionsExt::from_mode(0o755))
        .expect("it can be run");
    let path = std::env::var("PATH").unwrap_or_default();
    let path = format!("{}:{path}", home.path().display());
    let start = || {
        let mut command = program::barm();
        command.env("XDG_DATA_HOME", home.path()).env("PATH", &path);
        command
    };
    let server = Server::run(&mut start());
    let folder = home.path().join("barm");
    assert!(server.said.contains(&folder.display().to_string()), "{}", server.said);
    let address = format!("http://localhost:{}", server.port);
    let opened = || {
        for _ in 0..600 {
            if let Ok(text) = std::fs::read_to_string(&asked) {
                std::fs::remove_file(&asked).expect("taken away");
                return text.trim().to_owned();
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        panic!("the browser was not asked");
    };
    assert_eq!(opened(), address);
    // A second one leads to the first.
    let second = start().output().expect("it ends");
    assert!(second.status.success());
    let said = String::from_utf8_lossy(&second.stdout).into_owned();
    assert!(said.contains(&format!("Barm runs already, at {address}")), "{said}");
    assert_eq!(opened(), address);
}
