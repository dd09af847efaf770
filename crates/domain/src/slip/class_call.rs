//! The call that the whole class is low: dead yeast, or water too hot or too cold.

use super::Expected;
use crate::code::BagCode;
use crate::record::Bag;

/// No call before the median forecast of a bag has risen so far (mm): by then an empty bag and a
/// working one can be told apart with a ruler, which may be off by 1 mm at each of two readings
/// (own rule).
const JUDGED_FROM_MM: f64 = 3.0;

/// Share of the bags that must be low (1). One bag in ten lies under its band on an ordinary day;
/// a class has its own yeast and its own jug, so its bags go together (own rule).
const MOST: f64 = 0.75;

/// And so many bags at least, from two groups or more: fewer may be one group's mistake.
const FEWEST: usize = 4;

/// A bag of the period with what is expected of it.
#[derive(Debug, Clone, Copy)]
pub struct Followed<'a> {
    /// Its code.
    pub code: BagCode,
    /// The bag.
    pub bag: &'a Bag,
    /// Whether it is a shared control.
    pub control: bool,
    /// What is expected of its treatment, by minute.
    pub band: &'a [Expected],
}

/// The whole class is low. The words for it name yeast and water first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassCall {
    /// Minute of the latest reading that it rests on.
    pub minute: f64,
    /// Bags under their band, controls left out.
    pub low: usize,
    /// Bags that can be judged, controls left out.
    pub of: usize,
    /// Controls under their band.
    pub controls_low: usize,
    /// Controls that can be judged; 0 where no control is expected to rise, and then they do not
    /// speak for or against it.
    pub controls_of: usize,
}

/// The call, if most bags of the period are under their band, and the controls too.
///
/// A bag is judged by its last reading, once the median forecast for that minute has reached
/// 3 mm. Bags that are lost, vented or set aside are not judged.
#[must_use]
pub fn class_call(bags: &[Followed<'_>]) -> Option<ClassCall> {
    let mut call = ClassCall { minute: 0.0, low: 0, of: 0, controls_low: 0, controls_of: 0 };
    let mut groups = Vec::new();
    for followed in bags {
        let Some((minute, low)) = judge(followed) else { continue };
        call.minute = call.minute.max(minute);
        let (of, lows) = if followed.control {
            (&mut call.controls_of, &mut call.controls_low)
        } else {
            (&mut call.of, &mut call.low)
        };
        *of += 1;
        *lows += usize::from(low);
        if low && !followed.control && !groups.contains(&followed.code.group()) {
            groups.push(followed.code.group());
        }
    }
    let most = |low: usize, of: usize| low as f64 >= MOST * of as f64;
    let class = call.low >= FEWEST && groups.len() > 1 && most(call.low, call.of);
    (class && most(call.controls_low, call.controls_of)).then_some(call)
}

/// Minute of the last reading, and whether it is low. What the ruler leaves open is not taken off
/// each bag: it goes either way, and most bags must agree. With it, a band as wide as that of an
/// ordinary recipe would hide dead yeast until minute 12.
fn judge(followed: &Followed<'_>) -> Option<(f64, bool)> {
    let bag = followed.bag;
    let over = bag.lost.is_some() || bag.vented.is_some() || bag.set_aside.is_some();
    let zero = bag.zero.as_ref().filter(|zero| !zero.rival && !over)?;
    let last = bag.readings.iter().rfind(|reading| !reading.rival)?;
    let minute = bag.minute_at(last.measured)?;
    let expected = Expected::at(followed.band, minute)?;
    if expected.median_mm < JUDGED_FROM_MM {
        return None;
    }
    let rise = last.height_mm - zero.height_mm;
    Some((minute, rise < expected.low_mm))
}
