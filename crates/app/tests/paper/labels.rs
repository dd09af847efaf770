//! Labels: each in its place on the sheet, each with the square code of its own bag.

use crate::picture::{Area, Picture, pixels, read_squares};
use crate::prints::{ADDRESS, Class, plan_of, print_of};
use crate::program::{run, skip};
use crate::tools::{name, say};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

/// A sheet of labels: common practice for size, number and gap, margins by centring them on the
/// paper. Inches for the first two as they are sold, turned into millimeters here.
#[derive(Clone, Copy)]
struct Sheet {
    columns: usize,
    rows: usize,
    /// Label, pitch and the corner of the first label, across and down (mm).
    label: (f64, f64),
    pitch: (f64, f64),
    corner: (f64, f64),
}

const fn inches(across: f64, down: f64) -> (f64, f64) {
    (across * 25.4, down * 25.4)
}

const THIRTY: Sheet = Sheet {
    columns: 3,
    rows: 10,
    label: inches(2.625, 1.0),
    pitch: inches(2.75, 1.0),
    corner: inches(0.1875, 0.5),
};
const TEN: Sheet = Sheet {
    columns: 2,
    rows: 5,
    label: inches(4.0, 2.0),
    pitch: inches(4.1875, 2.0),
    corner: inches(0.15625, 0.5),
};
const TWENTY_ONE: Sheet = Sheet {
    columns: 3,
    rows: 7,
    label: (63.5, 38.1),
    pitch: (66.04, 38.1),
    corner: (7.21, 15.15),
};

impl Sheet {
    const fn cells(&self) -> usize {
        self.columns * self.rows
    }

    /// The upper left corner of a cell (mm).
    fn corner_of(&self, cell: usize) -> (f64, f64) {
        let (column, row) = ((cell % self.columns) as f64, (cell / self.columns) as f64);
        (self.corner.0 + column * self.pitch.0, self.corner.1 + row * self.pitch.1)
    }

    /// A cell as pixels.
    fn area(&self, cell: usize) -> Area {
        let (x, y) = self.corner_of(cell);
        let at = |millimeters: f64| pixels(millimeters).round() as usize;
        Area {
            left: at(x),
            top: at(y),
            right: at(x + self.label.0),
            bottom: at(y + self.label.1),
        }
    }
}

/// Codes, in the order of the bag list of a plan, read from its text and by nothing of ours.
fn bag_list(class: Class) -> Vec<String> {
    let text = fs::read_to_string(plan_of(class)).expect("the plan");
    let plan: toml::Table = text.parse().expect("TOML");
    let bags = plan["bag_list"]["bags"].as_array().expect("a list");
    let code = |bag: &toml::Value| bag["code"].as_str().expect("a code").to_owned();
    bags.iter().map(code).collect()
}

/// Spare labels: the share that the plan asks for of one label for each bag and one for its card,
/// rounded up; half of them for cards, an odd one for a bag.
fn spare(class: Class, cards: bool) -> usize {
    let text = fs::read_to_string(plan_of(class)).expect("the plan");
    let plan: toml::Table = text.parse().expect("TOML");
    let share = plan.get("spare").map_or("10 %", |share| share.as_str().expect("a share"));
    let percent: usize = share.trim_end_matches(['%', ' ']).parse().expect("whole percent");
    let all = (2 * bag_list(class).len() * percent).div_ceil(100);
    if cards { all / 2 } else { all.div_ceil(2) }
}

/// A print of labels with what is known of it.
struct Printed {
    what: &'static str,
    pdf: PathBuf,
    sheet: Sheet,
    codes: Vec<String>,
    /// Labels to write on, behind those of the bags.
    spare: usize,
    /// Cells of the first sheet that were used before.
    used: usize,
    address: Option<&'static str>,
}

impl Printed {
    fn of(class: Class, language: &str, paper: &str, sheet: Sheet, file: &str) -> Self {
        let pdf = print_of(class, language, paper).file(file).expect("labels");
        let codes = bag_list(class);
        let spare = spare(class, file == "card-labels.pdf");
        Self { what: "shared", pdf, sheet, codes, spare, used: 0, address: Some(ADDRESS) }
    }

