//! The one place where a pilot, or a class, meets the fit of a day.

use barm_science::fit::day::{BagSeen, DayError, DayFit, fit_day};
use barm_science::prior::{Learned, Prior};

/// What is believed of a day once these numbers are known of it.
pub(super) fn prior(numbers: &Learned) -> Prior {
    let table = Prior::default();
    // What comes from a file was checked when it was read.
    table.knowing(numbers).unwrap_or(table)
}

/// What bags teach besides.
pub(crate) fn fit(bags: &[BagSeen], before: &Learned) -> Result<(Learned, DayFit), DayError> {
    let fit = fit_day(bags, &prior(before))?;
    Ok((before.with(&fit.learned), fit))
}
