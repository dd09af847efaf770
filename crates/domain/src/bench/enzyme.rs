//! Enzymes as the students get them: drops, liquids, and solutions that the teacher made of
//! powders and tablets before school.

use super::{BenchError, scatter, tools};
use crate::amount::{Amount, AmountKind};
use crate::nearest::plain;
use barm_science::enzyme::products::Measure;
use barm_science::enzyme::{PRODUCTS, Product};
use barm_science::setup::EnzymeDose;

/// An enzyme as it stands on the bench.
#[derive(Debug, Clone, PartialEq)]
pub struct ShelfEnzyme {
    /// Name in a plan, such as `glucoamylase solution`.
    pub name: String,
    /// The product it comes from.
    pub product: &'static Product,
    /// Whether it is a stock solution made from a powder or tablets.
    pub is_stock: bool,
}

/// Everything that can be named as an enzyme: each product, and a solution of each dusty one.
pub fn shelf() -> impl Iterator<Item = ShelfEnzyme> {
    PRODUCTS.iter().flat_map(|product| {
        let as_bought = ShelfEnzyme { name: product.name.to_owned(), product, is_stock: false };
        let dissolved = product.dust.then(|| {
            let stem = product.name.trim_end_matches(" powder");
            ShelfEnzyme { name: format!("{stem} solution"), product, is_stock: true }
        });
        std::iter::once(as_bought).chain(dissolved)
    })
}

/// The enzyme of that name, however loosely it is written.
pub fn find(name: &str) -> Option<ShelfEnzyme> {
    let wanted = plain(name);
    shelf().find(|enzyme| {
        plain(&enzyme.name) == wanted
            || (!enzyme.is_stock && plain(enzyme.product.key) == wanted)
    })
}

impl ShelfEnzyme {
    /// What that amount puts into a bag.
    ///
    /// # Errors
    /// [`BenchError`] if the enzyme cannot be measured that way.
    pub fn dose(&self, amount: &Amount) -> Result<EnzymeDose, BenchError> {
        let sd = scatter(amount.kind);
        let ml = match amount.kind {
            AmountKind::Volume | AmountKind::Spoon => Some(amount.value),
            AmountKind::Drops => Some(amount.value * tools::DROP_ML.value),
            AmountKind::Mass | AmountKind::Pieces => None,
        };
        if self.is_stock {
            let Some(ml) = ml else {
                return Err(self.refuse(amount, "mL or drops, such as \"2 mL\""));
            };
            return Ok(self.product.stock(self.measures_in_100_ml(), 100.0, ml, sd));
        }
        let measures = match (self.product.measure, amount.kind) {
            (Measure::Gram, AmountKind::Mass)
            | (Measure::Drop, AmountKind::Drops)
            | (Measure::Tablet, AmountKind::Pieces) => Some(amount.value),
            (Measure::Milliliter, _) => ml,
            (Measure::Drop, _) => ml.map(|ml| ml / tools::DROP_ML.value),
            (Measure::Gram | Measure::Tablet, _) => None,
        };
        let wanted = match self.product.measure {
            Measure::Gram => "grams, such as \"0.1 g\"",
            Measure::Drop => "drops, such as \"5 drops\"",
            Measure::Tablet => "tablets, such as \"1 tablet\"",
            Measure::Milliliter => "mL, such as \"1 mL\"",
        };
        measures
            .map(|measures| self.product.dose(measures, sd))
            .ok_or_else(|| self.refuse(amount, wanted))
    }

    /// Measures of the product in 100 mL of stock: 1 g of powder, or one tablet.
    pub const fn measures_in_100_ml(&self) -> f64 {
        match self.product.measure {
            Measure::Tablet => 1.0,
            Measure::Gram | Measure::Drop | Measure::Milliliter => tools::STOCK_STRENGTH.value,
        }
    }

    fn refuse(&self, amount: &Amount, wanted: &str) -> BenchError {
        BenchError {
            key: "enzyme_amount",
            problem: format!("“{}” is not an amount of {}", amount.written, self.name),
            fix: format!("write {wanted}"),
        }
    }
}
