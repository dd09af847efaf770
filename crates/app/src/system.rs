//! Everything that differs between operating systems: folders, browser, signals, addresses.

use std::fs;
use std::io::{self, Write};
use std::net::IpAddr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The folder in which a person's programs keep what they hold, with one of our own in it.
pub(crate) fn data_folder() -> PathBuf {
    let from = |name: &str| std::env::var_os(name).filter(|v| !v.is_empty()).map(PathBuf::from);
    let folder = if cfg!(windows) {
        from("APPDATA").map(|folder| folder.join("Barm"))
    } else if cfg!(target_os = "macos") {
        from("HOME").map(|home| home.join("Library/Application Support/Barm"))
    } else {
        from("XDG_DATA_HOME")
            .filter(|folder| folder.is_absolute())
            .or_else(|| from("HOME").map(|home| home.join(".local/share")))
            .map(|folder| folder.join("barm"))
    };
    // Without a home the folder that somebody stands in is the only one that is sure to be theirs.
    folder.unwrap_or_else(|| PathBuf::from("barm-data"))
}

/// Makes a folder that only its owner can look into, where the system knows owners.
pub(crate) fn private_folder(folder: &Path) -> io::Result<()> {
    if folder.is_dir() {
        return Ok(());
    }
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::DirBuilderExt;
        builder.mode(0o700);
    }
    builder.create(folder)
}

/// Writes a file that only its owner can read, where the system knows owners.
pub(crate) fn private_file(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut options = fs::OpenOptions::new();
    options.write(true).create(true).truncate(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    options.open(path)?.write_all(bytes)
}

/// Asks the system to open an address in the browser; whether it has one is not waited for.
pub(crate) fn open_in_browser(address: &str) -> io::Result<()> {
    let mut command = if cfg!(windows) {
        // Not `start`, which would read the address as a command line of its own.
        let mut command = Command::new("rundll32");
        command.arg("url.dll,FileProtocolHandler");
        command
    } else if cfg!(target_os = "macos") {
        Command::new("open")
    } else {
        Command::new("xdg-open")
    };
    command.arg(address).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    command.spawn().map(drop)
}

/// This computer's addresses in its networks, those that people type first.
pub(crate) fn addresses() -> Vec<IpAddr> {
    let mut all: Vec<IpAddr> = if_addrs::get_if_addrs()
        .unwrap_or_default()
        .into_iter()
        .filter(|one| !one.is_loopback())
        .map(|one| one.ip())
        .collect();
    all.sort_by_key(|address| match address {
        IpAddr::V4(four) => (!four.is_private(), false, *address),
        IpAddr::V6(_) => (true, true, *address),
    });
    all.dedup();
    all
}

/// How a person stops the program.
pub(crate) const fn how_to_stop() -> &'static str {
    if cfg!(target_os = "macos") { "Control-C" } else { "Ctrl-C" }
}

/// Returns on Ctrl-C, and on Unix also when the system asks the process to end.
pub(crate) async fn told_to_stop() {
    let interrupted = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminated) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = interrupted => {}
                _ = terminated.recv() => {}
            }
            return;
        }
    }
    let _ = interrupted.await;
}