    /// Cells of a page, counted from 0, with the codes that belong there.
    fn page(&self, page: usize) -> Vec<Option<&str>> {
        let at = |cell: usize| (page * self.sheet.cells() + cell).checked_sub(self.used);
        let code = |cell: usize| Some(self.codes.get(at(cell)?)?.as_str());
        (0..self.sheet.cells()).map(code).collect()
    }

    /// Whether the cells of a page have a label, of a bag or to write on.
    fn used_on(&self, page: usize) -> Vec<bool> {
        let labels = self.used..self.used + self.codes.len() + self.spare;
        let cells = page * self.sheet.cells()..(page + 1) * self.sheet.cells();
        cells.map(|cell| labels.contains(&cell)).collect()
    }

    fn pages(&self) -> usize {
        (self.used + self.codes.len() + self.spare).div_ceil(self.sheet.cells())
    }

    /// Pages that are looked at; the quick suite takes the first and the last.
    fn looked_at(&self) -> Vec<usize> {
        let quick = std::env::var("BARM_TEST_SIZE").as_deref() == Ok("quick");
        let ends = |page: &usize| !quick || *page == 0 || page + 1 == self.pages();
        (0..self.pages()).filter(ends).collect()
    }
}

/// A sheet of ten that is used up to its third label, with plain codes, in Spanish.
static PART_USED: LazyLock<(tempfile::TempDir, PathBuf)> = LazyLock::new(|| {
    let home = tempfile::tempdir().expect("a folder");
    let plan = plan_of(Class::Demo);
    let mut arguments = vec!["print", name(&plan), "--what", "labels,test-print"];
    arguments.extend(["--labels", "10-up", "--start-cell", "4", "--out", "ten"]);
    arguments.extend(["--language", "es"]);
    run(home.path(), &arguments).ended(0);
    let folder = home.path().join("ten");
    (home, folder)
});

fn printed() -> Vec<Printed> {
    let ten = Printed {
        what: "ten, from the fourth",
        pdf: PART_USED.1.join("labels.pdf"),
        sheet: TEN,
        codes: bag_list(Class::Demo),
        spare: spare(Class::Demo, false),
        used: 3,
        address: None,
    };
    vec![
        Printed::of(Class::Demo, "en", "letter", THIRTY, "labels.pdf"),
        Printed::of(Class::Demo, "es", "a4", TWENTY_ONE, "card-labels.pdf"),
        Printed::of(Class::One, "en", "a4", TWENTY_ONE, "labels.pdf"),
        Printed::of(Class::Overfull, "es", "letter", THIRTY, "labels.pdf"),
        ten,
    ]
}

/// The cells of a page as pictures.
fn cells(page: &Picture, sheet: Sheet) -> Vec<Picture> {
    (0..sheet.cells()).map(|cell| page.cut(sheet.area(cell))).collect()
}

#[test]
fn every_label_has_the_square_code_of_its_bag_in_the_order_of_the_bag_list() {
    for print in printed() {
        for page in print.looked_at() {
            let Some(picture) = Picture::of_page(&print.pdf, page + 1) else {
                return skip("square codes of labels", "poppler is not installed");
            };
            let Some(read) = read_squares(&cells(&picture, print.sheet)) else {
                return skip("square codes of labels", "zbar is not installed");
            };
            for (cell, (found, code)) in read.iter().zip(print.page(page)).enumerate() {
                let whole = code.map(|code| match print.address {
                    Some(address) => format!("{address}/join?bag={code}"),
                    None => code.to_owned(),
                });
                let wanted: Vec<String> = whole.into_iter().collect();
                let place = format!("{}: page {page}, cell {cell}", print.pdf.display());
                assert_eq!(*found, wanted, "{place} ({})", print.what);
            }
        }
    }
}

