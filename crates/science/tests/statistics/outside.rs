//! Data that are not copied here, where a folder with them is at hand.

use std::fs;
use std::path::{Path, PathBuf};

/// Folders in which to look: the one that `BARM_OUTSIDE` names, else all that lie beside the repository.
fn folders() -> Vec<PathBuf> {
    if let Some(named) = std::env::var_os("BARM_OUTSIDE") {
        return vec![named.into()];
    }
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let beside = root.canonicalize().ok().and_then(|root| fs::read_dir(root.parent()?).ok());
    beside.into_iter().flatten().flatten().map(|entry| entry.path()).collect()
}

/// Text of a data file of NIST's Statistical Reference Datasets, such as `univ/Lew.dat`.
#[allow(dead_code, reason = "not every test that looks outside looks at these")]
pub(crate) fn nist(file: &str) -> Option<String> {
    outside(&format!("01_nist/{file}"), &format!("{file} of NIST"))
}

/// Text of a file of the outside checks, called `called`. Where there is none, that is said on the
/// output and in the file that `BARM_SKIPS` names.
#[expect(clippy::print_stdout, reason = "a skipped check should say so")]
pub(crate) fn outside(file: &str, called: &str) -> Option<String> {
    let place = |folder: PathBuf| folder.join("checks").join(file);
    let found = folders().into_iter().find_map(|folder| fs::read_to_string(place(folder)).ok());
    if found.is_none() {
        let said = format!("{called}: no folder with outside data is at hand");
        println!("skipped: {said}");
        if let Some(list) = std::env::var_os("BARM_SKIPS") {
            use std::io::Write as _;
            let list = fs::File::options().append(true).create(true).open(list);
            list.and_then(|mut list| writeln!(list, "{said}")).expect("the list of skips");
        }
    }
    found
}
