//! What holds of every PDF, whatever is on it.

use crate::prints::PRINTS;
use crate::program::skip;
use crate::tools::{name, say};
use std::collections::BTreeSet;

#[test]
fn every_print_has_files_and_qpdf_finds_nothing_wrong_with_them() {
    for print in PRINTS.iter() {
        assert!(!print.pdfs().is_empty(), "{print:?} is empty");
        for pdf in print.pdfs() {
            let Some((sound, said)) = say("qpdf", &["--check", name(&pdf)]) else {
                return skip("every_print_is_sound", "qpdf is not installed");
            };
            assert!(sound && !said.contains("WARNING"), "{}: {said}", pdf.display());
        }
    }
}

#[test]
fn every_font_is_embedded_as_a_subset_and_ours() {
    for pdf in PRINTS.iter().flat_map(|print| print.pdfs()) {
        let Some((_, said)) = say("pdffonts", &[name(&pdf)]) else {
            return skip("every_font_is_embedded", "poppler is not installed");
        };
        // Two lines of heading, then name, type, encoding, emb, sub, uni and object of each font.
        let fonts: Vec<&str> = said.lines().skip(2).collect();
        assert!(!fonts.is_empty(), "{}", pdf.display());
        for font in fonts {
            let words: Vec<&str> = font.split_whitespace().rev().collect();
            assert!(font.contains("Barm"), "{}: {font}", pdf.display());
            assert_eq!(&words[2..5], ["yes", "yes", "yes"], "{}: {font}", pdf.display());
        }
    }
}

/// Parts whose pages have a size of their own, whatever paper is asked for: width and height (pt).
fn own_size(file: &str) -> Option<(f64, f64)> {
    // 16 by 9, as walls and screens are.
    (file == "slides.pdf").then_some((960.0, 540.0))
}

/// US Letter is 8.5 by 11 in (ANSI/ASME Y14.1, size A), ISO 216 A4 210 by 297 mm; a PDF point is
/// 1/72 in (ISO 32000-1, 8.3.2.3).
#[test]
fn every_page_has_exactly_the_size_of_its_paper() {
    for print in PRINTS.iter() {
        for pdf in print.pdfs() {
            let pages = ["-f", "1", "-l", "999", name(&pdf)];
            let Some((_, said)) = say("pdfinfo", &pages) else {
                return skip(
                    "every_page_has_the_size_of_its_paper",
                    "poppler is not installed",
                );
            };
            let file = pdf.file_name().expect("a file").to_string_lossy().into_owned();
            let paper = match print.paper {
                "letter" => (612.0, 792.0),
                _ => (210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0),
            };
            let (wide, high) = own_size(&file).unwrap_or(paper);
            let value =
                |line: &str| line.split_once(':').map(|(_, value)| value.trim().to_owned());
            let sizes: Vec<Vec<f64>> = said
                .lines()
                .filter(|line| line.starts_with("Page") && line.contains(" size:"))
                .filter_map(value)
                .map(|value| value.split_whitespace().filter_map(|w| w.parse().ok()).collect())
                .collect();
            assert!(!sizes.is_empty(), "{}", pdf.display());
            for size in sizes {
                let off = (size[0] - wide).abs().max((size[1] - high).abs());
                assert!(off < 0.01, "{}: {size:?}", pdf.display());
            }
        }
    }
}

/// The least letters of a page have 9 pt (common practice for print read at arm's length, no source).
/// Poppler tells sizes as whole pixels and magnifies three times at most, so 9 pt are 27.
#[test]
fn no_letters_are_smaller_than_nine_points() {
    for pdf in PRINTS.iter().flat_map(|print| print.pdfs()) {
        let arguments = ["-xml", "-i", "-stdout", "-zoom", "3", name(&pdf)];
        let Some((_, said)) = say("pdftohtml", &arguments) else {
            return skip("no_letters_are_smaller", "poppler is not installed");
        };
        let sizes = said.lines().filter(|line| line.contains("<fontspec "));
        let sizes = sizes.filter_map(|line| line.split("size=\"").nth(1)?.split('"').next());
        let sizes: Vec<u32> =
            sizes.map(|size| size.parse().expect("a size in pixels")).collect();
        let least =
            sizes.iter().min().unwrap_or_else(|| panic!("{}: no letters", pdf.display()));
        assert!(
            *least >= 27,
            "{}: letters of {:.1} pt",
            pdf.display(),
            f64::from(*least) / 3.0
        );
    }
}

/// Objects of a file as qpdf writes them: one JSON value; none without it.
fn objects(pdf: &std::path::Path) -> Option<serde_json::Value> {
    let (_, said) = say("qpdf", &["--json", "--no-original-object-ids", name(pdf)])?;
    let start = said.find('{').expect("JSON");
    let mut read = serde_json::Deserializer::from_str(&said[start..]).into_iter();
    Some(read.next().expect("a value").expect("JSON"))
}

/// Parts that are written for the teacher, in English whatever students read.
const TEACHERS: [&str; 6] =
    ["forecast", "packet", "prep", "results", "substitute", "test-print"];

/// ISO 14289-1 (PDF/UA-1): a document language, tags, a title; and bookmarks to find a page by. The
/// titles of a print differ, so that tabs and readers tell its files apart.
#[test]
fn every_file_tells_its_language_its_structure_and_its_own_title() {
    for print in PRINTS.iter() {
        let mut titles = BTreeSet::new();
        for pdf in print.pdfs() {
            let Some(json) = objects(&pdf) else {
                return skip("every_file_tells_its_language", "qpdf is not installed");
            };
            let place = pdf.display();
            let objects = &json["qpdf"][1];
            let own = |reference: &serde_json::Value| {
                let key = format!("obj:{}", reference.as_str().unwrap_or_default());
                objects[&key]["value"].clone()
            };
            let trailer = &objects["trailer"]["value"];
            let catalog = own(&trailer["/Root"]);
            let stem = pdf.file_stem().expect("a name").to_string_lossy().into_owned();
            let language =
                if TEACHERS.contains(&stem.as_str()) { "en" } else { print.language };
            assert_eq!(catalog["/Lang"], format!("u:{language}"), "{place}");
            let marked = match &catalog["/MarkInfo"] {
                serde_json::Value::String(_) => own(&catalog["/MarkInfo"]),
                inline => inline.clone(),
            };
            assert_eq!(marked["/Marked"], true, "{place}: {marked}");
            assert!(
                own(&catalog["/StructTreeRoot"])["/K"] != serde_json::Value::Null,
                "{place}"
            );
            let title = own(&trailer["/Info"])["/Title"].as_str().map(str::to_owned);
            let title = title.unwrap_or_else(|| panic!("{place} has no title"));
            let plain = title.trim_start_matches("u:").trim();
            assert!(!plain.is_empty(), "{place}");
            assert!(titles.insert(title.clone()), "{place} is called like another: {title}");
            let pages = json["pages"].as_array().expect("pages").len();
            let marks = json["outlines"].as_array().map_or(0, Vec::len);
            assert!(pages <= 2 || marks > 0, "{place}: {pages} pages without a bookmark");
        }
        assert!(titles.len() > 10, "{print:?}: {titles:?}");
    }
}
