//! Whatever the bytes, reading a plan ends with a plan or with mistakes that have a place.

use barm_documents::plan_text::{Read, read, write};
use proptest::prelude::*;

const DEMO: &str = include_str!("../../app/src/demo/plan.toml");

fn cases(base: u32) -> ProptestConfig {
    let cases = match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => base / 4,
        Ok("long") => base * 64,
        _ => base,
    };
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }
}

/// What must hold of any answer.
fn honest(bytes: &[u8]) -> Read {
    let read = read(bytes);
    assert_eq!(read.plan.is_some(), read.mistakes.is_empty());
    let text = String::from_utf8_lossy(bytes);
    let lines: Vec<usize> = text.split('\n').map(|line| line.chars().count()).collect();
    for mistake in &read.mistakes {
        let Some(length) = mistake.line.checked_sub(1).and_then(|line| lines.get(line)) else {
            panic!("{mistake} lies after the last line");
        };
        assert!((1..=length + 1).contains(&mistake.column), "{mistake} lies beside its line");
        assert!(!mistake.what.is_empty() && !mistake.fix.is_empty());
        assert!(mistake.to_string().len() < 2000, "{mistake}");
    }
    let in_order = |a: &(usize, usize), b: &(usize, usize)| a <= b;
    let places: Vec<(usize, usize)> =
        read.mistakes.iter().map(|m| (m.line, m.column)).collect();
    assert!(places.is_sorted_by(in_order), "{places:?}");
    read
}

/// One slip of a typist.
#[derive(Debug, Clone)]
enum Slip {
    DropLine(usize),
    DoubleLine(usize),
    SwapLines(usize, usize),
    Insert(usize, String),
    Delete(usize, usize),
    Cut(usize),
    Byte(usize, u8),
}

fn slip() -> impl Strategy<Value = Slip> {
    let at = 0usize..20_000;
    let bit = prop_oneof![
        Just("\""),
        Just("]"),
        Just("["),
        Just("[["),
        Just("{"),
        Just("}"),
        Just("="),
        Just("."),
        Just(","),
        Just("\n"),
        Just("\r"),
        Just("'''"),
        Just("\"\"\""),
        Just("#"),
        Just("\\"),
        Just("\u{0}"),
        Just("99999999999999999999"),
        Just("1e999"),
        Just("nan"),
        Just("-inf"),
        Just("0x"),
        Just("1979-05-27T07:32:00Z"),
        Just("true"),
        Just("none"),
        Just("½"),
        Just("1,234"),
        Just("1/0"),
        Just("\u{202e}"),
        Just("\u{feff}"),
        Just("é"),
    ]
    .prop_map(str::to_owned);
    let insert = (at.clone(), bit).prop_map(|(at, bit)| Slip::Insert(at, bit));
    prop_oneof![
        1 => at.clone().prop_map(Slip::DropLine),
        1 => at.clone().prop_map(Slip::DoubleLine),
        1 => (at.clone(), at.clone()).prop_map(|(a, b)| Slip::SwapLines(a, b)),
        4 => insert,
        1 => (at.clone(), 1usize..40).prop_map(|(at, length)| Slip::Delete(at, length)),
        1 => at.clone().prop_map(Slip::Cut),
        1 => (at, any::<u8>()).prop_map(|(at, byte)| Slip::Byte(at, byte)),
    ]
}

