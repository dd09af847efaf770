//! Names of files in a bundle: that they lead nowhere, and mean one file each.

use super::Refused;
use std::collections::BTreeSet;

/// Most bytes of a name.
const MOST: usize = 200;

/// A name that leads nowhere, or why it is refused.
pub(super) fn checked(raw: &[u8]) -> Result<String, Refused> {
    let fix = "zip the files again, without folders";
    let Ok(name) = std::str::from_utf8(raw) else {
        let shown = String::from_utf8_lossy(raw);
        return Err(Refused::of(&shown, "the name is no text in UTF-8", fix));
    };
    let refused = |what: &str| Err(Refused::of(name, what, fix));
    if name.is_empty() {
        return Err(Refused::whole("a file in the zip has no name", fix));
    }
    if name.len() > MOST {
        return refused("the name is longer than any that is needed");
    }
    if name.chars().any(char::is_control) {
        return refused("the name holds a sign that cannot be seen");
    }
    if name.contains('\\') {
        return refused("the name holds a backslash, which leads elsewhere on some computers");
    }
    if name.starts_with('/') || name.contains(':') {
        return refused("the name leads out of the zip to a place on the computer");
    }
    let path = name.strip_suffix('/').unwrap_or(name);
    for part in path.split('/') {
        if matches!(part, "." | "..") {
            return refused("the name leads out of its folder");
        }
        if part.is_empty() || part.ends_with(['.', ' ']) || part.starts_with(' ') {
            return refused("the name is one that computers take for another");
        }
    }
    Ok(name.to_owned())
}

/// Whether all names are apart, also where capitals and small letters are the same.
pub(super) fn apart<'a>(names: impl Iterator<Item = &'a str>) -> Result<(), Refused> {
    let mut seen = BTreeSet::new();
    for name in names {
        if !seen.insert(name.to_lowercase()) {
            let what = "there are two files of that name, but for capitals";
            return Err(Refused::of(name, what, "zip only what was exported"));
        }
    }
    Ok(())
}

/// How long the name of the one folder is that holds every file, with its slash; 0 without one.
pub(super) fn around<'a>(names: impl Iterator<Item = &'a str>) -> usize {
    let mut folder: Option<&str> = None;
    for name in names {
        let Some(end) = name.find('/') else { return 0 };
        let own = &name[..=end];
        if folder.is_some_and(|folder| folder != own) {
            return 0;
        }
        folder = Some(own);
    }
    folder.map_or(0, str::len)
}

/// Whether a desktop left that file there by itself.
pub(super) fn is_left_behind(name: &str) -> bool {
    let last = name.rsplit('/').next().unwrap_or(name);
    name.starts_with("__MACOSX/") || [".DS_Store", "Thumbs.db", "desktop.ini"].contains(&last)
}

#[cfg(test)]
mod tests {
    use super::{apart, around, checked, is_left_behind};

    #[test]
    fn plain_names_are_taken_and_ways_out_are_not() {
        for name in ["users.csv", "a/b.csv", "a folder/", "Année/users.csv", "..a", "a..b"] {
            assert_eq!(checked(name.as_bytes()).as_deref(), Ok(name));
        }
        for name in [
            "",
            "/etc/passwd",
            "../users.csv",
            "a/../b",
            "a/..",
            "..",
            ".",
            "./a",
            "a//b",
            "C:a",
            "C:/a",
            "c:\\a",
            "a\\..\\b",
            "users.csv:stream",
            "users.csv.",
            "users.csv ",
            " a/b",
            "a\0.csv",
            "a\nb",
            "//server/share",
            "/",
        ] {
            assert!(checked(name.as_bytes()).is_err(), "{name:?}");
        }
        assert!(checked(b"\xff.csv").is_err() && checked(&[b'a'; 201]).is_err());
    }

    #[test]
    fn capitals_make_no_other_file() {
        assert!(apart(["a.csv", "b.csv"].into_iter()).is_ok());
        assert!(apart(["a.csv", "A.CSV"].into_iter()).is_err());
        assert!(apart(["é.csv", "É.csv"].into_iter()).is_err());
    }

    #[test]
    fn one_folder_around_everything_is_seen() {
        let around = |names: &[&str]| around(names.iter().copied());
        assert_eq!(around(&["f/a", "f/b"]), 2);
        assert_eq!(around(&["f/a", "g/b"]), 0);
        assert_eq!(around(&["f/a", "b"]), 0);
        assert_eq!(around(&[]), 0);
    }

    #[test]
    fn what_desktops_leave_behind_is_known() {
        for name in ["__MACOSX/f/._a", "f/.DS_Store", "Thumbs.db"] {
            assert!(is_left_behind(name), "{name}");
        }
        assert!(!is_left_behind("users.csv"));
    }
}
