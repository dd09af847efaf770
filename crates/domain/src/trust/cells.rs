//! The kinds of classes by which the words are tried: every number of bags, periods and treatments,
//! every spread between groups and every way of making bags, each beside several of the others.

use super::cell::{Cell, Made, Slips};
use super::world::BAG_SD_MM;
use Made::{Each, Own, Pairs, Tied, Whole};
use Slips::{Ignored, Mended, None as NoSlips};

/// All of them.
pub const CELLS: [Cell; 26] = [
    of("b2-p1-t2-whole-g0", (2, 1, 2), Whole, 0.0, false, NoSlips),
    of("b2-p1-t4-own-g0.5", (2, 1, 4), Own, 0.5, false, NoSlips),
    of("b2-p3-t3-each-g1-wide", (2, 3, 3), Each, 1.0, true, NoSlips),
    of("b2-p5-t6-own-g1", (2, 5, 6), Own, 1.0, false, NoSlips),
    of("b3-p1-t3-whole-g1", (3, 1, 3), Whole, 1.0, false, NoSlips),
    of("b3-p3-t2-each-g0.5-wide", (3, 3, 2), Each, 0.5, true, NoSlips),
    of("b3-p3-t5-own-g0-wide", (3, 3, 5), Own, 0.0, true, NoSlips),
    of("b3-p5-t4-each-g0", (3, 5, 4), Each, 0.0, false, NoSlips),
    of("b4-p1-t2-pairs-g1", (4, 1, 2), Pairs, 1.0, false, NoSlips),
    of("b4-p1-t6-pairs-g0.5-wide", (4, 1, 6), Pairs, 0.5, true, NoSlips),
    of("b4-p3-t3-own-g1", (4, 3, 3), Own, 1.0, false, NoSlips),
    of("b4-p5-t5-pairs-g0", (4, 5, 5), Pairs, 0.0, false, NoSlips),
    of("b6-p1-t4-pairs-g1", (6, 1, 4), Pairs, 1.0, false, NoSlips),
    of("b6-p3-t3-pairs-g1-wide", (6, 3, 3), Pairs, 1.0, true, NoSlips),
    of("b6-p3-t6-each-g0", (6, 3, 6), Each, 0.0, false, NoSlips),
    of("b6-p5-t2-whole-g0.5-wide", (6, 5, 2), Whole, 0.5, true, NoSlips),
    of("b1-p1-t4-each-g0.5", (1, 1, 4), Each, 0.5, false, NoSlips),
    of("b4-p1-t3-tied-g1", (4, 1, 3), Tied, 1.0, false, NoSlips),
    twice(of("b3-p1-t3-own-g1-twice", (3, 1, 3), Own, 1.0, false, NoSlips)),
    twice(of("b4-p3-t2-each-g0-wide-twice", (4, 3, 2), Each, 0.0, true, NoSlips)),
    of("b2-p1-t4-own-g0.5-ignored", (2, 1, 4), Own, 0.5, false, Ignored),
    of("b2-p1-t4-own-g0.5-mended", (2, 1, 4), Own, 0.5, false, Mended),
    of("b4-p3-t3-own-g1-ignored", (4, 3, 3), Own, 1.0, false, Ignored),
    of("b4-p3-t3-own-g1-mended", (4, 3, 3), Own, 1.0, false, Mended),
    of("b6-p5-t2-whole-g0.5-wide-ignored", (6, 5, 2), Whole, 0.5, true, Ignored),
    of("b6-p5-t2-whole-g0.5-wide-mended", (6, 5, 2), Whole, 0.5, true, Mended),
];

/// The kind of class of that name.
pub fn cell(name: &str) -> Option<&'static Cell> {
    CELLS.iter().find(|cell| cell.name == name)
}

const fn of(
    name: &'static str,
    (bags, periods, treatments): (usize, usize, usize),
    made: Made,
    group_sd: f64,
    wide: bool,
    slips: Slips,
) -> Cell {
    let bag_sd_mm = BAG_SD_MM;
    let twice = false;
    Cell { name, bags, periods, treatments, made, bag_sd_mm, group_sd, wide, slips, twice }
}

/// The same in two rounds.
const fn twice(cell: Cell) -> Cell {
    Cell { twice: true, ..cell }
}
