//! What power says of a kind of class before its day.

use super::lesson::Lesson;
use super::world::WIDE;
use crate::power::foretold;
use barm_science::ruler;
use barm_science::statistics::power::{Place, PowerError, Spreads};
use std::collections::BTreeMap;

impl Lesson {
    /// Chance (1) that the true difference will be found, as [`power`](crate::power) says it of these bags with the
    /// spreads that are truly theirs.
    ///
    /// # Errors
    /// [`PowerError`] where the bags cannot tell it.
    pub fn foretold(&self) -> Result<f64, PowerError> {
        let cell = &self.cell;
        let square = |value: f64| value * value;
        let doubt = square(ruler::usual_difference_sd_mm());
        let group = square(cell.group_sd * cell.bag_sd_mm);
        let spread = |treatment: usize| {
            let wide = if cell.wide && treatment % 2 == 1 { WIDE } else { 1.0 };
            (treatment, Spreads { bag: square(wide * cell.bag_sd_mm) + doubt, group })
        };
        let spreads: BTreeMap<usize, Spreads> = (0..cell.treatments).map(spread).collect();
        let place = |bag: &super::lesson::Made| Place {
            treatment: bag.treatment,
            block: bag.period,
            group: bag.group,
        };
        let places: Vec<Place> = self.bags.iter().map(place).collect();
        let pairs: Vec<(usize, usize)> = (1..cell.treatments).map(|t| (t, 0)).collect();
        let classes = foretold(&self.plan, &places, &pairs, &spreads)?;
        Ok(classes.odds(pairs.len() - 1, cell.difference_mm())?.rightly)
    }
}
