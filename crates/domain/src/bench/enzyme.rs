//! Enzymes as the students get them: drops, liquids, and solutions that the teacher made of
//! powders and tablets before school.

use super::{BenchError, scatter, tools};
use crate::amount::{Amount, AmountKind};
use crate::cupboard::Cupboard;
use barm_science::enzyme::Product;
use barm_science::enzyme::products::{Measure, product};
use barm_science::setup::{EnzymeDose, EnzymeKind};

/// An enzyme as it stands on the bench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShelfEnzyme {
    /// The product it comes from.
    pub product: &'static Product,
    /// Whether it is a stock solution made from a powder or tablets.
    pub is_stock: bool,
}

/// The enzyme of that name, however loosely it is written, as this amount of it is measured out.
///
/// A powder or tablet that is measured in milliliters or drops is a stock solution of it.
///
/// # Errors
/// [`BenchError`] if there is no such enzyme.
pub fn enzyme(name: &str, amount: &Amount) -> Result<ShelfEnzyme, BenchError> {
    let key = Cupboard::enzyme(name).map_err(|missing| BenchError {
        key: "enzyme",
        problem: missing.to_string(),
        fix: missing.fix(),
    })?;
    // Every key that the cupboard gives out is that of a product.
    let product = product(&key).ok_or_else(|| BenchError {
        key: "enzyme",
        problem: format!("there is no enzyme called “{name}”"),
        fix: "write the enzyme as it stands in the list of products".into(),
    })?;
    let flows = matches!(amount.kind, AmountKind::Volume | AmountKind::Drops);
    let dry = matches!(product.measure, Measure::Gram | Measure::Tablet);
    Ok(ShelfEnzyme { product, is_stock: flows && dry })
}

impl ShelfEnzyme {
    /// What it is called on a tray list, such as `glucoamylase solution`.
    pub fn name(&self) -> String {
        if !self.is_stock {
            return self.product.name.to_owned();
        }
        let words = self.product.name.replace(" (fungal)", "");
        let stem = words.trim_end_matches(" powder").trim_end_matches(" tablet");
        format!("{stem} solution")
    }

    /// What that amount puts into a bag: the enzyme that the product is bought for. A solution is as
    /// old as [`tools::STOCK_AGE`] and shaken.
    ///
    /// # Errors
    /// [`BenchError`] if the enzyme cannot be measured that way.
    pub fn dose(&self, amount: &Amount) -> Result<EnzymeDose, BenchError> {
        let sd = scatter(amount.kind);
        if self.is_stock {
            let ml = self.ml(amount).ok_or_else(|| self.refuse(amount))?;
            let stock = self.product.stock(self.measures_in_100_ml(), 100.0, ml, sd);
            return Ok(EnzymeDose { stock_age_min: tools::STOCK_AGE.value, ..stock });
        }
        self.measures(amount)
            .map(|measures| self.product.dose(measures, sd))
            .ok_or_else(|| self.refuse(amount))
    }

    /// The same with what else the product does, as malt's second enzyme.
    ///
    /// # Errors
    /// As [`Self::dose`].
    pub fn doses(&self, amount: &Amount) -> Result<Vec<EnzymeDose>, BenchError> {
        let first = self.dose(amount)?;
        let measures = self.measures(amount).ok_or_else(|| self.refuse(amount))?;
        let beside = self.product.beside(measures, first.dosing_sd);
        let aged = |dose| EnzymeDose { stock_age_min: first.stock_age_min, ..dose };
        Ok(std::iter::once(first).chain(beside.map(aged)).collect())
    }

    /// Volume of a liquid, or of a solution (mL); nothing for what is dry or counted.
    pub fn ml(&self, amount: &Amount) -> Option<f64> {
        let liquid = self.is_stock
            || matches!(self.product.measure, Measure::Milliliter | Measure::Drop);
        match amount.kind {
            AmountKind::Volume | AmountKind::Spoon if liquid => Some(amount.value),
            AmountKind::Drops if liquid => Some(amount.value * tools::DROP_ML.value),
            _ => None,
        }
    }