/// Everything printed keeps 2 mm from the edges of its label: the strip of the sign fills the
/// height between and stands at the left. Measured at the ink, to half a millimeter.
#[test]
fn every_label_lies_in_the_middle_of_its_cell_and_keeps_off_its_edges() {
    const INSET: f64 = 2.0;
    const NEAR: f64 = 0.5;
    let millimeters = |pixels: usize| pixels as f64 / crate::picture::DPI * 25.4;
    for print in printed() {
        for page in print.looked_at() {
            let Some(picture) = Picture::of_page(&print.pdf, page + 1) else {
                return skip("places of labels", "poppler is not installed");
            };
            let wanted = print.used_on(page);
            for (cell, one) in cells(&picture, print.sheet).iter().enumerate() {
                let place = format!("{}: page {page}, cell {cell}", print.pdf.display());
                let ink = one.ink(250);
                assert_eq!(ink.is_some(), wanted[cell], "{place}");
                let Some(ink) = ink else { continue };
                let edges = [ink.left, ink.top, one.high - ink.bottom].map(millimeters);
                for edge in edges {
                    assert!((edge - INSET).abs() < NEAR, "{place}: {edges:?} mm");
                }
                let right = millimeters(one.wide - ink.right);
                assert!(right > INSET - NEAR, "{place}: {right} mm at the right");
            }
        }
    }
}

/// The middle of the longest stretch of the greatest number.
fn peak(counts: &[usize]) -> f64 {
    let most = *counts.iter().max().expect("some");
    let at: Vec<usize> = (0..counts.len()).filter(|at| counts[*at] == most).collect();
    at.iter().sum::<usize>() as f64 / at.len() as f64 + 0.5
}

fn test_prints() -> Vec<(PathBuf, Sheet)> {
    vec![
        (print_of(Class::Demo, "en", "letter").file("test-print.pdf").expect("it"), THIRTY),
        (print_of(Class::One, "en", "a4").file("test-print.pdf").expect("it"), TWENTY_ONE),
        (PART_USED.1.join("test-print.pdf"), TEN),
    ]
}

#[test]
fn every_cross_of_the_test_print_stands_in_the_middle_of_its_label() {
    for (pdf, sheet) in test_prints() {
        let Some(picture) = Picture::of_page(&pdf, 1) else {
            return skip("crosses of the test print", "poppler is not installed");
        };
        for cell in 0..sheet.cells() {
            let (x, y) = sheet.corner_of(cell);
            let middle = (x + sheet.label.0 / 2.0, y + sheet.label.1 / 2.0);
            // Two and a half millimeters each way: a cross that is further off is not found.
            let at = |millimeters: f64| pixels(millimeters).round() as usize;
            let area = Area {
                left: at(middle.0 - 2.5),
                top: at(middle.1 - 2.5),
                right: at(middle.0 + 2.5),
                bottom: at(middle.1 + 2.5),
            };
            let cross = picture.cut(area);
            let (columns, rows) = (cross.columns(), cross.rows());
            let whole = |counts: &[usize], all: usize| counts.contains(&all);
            assert!(
                whole(&columns, cross.high) && whole(&rows, cross.wide),
                "{}: no cross in cell {cell}",
                pdf.display()
            );
            let found = (area.left as f64 + peak(&columns), area.top as f64 + peak(&rows));
            for (found, wanted) in [(found.0, middle.0), (found.1, middle.1)] {
                let off = (found - pixels(wanted)).abs() / pixels(1.0);
                assert!(off < 0.5, "{}: cell {cell} is {off} mm off", pdf.display());
            }
        }
    }
}

/// Lengths of the stretches of dark pixels along a line of them.
fn stretches(dark: impl Iterator<Item = bool>) -> Vec<usize> {
    let mut all = vec![0];
    for dark in dark {
        match (dark, all.last_mut()) {
            (true, Some(last)) => *last += 1,
            (false, Some(0)) | (_, None) => {}
            (false, _) => all.push(0),
        }
    }
    all
}

