//! The height gauge is true to size, measured from a rendering as a ruler would measure the paper.

use crate::prints::{Class, print_of};
use crate::program::skip;
use crate::tools::{name, say};
use std::fs;

/// Pixels of a millimeter at 300 dots an inch.
const MM: f64 = 300.0 / 25.4;
/// As near as the scale must be over 100 mm (mm).
const NEAR: f64 = 0.2;

/// A page in shades of grey, as it is printed.
struct Shades {
    width: usize,
    bytes: Vec<u8>,
}

impl Shades {
    /// Reads a binary portable graymap (Netpbm, format P5; from memory).
    fn read(file: &[u8]) -> Self {
        let mut at = 0;
        let mut fields = Vec::new();
        while fields.len() < 4 {
            let end =
                file[at..].iter().position(u8::is_ascii_whitespace).expect("a field") + at;
            fields.push(String::from_utf8_lossy(&file[at..end]).into_owned());
            at = end + 1;
        }
        assert_eq!(fields[0], "P5");
        Self { width: fields[1].parse().expect("a width"), bytes: file[at..].to_vec() }
    }

    fn height(&self) -> usize {
        self.bytes.len() / self.width
    }

    fn dark(&self, x: usize, y: usize) -> bool {
        self.bytes[y * self.width + x] < 128
    }

    /// The same page on its side, so that columns can be read as rows.
    fn turned(&self) -> Self {
        let (wide, high) = (self.width, self.height());
        let bytes = (0..wide).flat_map(|x| (0..high).map(move |y| (x, y)));
        let bytes = bytes.map(|(x, y)| self.bytes[y * wide + x]).collect();
        Self { width: high, bytes }
    }

    /// Runs of dark in a row: first and last pixel.
    fn runs(&self, y: usize) -> Vec<(usize, usize)> {
        let mut runs: Vec<(usize, usize)> = Vec::new();
        for x in (0..self.width).filter(|x| self.dark(*x, y)) {
            match runs.last_mut() {
                Some((_, last)) if *last + 1 == x => *last = x,
                _ => runs.push((x, x)),
            }
        }
        runs
    }

    /// The line of 100 mm, as (row, first pixel, last pixel): no other line on the page is as long.
    fn check_line(&self) -> (usize, usize, usize) {
        let fits = |(first, last): &(usize, usize)| {
            ((last - first + 1) as f64 / MM - 100.0).abs() < 1.0
        };
        let mut lines = (0..self.height()).rev().filter_map(|y| {
            let run = self.runs(y).into_iter().find(fits)?;
            Some((y, run.0, run.1))
        });
        lines.next().expect("a line of 100 mm")
    }

    /// Middles of the marks at every 10 mm of the check line (pixels), read 3.5 mm beside it, where
    /// no shorter mark reaches.
    fn tens(&self) -> Vec<f64> {
        let (y, first, last) = self.check_line();
        let beside = y + (3.5 * MM) as usize;
        let own = |run: &(usize, usize)| run.0 + 3 >= first && run.1 <= last + 3;
        let runs = self.runs(beside).into_iter().filter(own);
        runs.map(|(from, to)| (from + to) as f64 / 2.0).collect()
    }
}

#[test]
fn both_check_lines_are_100_mm_long_and_so_are_their_marks() {
    for (language, paper) in [("en", "letter"), ("es", "a4")] {
        let pdf = print_of(Class::Demo, language, paper).file("gauge.pdf").expect("printed");
        let home = tempfile::tempdir().expect("a folder");
        let root = home.path().join("page");
        let arguments = ["-r", "300", "-gray", "-f", "1", "-l", "1", "-singlefile"];
        let mut all: Vec<&str> = arguments.to_vec();
        all.extend([name(&pdf), name(&root)]);
        let Some((fine, said)) = say("pdftoppm", &all) else {
            return skip("both_check_lines_are_100_mm_long", "poppler is not installed");
        };
        assert!(fine, "{said}");
        let file = fs::read(home.path().join("page.pgm")).expect("it is rendered");
        let page = Shades::read(&file);
        for (way, page) in [("across", &page), ("upright", &page.turned())] {
            let tens = page.tens();
            assert_eq!(tens.len(), 11, "{paper} {way}: {tens:?}");
            for (place, at) in tens.iter().enumerate() {
                let mm = (at - tens[0]) / MM;
                let off = mm - 10.0 * place as f64;
                assert!(off.abs() <= NEAR, "{paper} {way}: mark {place} is at {mm:.2} mm");
            }
        }
        strip_is_true(&page, paper);
    }
}

/// From the lower edge of the thick line at the foot of the first strip, where it is cut, to its marks.
fn strip_is_true(page: &Shades, paper: &str) {
    // The strip stands at the left margin of 0.6 in and is 40 mm wide; the thick line has 0.7 mm.
    let margin = 0.6 * 25.4 * MM;
    let across = |y: &usize| {
        let of_strip = |(first, last): &(usize, usize)| {
            (*first as f64 - margin).abs() < 5.0
                && ((last - first) as f64 / MM - 40.0).abs() < 1.0
        };
        page.runs(*y).iter().any(of_strip)
    };
    let thick = |y: &usize| (0..6).all(|more| across(&(y + more)));
    let begins = (0..page.height() - 9).find(thick).expect("a thick line");
    let foot = (begins..page.height()).take_while(across).last().expect("it ends");
    let column = (margin + 4.3 * MM) as usize;
    let runs = page.turned().runs(column);
    let marks = runs.iter().filter(|(_, last)| *last < begins);
    let marks: Vec<f64> = marks
        .map(|(first, last)| (foot as f64 + 0.5 - (first + last) as f64 / 2.0) / MM)
        .collect();
    for ten in 1..=4 {
        let wanted = 10.0 * f64::from(ten);
        let near = marks.iter().any(|mark| (mark - wanted).abs() <= NEAR);
        assert!(near, "{paper}: no mark at {wanted} mm among {marks:?}");
    }
}
