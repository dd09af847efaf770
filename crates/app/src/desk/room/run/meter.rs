//! The line at the breath meter: whose bag is next, in an order that no treatment can gain from.

use crate::desk::room::Scene;
use crate::desk::room::benches::Benches;
use barm_domain::board::State;
use barm_domain::code::BagCode;
use barm_domain::plan::Period;

/// The line.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MeterLine {
    /// Bags that have had their last reading and were not pushed yet: name and code.
    pub(crate) waiting: Vec<(String, BagCode)>,
    /// What was shown: name, percent, turn.
    pub(crate) shown: Vec<(String, f64, Option<u32>)>,
    /// Clean air: turn, and percent where that was noted.
    pub(crate) air: Vec<(u32, Option<f64>)>,
    /// Whether clean air should be pushed before the next bag.
    pub(crate) blank_next: bool,
}

/// After so many pushes of bags, clean air is pushed again (own rule).
const BLANK_EVERY: u32 = 4;

/// The line of a period; nothing where the class has no meter.
pub(super) fn line(scene: &Scene<'_>, period: &Period, benches: &Benches) -> Option<MeterLine> {
    let has = scene.plan.equipment.meters.is_some_and(|count| count > 0);
    let standing = scene.ledger.standing();
    let mut shown = Vec::new();
    let mut waiting = Vec::new();
    for bench in &benches.bags {
        let values = standing.bags.get(&bench.code).map(|bag| bag.meter.as_slice());
        let values = values.unwrap_or_default();
        shown.extend(
            values.iter().map(|(_, percent, turn)| (bench.name.clone(), *percent, *turn)),
        );
        if values.is_empty() && bench.state == State::Done && !bench.rises.is_empty() {
            waiting.push((bench.name.clone(), bench.code));
        }
    }
    if !has && shown.is_empty() {
        return None;
    }
    waiting.sort_by_key(|(_, code)| shuffled(*code));
    shown.sort_by_key(|(_, _, turn)| *turn);
    let turns: Vec<u32> = shown.iter().filter_map(|(_, _, turn)| *turn).collect();
    let since_blank = turns
        .windows(2)
        .rposition(|pair| pair[1] > pair[0] + 1)
        .map_or(turns.len(), |at| turns.len() - at - 1);
    let blank_next = turns.is_empty() || since_blank as u32 >= BLANK_EVERY;
    let air = standing.periods.get(&period.name).map(|of| &of.blanks);
    let air = air.into_iter().flatten().map(|(turn, percent)| (*turn, *percent)).collect();
    Some(MeterLine { waiting, shown, air, blank_next })
}

/// The last turn that was taken in a period.
pub(super) fn last_turn(scene: &Scene<'_>, period: &Period) -> u32 {
    let standing = scene.ledger.standing();
    let own = scene.plan.bags.iter().filter(|bag| bag.period == period.name);
    let codes = own.filter_map(|bag| bag.code.parse::<BagCode>().ok());
    let turns = codes
        .filter_map(|code| standing.bags.get(&code))
        .flat_map(|bag| bag.meter.iter().filter_map(|(_, _, turn)| *turn));
    let air = standing.periods.get(&period.name);
    let air = air.and_then(|of| of.blanks.last_key_value()).map_or(0, |(turn, _)| *turn);
    turns.max().unwrap_or(0).max(air)
}

/// The same order each time, and none that treatments are dealt in (FNV-1a of the code).
fn shuffled(code: BagCode) -> u64 {
    code.to_string().bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

impl MeterLine {
    /// The next bag.
    pub(crate) fn next(&self) -> Option<&(String, BagCode)> {
        self.waiting.first()
    }
}
