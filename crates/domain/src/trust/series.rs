//! What a group writes of one bag.

use super::card::Card;
use super::rates::Rates;
use super::world::{AFTER_MIN, INTERVAL_MIN, LAST_MIN, LATE_MIN};
use barm_science::statistics::chance::Chance;

/// One height as it is written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Written {
    /// The planned minute; 0 is the zero reading.
    pub(super) planned: u32,
    /// The true minute.
    pub(super) minute: f64,
    /// What is written, taken for millimeters.
    pub(super) mm: f64,
}

/// All heights of a bag, read to whole millimeters, with what goes wrong at single readings.
///
/// As many numbers are drawn whatever goes wrong, so that a class has the same bags with a difference
/// and without.
pub(super) fn series(card: &Card, rates: &Rates, chance: &mut Chance) -> Vec<Written> {
    let fives = chance.uniform() < rates.fives;
    let steps = LAST_MIN / INTERVAL_MIN;
    let mut written = Vec::new();
    for planned in (0..=steps).map(|step| step * INTERVAL_MIN) {
        let [when, missed, late, unit, which, transposed] =
            std::array::from_fn(|_| chance.uniform());
        let (missed, late) = (missed < rates.bench.missed, late < rates.bench.late);
        let within = |(low, high): (f64, f64)| low + (high - low) * when;
        let after = if late { within(LATE_MIN) } else { within(AFTER_MIN) };
        let minute = if planned == 0 { 0.0 } else { f64::from(planned) + after };
        if missed && planned > 0 {
            continue;
        }
        let height = card.height_mm(minute);
        let read = if fives { 5.0 * (height / 5.0).round() } else { height.round() };
        let mm = if unit < rates.bench.unit {
            in_another_unit(read, which, rates.centimeters)
        } else if transposed < rates.bench.transposed {
            with_digits_changed(read)
        } else {
            read
        };
        written.push(Written { planned, minute, mm });
    }
    written
}

/// The number that somebody writes who reads in centimeters, inches or eighths of an inch.
fn in_another_unit(mm: f64, which: f64, centimeters: f64) -> f64 {
    if which < centimeters {
        mm / 10.0
    } else if which < 0.5 * (1.0 + centimeters) {
        (10.0 * mm / 25.4).round() / 10.0
    } else {
        (8.0 * mm / 25.4).round()
    }
}

/// The number with its two digits changed, where they are two unlike ones, none of them 0.
fn with_digits_changed(mm: f64) -> f64 {
    let (tens, ones) = ((mm / 10.0).floor(), (mm % 10.0).floor());
    let can = (1.0..10.0).contains(&tens) && ones >= 1.0 && (tens - ones).abs() > 0.5;
    if can { 10.0 * ones + tens } else { mm }
}

#[cfg(test)]
mod tests {
    use super::{in_another_unit, with_digits_changed};

    #[test]
    fn numbers_go_wrong_as_people_write_them() {
        // 25 mm are 2.5 cm, nearly an inch, and eight eighths.
        for (which, wrote) in [(0.1, 2.5), (0.7, 1.0), (0.9, 8.0)] {
            assert!((in_another_unit(25.0, which, 0.6) - wrote).abs() < 1e-9);
        }
        for (mm, wrote) in
            [(25.0, 52.0), (22.0, 22.0), (20.0, 20.0), (7.0, 7.0), (102.0, 102.0)]
        {
            assert!((with_digits_changed(mm) - wrote).abs() < 1e-9, "{mm}");
        }
    }
}
