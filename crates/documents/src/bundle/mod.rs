//! Several files in one (zip), written, and read with distrust.
//!
//! A bundle comes from outside, so nothing in it is believed: sizes are limited before anything is
//! unpacked and counted while it is, names lead nowhere, and the two places in which an archive
//! describes its files have to agree. Only files that somebody asks for are unpacked.

mod limits;
mod name;
mod refused;

pub use limits::Limits;
pub use refused::Refused;

use std::io::{Cursor, Read as _, Write as _};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipArchive, ZipWriter};

/// Files in one, as they came from outside.
pub struct Bundle<'a> {
    archive: ZipArchive<Cursor<&'a [u8]>>,
    files: Vec<Entry>,
}

/// A file of a bundle.
struct Entry {
    /// Its name, without the folder that holds everything.
    name: String,
    /// Its place in the archive.
    place: usize,
    /// Bytes it claims to be when it is unpacked.
    size: u64,
}

/// Bytes of the record that ends an archive, without its comment.
const END: usize = 22;

impl<'a> Bundle<'a> {
    /// Looks an archive through, and unpacks nothing.
    ///
    /// One folder around everything is taken away; folders and what desktops leave behind
    /// (`__MACOSX`, `.DS_Store`, `Thumbs.db`, `desktop.ini`) are passed over.
    ///
    /// # Errors
    /// [`Refused`] says in one sentence why it is not opened.
    pub fn open(bytes: &'a [u8], limits: &Limits) -> Result<Self, Refused> {
        if bytes.len() as u64 > limits.packed {
            return Err(limits.too_large(bytes.len() as u64));
        }
        if !bytes.starts_with(b"PK") {
            return Err(Refused::whole(
                "this is no zip file",
                "choose the zip as it was exported",
            ));
        }
        let broken = || Refused::whole("the zip file is damaged", "export or send it again");
        let mut archive = ZipArchive::new(Cursor::new(bytes)).map_err(|_| broken())?;
        if !ends_plainly(bytes, &archive) || archive.offset() != 0 {
            return Err(Refused::whole(
                "something stands before or behind the files of the zip",
                "export it again",
            ));
        }
        if archive.has_duplicate_names() {
            return Err(Refused::whole(
                "two files in the zip have one name",
                "export it again",
            ));
        }
        limits.entries_of(archive.len())?;
        let mut entries = Vec::new();
        for place in 0..archive.len() {
            let entry = look(&mut archive, place, limits)?;
            entries.extend(entry);
        }
        limits.total(entries.iter().map(|entry| entry.size))?;
        name::apart(entries.iter().map(|entry| entry.name.as_str()))?;
        // Only now, for it walks through all of them.
        archive.validate_header_consistency().map_err(|_| {
            Refused::whole(
                "the zip describes its files in two ways that do not agree",
                "export or send it again",
            )
        })?;
        entries.retain(|entry| !name::is_left_behind(&entry.name));
        let folder = name::around(entries.iter().map(|entry| entry.name.as_str()));
        for entry in &mut entries {
            entry.name.drain(..folder);
        }
        Ok(Self { archive, files: entries })
    }

    /// Names of the files, in the order of the archive.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.files.iter().map(|entry| entry.name.as_str())
    }

    /// Unpacks a file; nothing if there is none of that name.
    ///
    /// # Errors
    /// [`Refused`] if it is damaged or larger than it claimed.
    pub fn read(&mut self, name: &str) -> Result<Option<Vec<u8>>, Refused> {
        let Some(entry) = self.files.iter().find(|entry| entry.name == name) else {
            return Ok(None);
        };
        let damaged = || Refused::of(name, "the file is damaged in the zip", "export it again");
        let mut file = self.archive.by_index(entry.place).map_err(|_| damaged())?;
        let mut bytes = Vec::new();
        let most = entry.size.saturating_add(1);
        let read = file.by_ref().take(most).read_to_end(&mut bytes).map_err(|_| damaged())?;
        if read as u64 == entry.size { Ok(Some(bytes)) } else { Err(damaged()) }
    }
}

/// Whether the record that ends an archive is the last thing of it, alone, and right behind the
/// directory whose size it names: then nobody can find another directory in it.
fn ends_plainly(bytes: &[u8], archive: &ZipArchive<Cursor<&[u8]>>) -> bool {
    let hides = archive.comment().windows(2).any(|pair| pair == b"PK");
    let Some(end) = bytes.len().checked_sub(END + archive.comment().len()) else {
        return false;
    };
    let Some([b'P', b'K', 5, 6, .., a, b, c, d]) = bytes.get(end..end + 16) else {
        return false;
    };
    let size = u64::from(u32::from_le_bytes([*a, *b, *c, *d]));
    !hides && archive.central_directory_start().checked_add(size) == Some(end as u64)
}

/// A file of an archive if it is allowed; nothing for a folder.
fn look(
    archive: &mut ZipArchive<Cursor<&[u8]>>,
    place: usize,
    limits: &Limits,
) -> Result<Option<Entry>, Refused> {
    let broken = |_| Refused::whole("the zip file is damaged", "export or send it again");
    let file = archive.by_index_raw(place).map_err(broken)?;
    let name = name::checked(file.name_raw())?;
    if file.encrypted() {
        return Err(Refused::of(
            &name,
            "the file is locked with a password",
            "export it without",
        ));
    }
    if !matches!(file.compression(), CompressionMethod::Stored | CompressionMethod::Deflated) {
        return Err(Refused::of(
            &name,
            "the file is packed in a way that is not read here",
            "make a plain zip (method “deflate”)",
        ));
    }
    if file.is_symlink() {
        return Err(Refused::of(
            &name,
            "this is a link and no file",
            "put the file itself there",
        ));
    }
    if name.ends_with('/') {
        let (what, fix) = ("this is a folder with something in it", "export it again");
        return if file.size() == 0 { Ok(None) } else { Err(Refused::of(&name, what, fix)) };
    }
    limits.file(&name, file.compressed_size(), file.size())?;
    Ok(Some(Entry { size: file.size(), name, place }))
}

/// Packs files under their names. The same files make the same bytes, whenever and wherever.
pub fn pack(files: &[(&str, &[u8])]) -> Vec<u8> {
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::default())
        .unix_permissions(0o644);
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes) in files {
        // Writing to memory does not fail.
        if writer.start_file(*name, options).is_ok() {
            let _ = writer.write_all(bytes);
        }
    }
    writer.finish().map(Cursor::into_inner).unwrap_or_default()
}
