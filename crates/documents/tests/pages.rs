//! Looks at the sheets from outside, with the tools that a printer would use.
#![cfg(feature = "pdf")]

use std::collections::HashMap;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;

use barm_documents::page::Paper;
use barm_documents::sheet::{forecast_pdf, prep_pdf, results_pdf};

#[path = "../examples/invented/mod.rs"]
mod invented;

/// A sheet on disk.
struct Sheet {
    name: String,
    paper: Paper,
    path: PathBuf,
    bytes: Vec<u8>,
}

static FOLDER: LazyLock<tempfile::TempDir> = LazyLock::new(|| tempfile::tempdir().unwrap());

/// Every sheet of every class on both papers; the quick suite sets the overfull class on one only.
static SHEETS: LazyLock<Vec<Sheet>> = LazyLock::new(|| {
    let quick = std::env::var("BARM_TEST_SIZE").as_deref() == Ok("quick");
    let letter =
        || set(Paper::Letter, &[invented::full(), invented::empty(), invented::many()]);
    let a4 = || {
        let mut classes = vec![invented::full(), invented::empty()];
        classes.extend((!quick).then(invented::many));
        set(Paper::A4, &classes)
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(a4);
        let mut sheets = letter();
        sheets.extend(other.join().unwrap());
        sheets
    })
});

fn set(paper: Paper, classes: &[invented::Class]) -> Vec<Sheet> {
    let mut sheets = Vec::new();
    for class in classes {
        for (sheet, bytes) in [
            ("results", results_pdf(&class.results, paper).unwrap()),
            ("prep", prep_pdf(&class.prep, paper).unwrap()),
            ("forecast", forecast_pdf(&class.forecast, paper).unwrap()),
        ] {
            let name = format!("{sheet}-{}", class.name);
            let path = FOLDER.path().join(format!("{name}-{paper:?}.pdf"));
            fs::write(&path, &bytes).unwrap();
            sheets.push(Sheet { name, paper, path, bytes });
        }
    }
    sheets
}

fn skip(test: &str, why: &str) {
    let line = format!("{test}: {why}\n");
    let _ = std::io::stderr().write_all(line.as_bytes());
    if let Some(list) = std::env::var_os("BARM_SKIPS") {
        let file = fs::OpenOptions::new().append(true).create(true).open(list);
        if let Ok(mut file) = file {
            let _ = file.write_all(line.as_bytes());
        }
    }
}

/// What `tool` says about a file; none if it is not installed.
fn say(tool: &str, before: &[&str], path: &Path, after: &[&str]) -> Option<(bool, String)> {
    let output = Command::new(tool).args(before).arg(path).args(after).output().ok()?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    Some((output.status.success(), text))
}

fn sheet(name: &str) -> &'static Sheet {
    SHEETS.iter().find(|sheet| sheet.name == name).unwrap()
}

#[test]
fn every_sheet_is_a_sound_file() {
    for sheet in SHEETS.iter() {
        let Some((sound, said)) = say("qpdf", &["--check"], &sheet.path, &[]) else {
            return skip("every_sheet_is_a_sound_file", "qpdf is not installed");
        };
        assert!(sound, "{} {:?}: {said}", sheet.name, sheet.paper);
    }
}

#[test]
fn every_font_is_embedded_and_ours() {
    for sheet in SHEETS.iter() {
        let Some((_, said)) = say("pdffonts", &[], &sheet.path, &[]) else {
            return skip("every_font_is_embedded_and_ours", "poppler is not installed");
        };
        // Two lines of heading, then name, type, encoding, emb, sub, uni and object of each font.
        let fonts: Vec<&str> = said.lines().skip(2).collect();
        assert!(!fonts.is_empty());
        for font in fonts {
            let words: Vec<&str> = font.split_whitespace().rev().collect();
            assert!(font.contains("Barm"), "{}: {font}", sheet.name);
            assert_eq!(&words[2..5], ["yes", "yes", "yes"], "{}: {font}", sheet.name);
        }
    }
}

/// US Letter is 612 by 792 points; ISO 216 A4 is 210 by 297 mm.
#[test]
fn every_page_has_the_size_of_its_paper_and_every_file_its_title() {
    for sheet in SHEETS.iter() {
        let Some((_, said)) = say("pdfinfo", &["-f", "1", "-l", "99"], &sheet.path, &[]) else {
            return skip("every_page_has_the_size_of_its_paper", "poppler is not installed");
        };
        let value = |line: &str| line.split_once(':').map(|(_, value)| value.trim().to_owned());
        let field = |name: &str| said.lines().find(|l| l.starts_with(name)).and_then(value);
        assert_eq!(field("Tagged").as_deref(), Some("yes"), "{}", sheet.name);
        assert!(field("Title").is_some_and(|title| !title.is_empty()), "{}", sheet.name);
        assert_eq!(field("Creator").as_deref(), Some("Barm"));
        let (wide, high) = match sheet.paper {
            Paper::Letter => (612.0, 792.0),
            Paper::A4 => (210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0),
        };
        let sizes: Vec<Vec<f64>> = said
            .lines()
            .filter(|line| line.starts_with("Page") && line.contains(" size:"))
            .filter_map(value)
            .map(|value| value.split_whitespace().filter_map(|w| w.parse().ok()).collect())
            .collect();
        assert!(!sizes.is_empty());
        for size in sizes {
            assert!((size[0] - wide).abs() < 0.01 && (size[1] - high).abs() < 0.01, "{size:?}");
        }
    }
}

