//! Everything as plain files, readable without this program.

use crate::append;
use crate::failure::StoreError;
use crate::line::Line;
use crate::pilots::{self, PilotVersion};
use crate::plans;
use crate::store::Store;
use crate::system::sync_folder;
use crate::wire;
use crate::words;
use serde_json::json;
use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

const READ_ME: &str = "\
This is everything that a record of Barm holds, as plain text.

investigations.jsonl      one line for each investigation: number, title, kind, when made
investigation-N/          what belongs to investigation number N:
  plan-V.toml             version V of its plan, as it was saved
  plan-V.pilot.toml       what pilots had found by then of yeast, bags, enzymes and meter
  plan-V.pilot.csv        what the newest pilot read
  entries.jsonl           what happened, one line for each entry, in the order of arrival
  words.jsonl             what people wrote in words; an entry points to it by its key

Times are in UTC. Heights are in millimeters, temperatures in degrees Celsius. Nothing in
entries.jsonl was ever changed: a correction is another line, which names the key of the first.
";

impl Store {
    /// Writes the record as plain files into a folder that is empty or not there yet, and names
    /// them. Passphrase, codes and sessions are left out.
    ///
    /// # Errors
    /// [`StoreError::AlreadyThere`] if there is something in the folder; or what stood in the way.
    pub fn export(&self, folder: &Path) -> Result<Vec<PathBuf>, StoreError> {
        let fails = |error| StoreError::file("make the folder", folder, error);
        fs::create_dir_all(folder).map_err(fails)?;
        if fs::read_dir(folder).map_err(fails)?.next().is_some() {
            return Err(StoreError::AlreadyThere { path: folder.to_owned() });
        }
        self.read(|line| line.still(|line| write_all(line, folder)))
    }
}

fn write_all(line: &mut Line, folder: &Path) -> Result<Vec<PathBuf>, StoreError> {
    let mut written = vec![write(folder.join("README.txt"), READ_ME)?];
    let all = plans::investigations(line)?;
    let mut lines = String::new();
    for one in &all {
        let made = one.made.to_string();
        let it =
            json!({ "id": one.id, "title": one.title, "kind": one.kind.word(), "made": made });
        lines.push_str(&format!("{it}\n"));
    }
    written.push(write(folder.join("investigations.jsonl"), &lines)?);
    for one in &all {
        let own = folder.join(format!("investigation-{}", one.id));
        fs::create_dir_all(&own)
            .map_err(|error| StoreError::file("make the folder", &own, error))?;
        for (version, text) in plans::plans(line, one.id)? {
            written.push(write(own.join(format!("plan-{version}.toml")), &text)?);
        }
        for PilotVersion { version, lots, readings, .. } in pilots::pilots(line, one.id)? {
            for (ending, text) in [("toml", lots), ("csv", readings)] {
                if !text.is_empty() {
                    let name = format!("plan-{version}.pilot.{ending}");
                    written.push(write(own.join(name), &text)?);
                }
            }
        }
        let mut lines = String::new();
        for (seq, entry) in append::entries(line, one.id, 0)? {
            lines.push_str(&wire::shown(seq, &entry)?);
            lines.push('\n');
        }
        written.push(write(own.join("entries.jsonl"), &lines)?);
        let mut lines = String::new();
        for (key, kind, text) in words::all_words(line, one.id)? {
            let it = json!({ "key": key.to_string(), "kind": kind, "text": text });
            lines.push_str(&format!("{it}\n"));
        }
        written.push(write(own.join("words.jsonl"), &lines)?);
        sync_folder(&own)?;
    }
    sync_folder(folder)?;
    Ok(written)
}

fn write(path: PathBuf, text: &str) -> Result<PathBuf, StoreError> {
    let done = fs::File::create_new(&path).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    done.map_err(|error| StoreError::file("write", &path, error))?;
    Ok(path)
}
