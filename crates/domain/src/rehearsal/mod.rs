//! A class that was never there: groups whose bags follow the bag model and who make the slips of
//! real classes, so that a teacher can practice before the day.
//!
//! Everything comes from a seed: the same seed gives the same script. What all bags of a day share
//! (the yeast's vigor, how bags cool) is drawn once; spoons, pouring, air and the ruler belong to
//! each bag. A rehearsal is made up and never counts.

mod bench;
mod chance;
mod mishap;
mod simulated;
mod truth;

pub use mishap::{Mishap, Rates, Staged};
pub use simulated::{Simulated, simulated};
pub use truth::Truth;

pub(crate) use chance::seed_of;

use crate::code::BagCode;
use crate::outlook::OutlookError;
use crate::plan::{Period, Plan, PlannedBag};
use crate::record::Odd;
use crate::schedule::schedule;
use std::collections::BTreeMap;

/// What all benches of a period do, from bell to bell.
#[derive(Debug, Clone, PartialEq)]
pub struct Script {
    /// Name of the period.
    pub period: String,
    /// One device for each bench that has bags, the teacher's (0) first.
    pub devices: Vec<Device>,
    /// What went wrong, by group.
    pub staged: Vec<Staged>,
    /// How often each could have gone wrong.
    pub chances: BTreeMap<Mishap, u32>,
}

/// What one bench types.
#[derive(Debug, Clone, PartialEq)]
pub struct Device {
    /// Number of the group; 0 is the teacher's bench.
    pub group: u32,
    /// In the order of time.
    pub steps: Vec<Step>,
}

/// One thing that is typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Whole seconds after the bell by the clock of the period.
    pub at_s: u32,
    /// The bag; nothing for the group.
    pub bag: Option<BagCode>,
    /// What is typed.
    pub does: Does,
    /// Random bits for the key of the entry.
    pub random: u128,
}

/// What can be typed at a bench.
#[derive(Debug, Clone, PartialEq)]
pub enum Does {
    /// What is expected of each bag (mm above zero).
    Guess(Vec<(BagCode, f64)>),
    /// The bag is sealed.
    Sealed,
    /// The zero reading (mm above the bench).
    Zero(f64),
    /// A reading for a planned minute (mm above the bench).
    Reading(u32, f64),
    /// Something odd.
    Odd(Odd),
    /// The bag is open.
    Vented,
}

/// Writes the script of a period.
///
/// # Errors
/// [`OutlookError`] if a treatment of one of its bags cannot be followed.
pub fn script(
    plan: &Plan,
    period: &Period,
    seed: u64,
    rates: &Rates,
) -> Result<Script, OutlookError> {
    let follow = |bag: &PlannedBag, last: u32| Truth::of(plan, bag, last, seed);
    bench::script(plan, period, seed, rates, &follow)
}

/// The same for bags whose courses are known; `seed` decides hands and slips only.
///
/// # Errors
/// What `follow` says.
pub(crate) fn script_of(
    plan: &Plan,
    period: &Period,
    seed: u64,
    rates: &Rates,
    follow: &dyn Fn(&PlannedBag) -> Result<Truth, OutlookError>,
) -> Result<Script, OutlookError> {
    bench::script(plan, period, seed, rates, &|bag, _| follow(bag))
}

/// The last minute up to which a bag of that period must be followed for a script.
pub(crate) fn followed_to_min(plan: &Plan, period: &Period) -> u32 {
    schedule(plan, period, None).last + bench::LATER_MIN
}

impl Script {
    /// Number of things that are typed.
    pub fn steps(&self) -> usize {
        self.devices.iter().map(|device| device.steps.len()).sum()
    }
}