fn make(slip: &Slip, bytes: Vec<u8>) -> Vec<u8> {
    let lines = |bytes: &[u8]| -> Vec<Vec<u8>> {
        bytes.split_inclusive(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect()
    };
    let length = bytes.len().max(1);
    match slip {
        Slip::DropLine(at) => {
            let mut lines = lines(&bytes);
            if !lines.is_empty() {
                lines.remove(at % lines.len());
            }
            lines.concat()
        }
        Slip::DoubleLine(at) => {
            let mut lines = lines(&bytes);
            if !lines.is_empty() {
                let at = at % lines.len();
                lines.insert(at, lines[at].clone());
            }
            lines.concat()
        }
        Slip::SwapLines(a, b) => {
            let mut lines = lines(&bytes);
            if !lines.is_empty() {
                let count = lines.len();
                lines.swap(a % count, b % count);
            }
            lines.concat()
        }
        Slip::Insert(at, bit) => {
            let at = at % length;
            let (head, tail) = bytes.split_at(at.min(bytes.len()));
            [head, bit.as_bytes(), tail].concat()
        }
        Slip::Delete(at, count) => {
            let at = (at % length).min(bytes.len());
            let end = (at + count).min(bytes.len());
            [&bytes[..at], &bytes[end..]].concat()
        }
        Slip::Cut(at) => bytes[..(at % length).min(bytes.len())].to_vec(),
        Slip::Byte(at, byte) => {
            let mut bytes = bytes;
            if let Some(old) = bytes.get_mut(at % length) {
                *old = *byte;
            }
            bytes
        }
    }
}

proptest! {
    #![proptest_config(cases(128))]

    #[test]
    fn any_bytes(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        honest(&bytes);
    }

    #[test]
    fn any_text(text in "\\PC{0,300}") {
        honest(text.as_bytes());
        honest(format!("format = 1\n{text}").as_bytes());
    }

    #[test]
    fn pieces_of_toml(
        pieces in prop::collection::vec(
            prop_oneof![
                Just("format = 1\n"), Just("[base]\n"), Just("[[question]]\n"), Just("[[bag]]\n"),
                Just("[[question.treatment]]\n"), Just("[bag_list]\n"), Just("bags = [{}]\n"),
                Just("name = "), Just("\"x\"\n"), Just("1\n"), Just("[1, \"a\", {b = 2}]\n"),
                Just("a.b.c = 1\n"), Just("day = [[[]]]\n"), Just("= ="), Just("\"\"\"\n"),
                Just("food = \"none\"\n"), Just("extra = [{ item = \"salt\" }]\n"), Just("{"),
                Just("equipment = {}\n"), Just("zone = \"?\"\n"), Just("date = 2027-13-45\n"),
            ],
            0..40,
        )
    ) {
        honest(pieces.concat().as_bytes());
    }

    #[test]
    fn the_demonstration_with_slips(slips in prop::collection::vec(slip(), 1..6)) {
        let bytes = slips.iter().fold(DEMO.as_bytes().to_vec(), |bytes, slip| make(slip, bytes));
        let read = honest(&bytes);
        if let Some(plan) = read.plan {
            // A slip that left a plan left one that can be saved.
            let text = String::from_utf8(bytes).unwrap();
            prop_assert_eq!(honest(write(&plan, &text).as_bytes()).plan, Some(plan));
        }
    }
}

#[test]
fn deep_long_and_wide_files_end() {
    let deep = 10_000;
    for text in [
        format!("format = 1\nx = {}", "[".repeat(deep)),
        format!("format = 1\nx = {}{}", "[".repeat(deep), "]".repeat(deep)),
        format!("format = 1\nx = {}", "{a=".repeat(deep)),
        format!("format = 1\n{}a = 1", "a.".repeat(deep)),
        format!("format = 1\n[{}a]", "a.".repeat(deep)),
        format!("format = 1\n{}", "[[question]]\n".repeat(deep)),
        format!("format = 1\n{}", "x y\n".repeat(deep)),
        format!("format = 1\n{}", "= ".repeat(deep)),
        format!("format = 1\ntitle = \"{}\"", "é".repeat(500_000)),
        format!("format = 1\n{} = 1", "k".repeat(500_000)),
        format!("format = 1\ngrade = {}", "9".repeat(100_000)),
        format!("format = 1\nspare = \"{} %\"", "9".repeat(100_000)),
        format!("format = 1\nx = [{}]", "1, ".repeat(100_000)),
        format!("format = 1\nbag_list = {{ bags = [{}] }}", "{code=1},".repeat(20_000)),
        (0..20_000).map(|key| format!("k{key} = 1\n")).collect::<String>(),
        "\n".repeat(1_000_000),
        "#".repeat(3_000_000),
        "\r".repeat(10_000),
    ] {
        let read = honest(text.as_bytes());
        assert!(!read.mistakes.is_empty() && read.mistakes.len() <= 501);
    }
}

#[test]
fn byte_order_marks_and_windows_line_ends_are_passed_over() {
    let plan = honest(DEMO.as_bytes()).plan;
    assert!(plan.is_some());
    let windows = DEMO.replace('\n', "\r\n");
    assert_eq!(honest(windows.as_bytes()).plan, plan);
    let marked = format!("\u{feff}{windows}");
    assert_eq!(read(marked.as_bytes()).plan, plan);
    assert_eq!(read(marked.as_bytes()).places, read(DEMO.as_bytes()).places);
}
