//! Heights that all end in 0 or 5.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What, scale};

/// So many unlike heights it takes: a bag that stands still agrees with itself (own rule).
const UNLIKE: usize = 3;

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let fives = |mm: f64| ((mm / 5.0) - (mm / 5.0).round()).abs() < 1e-6;
    let mut unlike = sound.written.clone();
    unlike.sort_by(f64::total_cmp);
    unlike.dedup();
    let known = bag.heights.iter().all(|height| fives(height.mm));
    if !known || unlike.len() < UNLIKE {
        return;
    }
    // Rounding to 5 mm in place of 1 mm; a number stands for five of them.
    let more = vec![(25.0 - 1.0) / 12.0; sound.count()];
    let wide = (scale::reading_variance() + 2.0) * 2.0 * core::f64::consts::PI;
    let most = -0.5 * libm::log(wide) + libm::log(5.0);
    let each = libm::log(5.0) - most.max(0.0);
    let log =
        each * sound.count() as f64 + sound.log_density(&sound.written, &more, &sound.all());
    weighed.add(What::Fives, rates.fives, log);
}
