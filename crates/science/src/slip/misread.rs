//! A height that is far off for no reason that is known here.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// A misread height is anywhere up to this many times the full height of the bag (1; own rule).
const UP_TO: f64 = 1.5;

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let still = vec![0.0; sound.count()];
    let format: f64 = sound.format.iter().sum();
    for at in (0..sound.count()).filter(|at| !bag.heights[*at].sure) {
        let kept: Vec<usize> = (0..sound.count()).filter(|other| *other != at).collect();
        let others = sound.log_density(&sound.written, &still, &kept);
        let log = others + format - libm::log(UP_TO * bag.full_mm.max(sound.written[at]));
        weighed.add(What::Misread { at }, rates.misread, log);
    }
}
