//! The teacher's look over all bags after the last reading, and what becomes of what she is offered.

use super::card::{Card, rise_share};
use super::lesson::Lesson;
use super::mend::{Hands, is_question};
use super::world::{CURVE_MIN, INTERVAL_MIN, LAST_MIN, LEVEL_MM, PERIOD_SD_MM};
use crate::code::BagCode;
use crate::record::Bag;
use crate::slip::{Expected, seen_by_teacher};
use barm_science::statistics::distribution::normal;
use std::collections::BTreeMap;

/// Puts every question about every bag to its group, period by period, once.
pub(super) fn look_over(lesson: &Lesson, cards: &[Card], bags: &mut BTreeMap<BagCode, Bag>) {
    let band = band(lesson);
    let before = bags.clone();
    for (place, (made, card)) in lesson.bags.iter().zip(cards).enumerate() {
        let hands = Hands { made, place, card, mends: true };
        let Some(bag) = bags.get_mut(&made.code) else { continue };
        let sisters: Vec<(BagCode, &Bag)> = before
            .iter()
            .filter(|(code, _)| code.period() == made.code.period() && **code != made.code)
            .map(|(code, bag)| (*code, bag))
            .collect();
        let rules = &lesson.plan.set_aside_rules;
        let slips = seen_by_teacher(hands.own(bag), rules, &band, &sisters);
        for slip in slips.iter().filter(|slip| is_question(slip)) {
            hands.answer(bag, slip);
        }
    }
}

/// Where 8 of 10 bags are in truth, taken for the forecast of all treatments.
fn band(lesson: &Lesson) -> Vec<Expected> {
    let cell = lesson.cell();
    let (bag_sd, group_sd) = (cell.bag_sd_mm, cell.group_sd * cell.bag_sd_mm);
    let sd = libm::sqrt(bag_sd * bag_sd + PERIOD_SD_MM * PERIOD_SD_MM + group_sd * group_sd);
    let half = normal::quantile(0.9) * sd;
    let minutes = (0..=LAST_MIN + INTERVAL_MIN).step_by(INTERVAL_MIN as usize);
    minutes
        .map(|minute| {
            let minute = f64::from(minute);
            let share = rise_share(CURVE_MIN, f64::from(LAST_MIN), minute);
            Expected {
                minute,
                low_mm: share * (LEVEL_MM - half).max(0.0),
                median_mm: share * LEVEL_MM,
                high_mm: share * (LEVEL_MM + half),
            }
        })
        .collect()
}
