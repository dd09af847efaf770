//! The table of languages, and how their files are looked through.

use std::collections::BTreeMap;

/// A language of the program: its code and its file.
macro_rules! language {
    ($code:literal) => {
        ($code, include_str!(concat!($code, ".ftl")))
    };
}

/// Every language, English first. A new one is a file beside this one and a row here.
pub(super) static LANGUAGES: &[(&str, &str)] = &[language!("en"), language!("es")];

/// The messages of a file: key and text, a text that runs over several lines as one.
fn messages(file: &str) -> Vec<(&str, String)> {
    let mut messages: Vec<(&str, String)> = Vec::new();
    for line in file.lines() {
        let goes_on = line.starts_with(' ');
        if let (true, Some((_, text))) = (goes_on, messages.last_mut()) {
            text.push(' ');
            text.push_str(line.trim());
            continue;
        }
        let started = line.split_once(" =").filter(|_| !line.starts_with('#'));
        let Some((key, text)) = started else { continue };
        messages.push((key, text.trim().to_owned()));
    }
    messages
}

/// Keys of a file, in its order.
pub(super) fn keys(file: &str) -> Vec<String> {
    messages(file).into_iter().map(|(key, _)| key.to_owned()).collect()
}

/// The open places of each message that has any, sorted, each once.
pub(super) fn placeholders(file: &str) -> BTreeMap<String, Vec<String>> {
    let mut all = BTreeMap::new();
    for (key, text) in messages(file) {
        let open = text.split("{ $").skip(1);
        let of_name = |c: &char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_');
        let mut names: Vec<String> =
            open.map(|rest| rest.chars().take_while(of_name).collect()).collect();
        names.sort();
        names.dedup();
        if !names.is_empty() {
            all.insert(key.to_owned(), names);
        }
    }
    all
}