/// ISO 14289-1 (PDF/UA-1) is claimed in the metadata, and the language and the outline are there.
#[test]
fn every_file_says_what_it_is_to_those_who_cannot_see_it() {
    for sheet in SHEETS.iter() {
        let Some((_, plain)) =
            say("qpdf", &["--qdf", "--object-streams=disable"], &sheet.path, &["-"])
        else {
            return skip("every_file_says_what_it_is", "qpdf is not installed");
        };
        for wanted in
            ["pdfuaid:part", "/Lang (en)", "/StructTreeRoot", "/MarkInfo", "/Outlines"]
        {
            assert!(plain.contains(wanted), "{} lacks {wanted}", sheet.name);
        }
    }
}

/// A word on a page: page, left, top, right, bottom in points.
struct Word {
    page: usize,
    bounds: [f64; 4],
    text: String,
}

fn words(path: &Path) -> Option<(Vec<[f64; 2]>, Vec<Word>)> {
    let (_, html) = say("pdftotext", &["-bbox"], path, &["-"])?;
    let number = |line: &str, name: &str| -> f64 {
        let rest = line.split(&format!(" {name}=\"")).nth(1).unwrap_or_default();
        rest.split('"').next().unwrap_or_default().parse().unwrap_or(f64::NAN)
    };
    let (mut pages, mut words) = (Vec::new(), Vec::new());
    for line in html.lines().map(str::trim) {
        if line.starts_with("<page ") {
            pages.push([number(line, "width"), number(line, "height")]);
        } else if line.starts_with("<word ") {
            let text = line.split('>').nth(1).unwrap_or_default().replace("</word", "");
            let bounds = ["xMin", "yMin", "xMax", "yMax"].map(|name| number(line, name));
            words.push(Word { page: pages.len(), bounds, text });
        }
    }
    Some((pages, words))
}

/// The house margin of 0.6 inch at both sides; nothing but the foot below 0.82 inch.
#[test]
fn nothing_runs_off_a_page() {
    for sheet in SHEETS.iter() {
        let Some((pages, words)) = words(&sheet.path) else {
            return skip("nothing_runs_off_a_page", "poppler is not installed");
        };
        assert!(!words.is_empty());
        for word in &words {
            let [left, top, right, bottom] = word.bounds;
            let [wide, high] = pages[word.page - 1];
            let inside = left >= 0.6 * 72.0 - 1.0
                && right <= wide - 0.6 * 72.0 + 1.0
                && top >= 0.4 * 72.0
                && bottom <= high - 0.4 * 72.0;
            let (name, paper) = (&sheet.name, sheet.paper);
            assert!(
                inside,
                "{name} {paper:?} page {}: {} {:?}",
                word.page, word.text, word.bounds
            );
        }
    }
}

/// Two words overlap if the middles of their lines do; the boxes themselves include room above and below.
#[test]
fn no_word_stands_on_another() {
    for sheet in SHEETS.iter() {
        let Some((_, words)) = words(&sheet.path) else {
            return skip("no_word_stands_on_another", "poppler is not installed");
        };
        let core = |word: &Word| {
            let [left, top, right, bottom] = word.bounds;
            let inset = (bottom - top) * 0.3;
            [left + 0.5, top + inset, right - 0.5, bottom - inset]
        };
        for (at, one) in words.iter().enumerate() {
            for other in words[at + 1..].iter().take_while(|other| other.page == one.page) {
                let ([a, b, c, d], [e, f, g, h]) = (core(one), core(other));
                let apart = c <= e || g <= a || d <= f || h <= b;
                let (name, page) = (&sheet.name, one.page);
                assert!(
                    apart,
                    "{name} {:?} page {page}: {:?} on {:?}",
                    sheet.paper, one.text, other.text
                );
            }
        }
    }
}

fn text(name: &str) -> Option<String> {
    let (_, text) = say("pdftotext", &["-raw"], &sheet(name).path, &["-"])?;
    // Words that fit no column are parted by a space without width, lines by line ends.
    let joined = text.replace(['\u{200B}', '\u{AD}'], "").replace('\u{A0}', " ");
    Some(joined.split_whitespace().collect::<Vec<_>>().join(" "))
}

#[test]
fn signs_of_the_layout_language_print_as_themselves() {
    let Some(text) = text("results-many") else {
        return skip("signs_print_as_themselves", "poppler is not installed");
    };
    for wanted in [
        "#$@[]*_\\<>`",
        "#let x = [*bold* _it_ $x^2$ @ref <tag> `raw` \\ //]",
        "Otters [?] and [?] and ½ Ñandú",
        "[?] stands for letters or pictures that these pages cannot print.",
    ] {
        assert!(text.contains(wanted), "{wanted:?} is missing");
    }
}

