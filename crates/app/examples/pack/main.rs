//! Packs the program with its start sheet and all licences; `packaging/pack` calls it.

#![allow(clippy::print_stdout, clippy::print_stderr)]

mod archive;
mod licences;
mod sheet;

use archive::Packing;
use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> ExitCode {
    match run() {
        Ok(said) => {
            println!("{said}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("pack: {why}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<String, String> {
    let root = archive::root();
    let mut packing = Packing {
        binary: root.join("target/release/barm"),
        out: root.join("target/packages"),
        target: archive::host()?,
        effort: 9,
    };
    let mut zip = false;
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        let mut value = || words.next().ok_or(format!("{word} needs a value"));
        match word.as_str() {
            "--binary" => packing.binary = PathBuf::from(value()?),
            "--out" => packing.out = PathBuf::from(value()?),
            "--target" => packing.target = value()?,
            "--zip" => zip = true,
            other => return Err(format!("{other} is not known; see packaging/README.md")),
        }
    }
    let folder = packing.gather()?;
    let mut said = format!("packed {}", packing.archive(&folder, false)?.display());
    if zip {
        said.push_str(&format!(" and {}", packing.archive(&folder, true)?.display()));
    }
    std::fs::remove_dir_all(&folder)
        .map_err(|error| format!("{}: {error}", folder.display()))?;
    Ok(said)
}
