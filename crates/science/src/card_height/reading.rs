//! From a rise that was read to the gas that made it, with what is left open.

use super::{CardCurve, CurvePrior};
use crate::bag::SIMULATION;
use crate::fact::Fact;
use crate::statistics::distribution::normal;

/// Standard deviation of a card's height about its curve (mm).
pub const MODEL_SD: Fact =
    Fact::derived("card_height.model_sd", 0.5, "mm", SIMULATION).within((0.1, 1.3));

/// Standard deviation of the offset of a crumpled bag at no rise (mm).
pub const CRUMPLE_SD: Fact = Fact::derived(
    "card_height.crumple_sd",
    1.0,
    "mm",
    "judgement: a used or folded bag stands 1 to 5 mm proud by itself; beside the own \
         membrane simulation (2109 runs)",
)
.within((0.5, 2.0));

/// Rise at which a bag has pulled its crumples out (mm).
pub const CRUMPLE_GONE: Fact =
    Fact::derived("card_height.crumple_gone", 5.0, "mm", CRUMPLE_SD.source);

/// Facts of this file.
pub const READING_FACTS: &[Fact] = &[MODEL_SD, CRUMPLE_SD, CRUMPLE_GONE];

/// Gas behind a reading, with a 95 % interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasEstimate {
    /// Best value (mL): the inverse of the mean curve; 0 if the card has not risen.
    pub ml: f64,
    /// Lower end (mL), never below 0.
    pub low_ml: f64,
    /// Upper end (mL), never above what the bag can hold.
    pub high_ml: f64,
}

/// Standard deviation of the height of a card about its curve, in millimetres, without the ruler.
///
/// Model error, and the crumples of a real bag, which fade until [`CRUMPLE_SD`]'s rise of 5 mm.
pub fn height_sd_mm(rise_mm: f64) -> f64 {
    libm::hypot(MODEL_SD.value, CRUMPLE_SD.value * crumpled(rise_mm))
}

/// Share of its crumples that a bag still has at a rise (1).
pub(super) fn crumpled(rise_mm: f64) -> f64 {
    (1.0 - rise_mm / CRUMPLE_GONE.value).clamp(0.0, 1.0)
}

/// Gas made since the zero reading, in millilitres, from a rise above that reading.
///
/// `ruler_sd_mm` is the standard uncertainty of the difference of the two readings
/// ([`crate::ruler::difference_sd_mm`]). `trapped_air_ml` is the air that was in the bag at the
/// zero reading: it has lifted the card already and does not count as made.
///
/// The interval holds what is not known of this bag's curve (exponent, dead share, capacity: a
/// three-point Gauss-Hermite rule each) and of the height (ruler, model, crumples). A card that
/// has not lifted says only that the gas lies between none and the dead volume, so there the
/// lower end is 0 and the upper end at least the dead volume.
///
/// ```text
/// P(gas ≤ g) = Σ w Φ( (rise(g + air) − rise(air) − r) / σ )
/// ```
///
/// # Source
/// Propagation of distributions, JCGM 101:2008 (GUM supplement 1), from memory; the curves are
/// those of [`SIMULATION`].
pub fn gas_from_rise(
    prior: &CurvePrior,
    rise_mm: f64,
    ruler_sd_mm: f64,
    trapped_air_ml: f64,
) -> GasEstimate {
    let sd = libm::hypot(ruler_sd_mm, height_sd_mm(rise_mm));
    let bags = possible_bags(prior, trapped_air_ml);
    let below = |gas: f64, lifted_only: bool| -> f64 {
        let shares = bags.iter().map(|bag| {
            let inside = gas + trapped_air_ml;
            if lifted_only && inside < bag.curve.dead_ml() {
                return 0.0;
            }
            let rise = bag.curve.rise_mm(inside) - bag.start_mm;
            bag.weight * normal::cdf((rise - rise_mm) / sd)
        });
        shares.sum()
    };
    let most = (prior.curve(0.0, 0.0, 2.0).room_ml() - trapped_air_ml).max(0.0);
    let low_ml = crossing(most, |gas| below(gas, false) >= TAIL);
    let high_ml = crossing(most, |gas| below(gas, true) >= 1.0 - TAIL);
    let mean = prior.mean;
    let ml = if rise_mm > 0.0 {
        let rise = rise_mm + mean.rise_mm(trapped_air_ml);
        (mean.gas_ml(rise) - trapped_air_ml).max(0.0)
    } else {
        0.0
    };
    GasEstimate { ml, low_ml: low_ml.min(ml), high_ml: high_ml.max(ml) }
}

const TAIL: f64 = 0.025;

/// One way this bag may be, and how likely that is.
struct PossibleBag {
    curve: CardCurve,
    /// Rise that the trapped air alone has given (mm).
    start_mm: f64,
    weight: f64,
}

fn possible_bags(prior: &CurvePrior, trapped_air_ml: f64) -> Vec<PossibleBag> {
    let far = 3.0_f64.sqrt();
    let nodes = [(-far, 1.0 / 6.0), (0.0, 2.0 / 3.0), (far, 1.0 / 6.0)];
    let mut bags = Vec::with_capacity(nodes.len().pow(3));
    for (exponent, a) in nodes {
        for (dead_share, b) in nodes {
            for (capacity, c) in nodes {
                let curve = prior.curve(exponent, dead_share, capacity);
                let start_mm = curve.rise_mm(trapped_air_ml);
                bags.push(PossibleBag { curve, start_mm, weight: a * b * c });
            }
        }
    }
    bags
}

/// Least value between 0 and `most` at which `reached` holds, for a condition that stays true
/// once it is true; `most` if it never does.
fn crossing(most: f64, reached: impl Fn(f64) -> bool) -> f64 {
    if reached(0.0) {
        return 0.0;
    }
    let (mut low, mut high) = (0.0, most);
    // Thirty halvings take a gallon to a few nanolitres, far below any ruler.
    for _ in 0..30 {
        let middle = 0.5 * (low + high);
        if reached(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}
