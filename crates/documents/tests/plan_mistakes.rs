//! Mistakes in a plan file: all at once, each with its place, what is wrong and what to do.

use barm_documents::plan_text::read;

fn listed(bytes: &[u8]) -> Vec<String> {
    let read = read(bytes);
    assert_eq!(read.plan.is_some(), read.mistakes.is_empty());
    read.mistakes.iter().map(ToString::to_string).collect()
}

/// Two plans with a slip of every sort. The expected lines are a named snapshot: each was read
/// through and judged to be what a teacher needs.
#[test]
fn reports_every_mistake_at_once_with_its_place() {
    for (plan, snapshot) in [
        (&include_bytes!("plan/faulty.toml")[..], include_str!("plan/faulty.mistakes")),
        (include_bytes!("plan/not_toml.toml"), include_str!("plan/not_toml.mistakes")),
    ] {
        let found = listed(plan);
        for (found, expected) in found.iter().zip(snapshot.lines()) {
            assert_eq!(found, expected);
        }
        assert_eq!(found.len(), snapshot.lines().count());
    }
}

#[test]
fn bytes_that_are_no_plan_are_mistakes_too() {
    for (bytes, start) in [
        (&b""[..], "1:1: format: format is missing"),
        (b"\xFF\xFEf\0o\0", "1:1: the file is in UTF-16"),
        (b"title = \"40 \xB0C\"\n", "1:13: byte 0xB0 is not text in UTF-8"),
        (b"# caf\xC3\xA9\n# \xC3\xA9\xE9\n", "2:4: byte 0xE9 is not text in UTF-8"),
        (
            b"format = 2\nhology = 1\n",
            "1:10: format: this plan was written by a newer Barm (format 2)",
        ),
        (
            b"format = 99999999999999999999999\n",
            "1:10: format: this plan was written by a newer Barm",
        ),
        (b"format = -1\n", "1:10: format: there is no format -1"),
        (b"format = \"1\"\n", "1:10: format: the format is a whole number"),
        (b"format = 1.0\n", "1:10: format: the format is a whole number"),
    ] {
        let found = listed(bytes);
        assert_eq!(found.len(), 1, "{found:?}");
        assert!(found[0].starts_with(start), "{found:?}");
    }
}
