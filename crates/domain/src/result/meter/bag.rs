//! One bag at the meter.

use super::MeterReading;
use crate::outlook::Treated;
use crate::plan::PlannedBag;
use crate::result::Measured;
use barm_science::ethanol::water_gas_ratio;
use barm_science::meter::{CELSIUS_SD, Corrected, Liquid, Meter, Reading};
use barm_science::model::state::{
    DEXTRIN, FRUCTOSE, GALACTOSE, GALACTOSIDES, GLUCOSE, LACTOSE, MALTOSE, MALTOTRIOSE,
    MELIBIOSE, SUCROSE, State,
};
use barm_science::model::validity::Beyond;
use barm_science::model::{Mixture, run};
use barm_science::prior::Typical;
use barm_science::stoichiometry::{HEXOSE, SALT};
use barm_science::units::Celsius;

/// A bag that was held to the meter.
#[derive(Debug, Clone, PartialEq)]
pub struct MeteredBag {
    /// The bag, as it stands in the plan.
    pub bag: PlannedBag,
    /// As shown, in the meter's own percent.
    pub shown_percent: f64,
    /// Without the zero of its turn and undiluted, in the meter's own percent.
    pub percent: f64,
    /// Temperature of its liquid that was reckoned with (°C).
    pub celsius: f64,
    /// Ethanol in the liquid (g/L), 95 %, as far as this meter is known: 0 where none shows, without an
    /// upper end where the display stood at its own.
    pub ethanol_g_per_l: Measured,
    /// The display stood at the end of its range: there is at least so much.
    pub at_least: bool,
    /// Laws that the liquid lies beyond, so that less is known of it than the interval says.
    pub beyond: Vec<Beyond>,
    /// The rule by which the bag is set aside, if it is.
    pub set_aside: Option<String>,
}

/// The same with what a comparison needs.
pub(super) struct Pushed {
    pub(super) bag: MeteredBag,
    pub(super) corrected: Corrected,
    /// Logarithm of the ratio of ethanol between water and gas at the temperature of each draw of the
    /// forecast; nothing where a thermometer was read.
    pub(super) log_ratios: Option<Vec<f64>>,
}

/// Longest time after a zero reading that a bag is followed to the meter (min).
const LONGEST_MIN: f64 = 24.0 * 60.0;

impl Pushed {
    pub(super) fn of(
        bag: &PlannedBag,
        reading: &MeterReading,
        treated: Option<&Treated>,
        meter: &Meter,
        set_aside: Option<String>,
    ) -> Result<Self, String> {
        let code = &bag.code;
        let found = liquid(reading, treated).map_err(|reason| format!("{code}: {reason}"))?;
        let (liquid, log_ratios) = found;
        let pushed = Reading {
            percent: reading.percent,
            turn: reading.turn,
            liquid,
            sample: reading.sample,
        };
        let last = treated.map(|treated| f64::from(treated.forecast.last_minute()));
        let minute = reading.minute.or(last).unwrap_or_default();
        let said = |error| format!("{code}: {error}");
        let corrected = meter.corrected(&pushed).map_err(said)?;
        let estimate = meter.estimate(&pushed).map_err(said)?;
        Ok(Self {
            bag: MeteredBag {
                bag: bag.clone(),
                shown_percent: reading.percent,
                percent: corrected.percent,
                celsius: liquid.celsius.0,
                ethanol_g_per_l: Measured {
                    value: estimate.g_per_l,
                    low: estimate.low_g_per_l,
                    high: estimate.high_g_per_l,
                },
                at_least: estimate.at_least,
                beyond: liquid.beyond(minute),
                set_aside,
            },
            corrected,
            log_ratios,
        })
    }
}

/// The liquid under the gas when it was drawn, and what the forecast leaves open of it.
fn liquid(
    reading: &MeterReading,
    treated: Option<&Treated>,
) -> Result<(Liquid, Option<Vec<f64>>), String> {
    if let Some(celsius) = reading.celsius.filter(|celsius| !(0.0..=60.0).contains(celsius)) {
        return Err(format!(
            "{celsius} °C is no temperature of a bag at the meter; 0 to 60 °C are"
        ));
    }
    let Some(treated) = treated else {
        let celsius = reading.celsius.ok_or(
            "there is no forecast for its treatment and day, so its temperature is not known; read it \
             with a thermometer",
        )?;
        return Ok((Liquid::water(Celsius(celsius)), None));
    };
    let last = treated.forecast.last_minute();
    let minute = reading.minute.unwrap_or(f64::from(last));
    if !(0.0..=LONGEST_MIN).contains(&minute) {
        return Err(format!("minute {minute} after its zero reading cannot be; 0 to 1440 can"));
    }
    let Typical { setup, parameters } = &treated.typical;
    let course =
        run(setup, parameters, minute.round() as u32).map_err(|error| error.to_string())?;
    let moment = course.moments.last().ok_or("the forecast has no such minute")?;
    let solution_l = Mixture::new(setup, parameters).solution_l();
    let salt_g: f64 =
        setup.foods.iter().map(|food| 0.01 * food.grams * food.composition.salt).sum();
    let whole = Liquid {
        celsius: Celsius(moment.celsius),
        celsius_sd: CELSIUS_SD.value,
        sugar_g_per_l: 1e-3 * HEXOSE.value * dissolved_mmol(&moment.state) / solution_l,
        salt_mol_per_l: salt_g / SALT.value / solution_l,
    };
    if let Some(celsius) = reading.celsius {
        return Ok((Liquid { celsius: Celsius(celsius), ..whole }, None));
    }
    // What the draws leave open at the last minute that they reach.
    let drawn = treated.forecast.celsius().minute((minute.round() as u32).min(last));
    let mean = drawn.iter().sum::<f64>() / drawn.len() as f64;
    let square: f64 = drawn.iter().map(|celsius| (celsius - mean) * (celsius - mean)).sum();
    let celsius_sd = (square / drawn.len() as f64).sqrt();
    let log_ratios = drawn.iter().map(|t| libm::log(water_gas_ratio(Celsius(*t)))).collect();
    Ok((Liquid { celsius_sd, ..whole }, Some(log_ratios)))
}

/// Sugars in solution (mmol of hexose units).
fn dissolved_mmol(state: &State) -> f64 {
    [
        DEXTRIN,
        MALTOTRIOSE,
        GALACTOSIDES,
        MELIBIOSE,
        MALTOSE,
        SUCROSE,
        LACTOSE,
        GALACTOSE,
        GLUCOSE,
        FRUCTOSE,
    ]
    .into_iter()
    .map(|place| state[place])
    .sum()
}
