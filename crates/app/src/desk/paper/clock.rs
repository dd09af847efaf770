//! Clock times on paper.

use super::prep::clock;
use jiff::ToSpan as _;
use jiff::civil::Time;

/// The clock so many minutes after a bell, to the half minute: `10:35½`.
pub(super) fn at_minute(bell: Time, minute: f64) -> String {
    let halves = half_minutes(minute);
    let half = if halves % 2 == 0 { "" } else { "½" };
    format!("{}{half}", clock(bell.saturating_add((halves.div_euclid(2)).minutes())))
}

/// A minute to the half: `15½`.
pub(super) fn minute(minute: f64) -> String {
    let halves = half_minutes(minute);
    let half = if halves % 2 == 0 { "" } else { "½" };
    format!("{}{half}", halves.div_euclid(2))
}

/// From a bell to the one so many minutes later: `10:20 to 11:05`.
pub(super) fn between(bell: Time, minutes: f64) -> String {
    format!("{} to {}", clock(bell), at_minute(bell, minutes))
}

fn half_minutes(minute: f64) -> i64 {
    (2.0 * minute).round().clamp(0.0, 2880.0) as i64
}

#[cfg(test)]
mod tests {
    use super::{at_minute, between, minute};
    use jiff::civil::time;

    #[test]
    fn half_a_minute_is_written_as_such() {
        let bell = time(10, 20, 0, 0);
        assert_eq!(at_minute(bell, 15.5), "10:35½");
        assert_eq!(at_minute(bell, 40.0), "11:00");
        assert_eq!(minute(15.5), "15½");
        assert_eq!(minute(0.0), "0");
        assert_eq!(between(bell, 45.0), "10:20 to 11:05");
    }
}
