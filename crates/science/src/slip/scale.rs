//! How sound bags scatter around what is expected of them.
//!
//! Own judgement without a source where nothing else is said: no class was measured.

/// A height beside the height that it means (mm): half of the variance of a difference of two
/// ([`crate::ruler::usual_difference_sd_mm`], 0.71 mm).
pub(super) fn reading_sd_mm() -> f64 {
    crate::ruler::usual_difference_sd_mm() / core::f64::consts::SQRT_2
}

/// Height of a card at its zero reading (mm), and how it differs: a wet bag with some air left.
pub(super) const ZERO_MM: (f64, f64) = (7.0, 5.0);

/// One bag's rise beside that of its sisters (standard deviation of the logarithm).
pub(super) const BAG_LOG_SD: f64 = 0.15;

/// One bag's clock and waking beside those of its sisters (min).
pub(super) const BAG_DELAY_MIN: f64 = 0.5;

/// One bag's curve beside that of its sisters in a smooth way: as a share of the rise, and in any
/// case (mm); and over how many minutes it goes on in the same way.
pub(super) const BAG_SHAPE: (f64, f64, f64) = (0.04, 0.2, 8.0);

/// How a treatment differs from the others of its class beside their forecasts: logarithm of the
/// rise, delay (min), bend.
pub(super) const TREATMENT: (f64, f64, f64) = (0.2, 0.6, 0.12);

/// How a class's curve differs from its forecast's in a smooth way, beyond rise, delay and bend: as
/// a share of the rise, and over how many minutes it goes on in the same way.
pub(super) const CLASS_SHAPE: (f64, f64) = (0.12, 8.0);

/// How a treatment's differs from its class's in such a way.
pub(super) const TREATMENT_SHAPE: (f64, f64) = (0.05, 8.0);

/// How a class is delayed (min) and bent beside its forecast. Its rise is as far off as the
/// forecast says.
pub(super) const CLASS: (f64, f64) = (1.3, 0.25);

/// How a bag's scatter may be larger than all that (mm²): a floor under each reading.
pub(super) fn reading_variance() -> f64 {
    reading_sd_mm() * reading_sd_mm()
}

/// How one reading of a bag goes with another of it, beyond the ruler: rises `a` and `b` (mm) and
/// paces `pa` and `pb` (mm/min) at two minutes.
pub(super) fn of_one_bag(at: (f64, f64, f64), with: (f64, f64, f64)) -> f64 {
    let ((minute, rise, pace), (minute_b, rise_b, pace_b)) = (at, with);
    let (share, any_mm, over_min) = BAG_SHAPE;
    let smooth = |rise: f64, minute: f64| {
        share * rise.max(0.0) + any_mm * (1.0 - libm::exp(-minute / 3.0))
    };
    let apart = (minute - minute_b) / over_min;
    BAG_LOG_SD * BAG_LOG_SD * rise * rise_b
        + BAG_DELAY_MIN * BAG_DELAY_MIN * pace * pace_b
        + smooth(rise, minute) * smooth(rise_b, minute_b) * libm::exp(-0.5 * apart * apart)
}
