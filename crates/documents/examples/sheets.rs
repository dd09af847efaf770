//! Writes every sheet with invented values into a folder: `cargo run --example sheets -- FOLDER`.

use std::io::Write;
use std::path::PathBuf;
use std::time::Instant;

use barm_documents::page::Paper;
use barm_documents::sheet::{forecast_pdf, prep_pdf, results_pdf};

mod invented;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "sheets".to_owned()));
    std::fs::create_dir_all(&folder)?;
    for (paper, size) in [(Paper::Letter, "letter"), (Paper::A4, "a4")] {
        for class in [invented::full(), invented::empty(), invented::many()] {
            let sheets = [
                ("results", results_pdf(&class.results, paper)),
                ("prep", prep_pdf(&class.prep, paper)),
                ("forecast", forecast_pdf(&class.forecast, paper)),
            ];
            for (sheet, pdf) in sheets {
                let name = format!("{sheet}-{}-{size}.pdf", class.name);
                std::fs::write(folder.join(name), pdf?)?;
            }
        }
    }
    // What a second pair of sheets costs once the fonts are read.
    let class = invented::full();
    let started = Instant::now();
    results_pdf(&class.results, Paper::Letter)?;
    prep_pdf(&class.prep, Paper::Letter)?;
    let spent = started.elapsed().as_millis();
    writeln!(std::io::stdout(), "report and prep sheet, fonts read: {spent} ms")?;
    Ok(())
}
