//! Mistakes in a plan file: all at once, each with its place, what is wrong and what to do.

use barm_documents::plan_text::{read, read_with_old_list};

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

#[test]
fn what_is_no_text_or_no_toml_is_unreadable_and_a_slip_is_not() {
    for (bytes, unreadable) in [
        (&b"\xFF\xFEf\0o\0"[..], true),
        (b"title = \"40 \xB0C\"\n", true),
        (b"format = 1\ntitle = \"no end\n", true),
        (b"format = 2\ntitle = \"no end\n", true),
        (b"format = 1\nformat = 1\n", true),
        (b"format = 1\ntitle = 3\n", false),
        (b"format = 2\n", false),
        (b"", false),
    ] {
        let read = read(bytes);
        assert_eq!(read.unreadable, unreadable, "{:?}", read.mistakes);
        assert!(read.plan.is_none() && !read.mistakes.is_empty());
    }
    let long = read(" ".repeat(2_000_001).as_bytes());
    assert!(long.unreadable, "{:?}", long.mistakes);
    assert!(!read(&with("grade = 8", "grade = 88")).unreadable);
}

#[test]
fn places_in_the_plan_count_as_people_do() {
    let found = listed(&with("start = \"09:00\"", "start = \"9\""));
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].contains(": period 2, start: “9” is not a time of day"), "{found:?}");
    let found = listed(&with("name = \"2\"\nday", "name = \"1\"\nday"));
    assert!(
        found[0]
            .contains("period 2, name: there is already a period called “1”: period 1, name"),
        "{found:?}"
    );
    let brackets = found.iter().find(|line| line.contains("["));
    assert_eq!(brackets, None);
}

/// The demonstration with another value in the place of one of its own.
fn with(old: &str, new: &str) -> Vec<u8> {
    let demo = include_str!("../../app/src/demo/plan.toml");
    assert!(demo.contains(old), "{old}");
    demo.replacen(old, new, 1).into_bytes()
}

#[test]
fn times_dates_and_zones_are_read_as_people_write_them() {
    for (written, hour, minute) in [
        ("\"8:10\"", 8, 10),
        ("08:10:00", 8, 10),
        ("\"8:10 AM\"", 8, 10),
        ("\"1:05 p.m.\"", 13, 5),
        ("\"12:00 am\"", 0, 0),
        ("\"12:30 pm\"", 12, 30),
    ] {
        let read = read(&with("start = \"08:10\"", &format!("start = {written}")));
        let plan = read.plan.unwrap_or_else(|| panic!("{written}: {:?}", read.mistakes));
        assert_eq!(plan.periods[0].start, jiff::civil::time(hour, minute, 0, 0), "{written}");
    }
    for written in
        ["\"24:00\"", "\"8:60\"", "\"8\"", "\"0:30 pm\"", "\"8:1\"", "08:10:00.5", "\"8:10:\""]
    {
        let found = listed(&with("start = \"08:10\"", &format!("start = {written}")));
        assert_eq!(found.len(), 1, "{written}: {found:?}");
        assert!(found[0].contains("is not a time of day"), "{found:?}");
    }
    // 2028 is a leap year, 2027 is not.
    assert!(read(&with("2027-03-09", "\"2028-02-29\"")).plan.is_some());
    for written in ["\"2027-02-29\"", "\"2027-13-01\"", "\"09.03.2027\"", "\"tomorrow\""] {
        let found = listed(&with("2027-03-09", written));
        assert_eq!(found.len(), 1, "{written}: {found:?}");
        assert!(found[0].contains("is not a date that exists"), "{found:?}");
    }
    for (written, meant) in [("Denver", "America/Denver"), ("US/Montain", "US/Mountain")] {
        let found = listed(&with("America/Denver", written));
        assert_eq!(found.len(), 1, "{written}: {found:?}");
        assert!(found[0].ends_with(&format!("did you mean {meant}?")), "{found:?}");
    }
}

/// One line of the demonstration is changed; one mistake is told, and no others follow from it.
#[test]
fn one_slip_is_one_mistake() {
    for (old, new, start) in [
        ("food = \"maple syrup\"", "food = \"maple sirop\"", "there is no food called"),
        (
            "food = \"oat flour\"",
            "food = \"oat flour\"\nfood_amount = \"2 packets\"",
            "“2 packets” says nothing about",
        ),
        (
            "enzyme_amount = \"5 drops\"",
            "enzyme_amount = \"2 g\"",
            "“2 g” is not an amount of lactase drops",
        ),
        ("beside = \"Oat flour\"", "beside = \"Oats\"", "there is no treatment called “Oats”"),
        (
            "uses = [\"Oat flour\", ",
            "uses = [\"Oat flower\", ",
            "there is no treatment called “Oat flower”",
        ),
        (
            "crossed_with = \"food\"",
            "crossed_with = \"enzyme\"",
            "a question cannot be crossed with its own variable",
        ),
        ("code = \"P1-01A-C\"", "code = \"P1-01A-D\"", "“P1-01A-D” is not a bag code"),
        (
            "[bag_list]",
            "[bag_list]\nretired = [\"P1-01A-C\"]",
            "there is already a bag with the code “P1-01A-C”",
        ),
        ("group = 1, place = 1", "group = 9, place = 1", "period 1 has 8 groups"),
        (
            "students = 24",
            "students = 24.5",
            "students is a number, and a whole number is wanted",
        ),
        ("[equipment]", "[equipment]\nscales = 3", "“scales” is not a key known here"),
        ("[base]", "[base]\nbag = \"snack\"", "this is not TOML: duplicate key"),
        ("title = \"Which", "title = “Which", "this is not TOML"),
        ("water = \"40 mL\"", "water = \"40\"", "“40” has no unit"),
        ("water = \"40 mL\"\n", "", "water is missing"),
        ("[bag_list]", "[baglist]", "“baglist” is not a key known here"),
        ("spare = \"10 %\"", "spare = \"110 %\"", "“110 %” lies outside"),
    ] {
        let found = listed(&with(old, new));
        assert_eq!(found.len(), 1, "{new}: {found:#?}");
        assert!(found[0].contains(start), "{new}: {found:?}");
    }
}

#[test]
fn a_variable_named_after_what_goes_in_is_told_how_to_be_written() {
    let found = listed(&with("variable = \"food\"", "variable = \"salt\""));
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(found[0].contains("variable = \"extra\""), "{found:?}");
    assert!(found[0].contains("extra = [{ item = \"table salt\""), "{found:?}");
}

#[test]
fn a_list_that_is_out_of_step_can_be_read_by_whoever_mends_it() {
    for (old, new) in [
        ("group = 1, place = 1", "group = 9, place = 1"),
        (
            "bags = [\n",
            "bags = [\n  { code = \"P9-01A-W\", period = \"9\", group = 1, place = 1, \
                      question = \"gone\", treatment = \"Rye\", replicate = 1 },\n",
        ),
    ] {
        let bytes = with(old, new);
        let strict = read(&bytes);
        assert!(strict.plan.is_none() && !strict.mistakes.is_empty());
        let lenient = read_with_old_list(&bytes);
        assert_eq!(lenient.mistakes, []);
        assert!(lenient.plan.is_some());
    }
    // A code that cannot be read is a slip, whoever reads it.
    let bytes = with("code = \"P1-01A-C\"", "code = \"P1-01A-D\"");
    assert_eq!(read_with_old_list(&bytes).mistakes, read(&bytes).mistakes);
}
