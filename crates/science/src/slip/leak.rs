//! A seal that lets gas out: steadily, at once, or the faster the fuller the bag is.

use super::sound::Sound;
use super::weighed::Weighed;
use super::{Followed, Rates, What};

/// How fast a card may sink where the seal leaks steadily (mm/min; own judgement).
const STEADY_MM_MIN: [f64; 9] = [0.12, 0.2, 0.32, 0.5, 0.8, 1.2, 1.8, 2.8, 4.5];

/// How much may get out at once (mm; own judgement).
const AT_ONCE_MM: [f64; 8] = [2.0, 3.0, 4.5, 6.5, 9.0, 13.0, 19.0, 28.0];

/// What share of the rise may get out in a minute (1/min; own judgement).
const SHARE_MIN: [f64; 6] = [0.02, 0.04, 0.08, 0.15, 0.3, 0.6];

/// Kinds of leaks, each as likely as another (own judgement).
const KINDS: f64 = 3.0;

/// A bag that leaked stands no lower than this under its zero reading (mm): its trapped air got
/// out too.
const BELOW_ZERO_MM: f64 = 1.0;

/// A leak begins at any minute of a run alike, and a run is read for so long at least (min; own
/// judgement): early in it, most leaks have yet to begin.
const RUN_MIN: f64 = 24.0;

pub(super) fn weigh(bag: &Followed, sound: &Sound, rates: &Rates, weighed: &mut Weighed) {
    let count = sound.count();
    let any = bag.heights.iter().map(|height| height.minute).fold(0.0, f64::max);
    if any <= 0.0 {
        return;
    }
    for after in 0..count - 1 {
        let (from, to) = (sound.minutes[after], sound.minutes[after + 1]);
        // It begins at any minute alike; a bag that is read longer has had more time for it.
        let of_kind = rates.leak * ((to - from) / any.max(RUN_MIN)) / KINDS;
        let mut add = |rises: &[f64], versions: usize| {
            let prior = of_kind / versions as f64;
            weighed.add(What::Leak { after }, prior, sound.log_with_rises(rises));
        };
        for rate in STEADY_MM_MIN {
            for begins in [from, 0.5 * (from + to)] {
                let lost = |minute: f64, _| rate * (minute - begins).max(0.0);
                add(&left(sound, lost), 2 * STEADY_MM_MIN.len());
            }
        }
        for mm in AT_ONCE_MM {
            let lost = |minute, _| if minute >= to { mm } else { 0.0 };
            add(&left(sound, lost), AT_ONCE_MM.len());
        }
        for share in SHARE_MIN {
            for open in [1.0, 0.5] {
                add(&drained(sound, after, (share, open)), 2 * SHARE_MIN.len());
            }
        }
    }
}

/// Rises that are left when so much is lost by a minute, with a floor.
fn left(sound: &Sound, lost: impl Fn(f64, f64) -> f64) -> Vec<f64> {
    let places = sound.minutes.iter().zip(&sound.rise);
    places.map(|(minute, rise)| (rise - lost(*minute, *rise)).max(-BELOW_ZERO_MM)).collect()
}

/// Rises of a bag that loses a share of its rise in every minute, over the last part of the interval after a height
/// and from there on: r' = R' − s r, interval by interval with R' as a straight line.
fn drained(sound: &Sound, after: usize, (share, open): (f64, f64)) -> Vec<f64> {
    let mut rises = sound.rise.clone();
    for at in after + 1..rises.len() {
        let span = sound.minutes[at] - sound.minutes[at - 1];
        let leaks = if at == after + 1 { open * span } else { span };
        let gain = sound.rise[at] - sound.rise[at - 1];
        let before = rises[at - 1] + gain * (span - leaks) / span.max(1e-9);
        let kept = libm::exp(-share * leaks);
        let grown = gain * (leaks / span.max(1e-9)) * (1.0 - kept) / (share * leaks).max(1e-9);
        rises[at] = before * kept + grown;
    }
    rises
}
