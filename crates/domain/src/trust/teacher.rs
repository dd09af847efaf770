//! The teacher's look over all bags after the last reading, and what becomes of what she is offered.

use super::card::{Card, rise_share};
use super::lesson::{Lesson, name};
use super::mend::{Hands, is_question};
use super::world::{CURVE_MIN, INTERVAL_MIN, LAST_MIN, LEVEL_MM, PERIOD_SD_MM};
use crate::code::BagCode;
use crate::record::Bag;
use crate::slip::{Expected, Followed, seen_by_teacher};
use barm_science::statistics::distribution::normal;
use std::collections::{BTreeMap, BTreeSet};

/// Puts every question about every bag to its group, period by period, once.
pub(super) fn look_over(lesson: &Lesson, cards: &[Card], bags: &mut BTreeMap<BagCode, Bag>) {
    let band = band(lesson);
    let rules = &lesson.plan.set_aside_rules;
    let before = bags.clone();
    let periods: BTreeSet<usize> = lesson.bags.iter().map(|made| made.period).collect();
    for period in periods {
        let own: Vec<(Hands<'_>, &Bag)> = lesson
            .bags
            .iter()
            .zip(cards)
            .enumerate()
            .filter(|(_, (made, _))| made.period == period)
            .map(|(place, (made, card))| Hands { made, place, card, mends: true })
            .filter_map(|hands| before.get(&hands.made.code).map(|bag| (hands, bag)))
            .collect();
        let names: Vec<String> =
            own.iter().map(|(hands, _)| name(hands.made.treatment)).collect();
        let followed: Vec<Followed<'_>> = own
            .iter()
            .zip(&names)
            .map(|((hands, bag), treatment)| Followed {
                own: hands.own(bag),
                treatment,
                enzyme: false,
                control: hands.made.treatment == 0,
                band: &band,
            })
            .collect();
        let slips = seen_by_teacher(&followed, rules);
        for ((hands, _), slips) in own.iter().zip(slips) {
            let Some(bag) = bags.get_mut(&hands.made.code) else { continue };
            for slip in slips.iter().filter(|slip| is_question(slip)) {
                hands.answer(bag, slip);
            }
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
