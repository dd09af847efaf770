//! A PostgreSQL server of our own for one test: loopback only, a free port, a folder that goes.

use crate::size::skip;
use std::fs;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::Duration;
use tempfile::TempDir;

/// Where Debian puts version 15; elsewhere the programs are looked for on the path.
const DEBIAN: &str = "/usr/lib/postgresql/15/bin";

/// A running server.
pub(crate) struct Server {
    port: u16,
    running: Child,
    folder: TempDir,
}

impl Server {
    /// Starts one; `None`, and a line in the list of skips, if it is not installed.
    pub(crate) fn start() -> Option<Self> {
        let programs = [PathBuf::from(DEBIAN)]
            .into_iter()
            .chain(std::env::split_paths(&std::env::var_os("PATH").unwrap_or_default()))
            .find(|folder| {
                folder.join("initdb").is_file() && folder.join("postgres").is_file()
            });
        let Some(programs) = programs else {
            skip("the record on PostgreSQL", "no server is installed");
            return None;
        };
        let folder = TempDir::with_prefix("barm-pg").expect("a folder");
        let data = folder.path().join("data");
        if is_root() {
            // The server refuses to run as root.
            let own = Command::new("chown").arg("postgres").arg(folder.path()).status();
            assert!(own.is_ok_and(|status| status.success()), "chown to postgres");
        }
        let made = as_server(&programs.join("initdb"))
            .args(["--auth=trust", "--username=barm", "--no-sync", "--encoding=UTF8"])
            .args(["--locale=C", "-D"])
            .arg(&data)
            .current_dir(folder.path())
            .stdin(Stdio::null())
            .output()
            .expect("initdb");
        assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
        // Another process may take the free port in between; then the next one is tried.
        for _ in 0..5 {
            let port = free_port();
            if let Some(running) = run(&programs, folder.path(), &data, port) {
                return Some(Self { port, running, folder });
            }
        }
        panic!("the server does not start: {}", log(folder.path()));
    }

    /// The files of its databases, without its write-ahead log.
    pub(crate) fn tables(&self) -> PathBuf {
        self.folder.path().join("data/base")
    }

    /// How to reach its database.
    pub(crate) fn address(&self) -> String {
        format!("postgresql://barm@127.0.0.1:{}/postgres", self.port)
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // `setpriv` becomes the server, so this is the server's own process.
        let pid = self.running.id().to_string();
        let _ = Command::new("kill").args(["-QUIT", &pid]).status();
        let _ = self.running.wait();
    }
}

fn run(programs: &Path, folder: &Path, data: &Path, port: u16) -> Option<Child> {
    let log = fs::File::create(folder.join("log")).expect("a log");
    let mut running = as_server(&programs.join("postgres"))
        .arg("-D")
        .arg(data)
        .args(["-h", "127.0.0.1", "-p", &port.to_string(), "-k"])
        .arg(folder)
        .current_dir(folder)
        .stdin(Stdio::null())
        .stdout(log.try_clone().expect("a log"))
        .stderr(log)
        .spawn()
        .expect("postgres");
    // A server that is up answers; one that died says so. No other end to this.
    loop {
        let ready = Command::new(programs.join("pg_isready"))
            .args(["-q", "-h", "127.0.0.1", "-p", &port.to_string()])
            .status()
            .expect("pg_isready");
        if ready.success() {
            return Some(running);
        }
        if running.try_wait().expect("a process").is_some() {
            return None;
        }
        thread::sleep(Duration::from_millis(50));
    }
}

/// The program, run as somebody else where we are root.
fn as_server(program: &Path) -> Command {
    if !is_root() {
        return Command::new(program);
    }
    let mut command = Command::new("setpriv");
    command.args(["--reuid=postgres", "--regid=postgres", "--clear-groups"]).arg(program);
    command
}

/// Whether this process may do anything.
pub(crate) fn is_root() -> bool {
    let id = Command::new("id").arg("-u").output().expect("id");
    id.stdout.trim_ascii() == b"0"
}

fn free_port() -> u16 {
    let socket = TcpListener::bind(("127.0.0.1", 0)).expect("a free port");
    socket.local_addr().expect("an address").port()
}

fn log(folder: &Path) -> String {
    fs::read_to_string(folder.join("log")).unwrap_or_default()
}
