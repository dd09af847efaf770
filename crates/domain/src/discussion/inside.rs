//! What feeds the yeast in a bag, and what has to be cut first.

use crate::bench;
use crate::plan::{Plan, Treatment};
use barm_science::setup::{Composition, EnzymeKind, Portion};

/// A carbohydrate, as a lesson calls it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Carbohydrate {
    /// Glucose.
    Glucose,
    /// Fructose.
    Fructose,
    /// Sucrose, table sugar.
    Sucrose,
    /// Maltose, malt sugar, and maltotriose.
    Maltose,
    /// Galactose.
    Galactose,
    /// Lactose, milk sugar.
    Lactose,
    /// Raffinose and its like, of beans and peas.
    Raffinose,
    /// Dextrin: short chains of glucose.
    Dextrin,
    /// Starch that was cooked or crushed.
    CookedStarch,
    /// Starch in whole grains.
    RawStarch,
}

/// What baker's yeast does with a carbohydrate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ByYeast {
    /// It takes it in as it is.
    AtOnce,
    /// It cuts it outside its cells, by an enzyme of its own, and takes in the halves.
    CutOutside,
    /// It takes it in once it has made what that takes, which glucose delays.
    Later,
    /// It cuts part of it off.
    InPart,
    /// It cannot use it.
    NotAtAll,
}

impl Carbohydrate {
    /// What baker's yeast does with it, as the bag model has it (`barm facts` names the sources of its rates).
    pub const fn by_yeast(self) -> ByYeast {
        match self {
            Self::Glucose | Self::Fructose => ByYeast::AtOnce,
            Self::Sucrose => ByYeast::CutOutside,
            Self::Maltose | Self::Galactose => ByYeast::Later,
            Self::Raffinose => ByYeast::InPart,
            Self::Lactose | Self::Dextrin | Self::CookedStarch | Self::RawStarch => {
                ByYeast::NotAtAll
            }
        }
    }

    /// Whether an enzyme cuts it.
    pub const fn is_cut_by(self, enzyme: EnzymeKind) -> bool {
        match enzyme {
            EnzymeKind::Glucoamylase
            | EnzymeKind::FungalAlphaAmylase
            | EnzymeKind::BacterialAlphaAmylase => {
                matches!(self, Self::Dextrin | Self::CookedStarch | Self::RawStarch)
            }
            EnzymeKind::BetaAmylase => matches!(self, Self::Dextrin | Self::CookedStarch),
            EnzymeKind::NeutralLactase | EnzymeKind::AcidLactase => {
                matches!(self, Self::Lactose)
            }
            EnzymeKind::Invertase => matches!(self, Self::Sucrose | Self::Raffinose),
            EnzymeKind::AlphaGalactosidase => matches!(self, Self::Raffinose),
        }
    }

    /// How much of it is in 100 g (g).
    const fn of(self, food: &Composition) -> f64 {
        match self {
            Self::Glucose => food.glucose,
            Self::Fructose => food.fructose,
            Self::Sucrose => food.sucrose,
            Self::Maltose => food.maltose + food.maltotriose,
            Self::Galactose => food.galactose,
            Self::Lactose => food.lactose,
            Self::Raffinose => food.galactosides,
            Self::Dextrin => food.dextrin,
            Self::CookedStarch => food.cooked_starch,
            Self::RawStarch => food.raw_starch,
        }
    }

    const ALL: [Self; 10] = [
        Self::Glucose,
        Self::Fructose,
        Self::Sucrose,
        Self::Maltose,
        Self::Galactose,
        Self::Lactose,
        Self::Raffinose,
        Self::Dextrin,
        Self::CookedStarch,
        Self::RawStarch,
    ];
}

/// What is in the bags of a treatment.
#[derive(Debug, Clone, PartialEq)]
pub struct Inside {
    /// The treatment.
    pub treatment: String,
    /// Whether there is yeast in it.
    pub yeast: bool,
    /// Its carbohydrates with their mass (g), those first that yeast takes in at once.
    pub carbohydrates: Vec<(Carbohydrate, f64)>,
    /// Its enzymes, each once.
    pub enzymes: Vec<EnzymeKind>,
}

/// Less than this is not told (g): a trace feeds nothing that a ruler could show.
const TRACE_G: f64 = 0.005;

/// What is in the bags of a treatment on the plan's first day; nothing where its recipe cannot be measured out.
pub fn inside(plan: &Plan, treatment: &Treatment) -> Option<Inside> {
    let day = plan.days.first()?;
    let setup = bench::setup(plan, &plan.recipe(treatment), day).ok()?;
    let carriers = setup.enzymes.iter().filter_map(|enzyme| enzyme.carrier.as_ref());
    let portions: Vec<&Portion> = setup.foods.iter().chain(carriers).collect();
    let grams = |one: Carbohydrate| -> f64 {
        portions.iter().map(|food| 0.01 * food.grams * one.of(&food.composition)).sum()
    };
    let carbohydrates = Carbohydrate::ALL.map(|one| (one, grams(one))).into_iter();
    let mut enzymes: Vec<EnzymeKind> = setup.enzymes.iter().map(|enzyme| enzyme.kind).collect();
    enzymes.sort_unstable_by_key(|kind| *kind as u8);
    enzymes.dedup();
    Some(Inside {
        treatment: treatment.name.clone(),
        yeast: setup.yeast.is_some(),
        carbohydrates: carbohydrates.filter(|(_, grams)| *grams >= TRACE_G).collect(),
        enzymes,
    })
}
