//! The call that the whole class is low: dead yeast, or water too hot or too cold.

use super::likely::weighable;
use super::{Expected, Followed};
use barm_science::slip::{Rates, class_low};

/// No call before the median forecast of a bag has risen so far (mm): by then an empty bag and a
/// working one can be told apart with a ruler, which may be off by 1 mm at each of two readings
/// (own rule).
const JUDGED_FROM_MM: f64 = 3.0;

/// Share of the bags that must be low (1): a bag that does as expected means that yeast and water
/// are right, and some may have slipped (own rule).
const MOST: f64 = 0.7;

/// And of the controls, of which there are few.
const MOST_CONTROLS: f64 = 0.5;

/// The call is made from this probability on that yeast or water is wrong (1; own rule): a period
/// that is lost costs more than a look at the jug.
const CALLED_FROM: f64 = 0.25;

/// So many low bags at least, from two groups or more: fewer may be one group's mistake.
const FEWEST: usize = 4;

/// The whole class is low. The words for it name yeast and water first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassCall {
    /// Minute of the latest reading that it rests on.
    pub minute: f64,
    /// Bags under their band or under half of their median, controls left out.
    pub low: usize,
    /// Bags that can be judged, controls left out.
    pub of: usize,
    /// Controls under their band.
    pub controls_low: usize,
    /// Controls that can be judged; 0 where no control is expected to rise, and then they do not
    /// speak for or against it.
    pub controls_of: usize,
    /// Probability that yeast or water is wrong for all of them (1).
    pub probability: f64,
}

/// The call, if the bags of the period together say that yeast or water is wrong, and the controls
/// do not speak against it.
///
/// A bag speaks with all of its readings once the median forecast for the minute of its last one
/// has reached 3 mm. Bags that are lost, vented or set aside do not.
#[must_use]
pub fn class_call(bags: &[Followed<'_>]) -> Option<ClassCall> {
    let mut call = ClassCall {
        minute: 0.0,
        low: 0,
        of: 0,
        controls_low: 0,
        controls_of: 0,
        probability: 0.0,
    };
    let (mut groups, mut judged) = (Vec::new(), Vec::new());
    for followed in bags {
        let Some((minute, low)) = judge(followed) else { continue };
        judged.push(*followed);
        call.minute = call.minute.max(minute);
        let (of, lows) = if followed.control {
            (&mut call.controls_of, &mut call.controls_low)
        } else {
            (&mut call.of, &mut call.low)
        };
        *of += 1;
        *lows += usize::from(low);
        let group = followed.own.code.group();
        if low && !followed.control && !groups.contains(&group) {
            groups.push(group);
        }
    }
    let all = call.low as f64 >= MOST * call.of as f64
        && call.controls_low as f64 >= MOST_CONTROLS * call.controls_of as f64;
    if call.low < FEWEST || groups.len() < 2 || !all {
        return None;
    }
    call.probability = class_low(&weighable(&judged), &Rates::default()).probability;
    (call.probability >= CALLED_FROM).then_some(call)
}

/// A bag is counted as low under this share of its median (1), or under its band where that is
/// narrower (own rule).
const LOW_SHARE: f64 = 0.5;

/// Minute of the last reading, and whether it is low. What the ruler leaves open is not taken off
/// each bag: it goes either way, and the bags are judged together.
fn judge(followed: &Followed<'_>) -> Option<(f64, bool)> {
    let bag = followed.own.bag;
    let over = bag.lost.is_some() || bag.vented.is_some() || bag.set_aside.is_some();
    let zero = bag.zero.as_ref().filter(|zero| !zero.rival && !over)?;
    let last = bag.readings.iter().rfind(|reading| !reading.rival)?;
    let minute = bag.minute_at(last.measured)?;
    let expected = Expected::at(followed.band, minute)?;
    if expected.median_mm < JUDGED_FROM_MM {
        return None;
    }
    let rise = last.height_mm - zero.height_mm;
    Some((minute, rise < expected.low_mm.max(LOW_SHARE * expected.median_mm)))
}
