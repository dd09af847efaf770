//! The sheets that hang in the gallery: printed by the program itself, a picture a page.

use crate::picture::Picture;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Dots of an inch of a picture; enough to read the words.
const DPI: &str = "64";

/// Pages of one printed file.
pub(crate) struct Sheet {
    /// The run that prints it; see [`RUNS`].
    pub(crate) run: &'static str,
    /// The file without its ending.
    pub(crate) file: &'static str,
    /// First and last page that are shown.
    pub(crate) pages: (u32, u32),
    /// What one sees.
    pub(crate) says: &'static str,
}

const fn sheet(
    run: &'static str,
    file: &'static str,
    pages: (u32, u32),
    says: &'static str,
) -> Sheet {
    Sheet { run, file, pages, says }
}

/// How the invented plan is printed: the name of a run, and what is asked for beyond the plan.
const RUNS: &[(&str, &[&str])] = &[
    ("day", &["--readings", "readings.csv", "--address", "https://barm.example"]),
    ("confirmation", &["--what", "bench-cards,planning", "--level", "confirmation"]),
    ("structured", &["--what", "bench-cards,planning", "--level", "structured"]),
    ("guided", &["--what", "bench-cards,planning", "--level", "guided"]),
    ("open", &["--what", "bench-cards,planning", "--level", "open"]),
    ("large", &["--what", "bench-cards,data-sheets", "--large", "--level", "structured"]),
    ("es", &["--what", "bench-cards,data-sheets,planning", "--language", "es"]),
    ("a4", &["--what", "labels", "--paper", "a4"]),
    ("ten", &["--what", "labels", "--labels", "10-up"]),
];

/// All of it, in the order in which a teacher needs it.
pub(crate) const SHEETS: &[Sheet] = &[
    sheet("day", "packet", (1, 16), "The teacher’s packet"),
    sheet("day", "substitute", (1, 2), "The pack for a substitute, with the safer variant"),
    sheet("day", "labels", (1, 1), "Labels for bags, 30 to a sheet"),
    sheet("a4", "labels", (1, 1), "Labels for bags on A4, 21 to a sheet"),
    sheet("ten", "labels", (1, 1), "Labels for bags, 10 to a sheet"),
    sheet("day", "card-labels", (1, 1), "Labels for cards"),
    sheet("day", "test-print", (1, 1), "The test print for labels"),
    sheet("confirmation", "bench-cards", (2, 2), "A bench card where all is given"),
    sheet("structured", "bench-cards", (2, 2), "A bench card where the steps are given"),
    sheet("guided", "bench-cards", (2, 2), "A bench card where the question is given"),
    sheet("open", "bench-cards", (2, 2), "A bench card where groups plan themselves"),
    sheet("es", "bench-cards", (2, 2), "A bench card in Spanish"),
    sheet("large", "bench-cards", (3, 4), "A bench card in large print"),
    sheet("confirmation", "planning", (1, 1), "The planning sheet where all is given"),
    sheet("structured", "planning", (1, 1), "The planning sheet where the steps are given"),
    sheet("guided", "planning", (1, 1), "The planning sheet where the question is given"),
    sheet("open", "planning", (1, 1), "The planning sheet where groups plan themselves"),
    sheet("es", "planning", (1, 1), "The planning sheet in Spanish"),
    sheet("day", "data-sheets", (2, 2), "A data sheet"),
    sheet("es", "data-sheets", (2, 2), "A data sheet in Spanish"),
    sheet("large", "data-sheets", (2, 2), "A data sheet in large print"),
    sheet("day", "tally", (1, 1), "The tally of a class for the wall"),
    sheet("day", "graph-paper", (1, 1), "Graph paper scaled to the plan"),
    sheet("day", "gauge", (1, 2), "Height gauges to cut out and fold"),
    sheet("day", "join", (1, 1), "The join sheet of the day"),
    sheet("day", "prep", (1, 7), "The prep sheet"),
    sheet("day", "forecast", (1, 1), "The forecast, for the teacher only"),
    sheet("day", "results", (1, 5), "The results report"),
    sheet("day", "summary", (1, 1), "One page for families and the principal"),
    sheet("day", "slides", (1, 5), "Slides for the discussion"),
];

/// The printed files, in a folder that goes with them.
pub(crate) struct Printed {
    folder: tempfile::TempDir,
}

impl Printed {
    /// Prints the invented plan with the program that lies beside the examples.
    pub(crate) fn now() -> Result<Self, Box<dyn Error>> {
        let own = std::env::current_exe()?;
        let built = own.ancestors().nth(2).ok_or("no folder of built programs")?;
        let program = built.join(format!("barm{}", std::env::consts::EXE_SUFFIX));
        let folder = tempfile::tempdir()?;
        let invented = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/demo");
        for (run, more) in RUNS {
            let out = folder.path().join(run);
            let ended = Command::new(&program)
                .current_dir(&invented)
                .args(["print", "plan.toml", "--out"])
                .arg(&out)
                .args(*more)
                .output()
                .map_err(|why| format!("{}: {why}; build it first", program.display()))?;
            if !ended.status.success() {
                return Err(String::from_utf8_lossy(&ended.stderr).into_owned().into());
            }
        }
        Ok(Self { folder })
    }

    /// The picture of a page, as poppler renders it.
    pub(crate) fn page(&self, sheet: &Sheet, page: u32) -> Result<Picture, Box<dyn Error>> {
        let pdf = self.folder.path().join(sheet.run).join(sheet.file).with_extension("pdf");
        let picture: PathBuf = self.folder.path().join("page");
        let page = page.to_string();
        let ended = Command::new("pdftoppm")
            .args(["-r", DPI, "-png", "-singlefile", "-f", &page, "-l", &page])
            .args([&pdf, &picture])
            .status()?;
        if !ended.success() {
            return Err(format!("{}: no page {page}", pdf.display()).into());
        }
        Picture::read(&picture.with_extension("png"))
    }
}
