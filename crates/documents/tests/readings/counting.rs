//! Nothing is dropped: every cell in which a height may stand is taken, listed or blank.

use crate::plan::{CODES, plan};
use barm_documents::readings::read;
use proptest::prelude::*;

/// Cases per property: the suite is quick, ordinary or long by an environment variable.
fn cases() -> u32 {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => 200,
        Ok("long") => 20_000,
        _ => 1000,
    }
}

/// A cell as it may be typed, and whether something stands in it that is no mark for "not read".
fn cell() -> impl Strategy<Value = (String, bool)> {
    let typed = |text: &str| (text.to_owned(), true);
    let blank = |text: &str| (text.to_owned(), false);
    prop_oneof![
        4 => (0_u32..90).prop_map(|mm| (mm.to_string(), true)),
        1 => (0_u32..40).prop_map(|mm| (format!("{mm} mm"), true)),
        1 => (0_u32..4, 1_u32..8).prop_map(|(whole, eighths)| (format!("{whole} {eighths}/8 in"), true)),
        1 => Just(blank("")),
        1 => Just(blank("  ")),
        1 => prop_oneof![Just(blank("-")), Just(blank("n/a")), Just(blank("—"))],
        1 => prop_oneof![
            Just(typed("=A1")), Just(typed("-4")), Just(typed("x")), Just(typed("999")),
            Just(typed("1,250")), Just(typed("3 kg")), Just(typed("4\n5")), Just(typed("\"")),
        ],
    ]
}

fn code() -> impl Strategy<Value = String> {
    prop_oneof![
        6 => proptest::sample::select(&CODES[..]).prop_map(str::to_owned),
        1 => proptest::sample::select(&CODES[..]).prop_map(|c| c.to_lowercase().replace('-', " ")),
        1 => prop_oneof![Just(String::new()), Just("P9-99Z-Z".to_owned()), Just("Total".to_owned())],
    ]
}

fn quoted(cell: &str) -> String {
    format!("\"{}\"", cell.replace('"', "\"\""))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    #[test]
    fn every_cell_of_a_wide_file_is_accounted_for(
        rows in prop::collection::vec((code(), prop::collection::vec(cell(), 0..6)), 0..12),
        sign in prop_oneof![Just(","), Just(";"), Just("\t")],
        end in prop_oneof![Just("\n"), Just("\r\n")],
    ) {
        // Four columns of heights; a fifth and sixth cell stand under no heading.
        let mut text = ["bag", "0", "4", "8", "12"].join(sign) + end;
        let (mut typed, mut blank) = (0, 0);
        for (code, cells) in &rows {
            let line: Vec<String> = std::iter::once(code.clone())
                .chain(cells.iter().map(|(cell, _)| quoted(cell)))
                .collect();
            text += &(line.join(sign) + end);
            let says_nothing = code.is_empty() && cells.iter().all(|(c, _)| c.trim().is_empty());
            if says_nothing {
                continue;
            }
            typed += cells.iter().take(4).filter(|(_, typed)| *typed).count();
            typed += cells.iter().skip(4).filter(|(cell, _)| !cell.trim().is_empty()).count();
            blank += 4 - cells.iter().take(4).filter(|(_, typed)| *typed).count();
        }
        let file = read(text.as_bytes(), &plan());
        prop_assert_eq!(file.cells.taken + file.cells.rejected, typed, "{}", text);
        prop_assert_eq!(file.cells.blank, blank, "{}", text);
        prop_assert_eq!(file.cells.taken, file.readings.len());
        prop_assert!(file.cells.rejected == 0 || !file.rejected.is_empty());
        prop_assert!(file.rejected.iter().all(|r| r.line >= 1));
    }

    #[test]
    fn every_row_of_a_long_file_is_accounted_for(
        rows in prop::collection::vec((code(), 0_u32..5, cell()), 0..20),
    ) {
        let mut text = String::from("bag,minute,height (mm)\n");
        for (code, minute, (cell, _)) in &rows {
            text += &format!("{code},{},{}\n", minute * 4, quoted(cell));
        }
        let typed = rows.iter().filter(|(_, _, (_, typed))| *typed).count();
        let file = read(text.as_bytes(), &plan());
        prop_assert_eq!(file.cells.taken + file.cells.rejected, typed);
        prop_assert_eq!(file.cells.blank, rows.len() - typed);
        prop_assert_eq!(file.cells.taken, file.readings.len());
    }

    /// What was taken is what was typed, to the last digit.
    #[test]
    fn heights_are_not_changed(heights in prop::collection::vec(0_u32..2000, 1..9)) {
        let mut text = String::from("bag,minute,height (mm)\n");
        for (place, height) in heights.iter().enumerate() {
            text += &format!("P1-01A-C,{place},{}.{}\n", height / 10, height % 10);
        }
        let file = read(text.as_bytes(), &plan());
        prop_assert_eq!(file.readings.len(), heights.len());
        for (reading, height) in file.readings.iter().zip(&heights) {
            prop_assert!((reading.height_mm - f64::from(*height) / 10.0).abs() < 1e-12);
        }
    }

    #[test]
    fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let file = read(&bytes, &plan());
        prop_assert_eq!(file.cells.taken, file.readings.len());
    }

    #[test]
    fn no_text_of_the_right_kind_makes_it_panic(
        text in "(bag|0|4 min|8:31|P1-01A-C|time|mm|minute|note|zero|[0-9]{1,3}|[a-z½\"'=,;:\t\n\r |\0/.-]){0,80}",
    ) {
        let file = read(text.as_bytes(), &plan());
        prop_assert!(file.readings.iter().all(|r| r.height_mm.is_finite() && r.minute >= 0.0));
    }
}
