//! Clock times before and after one another, within a day.

use jiff::ToSpan;
use jiff::civil::Time;

/// Minutes since midnight.
pub(super) fn minute_of_day(time: Time) -> f64 {
    f64::from(time.hour()) * 60.0 + f64::from(time.minute()) + f64::from(time.second()) / 60.0
}

/// So many minutes later, to the second; the last second of the day at most.
pub(super) fn later(time: Time, minutes: f64) -> Time {
    let seconds = (60.0 * minutes).round().clamp(-86_400.0, 86_400.0) as i64;
    time.saturating_add(seconds.seconds())
}

/// So many minutes earlier, to the second; midnight at least.
pub(super) fn earlier(time: Time, minutes: f64) -> Time {
    later(time, -minutes)
}
