//! How soon hot water burns skin.

/// Temperature (°C) and seconds until skin is burned, the shorter of two tables.
///
/// # Source
/// A. R. Moritz and F. C. Henriques, Studies of thermal injury II, Am. J. Pathol. 23, 695 (1947),
/// adult skin, second degree, as restated by a trade page; US Consumer Product Safety Commission,
/// publication 5098, third degree, from memory (49, 54 and 66 °C).
const BURNS_WITHIN: &[(f64, f64)] = &[
    (45.0, 7200.0),
    (47.0, 1200.0),
    (48.0, 900.0),
    (49.0, 300.0),
    (51.0, 120.0),
    (54.0, 30.0),
    (55.0, 17.0),
    (60.0, 3.0),
    (66.0, 2.0),
];

/// Seconds within which water of that temperature burns adult skin; nothing below 43 °C.
///
/// Between two rows the hotter one counts, so that the time is never too long. Children burn
/// faster.
pub(super) fn burns_within(celsius: f64) -> Option<f64> {
    if celsius < super::heat::HANDLING_LIMIT_C {
        return None;
    }
    let hotter = BURNS_WITHIN.iter().find(|(at, _)| *at >= celsius);
    hotter.or(BURNS_WITHIN.last()).map(|(_, seconds)| *seconds)
}

#[cfg(test)]
mod tests {
    use super::burns_within;

    /// Rows of both tables, each printed value an upper bound.
    #[test]
    fn no_time_is_longer_than_either_table() {
        let moritz = [
            (45.0, 7200.0),
            (47.0, 1200.0),
            (48.0, 900.0),
            (49.0, 480.0),
            (51.0, 120.0),
            (55.0, 17.0),
            (60.0, 3.0),
        ];
        let commission = [(49.0, 300.0), (54.0, 30.0), (60.0, 6.0), (66.0, 2.0)];
        for (celsius, seconds) in moritz.into_iter().chain(commission) {
            assert!(burns_within(celsius).unwrap() <= seconds, "{celsius} °C");
        }
    }

    #[test]
    fn hotter_water_burns_no_later() {
        let mut last = f64::INFINITY;
        for tenth in 430..=1000 {
            let seconds = burns_within(f64::from(tenth) / 10.0).unwrap();
            assert!(seconds <= last);
            last = seconds;
        }
        assert_eq!(burns_within(42.9), None);
    }
}
