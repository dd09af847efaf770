//! What a pilot is for a plan.

use super::bags::{self, PilotBag};
use super::dummy::{self, Dummy};
use super::syringe::{self, Syringe};
use crate::amount::AmountKind;
use crate::bench::BenchError;
use crate::plan::{Day, Plan, Recipe, YeastKind};
use barm_science::forecast::SetupError;

/// A pilot for one plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Protocol {
    /// Bags that are made and read, in the order of their letters.
    pub bags: Vec<PilotBag>,
    /// What a bag's card does over known volumes of air; nothing where the card is blind at first.
    pub syringe: Option<Syringe>,
    /// The bag of plain water that cools.
    pub dummy: Dummy,
    /// Spoons to weigh; nothing for yeast that comes in cakes, or for a plan without yeast.
    pub spoons: Option<SpoonCheck>,
    /// The meter over ethanol of known strength; nothing for a plan without a meter.
    pub meter: Option<MeterCheck>,
}

/// Level teaspoons of yeast to weigh.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SpoonCheck {
    /// Which yeast.
    pub kind: YeastKind,
    /// How many.
    pub count: u32,
    /// Whether the plan measures yeast by the spoon; otherwise nothing hangs on them.
    pub of_use: bool,
}

/// Liquids to hold the meter over.
#[derive(Debug, Clone, PartialEq)]
pub struct MeterCheck {
    /// Ethanol in water (% by volume).
    pub strengths: Vec<f64>,
}

/// Why there is no pilot for a plan.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PilotError {
    /// The plan has no school day.
    #[error("the plan has no school day, so room and air pressure are not known")]
    NoDay,
    /// A recipe cannot be measured out.
    #[error("bag {bag} of the pilot: {source}")]
    Bench {
        /// The bag.
        bag: String,
        /// What is wrong.
        source: BenchError,
    },
    /// A recipe that no bag can hold.
    #[error("bag {bag} of the pilot: {source}")]
    Setup {
        /// The bag.
        bag: String,
        /// What is wrong.
        source: SetupError,
    },
}

impl PilotError {
    /// What to do about it.
    pub fn fix(&self) -> String {
        match self {
            Self::NoDay => "write a [[day]] with its room temperature and altitude".into(),
            Self::Bench { source, .. } => source.fix.clone(),
            Self::Setup { .. } => "check the amounts of the base recipe".into(),
        }
    }
}

/// Teaspoons that are weighed: the mean of ten is known to a third of what one scatters.
const SPOONS: u32 = 10;
/// Ethanol in water (% by volume) over which a meter is held: plain water, and about what bags make.
const STRENGTHS: [f64; 3] = [0.0, 0.5, 1.0];

/// What to do in a pilot for this plan.
///
/// # Errors
/// [`PilotError`] if the plan has no day, or a bag cannot be made.
pub fn protocol(plan: &Plan) -> Result<Protocol, PilotError> {
    let day = plan.days.first().ok_or(PilotError::NoDay)?;
    let meters = plan.equipment.meters.is_some_and(|meters| meters > 0);
    Ok(Protocol {
        bags: bags::bags(plan, day)?,
        syringe: syringe::syringe(plan, day)?,
        dummy: dummy::dummy(plan, day),
        spoons: spoons(plan),
        meter: meters.then(|| MeterCheck { strengths: STRENGTHS.to_vec() }),
    })
}

impl Protocol {
    /// The bag of that letter.
    pub fn bag(&self, letter: &str) -> Option<&PilotBag> {
        self.bags.iter().find(|bag| bag.letter.eq_ignore_ascii_case(letter.trim()))
    }
}

fn spoons(plan: &Plan) -> Option<SpoonCheck> {
    let kind = yeast_of(plan).filter(|kind| *kind != YeastKind::Compressed)?;
    let by_spoon = recipes(plan).any(|recipe| {
        recipe.yeast == Some(kind) && recipe.yeast_amount.kind == AmountKind::Spoon
    });
    Some(SpoonCheck { kind, count: SPOONS, of_use: by_spoon })
}

/// Every recipe of the plan, the base first.
pub(super) fn recipes(plan: &Plan) -> impl Iterator<Item = Recipe> {
    let own = plan.treatments().map(|(_, treatment)| plan.recipe(treatment));
    std::iter::once(plan.base.clone()).chain(own)
}

/// The yeast of the plan: that of the base, or else the first there is.
pub(super) fn yeast_of(plan: &Plan) -> Option<YeastKind> {
    recipes(plan).find_map(|recipe| recipe.yeast)
}

/// The plan's first day in another room temperature, where one was measured.
pub(super) fn day_at(day: &Day, room_celsius: Option<f64>) -> Day {
    Day { room_celsius: room_celsius.unwrap_or(day.room_celsius), ..day.clone() }
}
