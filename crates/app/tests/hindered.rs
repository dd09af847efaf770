//! What stands in the way of a start is said in one sentence with a way on.

mod program;
mod serving;

use serving::Server;
use std::path::Path;
use std::process::{Command, Output, Stdio};

/// Disks of our own, which only the system's keeper can mount.
#[cfg(target_os = "linux")]
mod disk {
    use std::path::Path;
    use std::process::{Command, Stdio};
    use tempfile::TempDir;

    pub(crate) struct Disk(TempDir);

    fn mount(arguments: &[&str], on: &Path) -> bool {
        let mut mount = Command::new("mount");
        mount.args(arguments).arg(on).stdout(Stdio::null()).stderr(Stdio::null());
        mount.status().is_ok_and(|status| status.success())
    }

    impl Disk {
        /// A disk in memory; nothing where it cannot be mounted.
        pub(crate) fn of(size: &str) -> Option<Self> {
            let folder = TempDir::new().expect("a folder");
            let made = mount(&["-t", "tmpfs", "-o", size, "tmpfs"], folder.path());
            made.then_some(Self(folder))
        }

        pub(crate) fn only_to_read(&self) {
            assert!(mount(&["-o", "remount,ro"], self.0.path()));
        }

        pub(crate) fn path(&self) -> &Path {
            self.0.path()
        }
    }

    impl Drop for Disk {
        fn drop(&mut self) {
            let _ = Command::new("umount").arg(self.0.path()).status();
        }
    }
}

/// One sentence of what is wrong, at most one cause and one way on.
fn told(home: &Path, data: &Path) -> String {
    let data = data.to_str().expect("a plain name");
    let (out, err) = program::run(home, &["serve", "--port", "0", "--data", data]).ended(2);
    assert_eq!(out, "", "nothing is promised before it is sure");
    assert!(err.starts_with("barm: ") && err.lines().count() <= 3, "{err}");
    err
}

#[test]
#[cfg(target_os = "linux")]
fn a_folder_that_takes_no_writing_is_named_and_another_is_suggested() {
    let Some(disk) = disk::Disk::of("size=3m") else {
        return program::skip(
            "a start in a folder to read only",
            "a disk cannot be mounted here",
        );
    };
    disk.only_to_read();
    let home = tempfile::tempdir().expect("a folder");
    for folder in [disk.path().to_owned(), disk.path().join("not-yet-there")] {
        let err = told(home.path(), &folder);
        assert!(err.contains(&disk.path().display().to_string()), "{err}");
        assert!(err.contains("choose another folder"), "{err}");
        assert!(err.contains("--data"), "{err}");
    }
}

#[test]
#[cfg(target_os = "linux")]
fn a_full_disk_is_said_before_anything_is_served() {
    let Some(disk) = disk::Disk::of("size=256k") else {
        return program::skip("a start on a full disk", "a disk cannot be mounted here");
    };
    let ballast = disk.path().join("ballast");
    let mut size = 256 * 1024;
    while std::fs::write(&ballast, vec![7; size]).is_err() {
        size -= 4096;
    }
    let home = tempfile::tempdir().expect("a folder");
    let err = told(home.path(), &disk.path().join("record"));
    assert!(err.contains("is full") && err.contains("free some space"), "{err}");
    // With room it starts, and nothing of the first try is in the way.
    std::fs::remove_file(&ballast).expect("taken away");
    let roomy = disk::Disk::of("size=20m").expect("one could be mounted before");
    let server = Server::start(&roomy.path().join("record"), &["--port", "0"]);
    assert!(server.said.contains("Barm answers at"), "{}", server.said);
}

/// Runs `barm` alone where no browser can be found.
#[cfg(target_os = "linux")]
fn without_browser(home: &Path) -> Command {
    let mut command = program::barm();
    let empty = home.join("no-programs");
    std::fs::create_dir_all(&empty).expect("made");
    command.env("XDG_DATA_HOME", home).env("PATH", empty);
    command
}

#[test]
#[cfg(target_os = "linux")]
fn without_a_browser_the_address_is_given_to_be_opened_by_hand() {
    let home = tempfile::tempdir().expect("a folder");
    let mut command = without_browser(home.path());
    let mut server = Server::run(&mut command);
    let line = server.line();
    assert!(line.contains("No browser was found"), "{line}");
    // A second copy leads to the first, also by hand.
    let second = without_browser(home.path()).stdout(Stdio::piped()).output().expect("it ends");
    let said = text(&second);
    let address = format!("http://localhost:{}", server.port);
    assert!(second.status.success(), "{said}");
    assert!(said.contains(&format!("Barm runs already, at {address}")), "{said}");
    assert!(said.contains("No browser was found"), "{said}");
}

#[cfg(target_os = "linux")]
fn text(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

#[test]
fn a_forgotten_passphrase_is_made_anew_at_the_computer_and_nothing_else_is_lost() {
    let home = tempfile::tempdir().expect("a folder");
    let data = home.path().join("data");
    let server = Server::start(&data, &["--port", "0"]);
    let folder = data.to_str().expect("a plain name");
    // While it serves, the command says who holds the record and what to do.
    let (_, err) = program::run(home.path(), &["passphrase", "--data", folder]).ended(2);
    assert!(err.contains("use that one or close it"), "{err}");
    drop(server);
    let (said, _) = program::run(home.path(), &["passphrase", "--data", folder]).ended(0);
    assert!(said.contains("shown only now"), "{said}");
    // The page of signing in names the command, for whoever stands before it.
    let server = Server::start(&data, &["--port", "0"]);
    let page = server.ask("GET /teacher HTTP/1.1");
    assert!(page.contains("barm passphrase"), "{page}");
    assert!(page.contains("on this computer"), "{page}");
}
