//! Gathers what belongs into an archive, and makes it.

use super::licences;
use super::sheet::{System, sheet};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// What is to be packed.
pub(crate) struct Packing {
    /// The program.
    pub(crate) binary: PathBuf,
    /// Where the archive goes.
    pub(crate) out: PathBuf,
    /// The target that the program was built for, such as `x86_64-unknown-linux-gnu`.
    pub(crate) target: String,
    /// How hard it is to be pressed, from 1 (fast) to 9 (small).
    pub(crate) effort: u8,
}

/// The folder of the sources.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The target of this machine.
pub(crate) fn host() -> Result<String, String> {
    let told = Command::new("rustc").arg("-vV").output();
    let told = told.map_err(|error| format!("rustc: {error}"))?;
    let told = String::from_utf8_lossy(&told.stdout).into_owned();
    let host = told.lines().find_map(|line| line.strip_prefix("host: "));
    host.map(str::to_owned).ok_or_else(|| "rustc does not name its host".to_owned())
}

fn at(path: &Path) -> impl FnOnce(std::io::Error) -> String {
    move |error| format!("{}: {error}", path.display())
}

fn read(path: &Path) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(at(path))
}

impl Packing {
    /// The name of the archive without its ending, and of the folder in it.
    pub(crate) fn name(&self) -> String {
        format!("barm-{}-{}", env!("CARGO_PKG_VERSION"), self.target)
    }

    /// Puts everything into a folder beside where the archive goes.
    pub(crate) fn gather(&self) -> Result<PathBuf, String> {
        let root = root();
        let system = System::of(&self.target);
        let folder = self.out.join(self.name());
        if folder.exists() {
            std::fs::remove_dir_all(&folder).map_err(at(&folder))?;
        }
        std::fs::create_dir_all(&folder).map_err(at(&folder))?;
        let program = folder.join(system.program());
        std::fs::copy(&self.binary, &program).map_err(at(&self.binary))?;
        let write = |name: &str, text: &str| {
            let path = folder.join(name);
            let windows = system == System::Windows;
            let text = if windows { text.replace('\n', "\r\n") } else { text.to_owned() };
            std::fs::write(&path, text).map_err(at(&path)).map(|()| path)
        };
        let packaging = root.join("packaging");
        let page = read(&packaging.join("START-HERE.txt"))?;
        write("START-HERE.txt", &sheet(&page, env!("CARGO_PKG_VERSION"), system))?;
        let source = if system == System::Windows { "bat" } else { "sh" };
        for start in ["start-barm", "start-for-the-class"] {
            let text = read(&packaging.join(format!("{start}.{source}")))?;
            let path = write(&format!("{start}.{}", system.ending()), &text)?;
            may_run(&path)?;
        }
        may_run(&program)?;
        write("CLASS-DAY.md", &read(&root.join("docs/class-day.md"))?)?;
        for licence in ["LICENSE", "LICENSE-MIT", "LICENSE-APACHE"] {
            write(licence, &read(&root.join(licence))?)?;
        }
        let fonts = ["OFL-BarmSans-from-SourceSans3.txt", "OFL-BarmSerif-from-Vollkorn.txt"];
        let fonts = fonts.map(|name| read(&root.join("crates/documents/fonts").join(name)));
        let fonts = fonts.into_iter().collect::<Result<Vec<_>, _>>()?;
        let parts = licences::parts(&root, &self.target)?;
        write("LICENCES-OF-OTHERS.txt", &licences::of_others(&parts, &fonts))?;
        Ok(folder)
    }

    /// Makes an archive of a folder that was gathered. A zip is for systems that unpack nothing
    /// else; the bits that let files run are kept by some only.
    pub(crate) fn archive(&self, folder: &Path, zip: bool) -> Result<PathBuf, String> {
        let ending = if zip { "zip" } else { "tar.gz" };
        let out = self.out.canonicalize().map_err(at(&self.out))?;
        let path = out.join(format!("{}.{ending}", self.name()));
        if path.exists() {
            std::fs::remove_file(&path).map_err(at(&path))?;
        }
        let name = folder.file_name().unwrap_or_default();
        let effort = format!("-{}", self.effort);
        if zip {
            let mut zip = Command::new("zip");
            zip.args(["-q", "-r", &effort]).arg(&path).arg(name).current_dir(&out);
            done("zip", &mut zip.spawn().map_err(|error| format!("zip: {error}"))?)?;
            return Ok(path);
        }
        let mut tar = Command::new("tar");
        tar.args(["--owner=0", "--group=0", "-cf", "-"]).arg(name).current_dir(&out);
        let mut tar = tar.stdout(Stdio::piped()).spawn().map_err(|e| format!("tar: {e}"))?;
        let from = tar.stdout.take().ok_or("tar says nothing")?;
        let file = std::fs::File::create(&path).map_err(at(&path))?;
        let mut gzip = Command::new("gzip");
        let gzip = gzip.args([&effort, "-n"]).stdin(from).stdout(file).spawn();
        done("gzip", &mut gzip.map_err(|error| format!("gzip: {error}"))?)?;
        done("tar", &mut tar)?;
        Ok(path)
    }
}

fn done(name: &str, child: &mut Child) -> Result<(), String> {
    let status = child.wait().map_err(|error| format!("{name}: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("{name} failed")) }
}

#[cfg(unix)]
fn may_run(path: &Path) -> Result<(), String> {
    use std::os::unix::fs::PermissionsExt;
    let mode = std::fs::Permissions::from_mode(0o755);
    std::fs::set_permissions(path, mode).map_err(at(path))
}

#[cfg(not(unix))]
fn may_run(_: &Path) -> Result<(), String> {
    Ok(())
}
