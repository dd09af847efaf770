//! Pages as pictures: what a printer would put on paper, pixel by pixel.

use std::fmt::Write as _;
use std::path::Path;
use std::process::Command;

/// Dots of an inch in every picture here; a millimeter has 11.8 of them.
pub(crate) const DPI: f64 = 300.0;

/// Millimeters as pixels.
pub(crate) fn pixels(millimeters: f64) -> f64 {
    millimeters / 25.4 * DPI
}

/// A picture in shades of grey, 0 black and 255 white.
pub(crate) struct Picture {
    pub(crate) wide: usize,
    pub(crate) high: usize,
    grey: Vec<u8>,
}

/// A rectangle of pixels: left, top, right and bottom, the last two outside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Area {
    pub(crate) left: usize,
    pub(crate) top: usize,
    pub(crate) right: usize,
    pub(crate) bottom: usize,
}

impl Picture {
    /// A page of a PDF, counted from 1, as poppler renders it; none if poppler is not installed.
    pub(crate) fn of_page(pdf: &Path, page: usize) -> Option<Self> {
        let page = page.to_string();
        let dots = DPI.to_string();
        let output = Command::new("pdftoppm")
            .args(["-gray", "-r", &dots, "-f", &page, "-l", &page])
            .arg(pdf)
            .output()
            .ok()?;
        assert!(output.status.success(), "{}: page {page}", pdf.display());
        Some(Self::read(&output.stdout))
    }

    /// Reads a binary portable graymap: `P5`, width, height, the greatest value, then a byte a
    /// pixel (netpbm's `pgm(5)`).
    fn read(bytes: &[u8]) -> Self {
        let mut at = 0;
        let mut word = || {
            let start = at + bytes[at..].iter().take_while(|b| b.is_ascii_whitespace()).count();
            let long = bytes[start..].iter().take_while(|b| !b.is_ascii_whitespace()).count();
            at = start + long;
            String::from_utf8_lossy(&bytes[start..at]).into_owned()
        };
        let head = [word(), word(), word(), word()];
        assert_eq!((head[0].as_str(), head[3].as_str()), ("P5", "255"));
        let [wide, high] = [1, 2].map(|place| head[place].parse().expect("a number"));
        let grey = bytes[at + 1..].to_vec();
        assert_eq!(grey.len(), wide * high);
        Self { wide, high, grey }
    }

    /// The grey of a pixel.
    pub(crate) fn grey(&self, x: usize, y: usize) -> u8 {
        self.grey[y * self.wide + x]
    }

    /// A piece of it.
    pub(crate) fn cut(&self, area: Area) -> Self {
        let rows = (area.top..area.bottom).map(|y| y * self.wide);
        let grey = rows.flat_map(|row| &self.grey[row + area.left..row + area.right]);
        let (wide, high) = (area.right - area.left, area.bottom - area.top);
        Self { wide, high, grey: grey.copied().collect() }
    }

    /// The same on its side, so that columns can be read as rows.
    pub(crate) fn turned(&self) -> Self {
        let places = (0..self.wide).flat_map(|x| (0..self.high).map(move |y| (x, y)));
        let grey = places.map(|(x, y)| self.grey(x, y)).collect();
        Self { wide: self.high, high: self.wide, grey }
    }

    /// The smallest rectangle around all pixels darker than `below`; none if there is none.
    pub(crate) fn ink(&self, below: u8) -> Option<Area> {
        let mut found: Option<Area> = None;
        for y in 0..self.high {
            for x in (0..self.wide).filter(|x| self.grey(*x, y) < below) {
                let area =
                    found.get_or_insert(Area { left: x, top: y, right: x + 1, bottom: y + 1 });
                area.left = area.left.min(x);
                area.right = area.right.max(x + 1);
                area.bottom = y + 1;
            }
        }
        found
    }

    /// How many pixels of each column are darker than 128.
    pub(crate) fn columns(&self) -> Vec<usize> {
        let dark = |x: &usize| (0..self.high).filter(|y| self.grey(*x, *y) < 128).count();
        (0..self.wide).map(|x| dark(&x)).collect()
    }

    /// How many pixels of each row are darker than 128.
    pub(crate) fn rows(&self) -> Vec<usize> {
        let dark = |y: &usize| (0..self.wide).filter(|x| self.grey(*x, *y) < 128).count();
        (0..self.high).map(|y| dark(&y)).collect()
    }

    /// As a file that other programs read.
    fn written(&self) -> Vec<u8> {
        let mut bytes = format!("P5\n{} {}\n255\n", self.wide, self.high).into_bytes();
        bytes.extend(&self.grey);
        bytes
    }
}

/// What zbar reads in each of these pictures; none if it is not installed.
pub(crate) fn read_squares(pictures: &[Picture]) -> Option<Vec<Vec<String>>> {
    let folder = tempfile::tempdir().expect("a folder");
    let mut names = Vec::new();
    for (place, picture) in pictures.iter().enumerate() {
        let mut name = String::new();
        write!(name, "{place:04}.pgm").expect("text grows");
        let path = folder.path().join(name);
        std::fs::write(&path, picture.written()).expect("written");
        names.push(path);
    }
    let output = Command::new("zbarimg")
        .args(["--nodbus", "--quiet", "--xml", "-Sdisable", "-Sqrcode.enable"])
        .args(&names)
        .output()
        .ok()?;
    // One answer a file that holds a code: its name, then what its codes say.
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut read = vec![Vec::new(); pictures.len()];
    for source in said.split("<source href='").skip(1) {
        let name = source.split('\'').next().unwrap_or_default();
        let place = names.iter().position(|path| path.to_string_lossy() == name);
        let codes = source.split("<![CDATA[").skip(1);
        let codes = codes.map(|code| code.split("]]>").next().unwrap_or_default().to_owned());
        read[place.expect("one of ours")].extend(codes);
    }
    Some(read)
}
