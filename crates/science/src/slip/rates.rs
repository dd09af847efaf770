//! How often each slip happens, before anything was read.

/// Prior rates of slips (1). All are judgement without a source, the trade's list of slips having
/// no counts; they are those that rehearsals go by where both know a slip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// A run of readings in another unit begins, of readings.
    pub unit: f64,
    /// Two digits change places, of readings with two unlike digits.
    pub transposed: f64,
    /// A reading is far off for no reason on this list, of readings.
    pub misread: f64,
    /// One end of a tilted card is read, of readings.
    pub tilt: f64,
    /// A seal leaks, of bags.
    pub leak: f64,
    /// Foam lifts the card, of bags.
    pub foam: f64,
    /// The clock begins late or early, of bags.
    pub start: f64,
    /// A bag without living yeast in a class whose yeast lives, of bags.
    pub dead: f64,
    /// Water that kills the yeast within minutes, of bags in a class whose water is right.
    pub hot: f64,
    /// An enzyme that was not shaken, of bags with one.
    pub unshaken: f64,
    /// A heaped spoon, of bags.
    pub heaped: f64,
    /// Heights of another group, of bags.
    pub copied: f64,
    /// Two unlike bags taken for one another, of groups.
    pub swapped: f64,
    /// Readings to 5 mm only, of bags.
    pub fives: f64,
    /// A bag unlike all others for no reason on this list, of bags.
    pub strange: f64,
    /// Yeast or water that is wrong for all bags, of class days.
    pub class_low: f64,
}

impl Default for Rates {
    fn default() -> Self {
        Self {
            unit: 0.01,
            transposed: 0.01,
            misread: 0.003,
            tilt: 0.005,
            leak: 0.04,
            foam: 0.005,
            start: 0.03,
            dead: 0.01,
            hot: 0.01,
            unshaken: 0.03,
            heaped: 0.03,
            copied: 0.02,
            swapped: 0.015,
            fives: 0.02,
            strange: 0.005,
            class_low: 0.05,
        }
    }
}
