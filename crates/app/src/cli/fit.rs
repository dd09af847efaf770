//! `barm fit`.

use super::failure::Failure;
use super::{FAULTY, page};
use crate::desk::{self, Parameter, figure};
use crate::json;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

/// Lay a curve through two columns of any table
///
/// DATA is a CSV file with headings, one row a point. Starts are found by themselves; parameters come with
/// their standard errors and 95 % intervals.
#[derive(clap::Args, Debug)]
pub(super) struct Arguments {
    /// The table
    #[arg(value_name = "DATA")]
    data: PathBuf,
    /// Heading of x, such as minutes
    #[arg(long, value_name = "COL")]
    x: String,
    /// Heading of y, such as the rise
    #[arg(long, value_name = "COL")]
    y: String,
    /// Shape of the curve
    #[arg(long, value_enum)]
    shape: Shape,
    /// Answer in JSON (shape in docs/json.md)
    #[arg(long)]
    json: bool,
}

/// Shapes, as written on the command line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Shape {
    /// b0 + b1 x
    Line,
    /// b1 (1 − exp(−b2 x)): ever slower, up to b1
    Saturating,
    /// Vm x/(K + x): rate of an enzyme over its food
    MichaelisMenten,
    /// b1/(1 + exp(b2 − b3 x)): an even S up to b1
    Logistic,
    /// A exp(−exp(mu e/A (lambda − x) + 1)): an S with rate mu, lag lambda
    Gompertz,
    /// b1/(1 + exp(b2 − b3 x))^(1/b4): an S that turns where b4 says
    Richards,
}

impl From<Shape> for desk::Shape {
    fn from(shape: Shape) -> Self {
        match shape {
            Shape::Line => Self::Line,
            Shape::Saturating => Self::Saturating,
            Shape::MichaelisMenten => Self::MichaelisMenten,
            Shape::Logistic => Self::Logistic,
            Shape::Gompertz => Self::Gompertz,
            Shape::Richards => Self::Richards,
        }
    }
}

pub(super) fn run(arguments: &Arguments, out: &mut impl Write) -> Result<ExitCode, Failure> {
    let Arguments { data, x, y, shape, json } = arguments;
    let fitted = desk::fit_table(data, x, y, (*shape).into())?;
    let fit = &fitted.fit;
    let ended = if fit.converged { ExitCode::SUCCESS } else { ExitCode::from(FAULTY) };
    if *json {
        page::aside(&fitted.notes)?;
        json::write(out, &json::fitted(fit))?;
        return Ok(ended);
    }
    page::title(out, &format!("{} over {}: {}", fitted.y, fitted.x, fit.shape.word()))?;
    writeln!(out, "{}", fit.shape.formula())?;
    writeln!(out)?;
    for says in &fitted.says {
        page::paragraph(out, 0, says)?;
    }
    writeln!(out)?;
    let row = |parameter: &Parameter| {
        let doubt = match parameter.doubt {
            Some(doubt) => [doubt.se, doubt.low, doubt.high].map(figure),
            None => ["–", "–", "–"].map(str::to_owned),
        };
        [vec![parameter.name.to_owned(), figure(parameter.value)], doubt.to_vec()].concat()
    };
    let rows: Vec<Vec<String>> = fit.parameters.iter().map(row).collect();
    page::rows(out, &["", "value", "se", "from", "to"], &[1, 2, 3, 4], rows)?;
    writeln!(out)?;
    writeln!(
        out,
        "Left over: sum of squares {}, {} degrees of freedom",
        figure(fit.rss),
        fit.df
    )?;
    for note in &fitted.notes {
        page::paragraph(out, 2, note)?;
    }
    Ok(ended)
}
