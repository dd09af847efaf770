//! What charts are made of: plain numbers with a name and a look.

use super::Look;
use barm_science::statistics::summary::summarize;

/// A number with the range that goes with it, low to high; the unit is told where it is used.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Estimate {
    /// The best single number.
    pub value: f64,
    /// The low end of the range.
    pub low: f64,
    /// The high end of the range.
    pub high: f64,
}

/// One minute of a forecast, in millimeters above the bag's own zero reading.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Moment {
    /// Minutes since the zero reading.
    pub minute: f64,
    /// The rise that half of all bags stay below.
    pub median: f64,
    /// The low edge of the band.
    pub low: f64,
    /// The high edge of the band.
    pub high: f64,
}

/// The forecast of one treatment.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Strand {
    /// The treatment's name.
    pub name: String,
    /// Its hue, mark and dash.
    pub look: Look,
    /// The forecast in order of time.
    pub moments: Vec<Moment>,
}

/// One reading of one bag: minute since its zero reading, millimeters of rise.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Reading {
    /// Minutes since the zero reading.
    pub minute: f64,
    /// Millimeters above the bag's own zero reading.
    pub rise: f64,
    /// Whether someone doubts it; it is drawn in place, inside a broken ring.
    pub doubtful: bool,
}

/// The readings of every bag of one treatment, and their mean.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Sheaf {
    /// The treatment's name.
    pub name: String,
    /// Its hue, mark and dash.
    pub look: Look,
    /// One list of readings for each bag, in order of time.
    pub bags: Vec<Vec<Reading>>,
    /// The mean rise over the bags, in order of time.
    pub mean: Vec<(f64, f64)>,
}

impl Sheaf {
    /// Minute, low and high edge (mm) of one mean absolute deviation each way around the mean, at the minutes of
    /// the mean at which two bags or more were read that nobody doubts.
    pub fn spread(&self) -> Vec<(f64, f64, f64)> {
        let steps = self.mean.windows(2).map(|two| two[1].0 - two[0].0);
        let step = steps.filter(|step| *step > 0.0).fold(f64::INFINITY, f64::min);
        let near = if step.is_finite() { step / 2.0 } else { 0.5 };
        let at = |&(minute, mean): &(f64, f64)| {
            let sure = self.bags.iter().flatten().filter(|reading| !reading.doubtful);
            let rises: Vec<f64> = sure
                .filter(|reading| (reading.minute - minute).abs() < near)
                .map(|reading| reading.rise)
                .collect();
            let mad = summarize(&rises).ok().filter(|_| rises.len() > 1)?.mad;
            Some((minute, mean - mad, mean + mad))
        };
        self.mean.iter().filter_map(at).collect()
    }
}

/// One bag in a dot plot.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Dot {
    /// Millimeters above the bag's own zero reading.
    pub rise: f64,
    /// Whether the bag is set aside; it is drawn in place, inside a broken ring, and not in the mean.
    pub set_aside: bool,
}

/// All bags of one treatment at one time.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct DotRow {
    /// The treatment's name.
    pub name: String,
    /// Its hue and mark.
    pub look: Look,
    /// One dot a bag.
    pub dots: Vec<Dot>,
    /// The mean in millimeters, over the bags that count; none without such a bag.
    pub mean: Option<f64>,
    /// The mean absolute deviation in millimeters; none with fewer than two bags that count.
    pub mad: Option<f64>,
}

/// The difference of one treatment from its reference.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct IntervalRow {
    /// The treatment's name.
    pub name: String,
    /// Its hue and mark.
    pub look: Look,
    /// The difference in millimeters with its interval; none if it could not be worked out.
    pub difference: Option<Estimate>,
    /// The verdict in a word or two, such as "clear".
    pub verdict: String,
}
