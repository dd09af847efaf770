//! What must be bought, mixed and laid out.

use super::{Caution, Entry, Imprint};
use crate::chart::Look;

/// The prep sheet of a school day.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PrepSheet {
    /// School, sheet code, language.
    pub imprint: Imprint,
    /// The plan's title.
    pub title: String,
    /// The days and how much there is to do, in a few words.
    pub summary: String,
    /// Bags, cards, labels and the like, over the whole day.
    pub totals: Vec<Total>,
    /// What to buy, in whole packs.
    pub shopping: Vec<Purchase>,
    /// What the shopping costs in all, such as "$34.20"; none if no price is known.
    pub cost: Option<String>,
    /// What the cost leaves out, such as "without 2 materials that have no price".
    pub cost_note: String,
    /// Solutions to make before school.
    pub stocks: Vec<Stock>,
    /// Hot and cold water, period by period.
    pub water: Vec<WaterMix>,
    /// What the mixing takes for granted, such as the temperature of the tap.
    pub water_note: String,
    /// Trays, period by period.
    pub trays: Vec<PeriodTrays>,
    /// Anything else to know.
    pub notes: Vec<Entry>,
    /// Cautions that this plan's own choices trigger.
    pub cautions: Vec<Caution>,
}

/// A number of things needed over the whole day.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Total {
    /// What is counted, such as "bags".
    pub what: String,
    /// How many or how much, with its unit.
    pub amount: String,
    /// What that is made of, such as "96 and 10 spare".
    pub note: String,
}

/// One line of the shopping list.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Purchase {
    /// What to buy.
    pub item: String,
    /// How much the day needs, spare included, in kitchen and metric units.
    pub need: String,
    /// How much is in stock; empty if nothing.
    pub in_stock: String,
    /// Whole packs to buy, such as "2 × 113 g"; empty if nothing.
    pub packs: String,
    /// What they cost; empty if no price is known.
    pub cost: String,
}

/// A stock solution.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct Stock {
    /// What it is.
    pub name: String,
    /// How much to make, spare included.
    pub makes: String,
    /// How to make it, in a sentence or two.
    pub recipe: String,
    /// Which bags get how much of it.
    pub serves: String,
}

/// The warm water of one period.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct WaterMix {
    /// The period, such as "Period 3".
    pub period: String,
    /// What the thermometer should read as it is poured, such as "40 °C"; the trays name it so.
    pub poured: String,
    /// Which bags get it, such as "Cold, Cool"; empty where the period has one water for all.
    pub whose: String,
    /// When to mix, such as "10:28".
    pub clock: String,
    /// Hot water, with its unit.
    pub hot: String,
    /// Cold water, with its unit.
    pub cold: String,
    /// Both together.
    pub total: String,
    /// What the thermometer in the jug should read just after mixing.
    pub jug: String,
    /// What it should read in the bag.
    pub bag: String,
}

/// The trays of one period.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PeriodTrays {
    /// The period, such as "Period 3".
    pub period: String,
    /// When it begins and ends.
    pub clock: String,
    /// What lies on every tray of the period.
    pub every_tray: Vec<String>,
    /// Each group's own tray.
    pub trays: Vec<Tray>,
}

/// One group's tray.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Tray {
    /// The group's number or word.
    pub group: String,
    /// The group's bags.
    pub bags: Vec<TrayBag>,
    /// What this tray holds beyond what lies on every tray.
    pub also: Vec<String>,
}

/// A labeled bag on a tray.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct TrayBag {
    /// The bag's code.
    pub code: String,
    /// What it will hold.
    pub treatment: String,
    /// The treatment's mark.
    pub look: Look,
}
