//! The minutes that matter in a period, for every page that tells them: the run sheet with its
//! ruler, the overview, the pack for a substitute.

use super::clock::{Hours, minute};
use barm_documents::sheet::Stretch;
use barm_domain::plan::{Period, Plan};
use barm_domain::schedule::{PhaseKind, Schedule};

/// A last reading nearer to the bell than that (min) leaves no time to clear away (common practice,
/// no source).
const NEAR_BELL_MIN: f64 = 5.0;

/// Minutes after the bell with which a period begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hour {
    /// Water goes into the first bags.
    pub(super) water: f64,
    /// First zero reading.
    pub(super) first_zero: f64,
    /// Zero reading of the last group.
    pub(super) last_zero: f64,
    /// Last reading of the first group.
    pub(super) first_last: f64,
    /// Last reading of the last group; it may lie after the bell.
    pub(super) last_read: f64,
    /// Finished bags are opened from then on.
    pub(super) open: f64,
    /// Emptying and wiping: once all bags are read, unless the bell comes before that.
    pub(super) clean: f64,
    /// The bell at the end.
    pub(super) bell: f64,
    /// Benches in the largest wave.
    pub(super) at_once: usize,
    /// Waves.
    pub(super) waves: usize,
}

impl Hour {
    /// The minutes of a period with its schedule.
    pub(super) fn of(plan: &Plan, period: &Period, hour: &Schedule) -> Self {
        let bell = period.length_min.max(0.0);
        let starts = || hour.starts.iter().map(|(_, at)| *at);
        let first_zero = starts().reduce(f64::min).unwrap_or(plan.timing.mixing_min);
        let last_zero = starts().reduce(f64::max).unwrap_or(first_zero);
        let last_read = last_zero + f64::from(hour.last);
        let clean = hour.phases.iter().find(|phase| phase.kind == PhaseKind::Clean);
        let clearing = clean.map_or(bell, |phase| phase.from_min);
        let waves = hour.waves();
        Self {
            water: (first_zero - plan.timing.wet_before_zero_min).max(0.0),
            first_zero,
            last_zero,
            first_last: first_zero + f64::from(hour.last),
            last_read,
            open: hour.clearing_min().min(bell),
            clean: if last_read > bell { clearing } else { clearing.max(last_read) },
            bell,
            at_once: waves.iter().map(|wave| wave.groups.len()).max().unwrap_or(0),
            waves: waves.len(),
        }
    }

    /// The parts of the period along the ruler, from the same minutes as the steps below it.
    pub(super) fn stretches(&self) -> Vec<Stretch> {
        let reading = self.first_zero.min(self.open);
        let all = [
            ("mix and seal", 0.0, reading),
            ("read", reading, self.open),
            ("open", self.open, self.clean),
            ("clean", self.clean, self.bell),
        ];
        let long = all.into_iter().filter(|(_, from, to)| to > from);
        long.map(|(says, from, to)| Stretch { says: says.to_owned(), from, to }).collect()
    }

    /// What must be known where the last group is still reading while others open their bags, or
    /// reads close to the bell; empty where there is time.
    pub(super) fn tight(&self, hours: Hours, period: &Period) -> String {
        let at = hours.at_minute(period.start, self.last_read);
        let left = minute(self.bell - self.last_read);
        if self.last_read > self.bell {
            format!(
                "Too late: the last reading of the last group is due at {at}, after the bell. \
                 Fewer groups or an earlier last reading would make room."
            )
        } else if self.last_read > self.open {
            format!(
                "Tight: the last group reads at {at}, {} min after the first bags are opened and \
                 {left} min before the bell. Open no bag that still waits for its last reading.",
                minute(self.last_read - self.open)
            )
        } else if self.bell - self.last_read < NEAR_BELL_MIN {
            format!("Tight: the last group reads at {at}, only {left} min before the bell.")
        } else {
            String::new()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Hour, Hours};
    use crate::desk::demo;
    use barm_documents::plan_text;
    use barm_domain::schedule::schedule;

    /// The demo's first period with other water (°C) and another time for clearing away (min).
    fn hour(water_celsius: f64, clearing_min: f64) -> (Hour, String) {
        let mut plan = plan_text::read(demo::plan().as_bytes()).plan.expect("the plan");
        plan.base.water_celsius = water_celsius;
        plan.timing.clearing_min = clearing_min;
        let period = &plan.periods[0];
        let hour = Hour::of(&plan, period, &schedule(&plan, period, None));
        (hour, hour.tight(Hours::Twelve, period))
    }

    #[test]
    fn the_parts_of_an_hour_leave_no_gap_and_clearing_waits_for_the_last_reading() {
        for (water, clearing) in [40.0, 46.0]
            .into_iter()
            .flat_map(|water| [1.0, 6.0, 15.0].map(|clearing| (water, clearing)))
        {
            let (hour, _) = hour(water, clearing);
            let parts = hour.stretches();
            assert_eq!(parts.first().map(|part| part.from), Some(0.0));
            assert_eq!(parts.last().map(|part| part.to), Some(hour.bell));
            assert!(
                parts.windows(2).all(|two| (two[0].to - two[1].from).abs() < 1e-9),
                "{parts:?}"
            );
            assert!(hour.last_read > hour.bell || hour.clean >= hour.last_read, "{hour:?}");
        }
    }

    /// 45 less 14 to mix and 6 to clear leave 25 min, the last reading takes 24: three waves of three
    /// benches, the last at 15, and nothing is read after 39.
    #[test]
    fn groups_that_pour_are_all_read_before_bags_are_opened() {
        let (hour, says) = hour(40.0, 6.0);
        assert_eq!((hour.waves, hour.at_once), (3, 3));
        assert_eq!((hour.last_zero, hour.last_read, hour.open), (15.0, 39.0, 39.0));
        assert_eq!((hour.clean, says.as_str()), (41.0, ""));
    }

    /// Where the teacher pours, eight groups and her bench start half a minute apart: the last at 18, and
    /// reads every 4 min as long as 45 less 14 and the clearing allow.
    #[test]
    fn a_last_reading_among_open_bags_or_near_the_bell_is_said() {
        let (six, says) = hour(46.0, 6.0);
        assert_eq!((six.last_read, six.open), (42.0, 39.0));
        assert!(
            says.contains("8:52, 3 min after") && says.contains("3 min before the bell"),
            "{says}"
        );
        let (none, says) = hour(46.0, 0.0);
        assert!((none.last_read - 46.0).abs() < 1e-9, "{}", none.last_read);
        assert!(says.starts_with("Too late"), "{says}");
    }
}
