//! Nothing runs off a page and no two words lie on each other, whatever a plan holds.

use crate::hands::PARTS;
use crate::pages::{Page, Word, crowded, pages};
use crate::prints::{Class, PRINTS, plan_of};
use crate::program::{run, skip};
use crate::tools::name;
use std::path::Path;

/// Most printers leave a quarter of an inch blank along the edges (pt; common practice, no source).
const UNPRINTED: f64 = 18.0;
/// The same for sheets of labels, whose heading lies above the first row, and for slides, which are
/// shown and not printed (pt). The box of a word reaches a few points above its letters.
const FULL: f64 = 10.0;

/// How near to the edge words of a part may stand.
fn edge(pdf: &Path) -> f64 {
    let stem = pdf.file_stem().expect("a name").to_string_lossy();
    let whole = ["labels", "card-labels", "test-print", "slides"].contains(&stem.as_ref());
    if whole { FULL } else { UNPRINTED }
}

/// Looks at every page of a file; none without poppler.
fn look_at(pdf: &Path) -> Option<()> {
    for (at, page) in pages(pdf)?.iter().enumerate() {
        let found = crowded(page, edge(pdf));
        assert!(found.is_empty(), "{}, page {}: {found:#?}", pdf.display(), at + 1);
    }
    Some(())
}

/// Every print of every class, and everything that is in it.
#[test]
fn every_word_stands_on_its_page_and_on_no_other_word() {
    for print in PRINTS.iter() {
        for pdf in print.pdfs() {
            if look_at(&pdf).is_none() {
                return skip("every_word_stands_on_its_page", "poppler is not installed");
            }
        }
    }
}

/// The same in large print and at the levels that the demo does not use, for one group.
#[test]
fn nothing_overlaps_in_large_print_or_at_any_level() {
    let plan = plan_of(Class::One);
    let home = tempfile::tempdir().expect("a folder");
    let what = PARTS.join(",");
    for more in [
        &["--large"][..],
        &["--large", "--paper", "a4", "--language", "es", "--level", "open"],
        &["--level", "confirmation", "--language", "es"],
    ] {
        let out = home.path().join(more.join(""));
        let mut arguments = vec!["print", name(&plan), "--what", &what, "--out", name(&out)];
        arguments.extend(more);
        run(home.path(), &arguments).ended(0);
        for part in PARTS {
            if look_at(&out.join(format!("{part}.pdf"))).is_none() {
                return skip("nothing_overlaps_in_large_print", "poppler is not installed");
            }
        }
    }
}

#[test]
fn what_runs_off_or_over_another_word_is_found() {
    let word = |text: &str, left: f64, top: f64, right: f64, bottom: f64| {
        let text = text.to_owned();
        Word { text, left, top, right, bottom }
    };
    let fine = [
        word("Bag", 20.0, 20.0, 40.0, 30.0),
        word("A", 42.0, 20.0, 60.0, 30.0),
        // Lines set close share some of the room above and below their letters.
        word("below", 20.0, 28.0, 40.0, 38.0),
    ];
    let found = |more: &[Word]| {
        let words = fine.iter().chain(more).cloned().collect();
        crowded(&Page { width: 612.0, height: 792.0, words }, UNPRINTED).len()
    };
    assert_eq!(found(&[]), 0);
    assert_eq!(found(&[word("over", 34.0, 21.0, 50.0, 29.0)]), 2);
    assert_eq!(found(&[word("off", 590.0, 100.0, 600.0, 110.0)]), 1);
}
