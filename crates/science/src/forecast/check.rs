//! Values that no bag can have.

use super::Span;
use crate::bag::simulated_capacity_ml;
use crate::model::{Mixture, Parameters};
use crate::ode::OdeError;
use crate::setup::{Composition, Lying, Portion, Setup};

/// Why a bag cannot be forecast.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SetupError {
    /// A value that no bag can have.
    #[error(
        "{field} is {} {unit}; it must lie between {} and {} {unit}",
        rounded(*value), rounded(*low), rounded(*high)
    )]
    OutsideRange {
        /// Which field, such as `water_ml` or `foods[0].grams`.
        field: String,
        /// Its value.
        value: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
        /// Least value allowed.
        low: f64,
        /// Largest value allowed.
        high: f64,
    },
    /// The solver found no way on; the setup is in order but at the edge of sense.
    #[error("this bag could not be worked out: {0}")]
    Unsolved(#[from] OdeError),
}

/// A number to four figures, as one would say it.
fn rounded(value: f64) -> String {
    if value.abs() >= 100.0 && value.abs() < 1e9 {
        format!("{value:.0}")
    } else if value.abs() >= 1.0 && value.abs() < 100.0 {
        let text = format!("{value:.2}");
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        format!("{value}")
    }
}

fn within(
    field: &str,
    value: f64,
    unit: &'static str,
    low: f64,
    high: f64,
) -> Result<(), SetupError> {
    if (low..=high).contains(&value) {
        Ok(())
    } else {
        Err(SetupError::OutsideRange { field: field.to_owned(), value, unit, low, high })
    }
}

/// Largest spread of a dose that still is a dose (1).
const MOST_SD: f64 = 3.0;

pub(crate) fn span(span: &Span) -> Result<(), SetupError> {
    within("last_minute", f64::from(span.last_minute), "min", 1.0, 1440.0)?;
    within("draws", span.draws as f64, "", 1.0, 100_000.0)?;
    within("until_hours", span.until_hours, "h", 0.0, 72.0)
}

/// Whether such a bag can stand on a bench: every amount within sense, and all of it in the shut
/// bag. Says nothing of what it will do.
///
/// # Errors
/// The first value that no bag can have.
pub fn possible(setup: &Setup) -> Result<(), SetupError> {
    within("water_ml", setup.water_ml, "mL", 1.0, 2000.0)?;
    within("water_celsius", setup.water_celsius, "°C", 0.0, 100.0)?;
    within("water_celsius_sd", setup.water_celsius_sd, "K", 0.0, 20.0)?;
    within("water_dosing_sd", setup.water_dosing_sd, "", 0.0, MOST_SD)?;
    within("room_celsius", setup.room_celsius, "°C", 0.0, 50.0)?;
    within("pressure_pa", setup.pressure_pa, "Pa", 45_000.0, 110_000.0)?;
    within("trapped_air_ml", setup.trapped_air_ml, "mL", 0.0, 5000.0)?;
    within("wet_before_zero_min", setup.wet_before_zero_min, "min", 0.0, 240.0)?;
    within("bag.width_mm", setup.bag.width_mm, "mm", 30.0, 800.0)?;
    within("bag.height_mm", setup.bag.height_mm, "mm", 30.0, 800.0)?;
    within("bag.film_um", setup.bag.film_um, "µm", 10.0, 300.0)?;
    within("card.length_mm", setup.card.length_mm, "mm", 10.0, 1000.0)?;
    within("card.width_mm", setup.card.width_mm, "mm", 10.0, 1000.0)?;
    within("card.grams", setup.card.grams, "g", 0.0, 200.0)?;
    if let Lying::WarmTray { celsius } = setup.lying {
        within("lying.celsius", celsius, "°C", 0.0, 70.0)?;
    }
    if let Some(yeast) = &setup.yeast {
        within("yeast.grams", yeast.grams, "g", 0.0, 100.0)?;
        within("yeast.dosing_sd", yeast.dosing_sd, "", 0.0, MOST_SD)?;
        within("yeast.age_months", yeast.age_months, "months", 0.0, 120.0)?;
        within("yeast.stored_celsius", yeast.stored_celsius, "°C", -30.0, 50.0)?;
    }
    for (i, food) in setup.foods.iter().enumerate() {
        portion(&format!("foods[{i}]"), food)?;
    }
    for (i, enzyme) in setup.enzymes.iter().enumerate() {
        within(&format!("enzymes[{i}].units"), enzyme.units, "µmol/min", 0.0, 1e7)?;
        within(&format!("enzymes[{i}].activity_sd"), enzyme.activity_sd, "", 0.0, MOST_SD)?;
        within(&format!("enzymes[{i}].dosing_sd"), enzyme.dosing_sd, "", 0.0, MOST_SD)?;
        within(
            &format!("enzymes[{i}].stock_age_min"),
            enzyme.stock_age_min,
            "min",
            0.0,
            2880.0,
        )?;
        if let Some(carrier) = &enzyme.carrier {
            portion(&format!("enzymes[{i}].carrier"), carrier)?;
        }
    }
    contents(setup)
}

