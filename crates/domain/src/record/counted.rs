//! From the record to what results are made of.

use super::{Bag, Height, Known, Standing};
use crate::code::BagCode;
use crate::reading::{Reading, Remark, SetAside};
use jiff::Timestamp;

/// Two rivals that differ by no more than this (mm) say the same as far as a ruler can tell: each
/// may be off by 1 mm for a slanting look (common practice, no source). The earlier counts.
pub const SAME_MM: f64 = 2.0;

/// What counts of a record, as if it had been read from a readings file; all lines are 0.
///
/// - A minute is the true time after the bag's own zero reading. Stretches in which all clocks
///   stood still are not taken off, for the yeast does not stop; they stand among the remarks.
/// - Rivals that differ by more than [`SAME_MM`] are both left out until a person has chosen, and
///   a remark says so. Without a zero reading that is sure, no reading of the bag is given.
/// - Numbers that stand in for a group's own never get here: the replay refuses them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Counted {
    /// Heights, by bag and minute.
    pub readings: Vec<Reading>,
    /// Odd things, by bag and minute.
    pub remarks: Vec<Remark>,
    /// Bags that are set aside.
    pub set_aside: Vec<SetAside>,
}

impl Counted {
    /// What counts of all bags.
    #[must_use]
    pub fn of(known: &Known, standing: &Standing) -> Self {
        let mut counted = Self::default();
        for (code, bag) in &standing.bags {
            let period =
                known.bags.get(code).and_then(|home| standing.periods.get(&home.period));
            let stopped = period.map_or(&[][..], |period| &period.stopped);
            counted.add(*code, bag, stopped);
        }
        counted
    }

    fn add(&mut self, code: BagCode, bag: &Bag, stopped: &[(Timestamp, Option<Timestamp>)]) {
        let name = code.to_string();
        if let Some(rule) = &bag.set_aside {
            let rule = rule.clone();
            self.set_aside.push(SetAside { bag: name.clone(), rule, line: 0 });
        }
        let mut remarks: Vec<(Option<f64>, String)> = bag
            .odd
            .iter()
            .map(|tap| (bag.minute_at(tap.at), tap.odd.word().to_owned()))
            .chain(stopped.iter().filter_map(|stretch| stood_still(bag, *stretch)))
            .collect();
        let zeros: Vec<&Height> = bag.zero.iter().chain(&bag.other_zeros).collect();
        let zero = settled(&zeros, &mut |says| remarks.push((Some(0.0), says)));
        if let Some(zero) = zero {
            for (minute, height_mm) in heights(bag, zero, &mut remarks) {
                let (bag, line, event) = (name.clone(), 0, None);
                self.readings.push(Reading { bag, minute, height_mm, line, event });
            }
        }
        remarks.sort_by(|(a, _), (b, _)| {
            a.unwrap_or(f64::NEG_INFINITY).total_cmp(&b.unwrap_or(f64::NEG_INFINITY))
        });
        let remark = |(minute, says)| Remark { bag: name.clone(), minute, says, line: 0 };
        self.remarks.extend(remarks.into_iter().map(remark));
    }
}

/// The heights of a bag with a sure zero: minute and height (mm), the zero reading first.
fn heights(
    bag: &Bag,
    zero: &Height,
    remarks: &mut Vec<(Option<f64>, String)>,
) -> Vec<(f64, f64)> {
    let minute =
        |height: &Height| height.measured.duration_since(zero.measured).as_secs_f64() / 60.0;
    let mut heights = vec![(0.0, zero.height_mm)];
    for (at, reading) in bag.readings.iter().enumerate() {
        if !reading.rival {
            heights.push((minute(reading), reading.height_mm));
            continue;
        }
        let same = |other: &&Height| other.planned == reading.planned;
        // The first of the rivals speaks for all.
        if bag.readings[..at].iter().any(|other| same(&other)) {
            continue;
        }
        let rivals: Vec<&Height> = bag.readings.iter().filter(same).collect();
        let place = minute(reading);
        if let Some(one) = settled(&rivals, &mut |says| remarks.push((Some(place), says))) {
            heights.push((minute(one), one.height_mm));
        }
    }
    heights
}

/// The earliest of these, unless they differ by more than a ruler leaves open.
fn settled<'b>(rivals: &[&'b Height], remark: &mut dyn FnMut(String)) -> Option<&'b Height> {
    let all = || rivals.iter().map(|height| height.height_mm);
    let low = all().fold(f64::INFINITY, f64::min);
    let high = all().fold(f64::NEG_INFINITY, f64::max);
    if high - low > SAME_MM {
        remark(format!(
            "two heights for one reading, {low} mm and {high} mm: neither counts until one is chosen"
        ));
        return None;
    }
    rivals.first().copied()
}

/// A stretch in which all clocks stood still while the bag worked.
fn stood_still(
    bag: &Bag,
    (start, end): (Timestamp, Option<Timestamp>),
) -> Option<(Option<f64>, String)> {
    let minute = bag.minute_at(start)?;
    let until = end.map(|end| end.duration_since(start).as_secs_f64() / 60.0);
    let over = bag.last.is_some_and(|last| last < start);
    let says = match until {
        _ if over => return None,
        Some(minutes) if minute + minutes > 0.0 => {
            format!("all clocks stood still for {minutes:.0} min; the yeast went on")
        }
        Some(_) => return None,
        None => "all clocks stand still; the yeast goes on".to_owned(),
    };
    Some((Some(minute.max(0.0)), says))
}
