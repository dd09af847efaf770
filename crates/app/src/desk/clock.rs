//! The clock of the server: the computer's, or one that runs faster from a given moment.

use super::DeskError;
use super::room::{Kind, Shelf};
use jiff::{SignedDuration, Timestamp};
use std::time::{Duration, Instant};

/// Where the server takes the time from.
pub(crate) enum Clock {
    /// The computer's own.
    Real,
    /// One that runs fast from a moment, for rehearsals and demonstrations.
    Fast {
        /// When it was set.
        set: Instant,
        /// What it showed then.
        from: Timestamp,
        /// How many times as fast as the computer's it runs.
        speed: f64,
    },
    /// Hands that a test moves.
    #[cfg(test)]
    Hands(Box<dyn Fn() -> Timestamp + Send + Sync>),
}

impl Clock {
    /// Faster clocks would leave nobody time for anything.
    pub(crate) const FASTEST: f64 = 10_000.0;

    /// One that shows `from` now and runs `speed` times as fast (0.1 to [`Self::FASTEST`]).
    pub(crate) fn fast(from: Timestamp, speed: f64) -> Self {
        let speed = if speed.is_finite() { speed.clamp(0.1, Self::FASTEST) } else { 1.0 };
        Self::Fast { set: Instant::now(), from, speed }
    }

    /// The computer's own, or a fast one if it was asked for; on a fast clock nothing real may lie
    /// in the folder.
    pub(crate) fn for_shelf(
        shelf: &Shelf,
        fast: Option<(Timestamp, f64)>,
    ) -> Result<Self, DeskError> {
        let Some((from, speed)) = fast else { return Ok(Self::Real) };
        shelf.must_not_hold(Kind::Real)?;
        Ok(Self::fast(from, speed))
    }

    /// The time now.
    pub(crate) fn now(&self) -> Timestamp {
        match self {
            Self::Real => Timestamp::now(),
            Self::Fast { set, from, speed } => shown(*from, *speed, set.elapsed()),
            #[cfg(test)]
            Self::Hands(hands) => hands(),
        }
    }

    /// How many times as fast as the computer's it runs.
    pub(crate) const fn speed(&self) -> f64 {
        match self {
            Self::Fast { speed, .. } => *speed,
            _ => 1.0,
        }
    }
}

fn shown(from: Timestamp, speed: f64, passed: Duration) -> Timestamp {
    let passed = SignedDuration::try_from_secs_f64(passed.as_secs_f64() * speed);
    // The end of all time is far away; there the clock stands still.
    passed.ok().and_then(|passed| from.checked_add(passed).ok()).unwrap_or(Timestamp::MAX)
}

#[cfg(test)]
mod tests {
    use super::{Clock, shown};
    use jiff::Timestamp;
    use std::time::Duration;

    #[test]
    fn a_fast_clock_shows_its_moment_and_goes_on_as_fast_as_it_is_told() {
        let bell: Timestamp = "2027-03-09T15:10:00Z".parse().expect("a moment");
        let after = |ms, speed| {
            shown(bell, speed, Duration::from_millis(ms)).as_millisecond()
                - bell.as_millisecond()
        };
        assert_eq!(after(0, 30.0), 0);
        assert_eq!(after(2_000, 30.0), 60_000);
        assert_eq!(after(1_500, 0.5), 750);
        assert_eq!(shown(bell, 1e4, Duration::from_secs(u64::MAX)), Timestamp::MAX);
    }

    #[test]
    fn a_fast_clock_never_goes_back_and_no_speed_is_beyond_reason() {
        let bell: Timestamp = "2027-03-09T15:10:00Z".parse().expect("a moment");
        let clock = Clock::fast(bell, 600.0);
        let (first, second) = (clock.now(), clock.now());
        assert!(bell <= first && first <= second);
        let speeds = [f64::NAN, f64::INFINITY, -3.0, 1e300, 30.0];
        let speeds = speeds.map(|speed| Clock::fast(bell, speed).speed());
        assert!(
            speeds.iter().all(|speed| (0.1..=Clock::FASTEST).contains(speed)),
            "{speeds:?}"
        );
    }
}
