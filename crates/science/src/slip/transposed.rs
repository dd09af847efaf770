//! Two digits that changed places.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let still = vec![0.0; sound.count()];
    for at in 0..sound.count() {
        let Some(meant) = swapped(sound.written[at]).filter(|_| !bag.heights[at].sure) else {
            continue;
        };
        let mut heights = sound.written.clone();
        heights[at] = meant;
        let format: f64 = sound.format.iter().sum();
        let log = format + sound.log_density(&heights, &still, &sound.all());
        weighed.add(What::Transposed { at }, rates.transposed, log);
    }
}

/// A height of two unlike digits, neither of them 0, with the digits swapped (mm).
pub(super) fn swapped(mm: f64) -> Option<f64> {
    let (tens, ones) = ((mm / 10.0).floor(), mm % 10.0);
    let whole = (mm - mm.round()).abs() < 1e-6;
    let fits = (1.0..10.0).contains(&tens) && ones >= 1.0 && (tens - ones).abs() >= 0.5;
    (whole && fits).then_some(10.0 * ones + tens)
}
