//! What holds of the teacher's words whoever wrote them.

use super::super::Catalog;
use super::{FILES, Filling, Wording};
use fluent_bundle::FluentResource;
use std::collections::BTreeSet;

#[test]
fn every_file_is_read_without_a_mistake() {
    for (code, files) in FILES {
        for text in *files {
            let read = FluentResource::try_new((*text).to_owned());
            assert!(read.is_ok(), "{code}: {:?}", read.map_err(|(_, mistakes)| mistakes).err());
        }
    }
}

#[test]
fn english_comes_first_and_no_language_has_a_key_twice_or_one_that_english_lacks() {
    let english = Wording::english();
    assert_eq!(english.code(), "en");
    let known: BTreeSet<&String> = english.keys().iter().collect();
    assert!(known.len() > 100, "{} keys", known.len());
    for wording in Wording::all() {
        let keys: BTreeSet<&String> = wording.keys().iter().collect();
        assert_eq!(keys.len(), wording.keys().len(), "{}: a key twice", wording.code());
        for key in keys {
            assert!(known.contains(key), "{}: {key} is none of English", wording.code());
            let (own, first) = (wording.placeholders(key), english.placeholders(key));
            assert_eq!(own, first, "{}: open places of {key}", wording.code());
        }
    }
}

#[test]
fn every_text_is_whole_for_none_one_and_many() {
    for wording in Wording::all() {
        for key in wording.keys() {
            for count in [0_u32, 1, 2, 24] {
                let values: Vec<(&str, Filling)> = wording
                    .placeholders(key)
                    .iter()
                    .map(|name| (name.as_str(), count.into()))
                    .collect();
                let text = wording.fill(key, &values);
                let place = format!("{} {key}: {text}", wording.code());
                assert!(!text.trim().is_empty(), "{place}");
                assert!(!text.contains(['{', '}', '\n']), "{place}");
                assert!(!text.contains("  "), "{place}");
                assert!(!text.contains(['!', '¡']), "{place}");
            }
        }
    }
}

#[test]
fn a_language_is_one_file_and_what_it_lacks_is_english() {
    let read = Wording::read(&[
        ("zz", &["plan-only = only this\nplan-many = { $n } of them"]),
        ("en", &["plan-only = alone", "plan-more = more"]),
    ]);
    let codes: Vec<&str> = read.iter().map(|catalog| catalog.code).collect();
    assert_eq!(codes, ["en", "zz"]);
    assert_eq!(read[0].keys, ["plan-only", "plan-more"]);
    assert_eq!(read[1].written("plan-only", &[]).as_deref(), Some("only this"));
    assert_eq!(read[1].written("plan-more", &[]), None);
    assert_eq!(Catalog::first_of(&read, "fr, zz-ZZ;q=0.9, en").code, "zz");
    assert_eq!(Catalog::first_of(&read, "").code, "en");
    assert_eq!(Wording::accepted("xx").code(), "en");
    assert_eq!(Wording::english().say("no-such-key"), "no-such-key");
}

#[test]
fn a_language_chooses_its_plural_by_the_count() {
    let text = "bags = { $count ->\n    [0] no bag\n    [one] { $count } bag\n   *[other] { $count } \
                bags of { $name }\n  }\nlong =\n    over two\n    lines\n";
    let catalog = Catalog::read("en", text);
    assert_eq!(catalog.keys, ["bags", "long"]);
    assert_eq!(catalog.placeholders("bags"), ["count", "name"]);
    let say = |count: i64| {
        let values = [("count", count.into()), ("name", "honey".into())];
        catalog.written("bags", &values)
    };
    assert_eq!(say(0).as_deref(), Some("no bag"));
    assert_eq!(say(1).as_deref(), Some("1 bag"));
    assert_eq!(say(24).as_deref(), Some("24 bags of honey"));
}
