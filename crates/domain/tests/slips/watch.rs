//! The detector, asked after every reading of a class.

use crate::class::Read;
use crate::school::{FULL_MM, Made};
use barm_domain::code::BagCode;
use barm_domain::record::{Bag, Height, Key, Who};
use barm_domain::slip::{ClassCall, Followed, Own, Slip, class_call, seen_by_teacher};
use jiff::{SignedDuration, Timestamp};

/// The bags of a class as the record has them after the reading of a planned minute.
pub(crate) fn record(bags: &[Read], until: u32) -> Vec<(BagCode, Bag)> {
    let start: Timestamp = "2027-03-09T15:24:00Z".parse().expect("a time");
    let at = |minute: f64| start + SignedDuration::from_millis((60_000.0 * minute) as i64);
    let of_bag = |(nth, read): (usize, &Read)| {
        let height = |(place, (planned, minute, mm)): (usize, &(u32, f64, f64))| Height {
            key: Key((100 * nth + place) as u128),
            measured: at(*minute),
            planned: (place > 0).then_some(*planned),
            height_mm: *mm,
            who: Who::Teacher,
            mended: Vec::new(),
            rival: false,
        };
        let known = read.heights.iter().filter(|(planned, _, _)| *planned <= until);
        let mut heights: Vec<Height> = known.enumerate().map(height).collect();
        let zero = heights.remove(0);
        (read.code, Bag { zero: Some(zero), readings: heights, ..Bag::default() })
    };
    bags.iter().enumerate().map(of_bag).collect()
}

/// What the detector is given.
pub(crate) fn followed<'a>(
    bags: &'a [Read],
    record: &'a [(BagCode, Bag)],
    made: &'a [Made],
) -> Vec<Followed<'a>> {
    bags.iter()
        .zip(record)
        .map(|(read, (code, bag))| {
            let treatment = &made[read.treatment];
            Followed {
                own: Own { code: *code, bag, full_height_mm: FULL_MM, stopped: &[] },
                treatment: treatment.name,
                enzyme: treatment.enzyme,
                control: treatment.control,
                band: &treatment.band,
            }
        })
        .collect()
}

/// What it says after the reading of a planned minute: of each bag, and of the class.
pub(crate) fn look(
    bags: &[Read],
    made: &[Made],
    until: u32,
    class_only: bool,
) -> (Vec<Vec<Slip>>, Option<ClassCall>) {
    let record = record(bags, until);
    let followed = followed(bags, &record, made);
    let slips = if class_only { Vec::new() } else { seen_by_teacher(&followed, &[]) };
    (slips, class_call(&followed))
}

/// Place of the height that a slip is about.
pub(crate) fn place(slip: &Slip) -> Option<usize> {
    slip.reading.map(|key| (key.0 % 100) as usize)
}
