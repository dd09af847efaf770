//! Every bag of a day or a period: its dot, its curve, its numbers, and what is to be known of it.

use super::foretold::{CurvesShown, Foretelling, table};
use super::results::analysis;
use super::{Kind, Room};
use crate::desk::held_back::{held_back, what_holds};
use crate::desk::paper::{all_curves, dot_rows};
use crate::desk::{DeskError, voice};
use barm_documents::chart::{DotPlot, Frame, Ground, Words};
use barm_domain::plan::Plan;
use barm_domain::result::{BagResult, Measured};

/// What is shown of a bag.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Quantity {
    /// Rise of the card (mm).
    Rise,
    /// Gas made (mL).
    Gas,
    /// Ethanol in the bag (mg): an estimate, and no test of a person.
    Ethanol,
}

impl Quantity {
    /// All of them.
    pub(crate) const ALL: [Self; 3] = [Self::Rise, Self::Gas, Self::Ethanol];

    /// Its word in addresses.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Rise => "rise",
            Self::Gas => "gas",
            Self::Ethanol => "ethanol",
        }
    }

    /// The one of that word; the rise without one.
    pub(crate) fn of(word: &str) -> Self {
        Self::ALL.into_iter().find(|one| one.word() == word).unwrap_or(Self::Rise)
    }

    /// Its unit.
    pub(crate) const fn unit(self) -> &'static str {
        match self {
            Self::Rise => "mm",
            Self::Gas => "mL",
            Self::Ethanol => "mg",
        }
    }

    /// What was measured of a bag, if it was.
    pub(super) fn measured(self, bag: &BagResult) -> Option<Measured> {
        match self {
            Self::Rise => Some(bag.summary.as_ref()?.rise_mm),
            Self::Gas => Some(bag.contents?.gas_ml),
            Self::Ethanol => {
                let Measured { value, low, high } = bag.contents?.ethanol_g?;
                Some(Measured { value: 1e3 * value, low: 1e3 * low, high: 1e3 * high })
            }
        }
    }
}

/// What is looked at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Wanted {
    /// One period, or all.
    pub(crate) period: Option<String>,
    /// What of each bag.
    pub(crate) quantity: Quantity,
}

/// The page of every bag.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct EveryBagView {
    /// Number of the investigation.
    pub(crate) id: i64,
    /// What it is.
    pub(crate) kind: Kind,
    /// Its title.
    pub(crate) title: String,
    /// All periods.
    pub(crate) periods: Vec<String>,
    /// What is looked at.
    pub(crate) wanted: Wanted,
    /// At which minute bags are compared, in a sentence.
    pub(crate) compared: String,
    /// Dots for a wide page and for a narrow one, if there is a value.
    pub(crate) dots: Option<[String; 2]>,
    /// Curves on what was foretold of them: of rises only.
    pub(crate) curves: Option<CurvesShown>,
    /// Each bag.
    pub(crate) rows: Vec<BagRow>,
}

/// One bag.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct BagRow {
    /// Its code.
    pub(crate) code: String,
    /// Its period.
    pub(crate) period: String,
    /// Its group.
    pub(crate) group: u32,
    /// Its treatment.
    pub(crate) treatment: String,
    /// What is shown of it.
    pub(crate) value: Option<Measured>,
    /// What held it back, as the bag model has it, in a word or two.
    pub(crate) held_back: Option<&'static str>,
    /// What is to be known: by which rule it is set aside, and what is worth a second look.
    pub(crate) says: Vec<String>,
}

/// What of these bags is of that period, or of any.
fn bags_of(bags: &[BagResult], period: Option<&str>) -> Vec<BagResult> {
    let own = bags.iter().filter(|bag| period.is_none_or(|name| bag.bag.period == name));
    own.cloned().collect()
}

/// What was foretold of these bags, as far as the room has worked it out.
pub(super) fn foretelling(room: &Room, bags: &[BagResult]) -> Foretelling {
    let read = bags.iter().filter(|bag| bag.summary.is_some());
    let named =
        read.filter_map(|bag| Some((bag.bag.code.parse().ok()?, bag.bag.treatment.as_str())));
    room.read(|scene| Foretelling::of(scene, named))
}

/// The averages of a day or a period and what was foretold of them, as a table; nothing where no bag was read. Works
/// out forecasts: not for asynchronous code.
pub(crate) fn curves_table(
    room: &Room,
    period: Option<&str>,
) -> Result<Option<Vec<u8>>, DeskError> {
    let (plan, analysis, _) = analysis(room)?;
    let own = bags_of(&analysis.result.bags, period);
    let sheaves = all_curves(&plan, &own);
    Ok((!sheaves.is_empty()).then(|| table(&sheaves, &foretelling(room, &own))))
}

/// Every bag of an investigation. Works out forecasts: not for asynchronous code.
pub(crate) fn every_bag_view(room: &Room, wanted: Wanted) -> Result<EveryBagView, DeskError> {
    let (plan, analysis, _) = analysis(room)?;
    if let Some(name) = wanted.period.as_ref().filter(|name| plan.period(name).is_none()) {
        return Err(DeskError::NoPeriod { name: name.clone() });
    }
    let own = bags_of(&analysis.result.bags, wanted.period.as_deref());
    let curves = (wanted.quantity == Quantity::Rise)
        .then(|| {
            CurvesShown::of(&plan.title, &all_curves(&plan, &own), &foretelling(room, &own))
        })
        .flatten();
    let limits = held_back(&plan);
    let row = |bag: &BagResult| BagRow {
        code: bag.bag.code.clone(),
        period: bag.bag.period.clone(),
        group: bag.bag.group,
        treatment: bag.bag.treatment.clone(),
        value: wanted.quantity.measured(bag),
        held_back: limits
            .iter()
            .find(|limit| limit.treatment == bag.bag.treatment)
            .map(|limit| what_holds(limit.by)),
        says: voice(&plan)
            .set_aside(bag, &plan)
            .into_iter()
            .chain(bag.hints.iter().map(|hint| voice(&plan).hint(hint)))
            .collect(),
    };
    Ok(EveryBagView {
        id: room.id,
        kind: room.kind,
        dots: dots(&plan, &own, wanted.quantity),
        curves,
        rows: own.iter().map(row).collect(),
        compared: voice(&plan).common_minute(&analysis.result),
        periods: plan.periods.iter().map(|one| one.name.clone()).collect(),
        title: plan.title,
        wanted,
    })
}

/// A picture for a wide page and one for a narrow one.
fn wide_and_narrow(words: Words, draw: impl Fn(&Frame) -> String) -> [String; 2] {
    [(960.0, 15.0), (340.0, 13.0)].map(|(width, type_size)| {
        draw(&Frame { width, type_size, ground: Ground::Screen, words })
    })
}

fn dots(plan: &Plan, bags: &[BagResult], quantity: Quantity) -> Option<[String; 2]> {
    let rows = dot_rows(plan, bags, |bag| Some(quantity.measured(bag)?.value));
    let words = Words { millimeters: quantity.unit(), ..Words::ENGLISH };
    let title = &plan.title;
    let draw = |frame: &Frame| {
        let brief = frame.width < 600.0;
        DotPlot { title, rows: &rows, gap: None, set: &[], brief }.svg(frame)
    };
    (!rows.is_empty()).then(|| wide_and_narrow(words, draw))
}
