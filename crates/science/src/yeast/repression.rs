//! Uptake that yeast makes only when it is called for, and gives up when glucose comes back.

use crate::fact::Fact;

/// Time constant of giving up the uptake of maltose, and that of galactose, in the presence of
/// glucose (min).
pub const REPRESSION: Fact = Fact::memory(
    "yeast.repression",
    60.0,
    "min",
    "glucose switches off and breaks down the maltose carrier within an hour or two; value from \
     memory",
)
.within((30.0, 120.0));

/// Time constant of making the uptake and the enzymes for galactose (min).
pub const GALACTOSE_INDUCTION: Fact = Fact::memory(
    "yeast.galactose_induction",
    180.0,
    "min",
    "galactose is used after a lag of two to four hours; value from memory",
)
.within((120.0, 240.0));

/// Facts of this module.
pub const FACTS: &[Fact] = &[REPRESSION, GALACTOSE_INDUCTION];

/// Change of the share of an uptake that is made (1/min).
///
/// ```text
/// di/dt = (1 − i) call/τ − i busy/τ_r      call, busy 0 to 1; τ in min
/// ```
///
/// `call` is how strongly it is called for: by its own sugar, on carriers that glucose leaves idle,
/// in cells that are awake. `busy` is the share of carriers that glucose and fructose hold.
///
/// # Source
/// Form: first order each way; times from memory. Order of use in wort (maltose after 60 % of the
/// glucose is gone): B. K. Simpson (ed.), *Food Biochemistry and Food Processing*, 2nd ed. (2012),
/// p. 630.
pub fn made_per_min(made: f64, call: f64, busy: f64, make_min: f64, lose_min: f64) -> f64 {
    // In most bags there is nothing that calls for it.
    if made == 0.0 && call == 0.0 {
        return 0.0;
    }
    (1.0 - made) * call / make_min - made * busy / lose_min
}

/// Share of the full rate on galactose that so much of its uptake gives (1): the third power, for
/// carrier and enzymes must all be there. So next to none of it shows within the hour.
pub const fn galactose_at_work(made: f64) -> f64 {
    let made = made.max(0.0);
    made * made * made
}
