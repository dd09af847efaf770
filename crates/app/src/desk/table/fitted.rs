//! A curve through two columns of a table.

use super::{columns, figure, notes, verdict};
use crate::desk::DeskError;
use barm_documents::columns::Wanted;
use barm_science::fit::curve::{CurveFit, Shape, curve};
use barm_science::statistics::straight::straight;
use std::path::Path;

/// A curve through a table's points.
#[derive(Debug)]
pub(crate) struct Fitted {
    /// Heading of x.
    pub(crate) x: String,
    /// Heading of y.
    pub(crate) y: String,
    /// The curve.
    pub(crate) fit: CurveFit,
    /// What it says, in a few sentences.
    pub(crate) says: Vec<String>,
    /// How the table was read, where a person should know.
    pub(crate) notes: Vec<String>,
}

/// Lays a curve of this shape through two columns of a table.
pub(crate) fn fit_table(
    path: &Path,
    x: &str,
    y: &str,
    shape: Shape,
) -> Result<Fitted, DeskError> {
    let number = |heading| Wanted { heading, number: true };
    let table = columns(path, &[number(x), number(y)])?;
    let (xs, ys): (Vec<f64>, Vec<f64>) =
        table.rows.iter().map(|row| (row.numbers[0], row.numbers[1])).unzip();
    let failed = |why: barm_science::fit::curve::CurveError| DeskError::Table {
        path: path.to_owned(),
        why: why.into(),
    };
    let fit = curve(shape, &xs, &ys).map_err(failed)?;
    let mut says = verdict::fitted(&fit, xs.len());
    says.extend(along_the_straight_part(shape, &xs, &ys));
    Ok(Fitted {
        x: table.headings[0].clone(),
        y: table.headings[1].clone(),
        fit,
        says,
        notes: notes(&table),
    })
}

/// Rate and lag without a shape, beside the curves that have both.
fn along_the_straight_part(shape: Shape, x: &[f64], y: &[f64]) -> Option<String> {
    if !matches!(shape, Shape::Logistic | Shape::Gompertz | Shape::Richards) {
        return None;
    }
    // Several curves in one table have no straight part of their own.
    let mut places = x.to_vec();
    places.sort_by(f64::total_cmp);
    if places.windows(2).any(|pair| pair[0] >= pair[1]) {
        return None;
    }
    let part = straight(x, y, 0.0).ok().flatten()?;
    Some(format!(
        "Without a shape, by the line through its straight part (x from {} to {}): it rises by {} for \
         1 of x, and leaves 0 at x = {}.",
        figure(places[part.from]),
        figure(places[part.to]),
        figure(part.line.slope),
        figure(part.lag)
    ))
}
