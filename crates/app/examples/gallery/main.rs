//! Renews `docs/gallery`: small files, written only where a page has changed. Sheets are printed by the
//! program itself; pictures of pages are those that the browser tests take.
//!
//! ```sh
//! BARM_PICTURES=/tmp/pages cargo test --workspace --test browser -- every_page_of
//! cargo build && cargo run --example gallery -- /tmp/pages
//! ```

#![allow(clippy::print_stdout)]

mod picture;
mod sheets;
mod shown;

use picture::Picture;
use sheets::{Printed, SHEETS};
use shown::{Shown, TITLE};
use std::error::Error;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

/// The whole gallery stays below this (bytes).
const MOST: u64 = 8_000_000;
/// A page in which fewer pixels differ has not changed: its clock has gone on (share).
const UNCHANGED: f64 = 0.003;

fn main() -> Result<(), Box<dyn Error>> {
    let from = std::env::args().nth(1).ok_or("name the folder with the pictures")?;
    let gallery = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/gallery");
    let mut index = format!("# {TITLE}\n\n{}\n", shown::SAYS);
    let mut whole = 0;
    let mut head = "";
    for one in shown::SHOWN {
        let file = PathBuf::from(&from).join(one.from).with_extension("png");
        let kept = gallery.join(one.name).with_extension("png");
        match Picture::read(&file) {
            Ok(new) => renew(&kept, &new.cut(one.most_high))?,
            Err(why) if kept.exists() => println!("left as it was: {} ({why})", one.name),
            Err(why) => return Err(format!("{}: {why}", file.display()).into()),
        }
        whole += std::fs::metadata(&kept)?.len();
        if one.head != head {
            head = one.head;
            write!(index, "\n## {head}\n")?;
        }
        let Shown { name, says, .. } = one;
        write!(index, "\n{says}\n\n![{says}]({name}.png)\n")?;
    }
    write!(index, "\n## On paper\n")?;
    let printed = Printed::now()?;
    for sheet in SHEETS {
        write!(index, "\n{}\n\n", sheet.says)?;
        for page in sheet.pages.0..=sheet.pages.1 {
            let name = format!("paper-{}-{}-{page}.png", sheet.file, sheet.run);
            let kept = gallery.join(&name);
            renew(&kept, &printed.page(sheet, page)?)?;
            whole += std::fs::metadata(&kept)?.len();
            let says = format!("{}, page {page}", sheet.says);
            writeln!(index, "<img src=\"{name}\" alt=\"{says}\" width=\"400\">")?;
        }
    }
    std::fs::write(gallery.join("README.md"), index)?;
    println!("{:.1} MB", whole as f64 / 1e6);
    if whole > MOST { Err("the gallery has grown too large".into()) } else { Ok(()) }
}

/// Writes a picture unless what is kept shows the same page.
fn renew(kept: &Path, new: &Picture) -> Result<(), Box<dyn Error>> {
    let changed = match Picture::read(kept) {
        Ok(old) => old.differs_from(&new.with_few_colours()),
        Err(_) => 1.0,
    };
    if changed > UNCHANGED {
        println!("renewed: {}", kept.display());
        new.write(kept)?;
    }
    Ok(())
}