    /// Measures of the product itself (g, mL, drops or tablets) in that amount, stock solutions
    /// counted by what is dissolved in them.
    pub fn measures(&self, amount: &Amount) -> Option<f64> {
        if self.is_stock {
            return self.ml(amount).map(|ml| ml * self.measures_in_100_ml() / 100.0);
        }
        match (self.product.measure, amount.kind) {
            (Measure::Gram, AmountKind::Mass)
            | (Measure::Drop, AmountKind::Drops)
            | (Measure::Tablet, AmountKind::Pieces) => Some(amount.value),
            (Measure::Milliliter, _) => self.ml(amount),
            (Measure::Drop, _) => self.ml(amount).map(|ml| ml / tools::DROP_ML.value),
            (Measure::Gram | Measure::Tablet, _) => None,
        }
    }

    /// Measures of the product in 100 mL of stock: 1 g of powder, 5 g of malt, or one tablet.
    pub const fn measures_in_100_ml(&self) -> f64 {
        match self.product.measure {
            Measure::Tablet => 1.0,
            Measure::Gram if matches!(self.product.kind, EnzymeKind::BetaAmylase) => {
                tools::MALT_STRENGTH.value
            }
            Measure::Gram | Measure::Drop | Measure::Milliliter => tools::STOCK_STRENGTH.value,
        }
    }

    fn refuse(&self, amount: &Amount) -> BenchError {
        let fix = match self.product.measure {
            Measure::Gram => "write mL of the solution made before school, such as \"2 mL\"",
            Measure::Drop => "write drops, such as \"5 drops\"",
            Measure::Tablet => "write mL of the solution made before school, such as \"5 mL\"",
            Measure::Milliliter => "write mL, such as \"1 mL\"",
        };
        BenchError {
            key: "enzyme_amount",
            problem: format!("“{}” is not an amount of {}", amount.written, self.name()),
            fix: fix.into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::enzyme;
    use crate::amount::Amount;

    #[test]
    fn what_is_measured_in_ml_of_a_powder_is_its_solution() {
        for (name, amount, called, measures) in [
            ("glucoamylase solution", "2 mL", "glucoamylase solution", 0.02),
            ("glucoamylase-powder", "2 mL", "glucoamylase solution", 0.02),
            ("glucoamylase powder", "0.1 g", "glucoamylase powder", 0.1),
            ("amylase solution", "2 mL", "amylase solution", 0.02),
            ("lactase tablet", "10 mL", "lactase solution", 0.1),
            ("lactase tablet", "1 tablet", "lactase tablet", 1.0),
            ("lactase drops", "5 drops", "lactase drops", 5.0),
            ("lactase drops", "0.25 mL", "lactase drops", 5.0),
            ("invertase liquid", "1 mL", "invertase liquid", 1.0),
        ] {
            let amount = Amount::parse(amount).unwrap();
            let found = enzyme(name, &amount).unwrap();
            assert_eq!(found.name(), called, "{name}");
            let got = found.measures(&amount).unwrap();
            assert!((got - measures).abs() < 1e-12, "{name} {}: {got}", amount.written);
            assert!(found.dose(&amount).is_ok());
        }
    }

    #[test]
    fn what_cannot_be_measured_says_what_to_write() {
        for (name, amount) in [
            ("glucoamylase powder", "1/8 tsp"),
            ("lactase drops", "1 g"),
            ("invertase", "2 drops"),
        ] {
            let amount = Amount::parse(amount).unwrap();
            let refused = enzyme(name, &amount).and_then(|found| found.dose(&amount));
            match refused {
                Err(error) => assert!(error.fix.starts_with("write"), "{name}: {error:?}"),
                Ok(_) => assert_eq!(name, "invertase"),
            }
        }
        assert!(enzyme("catalase", &Amount::parse("1 mL").unwrap()).is_err());
    }
}
