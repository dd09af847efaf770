//! `barm trust --json`.

use super::FORMAT;
use crate::desk::Trust;
use barm_domain::trust::{Bar, Cell, Count, Held, OVER_ALL, Tally, over_all};
use serde::Serialize;

#[derive(Serialize)]
pub(crate) struct Trusted {
    format: u32,
    classes: u64,
    seed: u64,
    cells: Vec<CellRow>,
    over_all: OverAll,
}

#[derive(Serialize)]
struct CellRow {
    cell: &'static str,
    bags: usize,
    periods: usize,
    treatments: usize,
    made: &'static str,
    group_sd: f64,
    wide: bool,
    slips: &'static str,
    twice: bool,
    can_be_clear: bool,
    false_clear: CountRow,
    false_large: CountRow,
    held: CountRow,
    true_clear: CountRow,
    foretold: Option<f64>,
    true_large: CountRow,
    slips_cost: Option<f64>,
    bars: Vec<BarRow>,
}

#[derive(Serialize)]
struct CountRow {
    found: usize,
    of: usize,
    share: Option<f64>,
    at_least: f64,
    at_most: f64,
}

#[derive(Serialize)]
struct BarRow {
    bar: &'static str,
    holds: &'static str,
}

#[derive(Serialize)]
struct OverAll {
    clear: CountRow,
    clear_holds: bool,
    large_gap: CountRow,
    large_gap_holds: bool,
}

pub(crate) fn trusted(trust: &Trust) -> Trusted {
    let [clear, large] = over_all(trust.cells.iter().map(|(cell, tally)| (*cell, tally)));
    let holds = |sum: Count| sum.at_most() <= OVER_ALL;
    Trusted {
        format: FORMAT,
        classes: trust.classes,
        seed: trust.seed,
        cells: trust.cells.iter().map(|(cell, tally)| row(trust, cell, tally)).collect(),
        over_all: OverAll {
            clear: count(clear),
            clear_holds: holds(clear),
            large_gap: count(large),
            large_gap_holds: holds(large),
        },
    }
}

fn row(trust: &Trust, cell: &Cell, tally: &Tally) -> CellRow {
    let bar = |bar: Bar| BarRow {
        bar: bar.word(),
        holds: match bar.holds(cell, tally) {
            Held::Yes => "yes",
            Held::No => "no",
            Held::NotAsked => "not-asked",
        },
    };
    CellRow {
        cell: cell.name,
        bags: cell.bags,
        periods: cell.periods,
        treatments: cell.treatments,
        made: cell.made.word(),
        group_sd: cell.group_sd,
        wide: cell.wide,
        slips: cell.slips.word(),
        twice: cell.twice,
        can_be_clear: cell.can_be_clear(),
        false_clear: count(tally.false_clear),
        false_large: count(tally.false_large),
        held: count(tally.held),
        true_clear: count(tally.true_clear),
        foretold: trust.foretold(cell),
        true_large: count(tally.true_large),
        slips_cost: trust.slips_cost(cell, tally),
        bars: Bar::ALL.map(bar).into(),
    }
}

fn count(count: Count) -> CountRow {
    let Count { found, of } = count;
    let share = count.share();
    CountRow { found, of, share, at_least: count.at_least(), at_most: count.at_most() }
}
