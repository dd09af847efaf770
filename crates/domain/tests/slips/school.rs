//! What the detector is told: forecasts of the bag model for the treatments of a class.

use barm_domain::outlook::{Look, forecast};
use barm_domain::slip::Expected;
use barm_domain::testing::{base_plan, food, period, treatment};

/// A treatment with its forecast.
#[derive(Debug, Clone)]
pub(crate) struct Made {
    pub(crate) name: &'static str,
    pub(crate) enzyme: bool,
    pub(crate) control: bool,
    pub(crate) band: Vec<Expected>,
}

/// Last minute of a reading.
pub(crate) const LAST: u32 = 24;

/// Full height of its bags (mm).
pub(crate) const FULL_MM: f64 = 51.0;

/// The treatments of a class; with a pilot of the same lots, so that the level of the day is known
/// to a standard deviation of `log_sd`, or else as widely as the bag model says before a pilot.
pub(crate) fn treatments(log_sd: Option<f64>) -> Vec<Made> {
    let mut plan = base_plan();
    plan.periods.push(period("1"));
    let made = |name, amount: &str, enzyme, control, share: f64| {
        let treated = treatment(name, food("sucrose", amount));
        let look = Look { draws: 128, ..Look::default() };
        let forecast = forecast(&plan, &treated, look).expect("a forecast").forecast;
        let band = forecast.rise_mm().band();
        let expected = (0..=LAST as usize).map(|minute| {
            let median_mm = share * band.median[minute];
            let (low_mm, high_mm) = match log_sd {
                Some(sd) => (median_mm * (-1.2816 * sd).exp(), median_mm * (1.2816 * sd).exp()),
                None => (share * band.low[minute], share * band.high[minute]),
            };
            Expected { minute: minute as f64, low_mm, median_mm, high_mm }
        });
        Made { name, enzyme, control, band: expected.collect() }
    };
    vec![
        made("much sugar", "4 g", false, false, 1.0),
        made("sugar", "1 g", false, false, 1.0),
        made("little sugar", "0.5 g", false, false, 1.0),
        made("with enzyme", "2 g", true, false, 0.6),
        made("control", "1 g", false, true, 0.8),
    ]
}
