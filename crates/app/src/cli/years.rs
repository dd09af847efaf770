//! `barm years`.

use super::failure::Failure;
use super::{FAULTY, page};
use crate::desk::shared::{OverYears, YearsFound, years, years_chart};
use crate::json;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Put the same question of several classes and years together
///
/// Reads data packages as `barm share` writes them. Bags that were made alike are compared at one
/// minute; classes may truly differ, and how much they do is told. Explained in
/// docs/science/years.md.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// Packages, or folders of packages
    #[arg(value_name = "PACKAGE", required = true)]
    packages: Vec<PathBuf>,
    /// Only differences with this word in them, such as honey
    #[arg(long, value_name = "WORD")]
    about: Option<String>,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let mut found = years(&arguments.packages)?;
    if let Some(word) = &arguments.about {
        let word = word.to_lowercase();
        let says = |one: &OverYears| {
            format!("{}\n{}", one.treatment_says(), one.reference_says()).to_lowercase()
        };
        found.years.differences.retain(|one| says(one).contains(&word));
    }
    let code =
        if found.not_read.is_empty() { ExitCode::SUCCESS } else { ExitCode::from(FAULTY) };
    if arguments.json {
        json::write(out, &json::over_years(&found))?;
        return Ok(code);
    }
    page::title(out, "The same question, class by class")?;
    classes(out, &found)?;
    let (several, one): (Vec<&OverYears>, Vec<&OverYears>) =
        found.years.differences.iter().partition(|one| one.classes.len() > 1);
    for difference in &several {
        let (treatment, reference) = (difference.treatment_says(), difference.reference_says());
        let minute = difference.minute;
        page::part(out, &format!("{treatment}, beside {reference}; mm at minute {minute}"))?;
        page::chart(out, &years_chart(page::terminal(), &found.classes, difference))?;
        for says in difference.says() {
            page::paragraph(out, 2, &says)?;
        }
    }
    if several.is_empty() {
        writeln!(out)?;
        let says = "No two of these classes compared bags that were made alike, so that there is \
                    nothing to put together.";
        page::paragraph(out, 0, says)?;
    }
    if !one.is_empty() {
        page::part(out, "Asked by one class only")?;
        for difference in one {
            let name = difference.classes.first().and_then(|of| found.classes.get(of.class));
            let says = format!(
                "{}, beside {}: {}",
                difference.treatment_says(),
                difference.reference_says(),
                name.map_or("", |class| class.name.as_str())
            );
            page::paragraph(out, 4, &says)?;
        }
    }
    Ok(code)
}

/// The classes, what was not read, and what does not count.
fn classes(out: &mut impl Write, found: &YearsFound) -> Result<(), Failure> {
    let rows = found.classes.iter().map(|class| {
        let rows = class.shared.rows();
        let made_up = if class.investigation.plan.invented { "invented" } else { "" };
        vec![
            class.name.clone(),
            rows.bags.len().to_string(),
            rows.readings.len().to_string(),
            made_up.to_owned(),
        ]
    });
    page::rows(out, &["", "bags", "heights", ""], &[1, 2], rows.collect::<Vec<_>>())?;
    for class in &found.classes {
        for one in &class.investigation.left_out {
            let says =
                format!("{}: {} is left out; it {}.", class.name, one.treatment, one.why);
            page::paragraph(out, 4, &says)?;
        }
    }
    for one in &found.years.passed_over {
        page::paragraph(out, 4, &one.says(&found.classes))?;
    }
    // The reason names the package.
    for (_, why) in &found.not_read {
        page::paragraph(out, 4, &format!("Not read: {why}"))?;
    }
    Ok(())
}