#[test]
fn both_scales_of_the_test_print_are_100_mm_long() {
    for (pdf, sheet) in test_prints() {
        let Some(picture) = Picture::of_page(&pdf, 1) else {
            return skip("scales of the test print", "poppler is not installed");
        };
        let at = |millimeters: f64| pixels(millimeters).round() as usize;
        let bottom = sheet.corner.1 + sheet.rows as f64 * sheet.pitch.1;
        // Between the frames: the lowest labels for the level scale, the first column for the other.
        let level = (at(bottom - 11.0)..at(bottom - 1.0))
            .flat_map(|y| stretches((0..picture.wide).map(|x| picture.grey(x, y) < 128)));
        let right = sheet.corner.0 + sheet.label.0;
        let upright = (at(right - 16.0)..at(right - 1.0))
            .flat_map(|x| stretches((0..picture.high).map(|y| picture.grey(x, y) < 128)));
        for longest in [level.max(), upright.max()] {
            let long = longest.unwrap_or(0) as f64 / pixels(1.0);
            assert!((long - 100.0).abs() < 0.3, "{}: {long} mm", pdf.display());
        }
    }
}

/// Words of a page with their boxes in points, as pdftotext finds them.
fn words(pdf: &Path, page: usize) -> Option<Vec<(String, [f64; 4])>> {
    let page = (page + 1).to_string();
    let (_, said) = say("pdftotext", &["-bbox", "-f", &page, "-l", &page, name(pdf), "-"])?;
    let word = |line: &str| {
        let rest = line.trim().strip_prefix("<word ")?.strip_suffix("</word>")?;
        let (places, text) = rest.split_once('>')?;
        let mut numbers = places.split('"').skip(1).step_by(2).map(|n| n.parse().expect("it"));
        let places = [0; 4].map(|_: i32| numbers.next().expect("four places"));
        Some((text.to_owned(), places))
    };
    Some(said.lines().filter_map(word).collect())
}

#[test]
fn codes_stand_on_their_page_and_in_their_cell_in_the_order_of_the_bag_list() {
    for print in printed() {
        for page in 0..print.pages() {
            let Some(words) = words(&print.pdf, page) else {
                return skip("codes on labels", "poppler is not installed");
            };
            let place = format!("{}: page {page}", print.pdf.display());
            let number = (page + 1).to_string();
            let text = ["-raw", "-f", &number, "-l", &number, name(&print.pdf), "-"];
            let (_, read) = say("pdftotext", &text).expect("it was there a moment ago");
            let is_code = |word: &&str| print.codes.iter().any(|code| code == word);
            let found: Vec<&str> = read.split_whitespace().filter(is_code).collect();
            let wanted: Vec<&str> = print.page(page).into_iter().flatten().collect();
            assert_eq!(found, wanted, "{place}");
            for (cell, code) in print.page(page).into_iter().enumerate() {
                let (x, y) = print.sheet.corner_of(cell);
                let (right, bottom) = (x + print.sheet.label.0, y + print.sheet.label.1);
                let Some(code) = code else { continue };
                let inside = |at: &[f64; 4]| {
                    let [left, top, end, below] = at.map(|points| points / 72.0 * 25.4);
                    left > x && end < right && top > y - 1.0 && below < bottom + 1.0
                };
                let own = words.iter().filter(|(word, at)| word == code && inside(at)).count();
                assert_eq!(own, 1, "{place}, cell {cell}: {code}");
            }
        }
    }
}

/// The box of a word goes from the ascender to the descender of its face (0.984 and 0.273 em for the
/// sans, by its own tables); capitals and figures fill what lies between 26 and 78 parts of 100.
#[test]
fn no_words_of_a_label_lie_on_each_other() {
    for print in printed() {
        for page in print.looked_at() {
            let Some(words) = words(&print.pdf, page) else {
                return skip("words on labels", "poppler is not installed");
            };
            let letters = |[left, top, right, bottom]: [f64; 4]| {
                let high = bottom - top;
                [left, top + 0.26 * high, right, top + 0.78 * high]
            };
            for (place, (one, a)) in words.iter().enumerate() {
                for (other, b) in &words[place + 1..] {
                    let (a, b) = (letters(*a), letters(*b));
                    let across = a[2].min(b[2]) - a[0].max(b[0]);
                    let down = a[3].min(b[3]) - a[1].max(b[1]);
                    let clash = across > 0.2 && down > 0.2;
                    assert!(!clash, "{}: {one} on {other}", print.pdf.display());
                }
            }
        }
    }
}

