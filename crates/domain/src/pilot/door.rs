//! The one place where a pilot meets the fit of a day.

use super::numbers::of;
use barm_science::fit::day::{BagSeen, DayError, DayFit, fit_day};
use barm_science::prior::{Key, Learned, Prior, Transform};
use barm_science::setup::Setup;

/// What is believed of a day once these numbers are known of it.
pub(super) fn prior(numbers: &Learned) -> Prior {
    let table = Prior::default();
    // What comes from a file was checked when it was read.
    table.knowing(numbers).unwrap_or(table)
}

/// What bags teach besides.
pub(super) fn fit(bags: &[BagSeen], before: &Learned) -> Result<(Learned, DayFit), DayError> {
    let known: Vec<BagSeen> = bags
        .iter()
        .map(|bag| BagSeen { setup: setup(&bag.setup, before), ..bag.clone() })
        .collect();
    let mut table = Prior::default();
    for row in table.rows.iter_mut().filter(|row| row.transform != Transform::Distance) {
        // All bags of a pilot are of one size and one yeast.
        let key = bags.first().and_then(|bag| row.key(&bag.setup));
        let (mean, sd) = key.map_or((0.0, 1.0), |key| of(before, &key.to_string()));
        let value = (row.place)(&mut table.center);
        *value = row.transform.moved(*value, row.spread.day, mean);
        row.spread.day *= sd;
    }
    let mut fit = fit_day(&known, &table)?;
    let found = &mut fit.learned;
    let each: Vec<(f64, f64)> = found.names.iter().map(|name| of(before, name)).collect();
    for (i, (mean, sd)) in each.iter().enumerate() {
        found.means[i] = mean + sd * found.means[i];
        for (j, other) in each.iter().enumerate() {
            found.covariance[i][j] *= sd * other.1;
        }
    }
    Ok((before.with(&fit.learned), fit))
}

/// A bag with what is known of its enzymes.
fn setup(setup: &Setup, numbers: &Learned) -> Setup {
    let mut setup = setup.clone();
    for enzyme in &mut setup.enzymes {
        let (mean, sd) = of(numbers, &Key::activity(enzyme.kind).to_string());
        enzyme.units *= libm::exp(enzyme.activity_sd * mean);
        enzyme.activity_sd *= sd;
    }
    setup
}
