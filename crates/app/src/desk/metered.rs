//! What the breath meter says of bags, as every face tells it: one bag against another, and nothing of
//! any person.

use super::voice;
use barm_domain::amount::show::both_degrees;
use barm_domain::plan::Plan;
use barm_domain::record::Standing;
use barm_domain::result::meter::{
    ClassMeter, MeterCompared, MeterReading, MeterResult, MeteredBag, on_record,
};

/// What was pushed, and the meter that it was pushed through.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Pushes {
    /// What it showed of bags.
    pub(crate) readings: Vec<MeterReading>,
    /// The meter.
    pub(crate) meter: ClassMeter,
}

impl Pushes {
    /// What stands on record; of the meter what a pilot found.
    pub(crate) fn on_record(plan: &Plan, standing: &Standing) -> Self {
        Self {
            readings: on_record(standing),
            meter: ClassMeter::on_record(plan.known.meter(), standing),
        }
    }
}

/// What the meter says, in words and numbers as they are shown.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Metered {
    /// What has to stand beside every number.
    pub(crate) note: String,
    /// Comparisons.
    pub(crate) compared: Vec<MeteredSays>,
    /// Bags.
    pub(crate) bags: Vec<MeteredRow>,
    /// Readings that could not be used, and why.
    pub(crate) not_used: Vec<String>,
}

/// One comparison.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MeteredSays {
    /// What it says, in a sentence.
    pub(crate) says: String,
    /// How many bags it rests on.
    pub(crate) rests: String,
    /// That the display's order must not be told.
    pub(crate) warning: Option<String>,
}

/// One bag.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MeteredRow {
    /// Its code.
    pub(crate) bag: String,
    /// What it is.
    pub(crate) treatment: String,
    /// As shown.
    pub(crate) shown: String,
    /// Without the meter's zero.
    pub(crate) percent: String,
    /// How warm its liquid was.
    pub(crate) warmth: String,
    /// Ethanol in its liquid, 95 %, as far as this meter is known.
    pub(crate) ethanol: String,
    /// What is to be known of it; empty for a plain one.
    pub(crate) remark: String,
}

/// Heads of the columns of [`MeteredRow`].
pub(crate) const METERED_HEADS: [&str; 7] =
    ["bag", "treatment", "shown, %", "less its zero", "liquid at", "ethanol, g/L", "remark"];

impl MeteredRow {
    /// Its cells, in the order of [`METERED_HEADS`].
    pub(crate) fn cells(&self) -> [&str; 7] {
        let Self { bag, treatment, shown, percent, warmth, ethanol, remark } = self;
        [bag, treatment, shown, percent, warmth, ethanol, remark].map(String::as_str)
    }
}

/// What the meter says; nothing if no bag was held to it.
pub(crate) fn metered(plan: &Plan, result: Option<&MeterResult>) -> Option<Metered> {
    let result = result?;
    let voice = voice(plan);
    let says = |compared: &MeterCompared| MeteredSays {
        says: voice.metered(compared),
        rests: voice.metered_bags(compared),
        warning: voice.metered_warning(compared),
    };
    let mut note = result.note.to_owned();
    note.get_mut(..1).map(str::make_ascii_uppercase);
    Some(Metered {
        note: format!("{note}."),
        compared: result.comparisons.iter().map(says).collect(),
        bags: result.bags.iter().map(|bag| row(bag, voice.metered_bag(bag))).collect(),
        not_used: result.rejected.iter().map(|rejected| rejected.reason.clone()).collect(),
    })
}

fn row(bag: &MeteredBag, remark: Option<String>) -> MeteredRow {
    let ethanol = &bag.ethanol_g_per_l;
    MeteredRow {
        bag: bag.bag.code.clone(),
        treatment: bag.bag.treatment.clone(),
        shown: format!("{:.2}", bag.shown_percent),
        percent: format!("{:.2}", bag.percent.max(0.0)),
        warmth: both_degrees(bag.celsius),
        ethanol: if bag.at_least {
            format!("over {:.1}", ethanol.low)
        } else if ethanol.value > 0.0 {
            format!("{:.1} ({:.1} to {:.1})", ethanol.value, ethanol.low, ethanol.high)
        } else {
            format!("under {:.1}", ethanol.high)
        },
        remark: remark.unwrap_or_default(),
    }
}
