//! The program serving, as a process of its own.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};
use std::time::Duration;

/// A running server; stopped when it is dropped.
pub(crate) struct Server {
    child: Child,
    out: BufReader<ChildStdout>,
    /// Where it answers.
    pub(crate) port: u16,
    /// What it said before it answered.
    pub(crate) said: String,
}

impl Server {
    /// Starts it on a data folder.
    #[allow(dead_code)]
    pub(crate) fn start(folder: &Path, more: &[&str]) -> Self {
        let mut command = crate::program::barm();
        command.args(["serve", "--data"]).arg(folder).args(more);
        Self::run(&mut command)
    }

    /// Starts it as a command says.
    pub(crate) fn run(command: &mut Command) -> Self {
        let command = command.stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().expect("barm starts");
        let mut out = BufReader::new(child.stdout.take().expect("its answer"));
        let mut said = String::new();
        let mut port = None;
        while !said.contains("Stop it with") {
            let mut line = String::new();
            let read = out.read_line(&mut line).expect("text");
            assert!(read > 0, "it ended; it said:\n{said}");
            if let Some(at) = line.strip_prefix("Barm answers at ") {
                port = at.trim().rsplit_once(':').and_then(|(_, port)| port.parse().ok());
            }
            said.push_str(&line);
        }
        Self { child, out, port: port.expect("it says where it answers"), said }
    }

    /// The next line that it says.
    #[allow(dead_code)]
    pub(crate) fn line(&mut self) -> String {
        let mut line = String::new();
        self.out.read_line(&mut line).expect("text");
        line
    }

    /// Asks it something and gives the whole answer.
    #[allow(dead_code)]
    pub(crate) fn ask(&self, head: &str) -> String {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port)).expect("open");
        stream.set_read_timeout(Some(Duration::from_secs(30))).expect("set");
        let request = format!("{head}\r\nHost: localhost\r\nConnection: close\r\n\r\n");
        stream.write_all(request.as_bytes()).expect("sent");
        let mut answer = String::new();
        stream.read_to_string(&mut answer).expect("an answer");
        answer
    }

    /// Asks it to end and returns the rest of what it said.
    #[cfg(unix)]
    #[allow(dead_code)]
    pub(crate) fn stop(mut self) -> String {
        let pid = self.child.id().to_string();
        let told = Command::new("kill").args(["-TERM", &pid]).status();
        assert!(told.expect("kill").success());
        let status = self.child.wait().expect("it ends");
        let mut rest = String::new();
        self.out.read_to_string(&mut rest).expect("text");
        assert_eq!(status.code(), Some(0), "{rest}");
        rest
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // It may have ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
