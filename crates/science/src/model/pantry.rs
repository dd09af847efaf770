//! What all the portions in a bag add up to.

use crate::setup::{Composition, Portion};
use crate::stoichiometry::BICARBONATE;

/// Grams of each part (moles of acid and bicarbonate) over all portions.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Pantry {
    pub(super) sum: Composition,
    pub(super) grams: f64,
}

impl Pantry {
    pub(super) fn add(&mut self, portion: &Portion) {
        let of = |part: f64| 0.01 * portion.grams * part;
        let part = &portion.composition;
        self.grams += portion.grams;
        self.sum.water += of(part.water);
        self.sum.raw_starch += of(part.raw_starch);
        self.sum.cooked_starch += of(part.cooked_starch);
        self.sum.dextrin += of(part.dextrin);
        self.sum.maltose += of(part.maltose);
        self.sum.sucrose += of(part.sucrose);
        self.sum.lactose += of(part.lactose);
        self.sum.galactose += of(part.galactose);
        self.sum.glucose += of(part.glucose);
        self.sum.fructose += of(part.fructose);
        self.sum.salt += of(part.salt);
        self.sum.acid += of(part.acid);
        self.sum.bicarbonate += of(part.bicarbonate);
    }

    /// Sugars, dextrin and salts (g).
    pub(super) fn dissolved_g(&self) -> f64 {
        let sum = &self.sum;
        sum.dextrin
            + sum.maltose
            + sum.sucrose
            + sum.lactose
            + sum.galactose
            + sum.glucose
            + sum.fructose
            + sum.salt
            + sum.bicarbonate * BICARBONATE.value
    }
}