#[test]
fn what_must_be_said_is_said() {
    let rows: HashMap<&str, &[&str]> = HashMap::from([
        (
            "results-full",
            &[
                "What we can say",
                "Maple syrup and mashed banana feed yeast best.",
                "Estimate, not a test of a person",
                "What was left out",
                "P3-02B-B",
                "What did not work",
                "Rows not taken",
                "Made-up class: no reading here is real",
                "Your school's and state's rules come first.",
            ][..],
        ),
        (
            "results-empty",
            &["Nothing was left out.", "Nothing yet: no question has bags to compare."],
        ),
        ("prep-full", &["teacher only", "$34.49", "Hot and cold water", "P4-08C-6"]),
        ("prep-empty", &["Nothing to buy."]),
        ("forecast-full", &["teacher only", "May not show", "not a test of a person"]),
        ("forecast-empty", &["The plan asks no question yet."]),
    ]);
    for sheet in [
        "results-full",
        "results-empty",
        "prep-full",
        "prep-empty",
        "forecast-full",
        "forecast-empty",
    ] {
        let Some(text) = text(sheet) else {
            return skip("what_must_be_said_is_said", "poppler is not installed");
        };
        let text = text.replace('’', "'");
        for wanted in rows[sheet] {
            assert!(text.contains(wanted), "{sheet} does not say {wanted:?}:\n{text}");
        }
    }
}

/// After every caution it would drown them.
#[test]
fn whose_rules_come_first_is_said_once() {
    for name in ["prep-full", "results-full"] {
        let Some(text) = text(name) else {
            return skip("whose_rules_come_first", "poppler is not installed");
        };
        let said = text.replace('’', "'").matches("Your school's and state's rules").count();
        assert_eq!(said, 1, "{name}");
    }
}

#[test]
fn a_period_with_several_waters_says_which_bags_get_which() {
    let Some(text) = text("prep-many") else {
        return skip("a_period_with_several_waters", "poppler is not installed");
    };
    for wanted in
        ["20 °C for Cold", "45 °C for Warm, Warm + enzyme", "40 °C for all other bags"]
    {
        assert!(text.contains(wanted), "{wanted:?} is missing");
    }
}

/// In the invented class every jug reads 108 °F, and no caution does.
#[test]
fn no_water_is_parted_from_what_it_is_for() {
    let Some((pages, words)) = words(&sheet("prep-many").path) else {
        return skip("no_water_is_parted", "poppler is not installed");
    };
    let count = |page: usize, wanted: &[&str]| {
        let own = words.iter().filter(|word| word.page == page);
        own.filter(|word| wanted.iter().any(|text| word.text.contains(text))).count()
    };
    let waters: Vec<usize> = (1..=pages.len()).map(|page| count(page, &["(108"])).collect();
    assert_eq!(waters.iter().sum::<usize>(), 9);
    for (page, waters) in (1..).zip(waters) {
        assert_eq!(count(page, &["Cold", "other", "Warm,"]), waters, "page {page}");
    }
}

#[test]
fn the_forecast_of_the_demo_fits_on_one_page_and_its_preparation_on_three() {
    for (name, most) in [("forecast-full", 1), ("prep-full", 3)] {
        let Some((pages, _)) = words(&sheet(name).path) else {
            return skip("the_forecast_fits_on_one_page", "poppler is not installed");
        };
        assert!(pages.len() <= most, "{name} has {} pages", pages.len());
    }
}

#[test]
fn a_rehearsal_of_a_true_plan_says_so_at_the_foot_of_every_page() {
    let mut class = invented::full();
    for imprint in
        [&mut class.results.imprint, &mut class.prep.imprint, &mut class.forecast.imprint]
    {
        imprint.invented = false;
        imprint.rehearsal = true;
    }
    let sheets = [
        results_pdf(&class.results, Paper::Letter).unwrap(),
        prep_pdf(&class.prep, Paper::Letter).unwrap(),
        forecast_pdf(&class.forecast, Paper::Letter).unwrap(),
    ];
    for (number, bytes) in sheets.iter().enumerate() {
        let path = FOLDER.path().join(format!("rehearsal-{number}.pdf"));
        fs::write(&path, bytes).unwrap();
        let Some((_, text)) = say("pdftotext", &["-layout"], &path, &["-"]) else {
            return skip("a_rehearsal_says_so", "poppler is not installed");
        };
        // A form feed ends each page.
        let pages: Vec<&str> =
            text.split('\u{c}').filter(|page| !page.trim().is_empty()).collect();
        assert!(!pages.is_empty());
        for page in pages {
            assert!(page.contains("Rehearsal: no reading here is real"), "{page}");
            assert!(!page.contains("Made-up class"), "{page}");
        }
    }
}

#[test]
fn the_same_values_give_the_same_bytes() {
    let again = forecast_pdf(&invented::full().forecast, Paper::Letter).unwrap();
    assert!(again == sheet("forecast-full").bytes);
}
