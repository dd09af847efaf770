//! Opening a package of somebody else's, with distrust.

use crate::desk::DeskError;
use barm_documents::bundle::Limits;
use barm_documents::package::{self, DESCRIPTOR, Opened};
use barm_domain::shared::{Investigation, Unsaid};
use jiff::civil::Date;
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

/// The most letters of a file's name that go into a title.
const MOST_OF_A_NAME: usize = 60;

/// A package that was read.
#[derive(Debug)]
pub(crate) struct Package {
    /// Where it lies.
    pub(crate) path: PathBuf,
    /// What is in it.
    pub(crate) opened: Opened,
}

impl Package {
    /// Opens a package: a zip, or a folder in which one was unpacked.
    pub(crate) fn open(path: &Path) -> Result<Self, DeskError> {
        let fails = |source| DeskError::Read { path: path.to_owned(), source };
        let opened = if path.is_dir() {
            package::read_files(&files_of(path).map_err(fails)?)
        } else {
            package::read(&not_too_much(path, Limits::USUAL.packed).map_err(fails)?)
        };
        let opened = opened.map_err(|why| DeskError::Package { path: path.to_owned(), why })?;
        Ok(Self { path: path.to_owned(), opened })
    }

    /// Opens a zip that somebody sent, under the name that its file had there.
    pub(crate) fn sent(name: &str, bytes: &[u8]) -> Result<Self, DeskError> {
        // Nothing lies at that name here; of a path only its end is a name.
        let name = name.rsplit(['/', '\\']).next().unwrap_or_default();
        let shown = name.chars().filter(|letter| !letter.is_control()).take(MOST_OF_A_NAME);
        let path = PathBuf::from(shown.collect::<String>().trim());
        let opened = package::read(bytes);
        let opened = opened.map_err(|why| DeskError::Package { path: path.clone(), why })?;
        Ok(Self { path, opened })
    }

    /// What it is called: the name of its file without ending.
    pub(crate) fn name(&self) -> String {
        let name =
            if self.path.is_dir() { self.path.file_name() } else { self.path.file_stem() };
        name.map(|name| name.to_string_lossy().into_owned())
            .unwrap_or_else(|| self.path.display().to_string())
    }

    /// The same as a plan with readings. `date` stands in the plan, for a package tells none.
    pub(crate) fn investigation(&self, date: Date) -> Result<Investigation, DeskError> {
        let opened = &self.opened;
        let unsaid = Unsaid {
            title: format!("Shared data: {}", self.name()),
            date,
            readable_mm: opened.readable_mm,
            interval_min: opened.interval_min,
            grade: opened.grade,
            made_up: opened.made_up,
        };
        let path = || self.path.clone();
        opened
            .shared
            .investigation(&unsaid)
            .map_err(|why| DeskError::Rebuilt { path: path(), why: Box::new(why) })
    }
}

/// At most so many bytes of a file, and one more if there are more.
fn not_too_much(path: &Path, most: u64) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    File::open(path)?.take(most.saturating_add(1)).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// The files of an unpacked package by their names within it; folders in it one deep. Links are not
/// followed.
fn files_of(folder: &Path) -> io::Result<BTreeMap<String, Vec<u8>>> {
    let mut files = BTreeMap::new();
    let mut left = Limits::USUAL.total;
    let mut folders = vec![(folder.to_owned(), String::new())];
    while let Some((at, before)) = folders.pop() {
        for entry in fs::read_dir(&at)? {
            let entry = entry?;
            let kind = entry.file_type()?;
            let Ok(own) = entry.file_name().into_string() else { continue };
            let name = format!("{before}{own}");
            if kind.is_dir() && before.is_empty() {
                folders.push((entry.path(), format!("{name}/")));
            } else if kind.is_file() && (name == DESCRIPTOR || name.ends_with(".csv")) {
                let bytes = not_too_much(&entry.path(), Limits::USUAL.file.min(left))?;
                left = left.saturating_sub(bytes.len() as u64);
                if left == 0 || files.len() >= Limits::USUAL.entries {
                    return Err(io::Error::other("there is too much in the folder"));
                }
                files.insert(name, bytes);
            }
        }
    }
    Ok(files)
}

/// Whether a folder holds an unpacked package.
pub(super) fn is_unpacked(folder: &Path) -> bool {
    folder.join(DESCRIPTOR).is_file()
}
