//! What months on a shelf take from yeast.

use crate::fact::Fact;
use crate::setup::{YeastDose, YeastKind};

const TRADE: &str = "a trade page on vacuum-packed dry yeast: 0.6 % a month at 5 °C, 1.7 % at 20 °C, \
     80 % at 37 °C; in step with about 1 % a month and under 10 % a year in encyclopedias; \
     secondary, taken like a value from memory";

const fn loss(name: &'static str, value: f64, range: (f64, f64), source: &'static str) -> Fact {
    Fact::memory(name, value, "/mo", source).within(range)
}

/// Loss of dry yeast in its sealed pack (1 per month of 30 days) at 5, 20 and 37 °C.
const SEALED: [(f64, Fact); 3] = [
    (5.0, loss("yeast.storage.sealed_5c", 0.006, (0.003, 0.012), TRADE)),
    (20.0, loss("yeast.storage.sealed_20c", 0.017, (0.008, 0.035), TRADE)),
    (37.0, loss("yeast.storage.sealed_37c", 1.6, (0.3, 2.5), TRADE)),
];

/// Loss of compressed yeast in the cold (1 per month of 30 days) at 5 and 20 °C.
const COMPRESSED: [(f64, Fact); 2] = [
    (
        5.0,
        loss(
            "yeast.storage.compressed_5c",
            0.3,
            (0.15, 0.6),
            "used within two to four weeks from the cold; value from memory",
        ),
    ),
    (
        20.0,
        loss(
            "yeast.storage.compressed_20c",
            4.0,
            (2.0, 8.0),
            "soft and sour within days in a warm room; value from memory",
        ),
    ),
];

/// Loss of dry yeast in an opened pack over that in a sealed one (1).
const OPENED: Fact = Fact::memory(
    "yeast.storage.opened",
    15.0,
    "1",
    "packs say to use opened yeast within three to four months from the cold, here with a third \
     lost by then; from memory",
)
.within((5.0, 40.0));

/// Standard deviation of the logarithm of any of these losses (1): a factor of two.
pub const STORAGE_LOG_SD: Fact = Fact::memory(
    "yeast.storage.log_sd",
    0.7,
    "1",
    "secondary sources, packs and cupboards differ; judgement",
);

/// Facts of this module.
pub const FACTS: &[Fact] = &[
    SEALED[0].1,
    SEALED[1].1,
    SEALED[2].1,
    COMPRESSED[0].1,
    COMPRESSED[1].1,
    OPENED,
    STORAGE_LOG_SD,
];

/// Share of its activity that yeast keeps on the shelf (1).
///
/// ```text
/// left = exp(−s k(t) m)      k in 1/month, m months, s the parameter `factor`
/// ```
///
/// ln k is a broken line in temperature through the facts, carried on straight beyond them. The
/// published pairs do not lie on one Arrhenius line (47 kJ/mol below 20 °C, 200 above), so it is
/// read between them. An opened pack loses fifteen times as fast; compressed yeast is never sealed.
///
/// # Range
/// Dry yeast 5 to 37 °C, compressed 0 to 20 °C. Held to −5 and 45 °C outside.
/// # Source
/// The facts of this module: secondary or from memory throughout.
pub fn left_by_storage(yeast: &YeastDose, factor: f64) -> f64 {
    if yeast.age_months <= 0.0 {
        return 1.0;
    }
    let celsius = yeast.stored_celsius.clamp(-5.0, 45.0);
    let per_month = match yeast.kind {
        YeastKind::Compressed => read(&COMPRESSED, celsius),
        YeastKind::ActiveDry | YeastKind::Instant if yeast.opened => {
            OPENED.value * read(&SEALED, celsius)
        }
        YeastKind::ActiveDry | YeastKind::Instant => read(&SEALED, celsius),
    };
    libm::exp(-factor * per_month * yeast.age_months)
}

/// Loss at a temperature, from points in rising order (1/month).
fn read(points: &[(f64, Fact)], celsius: f64) -> f64 {
    let after =
        points.iter().position(|(at, _)| *at > celsius).unwrap_or(points.len() - 1).max(1);
    let ((t0, k0), (t1, k1)) = (&points[after - 1], &points[after]);
    let share = (celsius - t0) / (t1 - t0);
    k0.value * libm::pow(k1.value / k0.value, share)
}
