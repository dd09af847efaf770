//! The height gauge is true to size, measured from a rendering as a ruler would measure the paper.

use crate::picture::{DPI, Picture};
use crate::prints::{Class, print_of};
use crate::program::skip;

/// Pixels of a millimeter.
const MM: f64 = DPI / 25.4;
/// As near as the scale must be over 100 mm (mm).
const NEAR: f64 = 0.2;

/// Where the marks of a page stand.
struct Marks<'a>(&'a Picture);

impl Marks<'_> {
    /// Runs of dark in a row: first and last pixel.
    fn runs(&self, y: usize) -> Vec<(usize, usize)> {
        let mut runs: Vec<(usize, usize)> = Vec::new();
        for x in (0..self.0.wide).filter(|x| self.0.grey(*x, y) < 128) {
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
        let mut lines = (0..self.0.high).rev().filter_map(|y| {
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
        let Some(page) = Picture::of_page(&pdf, 1) else {
            return skip("both_check_lines_are_100_mm_long", "poppler is not installed");
        };
        for (way, page) in [("across", &page), ("upright", &page.turned())] {
            let tens = Marks(page).tens();
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
fn strip_is_true(page: &Picture, paper: &str) {
    // The strip stands at the left margin of 0.6 in and is 40 mm wide; the thick line has 0.7 mm.
    let margin = 0.6 * 25.4 * MM;
    let across = |y: &usize| {
        let of_strip = |(first, last): &(usize, usize)| {
            (*first as f64 - margin).abs() < 5.0
                && ((last - first) as f64 / MM - 40.0).abs() < 1.0
        };
        Marks(page).runs(*y).iter().any(of_strip)
    };
    let thick = |y: &usize| (0..6).all(|more| across(&(y + more)));
    let begins = (0..page.high - 9).find(thick).expect("a thick line");
    let foot = (begins..page.high).take_while(across).last().expect("it ends");
    let column = (margin + 4.3 * MM) as usize;
    let runs = Marks(&page.turned()).runs(column);
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
