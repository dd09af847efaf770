//! A tilted card of which one end was read.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// How far an end of a tilted card stands from its middle (standard deviation, mm; own judgement:
/// a card of 127 mm leans by 2 to 5 degrees).
const TILT_MM: f64 = 4.0;

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let format: f64 = sound.format.iter().sum();
    for at in (0..sound.count()).filter(|at| !bag.heights[*at].sure) {
        let mut more = vec![0.0; sound.count()];
        more[at] = TILT_MM * TILT_MM;
        let log = format + sound.log_density(&sound.written, &more, &sound.all());
        weighed.add(What::Tilt { at }, rates.tilt, log);
    }
}
