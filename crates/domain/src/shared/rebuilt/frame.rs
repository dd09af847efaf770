//! The plan around shared treatments: days, periods, timing, rules.

use super::{NotRebuilt, Unsaid};
use crate::plan::{Day, Equipment, Period, Place, Plan, SetAsideRule, Timing};
use crate::shared::{Rows, Rule};
use crate::starter::{self, Answers};
use jiff::civil::{Date, Time};
use std::collections::BTreeMap;

/// Minutes before the zero reading and after the last one, which nobody shares; those of a first plan.
const MIXING_MIN: f64 = 14.0;
const CLEARING_MIN: f64 = 6.0;
/// Minutes between readings where none can be told; that of a first plan.
const INTERVAL_MIN: f64 = 4.0;
/// Students of a group where nobody knows; common practice, no source.
const OF_A_GROUP: u32 = 3;

/// The minutes between readings that stand most often between two of a bag, to the minute.
pub(super) fn interval(rows: &Rows) -> f64 {
    let pairs = rows.readings.windows(2).filter(|pair| pair[0].bag == pair[1].bag);
    let mut counts: BTreeMap<u32, usize> = BTreeMap::new();
    for gap in pairs.map(|pair| (pair[1].minute - pair[0].minute).round()) {
        if (1.0..=240.0).contains(&gap) {
            *counts.entry(gap as u32).or_default() += 1;
        }
    }
    // Of two that stand equally often, the shorter one.
    let most = counts.into_iter().max_by_key(|&(gap, count)| (count, std::cmp::Reverse(gap)));
    most.map_or(INTERVAL_MIN, |(gap, _)| f64::from(gap))
}

/// The plan without its treatments and bags.
pub(super) fn frame(
    rows: &Rows,
    unsaid: &Unsaid,
    interval_min: f64,
) -> Result<Plan, NotRebuilt> {
    let last = rows.readings.iter().map(|row| row.minute).fold(interval_min, f64::max);
    let length_min = (last.ceil() + MIXING_MIN + CLEARING_MIN).min(400.0);
    let answers = Answers {
        title: unsaid.title.clone(),
        date: unsaid.date,
        zone: "UTC".into(),
        place: Place::Altitude(0.0),
        first_start: Time::midnight(),
        length_min,
        periods: 1,
        groups: 1,
        students: OF_A_GROUP,
    };
    let mut plan = starter::frame(&answers)?;
    plan.invented = unsaid.made_up;
    plan.big_question = "What did this class find?".into();
    plan.grade = unsaid.grade.filter(|grade| (5..=12).contains(grade)).unwrap_or(plan.grade);
    plan.readable_mm = unsaid.readable_mm.unwrap_or(plan.readable_mm);
    plan.standards.clear();
    plan.materials.clear();
    plan.equipment = Equipment::default();
    plan.timing = Timing {
        interval_min,
        mixing_min: MIXING_MIN,
        clearing_min: CLEARING_MIN,
        ..plan.timing
    };
    let other = Rule::Other;
    plan.set_aside_rules
        .push(SetAsideRule { id: other.word().into(), says: other.says().into() });
    (plan.days, plan.periods) = days(rows, unsaid.date, length_min)?;
    Ok(plan)
}

/// A day for each room, and the periods of the bags' codes. All begin at eight; nobody knows when.
fn days(
    rows: &Rows,
    date: Date,
    length_min: f64,
) -> Result<(Vec<Day>, Vec<Period>), NotRebuilt> {
    let mut rooms: Vec<(f64, f64)> = Vec::new();
    let mut periods: BTreeMap<u8, (usize, u8)> = BTreeMap::new();
    for bag in &rows.bags {
        let room = (bag.room_celsius, bag.pressure_hpa);
        let at = rooms.iter().position(|one| *one == room).unwrap_or_else(|| {
            rooms.push(room);
            rooms.len() - 1
        });
        let period = bag.code.period();
        let (day, groups) = periods.entry(period).or_insert((at, 1));
        if *day != at {
            return Err(NotRebuilt::TwoRooms { period });
        }
        *groups = (*groups).max(bag.code.group());
    }
    let name = |at: usize| format!("Day {}", at + 1);
    let day = |(at, &(room_celsius, hectopascals)): (usize, &(f64, f64))| Day {
        name: name(at),
        date,
        zone: "UTC".into(),
        room_celsius,
        place: Place::Pressure(hectopascals * 100.0),
    };
    let period = |(number, (at, groups)): (u8, (usize, u8))| Period {
        name: number.to_string(),
        day: name(at),
        start: Time::constant(8, 0, 0, 0),
        length_min,
        students: u32::from(groups) * OF_A_GROUP,
        groups: u32::from(groups),
        grade: None,
        inquiry: None,
    };
    Ok((rooms.iter().enumerate().map(day).collect(), periods.into_iter().map(period).collect()))
}
