//! Nothing runs off a page and no two words lie on each other, whatever a plan holds.

use crate::prints::PRINTS;
use crate::program::skip;
use crate::tools::{name, say};

/// A word where it lies, in points from the upper left corner.
#[derive(Debug, Clone)]
struct Word {
    text: String,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

/// Pages with their size and words, as poppler finds them.
fn pages(said: &str) -> Vec<((f64, f64), Vec<Word>)> {
    let number = |line: &str, key: &str| -> f64 {
        let rest = line.split(&format!("{key}=\"")).nth(1).expect("it has this");
        rest.split('"').next().and_then(|value| value.parse().ok()).expect("a number")
    };
    let mut pages: Vec<((f64, f64), Vec<Word>)> = Vec::new();
    for line in said.lines().map(str::trim) {
        if line.starts_with("<page ") {
            pages.push(((number(line, "width"), number(line, "height")), Vec::new()));
        } else if line.starts_with("<word ") {
            let text = line.split('>').nth(1).and_then(|rest| rest.split('<').next());
            let word = Word {
                text: text.unwrap_or_default().to_owned(),
                left: number(line, "xMin"),
                top: number(line, "yMin"),
                right: number(line, "xMax"),
                bottom: number(line, "yMax"),
            };
            pages.last_mut().expect("a word stands on a page").1.push(word);
        }
    }
    pages
}

/// Whether one word lies on the other: more than a hair wide, and over half of the lower one. Lines
/// set close share some of the room above and below their letters.
fn on_each_other(one: &Word, other: &Word) -> bool {
    let wide = one.right.min(other.right) - one.left.max(other.left);
    let high = one.bottom.min(other.bottom) - one.top.max(other.top);
    let lower = (one.bottom - one.top).min(other.bottom - other.top);
    wide > 1.5 && high > 0.6 * lower
}

/// Most printers leave a quarter of an inch at the edges (common practice, no source).
const EDGE: f64 = 12.0;

#[test]
fn every_word_stands_on_its_page_and_on_no_other_word() {
    for print in PRINTS.iter() {
        for pdf in print.pdfs() {
            let Some((_, said)) = say("pdftotext", &["-bbox", name(&pdf), "-"]) else {
                return skip("every_word_stands_on_its_page", "poppler is not installed");
            };
            let pages = pages(&said);
            assert!(!pages.is_empty(), "{}", pdf.display());
            for (at, ((width, height), words)) in pages.iter().enumerate() {
                let place = format!("{}, page {}", pdf.display(), at + 1);
                for (n, word) in words.iter().enumerate() {
                    let inside = word.left > EDGE
                        && word.right < width - EDGE
                        && word.top > 0.0
                        && word.bottom < *height;
                    assert!(inside, "{place}: {word:?} runs off");
                    let under = words[n + 1..].iter().find(|other| on_each_other(word, other));
                    assert!(under.is_none(), "{place}: {word:?} lies on {under:?}");
                }
            }
        }
    }
}

#[test]
fn words_are_found_where_they_lie() {
    let said = "<page width=\"612.0\" height=\"792.0\">\n\
        <word xMin=\"10.0\" yMin=\"20.0\" xMax=\"40.0\" yMax=\"30.0\">Bag</word>\n\
        <word xMin=\"38.0\" yMin=\"21.0\" xMax=\"60.0\" yMax=\"31.0\">A</word>\n\
        <word xMin=\"10.0\" yMin=\"28.0\" xMax=\"40.0\" yMax=\"38.0\">below</word>\n";
    let [((width, _), words)] = pages(said).try_into().expect("one page");
    assert_eq!((width, words.len(), words[0].text.as_str()), (612.0, 3, "Bag"));
    assert!(on_each_other(&words[0], &words[1]), "2 pt of each other's width");
    assert!(!on_each_other(&words[0], &words[2]), "close lines");
}