/// Share of the simulated capacity beyond which a bag cannot be closed (1).
const CLOSES_AT: f64 = 0.9;

fn contents(setup: &Setup) -> Result<(), SetupError> {
    let mixture = Mixture::new(setup, &Parameters::median());
    let with_air = mixture.contents_ml() + setup.trapped_air_ml;
    within("contents", with_air, "mL", 0.0, CLOSES_AT * simulated_capacity_ml(&setup.bag))
}

fn portion(field: &str, portion: &Portion) -> Result<(), SetupError> {
    within(&format!("{field}.grams"), portion.grams, "g", 0.0, 1000.0)?;
    within(&format!("{field}.dosing_sd"), portion.dosing_sd, "", 0.0, MOST_SD)?;
    within(&format!("{field}.content_sd"), portion.content_sd, "", 0.0, MOST_SD)?;
    composition(&format!("{field}.composition"), &portion.composition)
}

fn composition(field: &str, made_of: &Composition) -> Result<(), SetupError> {
    let grams = [
        ("water", made_of.water),
        ("raw_starch", made_of.raw_starch),
        ("cooked_starch", made_of.cooked_starch),
        ("dextrin", made_of.dextrin),
        ("maltotriose", made_of.maltotriose),
        ("galactosides", made_of.galactosides),
        ("maltose", made_of.maltose),
        ("sucrose", made_of.sucrose),
        ("lactose", made_of.lactose),
        ("galactose", made_of.galactose),
        ("glucose", made_of.glucose),
        ("fructose", made_of.fructose),
        ("salt", made_of.salt),
    ];
    let mut sum = 0.0;
    for (part, value) in grams {
        within(&format!("{field}.{part}"), value, "g per 100 g", 0.0, 100.0)?;
        sum += value;
    }
    // Food tables round each part, so that a pure sugar may add up to a little over the whole.
    within(&format!("{field} (sum of parts)"), sum, "g per 100 g", 0.0, 105.0)?;
    let acids = [
        ("acids.acetic", made_of.acids.acetic),
        ("acids.malic", made_of.acids.malic),
        ("acids.citric", made_of.acids.citric),
        ("acids.lactic", made_of.acids.lactic),
        ("acids (sum)", made_of.acids.sum()),
    ];
    for (acid, value) in acids {
        within(&format!("{field}.{acid}"), value, "mol per 100 g", 0.0, 3.0)?;
    }
    within(&format!("{field}.acids.ph"), made_of.acids.ph, "", 0.0, 6.0)?;
    within(&format!("{field}.bicarbonate"), made_of.bicarbonate, "mol per 100 g", 0.0, 1.2)
}
