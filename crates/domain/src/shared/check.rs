//! Whether rows of shared data hang together.

use super::{Lying, Rows, TreatmentCode};
use crate::code::BagCode;
use std::collections::BTreeSet;

/// Why rows cannot be shared, or were not taken.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SharedError {
    /// A number that cannot be.
    #[error("{table}: {column} of {of} is {value}; it has to be from {least} to {most}")]
    OutOfRange {
        /// The table.
        table: &'static str,
        /// The column.
        column: &'static str,
        /// The row's code.
        of: String,
        /// The number.
        value: f64,
        /// The least that can be.
        least: f64,
        /// The most that can be.
        most: f64,
    },
    /// A row stands there twice.
    #[error("{table}: {of} stands there twice; take one away")]
    Twice {
        /// The table.
        table: &'static str,
        /// The row's code.
        of: String,
    },
    /// A code that leads nowhere.
    #[error("{table}: {of} is in no row of the table “{missing}”")]
    Nowhere {
        /// The table.
        table: &'static str,
        /// The code.
        of: String,
        /// Where it should stand.
        missing: &'static str,
    },
    /// Two cells of a row that cannot both be.
    #[error("{table}: {of} {what}")]
    Unlike {
        /// The table.
        table: &'static str,
        /// The row's code.
        of: String,
        /// What is wrong.
        what: &'static str,
    },
}

/// One row's numbers.
struct Of<'a> {
    table: &'static str,
    of: &'a dyn std::fmt::Display,
}

impl Of<'_> {
    fn within(
        &self,
        column: &'static str,
        value: f64,
        (least, most): (f64, f64),
    ) -> Result<(), SharedError> {
        // The negation also refuses what is not a number.
        if (least..=most).contains(&value) {
            return Ok(());
        }
        let (table, of) = (self.table, self.of.to_string());
        Err(SharedError::OutOfRange { table, column, of, value, least, most })
    }
}

const SIZE: (f64, f64) = (20.0, 1000.0);
const LIQUID: (f64, f64) = (0.0, 5000.0);
const MASS: (f64, f64) = (0.0, 1000.0);
const WARMTH: (f64, f64) = (0.0, 100.0);
const MINUTES: (f64, f64) = (0.0, 10_000.0);

pub(super) fn check(rows: &Rows) -> Result<(), SharedError> {
    let treatments = treatments(rows)?;
    ingredients(rows, &treatments)?;
    let bags = bags(rows, &treatments)?;
    readings(rows, &bags)?;
    aside(rows, &bags)?;
    meter(rows, &bags)
}

fn twice(table: &'static str, of: &dyn std::fmt::Display) -> SharedError {
    SharedError::Twice { table, of: of.to_string() }
}

fn nowhere(
    table: &'static str,
    of: &dyn std::fmt::Display,
    missing: &'static str,
) -> SharedError {
    SharedError::Nowhere { table, of: of.to_string(), missing }
}

fn treatments(rows: &Rows) -> Result<BTreeSet<TreatmentCode>, SharedError> {
    let table = "treatments";
    let mut codes = BTreeSet::new();
    for row in &rows.treatments {
        if !codes.insert(row.code) {
            return Err(twice(table, &row.code));
        }
        let of = Of { table, of: &row.code };
        if let Some(question) = row.question {
            of.within("question", f64::from(question), (1.0, 999.0))?;
        }
        of.within("bag_width_mm", row.bag_width_mm, SIZE)?;
        of.within("bag_height_mm", row.bag_height_mm, SIZE)?;
        of.within("card_length_mm", row.card_length_mm, SIZE)?;
        of.within("card_width_mm", row.card_width_mm, SIZE)?;
        of.within("water_mL", row.water_ml, LIQUID)?;
        of.within("water_Cel", row.water_celsius, WARMTH)?;
        of.within("yeast_g", row.yeast_g, MASS)?;
        if let Some(celsius) = row.tray_celsius {
            of.within("tray_Cel", celsius, WARMTH)?;
        }
        let unlike = |what| SharedError::Unlike { table, of: row.code.to_string(), what };
        if row.tray_celsius.is_some() != (row.lying == Lying::Tray) {
            return Err(unlike("has a temperature of a tray if, and only if, it lies in one"));
        }
        if row.yeast.is_none() && row.yeast_g > 0.0 {
            return Err(unlike("has grams of yeast, but no yeast"));
        }
        if row.beside == Some(row.code) {
            return Err(unlike("is compared with itself"));
        }
    }
    let lost = rows.treatments.iter().filter_map(|row| row.beside);
    match lost.into_iter().find(|beside| !codes.contains(beside)) {
        Some(beside) => Err(nowhere(table, &beside, table)),
        None => Ok(codes),
    }
}

