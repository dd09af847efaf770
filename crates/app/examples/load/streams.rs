//! Event streams that listen.

use crate::Fallible;
use crate::school::Device;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, Shutdown, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

/// Streams in all.
const STREAMS: usize = 500;

/// Streams that are open.
pub(crate) struct Streams {
    open: Vec<TcpStream>,
    heard: Arc<AtomicU64>,
}

impl Streams {
    /// Opens them, spread over the devices.
    pub(crate) fn open(port: u16, devices: &[Device]) -> Fallible<Self> {
        let heard = Arc::new(AtomicU64::new(0));
        let mut open = Vec::new();
        for device in devices.iter().cycle().take(STREAMS) {
            let stream = listen(port, "/bench/events", &device.line.cookies())?;
            let (own, heard) = (stream.try_clone()?, heard.clone());
            open.push(stream);
            std::thread::spawn(move || {
                let mut lines = BufReader::new(own).lines();
                while let Some(Ok(line)) = lines.next() {
                    heard.fetch_add(u64::from(line.starts_with("event:")), Ordering::Relaxed);
                }
            });
        }
        Ok(Self { open, heard })
    }

    /// How many there are.
    pub(crate) const fn many(&self) -> usize {
        self.open.len()
    }

    /// Changes heard on all of them.
    pub(crate) fn heard(&self) -> u64 {
        self.heard.load(Ordering::Relaxed)
    }
}

impl Drop for Streams {
    fn drop(&mut self) {
        for stream in &self.open {
            // The thread that listens ends with it.
            let _ = stream.shutdown(Shutdown::Both);
        }
    }
}

/// Opens one.
pub(crate) fn listen(port: u16, path: &str, cookies: &str) -> Fallible<TcpStream> {
    let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
    write!(
        stream,
        "GET {path} HTTP/1.1\r\nHost: localhost:{port}\r\nAccept: text/event-stream\r\n\
         Cookie: {cookies}\r\n\r\n"
    )?;
    let mut first = [0; 12];
    stream.read_exact(&mut first)?;
    if &first != b"HTTP/1.1 200" {
        return Err("the stream was refused".into());
    }
    Ok(stream)
}
