//! When something happened, told by a device whose clock may be wrong.

use jiff::{SignedDuration, Timestamp};

/// The furthest that a moment may lie in the future; devices and computers are never quite alike.
const AHEAD: SignedDuration = SignedDuration::from_mins(1);
/// The furthest that a moment may lie in the past. A tablet left in a drawer over the holidays
/// still brings what it holds; a clock that was never set does not write into another year.
const BEHIND: SignedDuration = SignedDuration::from_hours(24 * 60);

/// A moment as a device told it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Said {
    /// What its own clock showed.
    pub(crate) at: Timestamp,
    /// How far this program's clock was ahead of it (ms), as the device measured it.
    pub(crate) offset_ms: i64,
}

/// The moment on this program's clock.
///
/// A moment that cannot be right is pulled to `now`: one more than a minute ahead, or more than
/// sixty days old. What was said is not kept: its key holds the device's own time (the first 48
/// bits of a UUID of version 7), so that nothing is lost by it.
pub(crate) fn on_our_clock(said: Said, now: Timestamp) -> Timestamp {
    let offset = SignedDuration::from_millis(said.offset_ms);
    let Ok(at) = said.at.checked_add(offset) else { return now };
    let ahead = at.duration_since(now);
    if ahead > AHEAD || ahead < -BEHIND { now } else { at }
}

#[cfg(test)]
mod tests {
    use super::{Said, on_our_clock};
    use jiff::Timestamp;

    fn at(second: i64) -> Timestamp {
        Timestamp::from_second(second).expect("a time")
    }

    #[test]
    fn a_wrong_clock_is_set_right_and_a_mad_one_is_not_believed() {
        let now = at(1_800_000_000);
        let heard = |second, offset_ms| {
            on_our_clock(Said { at: at(second), offset_ms }, now).as_second() - now.as_second()
        };
        assert_eq!(heard(1_800_000_000 - 30, 0), -30);
        // A device that runs two hours ahead, and knows it.
        assert_eq!(heard(1_800_000_000 + 7200 - 30, -7_200_000), -30);
        assert_eq!(heard(1_800_000_000 + 59, 0), 59);
        assert_eq!(heard(1_800_000_000 + 61, 0), 0);
        assert_eq!(heard(0, 0), 0);
        assert_eq!(heard(1_800_000_000, i64::MAX), 0);
        assert_eq!(heard(1_800_000_000, i64::MIN), 0);
    }
}
