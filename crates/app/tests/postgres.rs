//! A district's server: the record lies in a PostgreSQL database, and the pages are the same.

#[allow(dead_code)]
#[path = "../../store/tests/record/server.rs"]
mod server;

/// What the server's own module asks of whoever uses it.
mod size {
    /// Says that a test could not run, on the error stream and in the file named by `BARM_SKIPS`.
    #[allow(clippy::print_stderr)]
    pub(crate) fn skip(name: &str, why: &str) {
        use std::io::Write;
        eprintln!("{name}: {why}");
        let list = std::env::var_os("BARM_SKIPS");
        let file =
            list.map(|list| std::fs::OpenOptions::new().create(true).append(true).open(list));
        if let Some(Ok(mut file)) = file {
            let _ = writeln!(file, "{name}: {why}");
        }
    }
}

use server::Server;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use tempfile::TempDir;

/// The program, serving.
struct Served {
    program: Child,
    port: u16,
    said: String,
}

impl Served {
    fn start(address: &str, data: &Path) -> Self {
        let mut program = Command::new(env!("CARGO_BIN_EXE_barm"))
            .args(["serve", "--port", "0", "--postgres", address, "--data"])
            .arg(data)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("barm starts");
        let mut lines = BufReader::new(program.stdout.take().expect("its output")).lines();
        let mut said = String::new();
        for line in lines.by_ref().take(2) {
            said.push_str(&line.expect("a line"));
            said.push('\n');
        }
        let (_, rest) = said.split_once("http://localhost:").expect("where it answers");
        let port: String = rest.chars().take_while(char::is_ascii_digit).collect();
        Self { program, port: port.parse().expect("a port"), said }
    }

    /// Asks and gives the whole answer.
    fn ask(&self, method: &str, path: &str, cookies: &str, body: &str) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).expect("it listens");
        let host = format!("localhost:{}", self.port);
        let request = format!(
            "{method} {path} HTTP/1.1\r\nhost: {host}\r\norigin: http://{host}\r\n\
             connection: close\r\ncookie: {cookies}\r\naccept: text/html\r\n\
             content-type: application/x-www-form-urlencoded\r\ncontent-length: {}\r\n\r\n{body}",
            body.len()
        );
        stream.write_all(request.as_bytes()).expect("it hears");
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).expect("it answers");
        String::from_utf8_lossy(&answer).into_owned()
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

/// The cookies that an answer sets, as they are sent back.
fn cookies(answer: &str) -> String {
    let set = answer.lines().filter_map(|line| line.strip_prefix("set-cookie: "));
    let pairs: Vec<&str> = set.filter_map(|line| line.split(';').next()).collect();
    pairs.join("; ")
}

fn form_token(page: &str) -> String {
    let (_, rest) = page.split_once("name=\"form\" value=\"").expect("a form");
    rest.chars().take_while(char::is_ascii_hexdigit).collect()
}

#[test]
fn a_record_on_a_server_outlives_the_program_and_its_folder() {
    let Some(server) = Server::start() else { return };
    let folder = TempDir::new().expect("a folder");
    let first = Served::start(&server.address(), folder.path());
    assert!(first.said.contains("in the database"), "{}", first.said);
    assert!(!first.said.contains("postgresql://"), "an address may hold a password");
    let door = first.ask("GET", "/teacher", "", "");
    let (device, token) = (cookies(&door), form_token(&door));
    let words = "four+words+of+mine";
    let body = format!("form={token}&passphrase={words}&again={words}");
    let signed_in = first.ask("POST", "/teacher/first", &device, &body);
    assert!(signed_in.starts_with("HTTP/1.1 303"), "{signed_in}");
    let all = format!("{device}; {}", cookies(&signed_in));
    let made = first.ask("POST", "/start/invented", &all, &format!("form={token}"));
    assert!(made.starts_with("HTTP/1.1 303"), "{made}");
    let plan = first.ask("GET", "/i/1/plan", &all, "");
    assert!(plan.starts_with("HTTP/1.1 200"), "{plan}");
    let backup = first.ask("POST", "/backups", &all, &format!("form={token}&do=make"));
    assert!(backup.contains("Made and read through"), "{backup}");
    drop(first);
    assert!(!folder.path().join("record.sqlite").exists(), "no record lies in the folder");

    let elsewhere = TempDir::new().expect("another folder");
    let second = Served::start(&server.address(), elsewhere.path());
    let shelf = second.ask("GET", "/shelf", &all, "");
    assert!(shelf.contains("/i/1/plan"), "still signed in, and it is on the shelf: {shelf}");
}
