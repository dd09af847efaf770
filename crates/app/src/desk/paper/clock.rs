//! Clock times on paper: one way of writing them for every sheet.

use super::Size;
use jiff::civil::Time;
use jiff::{SignedDuration, ToSpan as _, Unit};

/// How hours are written: as where the paper is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Hours {
    /// `1:05` after noon, as on the walls of schools that print on US Letter.
    Twelve,
    /// `13:05`, as where A4 is used, and on the screen.
    TwentyFour,
}

/// Hours of a school day (common practice, no source); outside of them half a day is named, so that
/// no two times of a day are written alike.
const SCHOOL: std::ops::Range<i8> = 6..18;

impl From<Size> for Hours {
    fn from(size: Size) -> Self {
        match size {
            Size::Letter => Self::Twelve,
            Size::A4 => Self::TwentyFour,
        }
    }
}

impl Hours {
    /// A time of day: `8:24`, and `8:24:30` where it does not fall on a minute.
    pub(super) fn time(self, time: Time) -> String {
        let whole = time.second() == 0;
        let (form, half_day) = match (self, whole) {
            (Self::Twelve, true) => ("%-I:%M", !SCHOOL.contains(&time.hour())),
            (Self::Twelve, false) => ("%-I:%M:%S", !SCHOOL.contains(&time.hour())),
            (Self::TwentyFour, true) => ("%-H:%M", false),
            (Self::TwentyFour, false) => ("%-H:%M:%S", false),
        };
        let half_day = match (half_day, time.hour() < 12) {
            (false, _) => "",
            (true, true) => " am",
            (true, false) => " pm",
        };
        format!("{}{half_day}", time.strftime(form))
    }

    /// A time of day to the nearest minute, for what needs no better: water is mixed, solutions are made.
    pub(super) fn about(self, time: Time) -> String {
        self.time(time.round(Unit::Minute).unwrap_or(time))
    }

    /// The time so many minutes after a bell, to the second.
    pub(super) fn at_minute(self, bell: Time, minute: f64) -> String {
        let seconds = (60.0 * minute).clamp(0.0, 86_400.0).round() as i64;
        self.time(bell.wrapping_add(SignedDuration::from_secs(seconds)))
    }

    /// From a bell to the one so many minutes later: `10:20 to 11:05`.
    pub(super) fn between(self, bell: Time, minutes: f64) -> String {
        let end = bell.saturating_add((minutes.round().clamp(0.0, 1440.0) as i64).minutes());
        format!("{} to {}", self.time(bell), self.time(end))
    }
}

/// So many minutes, to the half: `15½`. A length of time, not a time of day.
pub(super) fn minute(minute: f64) -> String {
    let halves = (2.0 * minute).round().clamp(0.0, 2880.0) as i64;
    let half = if halves % 2 == 0 { "" } else { "½" };
    match halves.div_euclid(2) {
        0 if halves == 1 => "½".to_owned(),
        whole => format!("{whole}{half}"),
    }
}

#[cfg(test)]
mod tests {
    use super::{Hours, minute};
    use crate::desk::Size;
    use jiff::civil::time;

    #[test]
    fn hours_are_written_as_where_the_paper_is_used() {
        let (letter, a4) = (Hours::from(Size::Letter), Hours::from(Size::A4));
        let lesson = time(13, 5, 0, 0);
        assert_eq!(letter.time(lesson), "1:05");
        assert_eq!(a4.time(lesson), "13:05");
        assert_eq!(letter.between(time(12, 20, 0, 0), 45.0), "12:20 to 1:05");
        assert_eq!(a4.between(time(10, 20, 0, 0), 45.0), "10:20 to 11:05");
    }

    #[test]
    fn no_two_times_of_a_day_are_written_alike() {
        let mut seen = std::collections::BTreeSet::new();
        for hour in 0..24 {
            assert!(seen.insert(Hours::Twelve.time(time(hour, 30, 0, 0))), "{hour}:30");
        }
        assert_eq!(Hours::Twelve.time(time(18, 30, 0, 0)), "6:30 pm");
        assert_eq!(Hours::Twelve.time(time(0, 10, 0, 0)), "12:10 am");
    }

    #[test]
    fn half_a_minute_is_thirty_seconds_of_a_time_and_a_half_of_a_length() {
        let bell = time(13, 5, 0, 0);
        assert_eq!(Hours::Twelve.at_minute(bell, 15.5), "1:20:30");
        assert_eq!(Hours::TwentyFour.at_minute(bell, 15.5), "13:20:30");
        assert_eq!(Hours::Twelve.at_minute(bell, 40.0), "1:45");
        assert_eq!(Hours::Twelve.about(time(8, 30, 3, 0)), "8:30");
        assert_eq!(minute(15.5), "15½");
        assert_eq!(minute(0.5), "½");
        assert_eq!(minute(0.0), "0");
    }
}
