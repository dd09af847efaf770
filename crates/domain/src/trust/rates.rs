//! How often each slip happens in classes with slips.

use crate::rehearsal;

/// Chance of each slip, each time that it can happen (1). All are judgement without a source: the
/// trade knows these slips and has not counted them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// Those that a rehearsal knows too, as it takes them.
    pub bench: rehearsal::Rates,
    /// Of units: centimeters, else inches or eighths of an inch, one as often as the other.
    pub centimeters: f64,
    /// No living yeast in a bag, of bags.
    pub dead: f64,
    /// A heaped spoon, of bags.
    pub heaped: f64,
    /// Read to 5 mm only, of bags.
    pub fives: f64,
}

impl Default for Rates {
    fn default() -> Self {
        Self {
            bench: rehearsal::Rates::default(),
            centimeters: 0.6,
            dead: 0.01,
            heaped: 0.03,
            fives: 0.02,
        }
    }
}

impl Rates {
    /// Nothing goes wrong.
    pub const NONE: Self = Self {
        bench: rehearsal::Rates::NONE,
        centimeters: 0.0,
        dead: 0.0,
        heaped: 0.0,
        fives: 0.0,
    };
}
