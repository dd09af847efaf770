//! What all the portions in a bag add up to.

use crate::carbonate::cations_and_total;
use crate::cooling::taken_by_100_g;
use crate::setup::{Composition, Grain, Portion};
use crate::stoichiometry::BICARBONATE;

/// Grams of each part (moles of acid and bicarbonate) over all portions.
#[derive(Debug, Clone, Default)]
pub(super) struct Pantry {
    pub(super) sum: Composition,
    pub(super) grams: f64,
    /// Heat that dissolving and wetting take from the water (J).
    pub(super) taken_j: f64,
    /// Raw starch (g), portion by portion, with the plant that it comes from.
    pub(super) raw: Vec<(Option<Grain>, f64)>,
    /// Acetic, malic, citric and lactic acid, each in all its forms (mol).
    pub(super) acids: [f64; 4],
    /// Metal ions of those acids' salts (mol).
    pub(super) cations: f64,
    /// Protein and minerals of flour and milk (g).
    pub(super) buffering_g: f64,
}

/// Grams in 100 g of a food that are neither water, carbohydrate nor salt, where there is starch or
/// milk sugar: protein and minerals of flour and milk. Of a sweetener, what is left buffers nothing.
fn buffering_of_100_g(food: &Composition) -> f64 {
    let goes_with = food.raw_starch + food.cooked_starch + food.lactose;
    let sugars: f64 = food.carbohydrates().iter().sum();
    (100.0 - food.water - sugars - food.salt).clamp(0.0, goes_with)
}

impl Pantry {
    pub(super) fn add(&mut self, portion: &Portion) {
        let of = |part: f64| 0.01 * portion.grams * part;
        let part = &portion.composition;
        self.grams += portion.grams;
        self.taken_j += of(taken_by_100_g(part));
        if part.raw_starch > 0.0 {
            self.raw.push((portion.grain, of(part.raw_starch)));
        }
        self.sum.water += of(part.water);
        let sugars = part.carbohydrates();
        for (all, sugar) in self.sum.carbohydrates_mut().into_iter().zip(sugars) {
            *all += of(sugar);
        }
        self.sum.salt += of(part.salt);
        let acids = part.acids.times(0.01 * portion.grams);
        let (cations, acids_in_all) = cations_and_total(&acids);
        self.cations += cations;
        for (all, acid) in self.acids.iter_mut().zip(acids_in_all) {
            *all += acid;
        }
        self.buffering_g += of(buffering_of_100_g(part));
        self.sum.acids.acetic += acids.acetic;
        self.sum.acids.malic += acids.malic;
        self.sum.acids.citric += acids.citric;
        self.sum.acids.lactic += acids.lactic;
        self.sum.bicarbonate += of(part.bicarbonate);
    }

    /// Sugars, dextrin and salts (g).
    pub(super) fn dissolved_g(&self) -> f64 {
        let sum = &self.sum;
        sum.dextrin
            + sum.maltotriose
            + sum.galactosides
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