/// What each bag of a plan holds, by its code, read from the plan's text.
fn treatments(class: Class) -> Vec<(String, String)> {
    let text = fs::read_to_string(plan_of(class)).expect("the plan");
    let plan: toml::Table = text.parse().expect("TOML");
    let bags = plan["bag_list"]["bags"].as_array().expect("a list");
    let word = |bag: &toml::Value, key: &str| bag[key].as_str().expect("words").to_owned();
    bags.iter().map(|bag| (word(bag, "code"), word(bag, "treatment"))).collect()
}

/// Words of a cell in their order on the page, without space.
fn words_in(words: &[(String, [f64; 4])], sheet: Sheet, cell: usize) -> String {
    let (x, y) = sheet.corner_of(cell);
    let inside = |at: &[f64; 4]| {
        let [left, top, right, bottom] = at.map(|points| points / 72.0 * 25.4);
        let (across, down) = (f64::midpoint(left, right), f64::midpoint(top, bottom));
        across > x && across < x + sheet.label.0 && down > y && down < y + sheet.label.1
    };
    let own = words.iter().filter(|(_, at)| inside(at)).map(|(word, _)| word.as_str());
    let plain =
        |word: &str| word.replace("&amp;", "&").replace("&lt;", "<").replace("&gt;", ">");
    own.map(plain).collect::<String>().replace(['\u{200B}', '\u{AD}'], "")
}

#[test]
fn every_label_of_a_bag_says_what_is_in_it() {
    let own = treatments(Class::Demo);
    let print = Printed::of(Class::Demo, "en", "letter", THIRTY, "labels.pdf");
    for page in 0..print.pages() {
        let Some(words) = words(&print.pdf, page) else {
            return skip("every_label_says_what_is_in_it", "poppler is not installed");
        };
        for (cell, code) in print.page(page).into_iter().enumerate() {
            let Some(code) = code else { continue };
            let (_, treatment) = own.iter().find(|(bag, _)| bag == code).expect("a bag");
            let wanted: String = treatment.split_whitespace().collect();
            let said = words_in(&words, THIRTY, cell);
            assert!(said.contains(&wanted), "{code}: {treatment} in {said}");
            // What is left is the sign, the code and what people say for the bag: no other treatment.
            let left = said.replacen(&wanted, "", 1).replacen(code, "", 1);
            let plain = left.chars().all(|letter| letter.is_ascii_alphanumeric());
            assert!(plain && left.len() <= "P6 8D Magpies".len(), "{code}: {left}");
        }
    }
}

#[test]
fn hostile_names_stand_on_labels_as_themselves() {
    let own = treatments(Class::Overfull);
    let print = Printed::of(Class::Overfull, "es", "letter", THIRTY, "labels.pdf");
    let hostile = crate::prints::HOSTILE;
    let mut seen = 0;
    for page in 0..print.pages() {
        let Some(words) = words(&print.pdf, page) else {
            return skip("hostile_names_stand_on_labels", "poppler is not installed");
        };
        for (cell, code) in print.page(page).into_iter().enumerate() {
            let Some(code) = code else { continue };
            let (_, treatment) = own.iter().find(|(bag, _)| bag == code).expect("a bag");
            if treatment.contains(hostile) {
                seen += 1;
                let said = words_in(&words, THIRTY, cell);
                assert!(said.contains(hostile), "{code}: {said}");
            }
        }
    }
    assert!(seen > 0, "the overfull plan has such bags");
}
