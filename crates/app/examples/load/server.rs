//! The program, serving a record.

use crate::Fallible;
use crate::line::Line;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Instant;

/// Chosen by the teacher at the first start.
pub(crate) const PASSPHRASE: &str = "three bags rise by the window";

/// The program, serving; killed when it is dropped.
pub(crate) struct Server {
    child: Child,
    /// Where it answers.
    pub(crate) port: u16,
}

impl Server {
    /// Starts the program on a record.
    pub(crate) fn on(program: &str, record: &Path) -> Fallible<Self> {
        let started = Instant::now();
        let mut child = Command::new(program)
            .args(["serve", "--port", "0", "--data"])
            .arg(record)
            .stdout(Stdio::piped())
            .spawn()?;
        let mut out = BufReader::new(child.stdout.take().ok_or("no answer")?);
        let mut line = String::new();
        while !line.starts_with("Barm answers at ") {
            line.clear();
            if out.read_line(&mut line)? == 0 {
                return Err("the program ended".into());
            }
        }
        let port = line.trim().rsplit_once(':').ok_or("no port")?.1.parse()?;
        // What it says later is read by nobody, and must not fill a pipe.
        std::thread::spawn(move || std::io::copy(&mut out, &mut std::io::sink()));
        let server = Self { child, port };
        Line::to(port).get("/join")?;
        println!("start to first page: {:.0} ms", started.elapsed().as_secs_f64() * 1e3);
        Ok(server)
    }

    /// Lets the teacher in.
    pub(crate) fn teacher(&self) -> Fallible<Line> {
        let mut line = Line::to(self.port);
        line.get("/teacher")?;
        let chosen = [("passphrase", PASSPHRASE), ("again", PASSPHRASE)];
        if line.form("/teacher/first", &chosen)?.status != 303 {
            return Err("the teacher was not let in".into());
        }
        Ok(line)
    }

    /// Lets the teacher in who chose a passphrase before.
    pub(crate) fn teacher_again(&self) -> Fallible<Line> {
        let mut line = Line::to(self.port);
        line.get("/teacher")?;
        if line.form("/teacher", &[("passphrase", PASSPHRASE)])?.status != 303 {
            return Err("the teacher was not let in again".into());
        }
        Ok(line)
    }

    /// Says how much memory it takes (Linux).
    pub(crate) fn memory(&self, when: &str) -> Fallible<()> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id()))?;
        let of = |name: &str| {
            let line = status.lines().find_map(|line| line.strip_prefix(name));
            let kb = line?.trim_start_matches(':').trim().trim_end_matches(" kB");
            Some(kb.parse::<f64>().ok()? / 1024.0)
        };
        let (now, most) = (of("VmRSS").unwrap_or_default(), of("VmHWM").unwrap_or_default());
        println!("memory, {when}: {now:.0} MiB, at most {most:.0} MiB so far");
        Ok(())
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // It may be gone already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
