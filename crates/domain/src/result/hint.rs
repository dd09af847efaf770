//! What is worth a second look at a bag; nothing is changed because of it.

use super::curve::Curve;

/// Something worth a second look.
#[derive(Debug, Clone, PartialEq)]
pub enum Hint {
    /// It was never read.
    NotRead,
    /// It has no zero reading, so no rise can be told.
    NoZero,
    /// It was read at minute 0 only.
    OnlyZero,
    /// Its readings end before the minute at which bags are compared.
    StoppedEarly {
        /// Minute of its last reading.
        last: f64,
    },
    /// It fell between two readings by more than reading can explain.
    Fell {
        /// By how much (mm).
        by_mm: f64,
        /// Minute of the higher reading.
        from: f64,
        /// Minute of the lower reading.
        to: f64,
    },
    /// It rose between two readings by more than a bag of its size does.
    Jumped {
        /// By how much (mm).
        by_mm: f64,
        /// Minute of the lower reading.
        from: f64,
        /// Minute of the higher reading.
        to: f64,
    },
    /// It was read after its period ended.
    AfterTheBell {
        /// Minute of the first such reading.
        minute: f64,
        /// Minute of the bell.
        bell: f64,
    },
    /// Its height at the common minute was worked out from the readings before and after.
    Between {
        /// Minute of the reading before.
        before: f64,
        /// Minute of the reading after.
        after: f64,
    },
}

/// A fall of more than this between two readings (mm) is more than reading doubt: twice the
/// 95 % half width of a difference of two readings, rounded (common practice, no source).
pub(crate) const FALL_MM: f64 = 3.0;

/// A rise of more than this share of the bag's full height (1) between two readings is more than
/// yeast does in a few minutes (own rule).
pub(crate) const JUMP_SHARE: f64 = 0.5;

/// What the curve itself shows; `bell` is the minute at which the bag's period ends, and
/// `full_height_mm` how high a bag of this kind stands when it is as full as can be.
pub(super) fn hints(curve: &Curve, bell: Option<f64>, full_height_mm: f64) -> Vec<Hint> {
    let mut hints = Vec::new();
    if curve.readings == 0 {
        hints.push(Hint::NotRead);
    } else if curve.zero_mm.is_none() {
        hints.push(Hint::NoZero);
    } else if curve.rises.is_empty() {
        hints.push(Hint::OnlyZero);
    }
    let points = curve.points(f64::INFINITY);
    for pair in points.windows(2) {
        let ((from, before), (to, after)) = (pair[0], pair[1]);
        let by_mm = before - after;
        if by_mm > FALL_MM {
            hints.push(Hint::Fell { by_mm, from, to });
        } else if -by_mm > JUMP_SHARE * full_height_mm {
            hints.push(Hint::Jumped { by_mm: -by_mm, from, to });
        }
    }
    let late = bell.and_then(|bell| {
        let late = points.iter().find(|(minute, _)| *minute > bell)?;
        Some(Hint::AfterTheBell { minute: late.0, bell })
    });
    hints.extend(late);
    hints
}
