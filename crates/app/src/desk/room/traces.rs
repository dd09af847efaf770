//! Looks through every byte of the data folder for texts that are to be gone.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

/// A text is looked for in pieces of so many bytes: a database may have torn it at the end of a page.
const PIECE: usize = 24;
/// Shorter texts stand everywhere by chance.
const SHORTEST: usize = 6;
/// Bytes that are read at a time.
const STRETCH: usize = 1 << 20;

/// What was found. It holds counts and paths, never words.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub(crate) struct Looked {
    /// Files that were read through.
    pub(crate) files: u64,
    /// Bytes in them.
    pub(crate) bytes: u64,
    /// Pieces that were looked for.
    pub(crate) pieces: u64,
    /// Texts too short to be looked for.
    pub(crate) short: u64,
    /// Files in which a piece stands.
    pub(crate) found: Vec<String>,
    /// Files that could not be read, so that nothing is known of them.
    pub(crate) unread: Vec<String>,
}

/// Pieces by their first four bytes, capitals of A to Z made small.
struct Pieces {
    by_start: BTreeMap<[u8; 4], Vec<Vec<u8>>>,
    /// Which pairs of bytes a piece begins with, so that most places are passed over at once.
    begins: Vec<bool>,
    count: u64,
    short: u64,
}

impl Pieces {
    fn of<'a>(texts: impl IntoIterator<Item = &'a str>) -> Self {
        let (mut by_start, mut begins) =
            (BTreeMap::<[u8; 4], Vec<Vec<u8>>>::new(), vec![false; 1 << 16]);
        let (mut count, mut short) = (0, 0);
        for text in texts {
            let bytes = text.trim().to_ascii_lowercase().into_bytes();
            if bytes.len() < SHORTEST {
                short += 1;
            }
            // The last piece would be short: it is the last bytes, whole.
            let starts = (0..bytes.len()).step_by(PIECE);
            for start in starts {
                let start = start.min(bytes.len().saturating_sub(PIECE));
                let piece = &bytes[start..bytes.len().min(start + PIECE)];
                let Some((&head, _)) = piece.split_first_chunk::<4>() else { continue };
                if piece.len() < SHORTEST {
                    continue;
                }
                begins[usize::from(u16::from_be_bytes([head[0], head[1]]))] = true;
                by_start.entry(head).or_default().push(piece.to_vec());
                count += 1;
            }
        }
        Self { by_start, begins, count, short }
    }

    /// Whether a piece stands in bytes whose capitals were made small.
    fn stand_in(&self, bytes: &[u8]) -> bool {
        bytes.windows(4).enumerate().any(|(at, window)| {
            let head = [window[0], window[1], window[2], window[3]];
            self.begins[usize::from(u16::from_be_bytes([head[0], head[1]]))]
                && self.by_start.get(&head).is_some_and(|pieces| {
                    pieces.iter().any(|piece| bytes[at..].starts_with(piece))
                })
        })
    }
}

/// Looks through every file of a folder and of folders in it for texts, whatever their capitals. Links are
/// not followed. Waits for the disk.
pub(crate) fn look_through<'a>(
    folder: &Path,
    texts: impl IntoIterator<Item = &'a str>,
) -> Looked {
    let pieces = Pieces::of(texts);
    let mut looked = Looked { pieces: pieces.count, short: pieces.short, ..Looked::default() };
    let mut folders = vec![folder.to_owned()];
    while let Some(at) = folders.pop() {
        let Ok(entries) = fs::read_dir(&at) else {
            looked.unread.push(at.display().to_string());
            continue;
        };
        let mut paths: Vec<PathBuf> = entries.flatten().map(|entry| entry.path()).collect();
        paths.sort();
        for path in paths {
            match fs::symlink_metadata(&path).map(|about| about.file_type()) {
                Ok(kind) if kind.is_dir() => folders.push(path),
                Ok(kind) if kind.is_file() => match stands_in(&path, &pieces) {
                    Ok((stands, bytes)) => {
                        looked.files += 1;
                        looked.bytes += bytes;
                        if stands {
                            looked.found.push(path.display().to_string());
                        }
                    }
                    // It went while we looked: what was in it went, too.
                    Err(error) if error.kind() == io::ErrorKind::NotFound => {}
                    Err(_) => looked.unread.push(path.display().to_string()),
                },
                _ => {}
            }
        }
    }
    looked
}

/// Whether a piece stands in a file, and how many bytes it has.
fn stands_in(path: &Path, pieces: &Pieces) -> io::Result<(bool, u64)> {
    let mut file = File::open(path)?;
    let (mut stands, mut bytes) = (false, 0);
    let mut stretch: Vec<u8> = Vec::new();
    loop {
        // What was torn between two stretches is seen with the next.
        let kept = stretch.len().saturating_sub(PIECE - 1);
        stretch.drain(..kept);
        let before = stretch.len();
        file.by_ref().take(STRETCH as u64).read_to_end(&mut stretch)?;
        let read = stretch.len() - before;
        if read == 0 {
            return Ok((stands, bytes));
        }
        bytes += read as u64;
        stretch[before..].make_ascii_lowercase();
        stands = stands || pieces.stand_in(&stretch);
    }
}

#[cfg(test)]
mod tests {
    use super::{Looked, STRETCH, look_through};
    use std::fs;

    fn looked(files: &[(&str, Vec<u8>)], texts: &[&str]) -> Looked {
        let folder = tempfile::tempdir().expect("a folder");
        fs::create_dir(folder.path().join("backups")).expect("made");
        for (name, bytes) in files {
            fs::write(folder.path().join(name), bytes).expect("written");
        }
        let mut looked = look_through(folder.path(), texts.iter().copied());
        for found in &mut looked.found {
            *found = found.rsplit(['/', '\\']).next().unwrap_or_default().to_owned();
        }
        looked
    }

    #[test]
    fn a_text_is_found_wherever_it_stands_and_however_it_is_torn() {
        let text = "Zibbeldorn says that the oat flour never had a chance against syrup";
        let mut torn = vec![b'x'; 5000];
        // A page ends in the middle: only half of it is in one piece.
        torn.extend(&text.as_bytes()[..40]);
        let mut late = vec![0; STRETCH - 10];
        late.extend(text.to_uppercase().into_bytes());
        let files = [
            ("whole", text.as_bytes().to_vec()),
            ("torn", torn),
            ("backups/late", late),
            ("other", b"Zibbel and Dorn say that the oat flour had a chance".to_vec()),
            ("empty", Vec::new()),
        ];
        let found = looked(&files, &[text]);
        let mut names = found.found.clone();
        names.sort();
        assert_eq!(names, ["late", "torn", "whole"]);
        assert_eq!((found.files, found.pieces, found.short), (5, 3, 0));
        assert!(found.unread.is_empty());
    }

    #[test]
    fn what_is_too_short_to_mean_anything_is_counted_and_not_looked_for() {
        let files = [("all", b"more gas, more yeast".to_vec())];
        let found = looked(&files, &["more", "", "yeast!", "Kerstin"]);
        assert_eq!((found.pieces, found.short), (2, 2));
        assert!(found.found.is_empty());
        assert_eq!(looked(&files, &["MORE YEAST"]).found, ["all"]);
    }
}
