//! Whether a copy of this program answers already, and where.

use std::io::{Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpStream};
use std::path::Path;
use std::time::Duration;

/// In the data folder, while a copy runs on it: the address at which it answers.
const NOTE: &str = "barm.address";
/// A copy on this computer answers sooner.
const SOON: Duration = Duration::from_millis(800);

/// Notes where a copy answers that has this data folder open.
pub(crate) fn note(folder: &Path, address: &str) {
    // Without it, a second copy only cannot say where the first is.
    let _ = std::fs::write(folder.join(NOTE), address);
}

/// Takes the note away.
pub(crate) fn forget(folder: &Path) {
    let _ = std::fs::remove_file(folder.join(NOTE));
}

/// Where the copy answers that has this data folder open, if it said so.
pub(crate) fn noted(folder: &Path) -> Option<String> {
    let address = std::fs::read_to_string(folder.join(NOTE)).ok()?;
    let port = address.trim().rsplit_once(':')?.1.parse::<u16>().ok()?;
    let scheme = if address.starts_with("https://") { "https" } else { "http" };
    Some(format!("{scheme}://localhost:{port}"))
}

/// Whether what answers at a port of this computer is a copy of this program.
pub(crate) fn answers_at(port: u16) -> bool {
    let ask = || -> std::io::Result<bool> {
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let mut stream = TcpStream::connect_timeout(&address, SOON)?;
        stream.set_read_timeout(Some(SOON))?;
        stream.set_write_timeout(Some(SOON))?;
        stream
            .write_all(b"GET /time HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")?;
        let mut answer = String::new();
        // Whatever listens there may send without end.
        let _ = stream.take(4096).read_to_string(&mut answer);
        Ok(answer.contains("\"program\":\"barm\""))
    };
    ask().unwrap_or(false)
}
