//! What stands on a page and where, as poppler reads it.

use crate::tools::{name, say};
use std::path::Path;

/// A word with its box, in points from the upper left corner of its page.
#[derive(Debug, Clone)]
pub(crate) struct Word {
    pub(crate) text: String,
    pub(crate) left: f64,
    pub(crate) top: f64,
    pub(crate) right: f64,
    pub(crate) bottom: f64,
}

/// A page with its words.
#[derive(Debug, Default)]
pub(crate) struct Page {
    pub(crate) width: f64,
    pub(crate) height: f64,
    pub(crate) words: Vec<Word>,
}

/// Texts of the pages of a file in reading order; none without poppler.
pub(crate) fn texts(pdf: &Path) -> Option<Vec<String>> {
    let (fine, said) = say("pdftotext", &[name(pdf), "-"])?;
    assert!(fine, "{said}");
    let mut pages: Vec<String> = said.split('\u{c}').map(str::to_owned).collect();
    pages.pop();
    Some(pages)
}

/// Words of the pages of a file in the order in which they were set, which is that of its tags; none
/// without poppler.
pub(crate) fn as_set(pdf: &Path) -> Option<Vec<String>> {
    let (fine, said) = say("pdftotext", &["-raw", name(pdf), "-"])?;
    assert!(fine, "{said}");
    let plain = |page: &str| page.split_whitespace().collect::<Vec<_>>().join(" ");
    // Where a word may be broken is no letter of it.
    let mut pages: Vec<String> = said.replace('\u{ad}', "").split('\u{c}').map(plain).collect();
    pages.pop();
    Some(pages)
}

/// The pages of a file; none without poppler.
pub(crate) fn pages(pdf: &Path) -> Option<Vec<Page>> {
    let (fine, said) = say("pdftotext", &["-bbox", name(pdf), "-"])?;
    assert!(fine, "{said}");
    let mut pages: Vec<Page> = Vec::new();
    for line in said.lines().map(str::trim_start) {
        let number = |key: &str| {
            let (_, rest) = line.split_once(&format!("{key}=\""))?;
            rest.split('"').next()?.parse::<f64>().ok()
        };
        let four =
            || Some([number("xMin")?, number("yMin")?, number("xMax")?, number("yMax")?]);
        if line.starts_with("<page ") {
            let (width, height) = number("width").zip(number("height")).expect("a page");
            pages.push(Page { width, height, words: Vec::new() });
        } else if line.starts_with("<word ") {
            let [left, top, right, bottom] = four().expect("a word has a box");
            let text = line.split('>').nth(1).and_then(|rest| rest.split('<').next());
            let text = text.unwrap_or_default().to_owned();
            let page = pages.last_mut().expect("words stand on a page");
            page.words.push(Word { text, left, top, right, bottom });
        }
    }
    assert!(!pages.is_empty(), "{}", pdf.display());
    Some(pages)
}

/// What comes nearer to the edge of the paper than that (pt) or runs over another word; empty if
/// nothing does.
///
/// A box is as high as the letters of its face can be, so boxes of two lines may touch; two words lie
/// over each other where they share half of the lower box.
pub(crate) fn crowded(page: &Page, edge: f64) -> Vec<String> {
    let mut found = Vec::new();
    for (at, word) in page.words.iter().enumerate() {
        let inside = word.left >= edge
            && word.top >= edge
            && word.right <= page.width - edge
            && word.bottom <= page.height - edge;
        if !inside {
            found.push(format!("“{}” runs off: {word:?}", word.text));
        }
        for other in &page.words[at + 1..] {
            let wide = word.right.min(other.right) - word.left.max(other.left);
            let high = word.bottom.min(other.bottom) - word.top.max(other.top);
            let lower = (word.bottom - word.top).min(other.bottom - other.top);
            if wide > 1.5 && high > lower / 2.0 {
                found
                    .push(format!("“{}” over “{}”: {word:?} {other:?}", word.text, other.text));
            }
        }
    }
    found
}