fn ingredients(rows: &Rows, treatments: &BTreeSet<TreatmentCode>) -> Result<(), SharedError> {
    let table = "ingredients";
    for row in &rows.ingredients {
        if !treatments.contains(&row.treatment) {
            return Err(nowhere(table, &row.treatment, "treatments"));
        }
        Of { table, of: &row.treatment }.within("amount", row.amount, LIQUID)?;
    }
    Ok(())
}

fn bags(
    rows: &Rows,
    treatments: &BTreeSet<TreatmentCode>,
) -> Result<BTreeSet<BagCode>, SharedError> {
    let table = "bags";
    let mut codes = BTreeSet::new();
    for row in &rows.bags {
        if !codes.insert(row.code) {
            return Err(twice(table, &row.code));
        }
        if !treatments.contains(&row.treatment) {
            return Err(nowhere(table, &row.treatment, "treatments"));
        }
        let of = Of { table, of: &row.code };
        of.within("replicate", f64::from(row.replicate), (1.0, 999.0))?;
        of.within("room_Cel", row.room_celsius, (0.0, 50.0))?;
        of.within("pressure_hPa", row.pressure_hpa, (400.0, 1100.0))?;
    }
    Ok(codes)
}

fn readings(rows: &Rows, bags: &BTreeSet<BagCode>) -> Result<(), SharedError> {
    let table = "readings";
    let mut seen = BTreeSet::new();
    for row in &rows.readings {
        if !bags.contains(&row.bag) {
            return Err(nowhere(table, &row.bag, "bags"));
        }
        let of = Of { table, of: &row.bag };
        of.within("minute", row.minute, MINUTES)?;
        of.within("height_mm", row.height_mm, (0.0, 1000.0))?;
        // Negative zero is zero.
        if !seen.insert((row.bag, (row.minute + 0.0).to_bits())) {
            return Err(twice(table, &format!("{} at minute {}", row.bag, row.minute)));
        }
    }
    Ok(())
}

fn aside(rows: &Rows, bags: &BTreeSet<BagCode>) -> Result<(), SharedError> {
    let table = "set-aside";
    let mut seen = BTreeSet::new();
    for row in &rows.set_aside {
        if !bags.contains(&row.bag) {
            return Err(nowhere(table, &row.bag, "bags"));
        }
        if !seen.insert(row.bag) {
            return Err(twice(table, &row.bag));
        }
    }
    Ok(())
}

fn meter(rows: &Rows, bags: &BTreeSet<BagCode>) -> Result<(), SharedError> {
    let table = "meter";
    for row in &rows.meter {
        if !bags.contains(&row.bag) {
            return Err(nowhere(table, &row.bag, "bags"));
        }
        let of = Of { table, of: &row.bag };
        if let Some(turn) = row.turn {
            of.within("turn", f64::from(turn), (1.0, 9999.0))?;
        }
        if let Some(minute) = row.minute {
            of.within("minute", minute, MINUTES)?;
        }
        if let Some(celsius) = row.celsius {
            of.within("liquid_Cel", celsius, WARMTH)?;
        }
        of.within("percent", row.percent, (0.0, 100.0))?;
        of.within("gas_mL", row.gas_ml, LIQUID)?;
        of.within("air_mL", row.air_ml, LIQUID)?;
        if row.gas_ml <= 0.0 {
            let what = "was held to the meter without any gas";
            return Err(SharedError::Unlike { table, of: row.bag.to_string(), what });
        }
    }
    Ok(())
}
